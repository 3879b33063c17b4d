import { XMLParser, XMLValidator } from 'fast-xml-parser';

/** An element of a manifest, without the prefix of its namespace. */
interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
  readonly children: readonly Element[];
}

/** What may stand in an element, in this order; `?` where it may be left out, `*` as often as wanted. */
type Order = readonly string[];

/**
 * The order of the elements of a task pane add-in's manifest: the sequences of the published schemas
 * OfficeAppManifestV1_1 and TaskPaneAppVersionOverridesV1_0 (Open Specifications, MS-OWEMXML 5.2 and 5.6), the parts
 * that an Excel add-in of functions can have. An element that is not here is refused.
 */
const ORDER: Readonly<Record<string, Order>> = {
  OfficeApp: [
    'Id',
    'AlternateId?',
    'Version',
    'ProviderName',
    'DefaultLocale',
    'DisplayName',
    'Description',
    'IconUrl?',
    'HighResolutionIconUrl?',
    'SupportUrl?',
    'AppDomains?',
    'Hosts?',
    'Requirements?',
    'DefaultSettings',
    'Permissions',
    'VersionOverrides?',
  ],
  AppDomains: ['AppDomain*'],
  'OfficeApp/Hosts': ['Host*'],
  Requirements: ['Sets?', 'Methods?'],
  Sets: ['Set*'],
  DefaultSettings: ['SourceLocation'],
  VersionOverrides: ['Description?', 'Requirements?', 'Hosts', 'Resources'],
  'VersionOverrides/Hosts': ['Host*'],
  'Hosts/Host': ['Runtimes?', 'AllFormFactors?', 'DesktopFormFactor?'],
  Runtimes: ['Runtime*'],
  AllFormFactors: ['ExtensionPoint*'],
  DesktopFormFactor: ['GetStarted?', 'FunctionFile?', 'ExtensionPoint*'],
  GetStarted: ['Title', 'Description', 'LearnMoreUrl'],
  'AllFormFactors/ExtensionPoint': ['Script', 'Page', 'Metadata', 'Namespace'],
  'DesktopFormFactor/ExtensionPoint': ['OfficeTab*', 'CustomTab*'],
  Script: ['SourceLocation'],
  Page: ['SourceLocation'],
  Metadata: ['SourceLocation'],
  OfficeTab: ['Group*'],
  Group: ['Label', 'Icon', 'Control*'],
  Icon: ['Image*'],
  Control: ['Label', 'Supertip', 'Icon', 'Action'],
  Supertip: ['Title', 'Description'],
  Action: ['TaskpaneId?', 'SourceLocation?', 'FunctionName?'],
  Resources: ['Images?', 'Urls?', 'ShortStrings?', 'LongStrings?'],
  Images: ['Image*'],
  Urls: ['Url*'],
  ShortStrings: ['String*'],
  LongStrings: ['String*'],
};

/** Most characters: of an id of a resource, and of texts and addresses ("Resources element"). */
const LONGEST = { id: 32, ShortStrings: 125, LongStrings: 250, Images: 2048, Urls: 2048 } as const;

/** Sizes that a button's icon has to come in [px] ("Icon element"). */
const BUTTON_ICONS = ['16', '32', '80'];

const PERMISSIONS = ['Restricted', 'ReadDocument', 'ReadAllDocument', 'WriteDocument', 'ReadWriteDocument'];

/** Who holds a reference, by what kind of resource it has to be. */
const REFERS_TO: Readonly<Record<string, string>> = {
  Runtime: 'Urls',
  SourceLocation: 'Urls',
  FunctionFile: 'Urls',
  LearnMoreUrl: 'Urls',
  Image: 'Images',
  Namespace: 'ShortStrings',
  Label: 'ShortStrings',
  Title: 'ShortStrings',
  Description: 'LongStrings',
};

/**
 * What is wrong with a manifest of a task pane add-in with functions, by what the host's documents ask for: the order
 * of elements, ids, lengths, addresses, icons, and what a shared runtime needs. The host's own service looks at more:
 * whether addresses answer, and what each product of the host supports.
 * @param text the content of manifest.xml
 * @returns one sentence for each fault; none where the rules are met
 */
