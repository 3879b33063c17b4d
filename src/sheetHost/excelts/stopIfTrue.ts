import { readParts, writeParts, type PackageParts } from './packageParts';

/** A rule of a conditional format that ends the search for others, by its sheet and priority. */
export interface StoppingRule {
  readonly sheet: string;
  readonly priority: string;
}

const text = (parts: PackageParts, name: string): string => new TextDecoder().decode(parts.get(name));

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];

const unescape = (value: string): string =>
  value
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');

/** The part of each sheet, by the sheet's name. */
function sheetParts(parts: PackageParts): Map<string, string> {
  const targets = new Map<string, string>();
  for (const [tag] of text(parts, 'xl/_rels/workbook.xml.rels').matchAll(/<Relationship\s[^>]*>/g)) {
    const target = attribute(tag, 'Target') ?? '';
    targets.set(attribute(tag, 'Id') ?? '', target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  }
  const found = new Map<string, string>();
  for (const [tag] of text(parts, 'xl/workbook.xml').matchAll(/<sheet\s[^>]*>/g)) {
    const part = targets.get(attribute(tag, 'r:id') ?? '');
    if (part !== undefined && parts.has(part)) found.set(unescape(attribute(tag, 'name') ?? ''), part);
  }
  return found;
}

/** The rules of a package that have `stopIfTrue`, which the library does not read. */
export function stoppingRules(parts: PackageParts): StoppingRule[] {
  return [...sheetParts(parts)].flatMap(([sheet, part]) =>
    [...text(parts, part).matchAll(/<cfRule\s[^>]*\sstopIfTrue="(?:1|true)"[^>]*>/g)].flatMap(([tag]) => {
      const priority = attribute(tag, 'priority');
      return priority === undefined ? [] : [{ sheet, priority }];
    }),
  );
}

/** Writes `stopIfTrue` again into the rules that had it. */
export async function withStoppingRules(
  bytes: Uint8Array,
  rules: readonly StoppingRule[],
): Promise<Uint8Array> {
  if (rules.length === 0) return bytes;
  const parts = await readParts(bytes);
  for (const [sheet, part] of sheetParts(parts)) {
    const priorities = new Set(rules.filter((r) => r.sheet === sheet).map((r) => r.priority));
    if (priorities.size === 0) continue;
    const patched = text(parts, part).replace(/<cfRule\s[^>]*>/g, (tag) =>
      priorities.has(attribute(tag, 'priority') ?? '')
        ? tag.replace('<cfRule', '<cfRule stopIfTrue="1"')
        : tag,
    );
    parts.set(part, new TextEncoder().encode(patched));
  }
  return writeParts(parts);
}
