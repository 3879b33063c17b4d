import { readFileSync } from 'node:fs';
import path from 'node:path';
import { manifestFaults } from '../../src/commands/manifestRules';

/*
 * Rules: the sequences of the published schemas OfficeAppManifestV1_1 and TaskPaneAppVersionOverridesV1_0
 * (MS-OWEMXML), and the Office Add-ins documentation: "Resources element" (ids of 32, texts of 125 and 250, addresses
 * of 2048 characters, https), "Icon element" (16, 32, 80), "AppDomain element" (no path), "Configure your Office Add-in
 * to use a shared runtime" (one page; no TaskpaneId, as of July 2026).
 */
const manifest = readFileSync(path.resolve(__dirname, '../../manifest.xml'), 'utf8');

test('the manifest has no fault', () => {
  expect(manifestFaults(manifest)).toEqual([]);
});

const swap = (from: string | RegExp, to: string): string => {
  const changed = manifest.replace(from, to);
  if (changed === manifest) throw new Error(`nothing to replace: ${String(from)}`);
  return changed;
};

test.each([
  ['not well-formed', swap('</OfficeApp>', ''), /^line \d+:/],
  ['another root', '<Package/>', /outermost element/],
  ['out of order', swap(/( *<DefaultLocale>.*\n)( *<DisplayName .*\n)/, '$2$1'), /DisplayName in OfficeApp/],
  ['not at home there', swap('<Supertip>', '<Supertip><Icon/>'), /Icon has no place in Supertip/],
  ['a name that is none', swap('<Permissions>', '<Colour/><Permissions>'), /Colour has no place/],
  ['something left out', swap(/ *<ProviderName>.*\n/, ''), /OfficeApp has no ProviderName/],
  ['something twice', swap(/( *<Permissions>.*\n)/, '$1$1'), /Permissions 2 times/],
  ['an id that is none', swap(/<Id>.*<\/Id>/, '<Id>carry</Id>'), /Id is "carry".*GUID/],
  ['a version that is none', swap(/<Version>.*<\/Version>/, '<Version>next</Version>'), /Version is "next"/],
  [
    'too much said',
    swap(/<Description DefaultValue="[^"]*"/, `<Description DefaultValue="${'x'.repeat(251)}"`),
    /250/,
  ],
  ['no help', swap(/ *<SupportUrl .*\n/, ''), /no SupportUrl/],
  [
    'a domain with a path',
    swap('  <Hosts>', '<AppDomains><AppDomain>https://a.example/b</AppDomain></AppDomains><Hosts>'),
    /AppDomain is "https:\/\/a.example\/b"/,
  ],
  [
    'plain http',
    swap('https://localhost:3000/functions.js"', 'http://localhost:3000/functions.js"'),
    /Functions.Url is "http:/,
  ],
  ['a set without a version', swap(/ MinVersion="1.9"/, ''), /ExcelApi has no MinVersion/],
  [
    'a resource that is not there',
    swap('String id="Start.Title"', 'String id="Begin.Title"'),
    /Start.Title, which is not there/,
  ],
  [
    'a resource of another kind',
    swap('<Label resid="Pane.Label"/>', '<Label resid="Pane.Tip"/>'),
    /has to be one of ShortStrings/,
  ],
  [
    'a resource twice',
    swap('String id="Start.Title"', 'String id="Pane.Label"'),
    /Pane.Label is there twice/,
  ],
  [
    'a resource for nothing',
    swap(
      '<bt:String id="Start.Title"',
      '<bt:String id="Spare" DefaultValue="x"/><bt:String id="Start.Title"',
    ),
    /Spare is not used/,
  ],
  [
    'a long id',
    swap(/Start\.Title/g, 'Start.Title.That.Goes.On.And.On.And'),
    /34 characters: allowed is 1 to 32|35 characters: allowed is 1 to 32/,
  ],
  [
    'a long label',
    swap(/id="Pane.Label" DefaultValue="[^"]*"/, `id="Pane.Label" DefaultValue="${'x'.repeat(126)}"`),
    /126 characters: allowed is 1 to 125/,
  ],
  ['an icon too few', swap(/ *<bt:Image size="32" .*\n/, ''), /lacks the size 32/],
  ['no shared runtime asked for', swap(/ *<Set Name="SharedRuntime".*\n/, ''), /needs the set SharedRuntime/],
  [
    'another page',
    swap('<FunctionFile resid="Pane.Url"/>', '<FunctionFile resid="Support.Url"/>'),
    /not the page of the long-lived Runtime/,
  ],
  [
    'a pane with a name',
    swap('<Action xsi:type="ShowTaskpane">', '<Action xsi:type="ShowTaskpane"><TaskpaneId>One</TaskpaneId>'),
    /TaskpaneId stands below/,
  ],
])('finds %s', (_, text, fault) => {
  const faults = manifestFaults(text);
  expect(faults.filter((found) => fault.test(found))).not.toEqual([]);
});