export function manifestFaults(text: string): string[] {
  const wellFormed = XMLValidator.validate(text);
  if (wellFormed !== true) return [`line ${wellFormed.err.line}: ${wellFormed.err.msg}`];
  const root = readElements(text).find(({ name }) => name === 'OfficeApp');
  if (!root) return ['the outermost element is not OfficeApp'];
  return [...orderFaults(root, ''), ...headFaults(root), ...resourceFaults(root), ...runtimeFaults(root)];
}

type Raw = Readonly<Record<string, unknown>>;

function readElements(text: string): Element[] {
  const parser = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    removeNSPrefix: false,
    parseTagValue: false,
    parseAttributeValue: false,
  });
  const read = (nodes: readonly Raw[]): Element[] =>
    nodes.flatMap((node) => {
      const tag = Object.keys(node).find((key) => key !== ':@' && key !== '#text' && !key.startsWith('?'));
      if (tag === undefined) return [];
      const inside = node[tag] as readonly Raw[];
      return [
        {
          name: tag.replace(/^.*:/, ''),
          attributes: (node[':@'] ?? {}) as Record<string, string>,
          text: inside.map((part) => ('#text' in part ? String(part['#text']) : '')).join(''),
          children: read(inside),
        },
      ];
    });
  return read(parser.parse(text) as Raw[]);
}

function orderFaults(element: Element, parent: string): string[] {
  const { name, children } = element;
  const order = ORDER[`${parent}/${name}`] ?? ORDER[name];
  const faults: string[] = [];
  if (order) {
    const places = order.map((entry) => entry.replace(/[?*]$/, ''));
    let last = 0;
    for (const child of children) {
      const place = places.indexOf(child.name);
      if (place < 0) faults.push(`${child.name} has no place in ${name}`);
      else if (place < last)
        faults.push(`${child.name} stands after ${places[last]} in ${name}, not before it`);
      last = Math.max(last, place);
    }
    order.forEach((entry, i) => {
      const count = children.filter((child) => child.name === places[i]).length;
      if (!/[?*]$/.test(entry) && count === 0) faults.push(`${name} has no ${entry}`);
      if (!entry.endsWith('*') && count > 1) faults.push(`${name} has ${places[i]} ${count} times`);
    });
  } else {
    const [stray] = children;
    if (stray) faults.push(`${stray.name} has no place in ${name}`);
  }
  return [...faults, ...children.flatMap((child) => orderFaults(child, name))];
}

const within = (element: Element): Element[] => [
  element,
  ...element.children.flatMap((child) => within(child)),
];

const all = (root: Element, name: string): Element[] =>
  within(root).filter((element) => element.name === name);

function headFaults(root: Element): string[] {
  const faults: string[] = [];
  const value = (name: string): string | undefined => {
    const found = root.children.find((child) => child.name === name);
    return found && (found.attributes['DefaultValue'] ?? found.text).trim();
  };
  const check = (name: string, allowed: (text: string) => boolean, what: string): void => {
    const text = value(name);
    if (text !== undefined && !allowed(text)) faults.push(`${name} is "${text}": allowed is ${what}`);
  };
  if (root.attributes['xsi:type'] !== 'TaskPaneApp') faults.push('OfficeApp is not of the type TaskPaneApp');
  check('Id', (t) => /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(t), 'a GUID');
  check('Version', (t) => /^\d+(\.\d+){1,3}$/.test(t), 'two to four numbers between dots');
  check('ProviderName', (t) => t.length >= 1 && t.length <= 125, '1 to 125 characters');
  check('DisplayName', (t) => t.length >= 1 && t.length <= 125, '1 to 125 characters');
  check('Description', (t) => t.length >= 1 && t.length <= 250, '1 to 250 characters');
  check('Permissions', (t) => PERMISSIONS.includes(t), PERMISSIONS.join(', '));
  for (const name of ['IconUrl', 'HighResolutionIconUrl']) {
    check(name, (t) => isHttps(t) && /\.(png|jpg|jpeg|gif|bmp|exif|tiff)$/i.test(t), 'a picture over https');
  }
  // Asked for by the service, though not by the schema.
  if (value('SupportUrl') === undefined) faults.push('OfficeApp has no SupportUrl');
  check('SupportUrl', isHttps, 'an address over https');
  for (const { text } of all(root, 'AppDomain')) {
    const domain = text.trim();
    if (!isHttps(domain) || new URL(domain).origin !== domain)
      faults.push(`AppDomain is "${domain}": allowed is https, a host and a port, without a path`);
  }
  for (const { attributes } of all(root, 'SourceLocation')) {
    const address = attributes['DefaultValue'];
    if (address !== undefined && !isHttps(address))
      faults.push(`SourceLocation is "${address}": allowed is an address over https`);
  }
  for (const { attributes } of all(root, 'Set')) {
    if (!/^\d+\.\d+$/.test(attributes['MinVersion'] ?? ''))
      faults.push(`the requirement set ${attributes['Name'] ?? ''} has no MinVersion`);
  }
  return faults;
}

