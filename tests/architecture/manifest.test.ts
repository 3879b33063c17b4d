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

// "[Api set: …]" in the types of Office: errors with messages CustomFunctionsRuntime 1.2, the codes that a cell may
// hand on 1.3; of what the pane asks a workbook, onChanged of all sheets is the newest, ExcelApi 1.9.
test('the namespace is CARRY, and the sets are those of what is used', () => {
  expect(text).toMatch(/id="Functions.Namespace" DefaultValue="CARRY"/);
  const sets = [...text.matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"/g)].map((m) => `${m[1]} ${m[2]}`);
  expect(sets).toEqual(['SharedRuntime 1.1', 'CustomFunctionsRuntime 1.3', 'ExcelApi 1.9']);
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
