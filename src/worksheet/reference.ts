import { allowedText } from './allowedText';
import type { ArgumentDescription, FunctionDescription, Group } from './description';
import { QUANTITIES } from './quantities';

const GROUPS: readonly Group[] = [
  'Measures and pieces',
  'Clearance',
  'Carrying',
  'Floors',
  'Room',
  'Routes and surveys',
];

/** A call as it stands in a cell: `CARRY.PITCH(rise, going)`, optional arguments in brackets. */
export function signature(f: FunctionDescription): string {
  const words = f.arguments.map((a) => (a.repeating ? `${a.name}…` : a.optional ? `[${a.name}]` : a.name));
  return `CARRY.${f.id}(${words.join(', ')})`;
}

/** The functions in one Markdown table a group: the part of README between its two marks. */
export function functionTables(functions: readonly FunctionDescription[]): string {
  return GROUPS.map((group) => {
    const rows = functions
      .filter((f) => f.group === group)
      .map((f) => `| \`${signature(f)}\` | ${inTable(f.summary)} | ${inTable(f.result.unit || '–')} |`);
    return [`### ${group}`, '', '| function | answers | unit |', '|---|---|---|', ...rows].join('\n');
  }).join('\n\n');
}

/** The reference of every function, as Markdown. */
export function referencePage(functions: readonly FunctionDescription[]): string {
  const parts = [
    '# Carry Route Functions: reference',
    '',
    'Written from the descriptions of the functions. Lengths are mm, masses kg, angles degrees; a text with a unit, such as `76 cm` or `2\' 6"`, is read as well. Every scalar argument of a function with one number as its result also takes a range.',
  ];
  for (const group of GROUPS) {
    parts.push('', `## ${group}`);
    for (const f of functions.filter((each) => each.group === group)) parts.push('', section(f));
  }
  return `${parts.join('\n')}\n`;
}

function section(f: FunctionDescription): string {
  const lines = [`### ${f.id}`, '', `${f.summary}.`, '', `\`=${signature(f)}\``, ''];
  lines.push('| argument | unit | what it is | allowed | when left out |', '|---|---|---|---|---|');
  for (const a of f.arguments) lines.push(argumentRow(a));
  const result = f.result.unit ? `${f.result.meaning} [${f.result.unit}]` : f.result.meaning;
  lines.push('', `- Result: ${result}`, `- Formula and source: ${f.source}`);
  if (f.motions) lines.push(`- Motions looked at: ${f.motions}`);
  if (f.validity) lines.push(`- Holds for: ${f.validity}`);
  if (f.caution) lines.push(`- **Caution:** ${f.caution}`);
  lines.push(`- Example: ${exampleText(f)}`);
  return lines.join('\n');
}

function argumentRow(a: ArgumentDescription): string {
  const unit = QUANTITIES[a.quantity].unit || '–';
  const missing = a.optional
    ? a.optional.default === null
      ? (a.optional.meaning ?? 'not used')
      : String(a.optional.default)
    : 'required';
  return `| \`${a.name}\` | ${unit} | ${inTable(a.help)} | ${inTable(a.choices?.join(', ') ?? allowedText(a))} | ${inTable(missing)} |`;
}

function exampleText(f: FunctionDescription): string {
  const { arguments: given, within, source } = f.example;
  const call = `\`=CARRY.${f.id}(${given.map(argumentText).join(', ')})\``;
  const value =
    f.kind === 'number'
      ? `${f.example.result}${within ? ` (within ${within})` : ''}`
      : `the rows ${f.example.result.map((row) => row.map(cellText).join(' | ')).join('; ')}`;
  return `${call} gives ${value}. Source of the value: ${source}.`;
}

function argumentText(value: unknown): string {
  if (Array.isArray(value))
    return `{${value.map((row) => (row as unknown[]).map(cellText).join(',')).join(';')}}`;
  if (value === null || value === undefined) return '';
  return cellText(value);
}

const cellText = (value: unknown): string =>
  typeof value === 'string' ? `"${value.replace(/"/g, '""')}"` : String(value);

/** A bar would end the cell of a Markdown table. */
const inTable = (text: string): string => text.replace(/\|/g, '\\|');