function isHttps(text: string): boolean {
  try {
    return new URL(text).protocol === 'https:';
  } catch {
    return false;
  }
}

function resourceFaults(root: Element): string[] {
  const faults: string[] = [];
  const kinds = new Map<string, string>();
  for (const kind of ['Images', 'Urls', 'ShortStrings', 'LongStrings'] as const) {
    for (const { attributes } of all(root, kind).flatMap(({ children }) => children)) {
      const { id = '', DefaultValue: value = '' } = attributes;
      if (kinds.has(id)) faults.push(`the resource ${id} is there twice`);
      kinds.set(id, kind);
      if (id.length < 1 || id.length > LONGEST.id)
        faults.push(`the id "${id}" has ${id.length} characters: allowed is 1 to ${LONGEST.id}`);
      if (value.length < 1 || value.length > LONGEST[kind])
        faults.push(`the resource ${id} has ${value.length} characters: allowed is 1 to ${LONGEST[kind]}`);
      if ((kind === 'Images' || kind === 'Urls') && !isHttps(value))
        faults.push(`the resource ${id} is "${value}": allowed is an address over https`);
    }
  }
  const used = new Set<string>();
  for (const { name, attributes } of within(root)) {
    const { resid } = attributes;
    if (resid === undefined) continue;
    used.add(resid);
    const kind = kinds.get(resid);
    const wanted = REFERS_TO[name];
    if (kind === undefined) faults.push(`${name} names the resource ${resid}, which is not there`);
    else if (wanted !== undefined && kind !== wanted)
      faults.push(`${name} names ${resid} of ${kind}: it has to be one of ${wanted}`);
  }
  for (const id of kinds.keys()) if (!used.has(id)) faults.push(`the resource ${id} is not used`);
  for (const { children } of all(root, 'Icon')) {
    const sizes = children.map(({ attributes }) => attributes['size']);
    const missing = BUTTON_ICONS.filter((size) => !sizes.includes(size));
    if (missing.length > 0) faults.push(`an Icon lacks the size ${missing.join(', ')}`);
  }
  return faults;
}

/** "Configure your Office Add-in to use a shared runtime". */
function runtimeFaults(root: Element): string[] {
  const faults: string[] = [];
  const runtime = all(root, 'Runtime').find(({ attributes }) => attributes['lifetime'] === 'long');
  if (!runtime) return faults;
  const resid = runtime.attributes['resid'];
  const sets = all(root, 'Set').map(({ attributes }) => attributes['Name']);
  if (!sets.includes('SharedRuntime')) faults.push('a long-lived Runtime needs the set SharedRuntime');
  const pages = [
    ...all(root, 'Page').flatMap(({ children }) => children),
    ...all(root, 'FunctionFile'),
    ...all(root, 'Action').flatMap(({ children }) =>
      children.filter(({ name }) => name === 'SourceLocation'),
    ),
  ];
  for (const { name, attributes } of pages) {
    if (attributes['resid'] !== resid)
      faults.push(`${name} names ${attributes['resid']}, not the page of the long-lived Runtime, ${resid}`);
  }
  if (all(root, 'TaskpaneId').length > 0)
    faults.push('TaskpaneId stands below an action of a long-lived Runtime, which has one pane only');
  return faults;
}
