import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { PNG } from 'pngjs';
import { ICON_SIZES, iconPng } from '../../src/taskpane/icon';

// Rules: Office Add-ins documentation, "Office Add-ins XML manifest", "Configure your add-in to use a shared
// runtime", and the limits of the published schema OfficeAppBasicTypesV1_0 (resid 32, ShortString 125).
const text = readFileSync(path.resolve(__dirname, '../../manifest.xml'), 'utf8');
const parsed = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '@' }).parse(text);
const attributes = (pattern: RegExp): string[] => [...text.matchAll(pattern)].map((m) => m[1]!);

test('it is well-formed and of the task pane kind', () => {
  expect(XMLValidator.validate(text)).toBe(true);
  expect(parsed.OfficeApp['@xsi:type']).toBe('TaskPaneApp');
  expect(parsed.OfficeApp.SupportUrl['@DefaultValue']).toMatch(/^https:/);
});

test('every resid used is defined once, and every one defined is used', () => {
  const used = attributes(/resid="([^"]+)"/g);
  const defined = attributes(/<bt:(?:Image|Url|String) id="([^"]+)"/g);
  expect(used.length).toBeGreaterThan(5);
  expect(new Set(used)).toEqual(new Set(defined));
  expect(new Set(defined).size).toBe(defined.length);
  for (const id of defined) expect(id.length).toBeLessThanOrEqual(32);
});

test('short strings keep to 125 characters', () => {
  const block = /<bt:ShortStrings>([\s\S]*?)<\/bt:ShortStrings>/.exec(text)![1]!;
  const values = [...block.matchAll(/DefaultValue="([^"]*)"/g)].map((m) => m[1]!);
  expect(values.length).toBeGreaterThan(2);
  for (const value of values) expect(value.length).toBeLessThanOrEqual(125);
});

test('the runtime, the page of the functions and the function file share one page', () => {
  const runtime = /<Runtime resid="([^"]+)" lifetime="long"/.exec(text)![1];
  const page = /<Page>\s*<SourceLocation resid="([^"]+)"/.exec(text)![1];
  const functionFile = /<FunctionFile resid="([^"]+)"/.exec(text)![1];
  expect([page, functionFile]).toEqual([runtime, runtime]);
});

test('the namespace is CARRY, and the sets are those of the oldest host that can run it', () => {
  expect(text).toMatch(/id="Functions.Namespace" DefaultValue="CARRY"/);
  expect(text).toMatch(/<Set Name="CustomFunctionsRuntime" MinVersion="1.1"\/>/);
  expect(text).toMatch(/<Set Name="SharedRuntime" MinVersion="1.1"\/>/);
});

test('each icon named is drawn at its size', () => {
  const icons = new Set(attributes(/\/icon-(\d+)\.png/g).map(Number));
  for (const size of [16, 32, 64, 80]) expect(icons).toContain(size);
  for (const size of icons) expect(ICON_SIZES).toContain(size);
  for (const size of ICON_SIZES) {
    const png = PNG.sync.read(iconPng(size));
    expect([png.width, png.height]).toEqual([size, size]);
    const covered = png.data.filter((v, i) => i % 4 === 3 && v > 127).length / (size * size);
    expect(covered).toBeGreaterThan(0.3);
    expect(covered).toBeLessThan(0.8);
  }
});

test('every address is the local one, which a deployment rewrites', () => {
  for (const url of attributes(/DefaultValue="(https?:[^"]+)"/g)) {
    expect(url.startsWith('https://localhost:3000')).toBe(true);
  }
});

test('the built copy has the files it names', () => {
  const dist = path.resolve(__dirname, '../../dist');
  const names = attributes(/https:\/\/localhost:3000\/([\w.-]+)/g);
  expect(names.length).toBeGreaterThan(3);
  for (const name of names) expect(existsSync(path.join(dist, name))).toBe(true);
});
