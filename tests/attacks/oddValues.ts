/** A source of numbers in 0..1. */
export type Chance = () => number;

export const pick = <T>(chance: Chance, from: readonly T[]): T => {
  const at = Math.min(from.length - 1, Math.floor(chance() * from.length));
  return from[at] as T;
};

/** What hosts, pasted data and careless hands put into a cell that no function was written for. */
export const ODD_VALUES: readonly unknown[] = [
  null,
  undefined,
  '',
  ' ',
  '\t\n',
  0,
  -0,
  1,
  -1,
  5e-324,
  -5e-324,
  Number.EPSILON,
  1e-9,
  1e308,
  -1e308,
  Number.MAX_SAFE_INTEGER + 2,
  NaN,
  Infinity,
  -Infinity,
  true,
  false,
  // A date as the host's serial number, as text and as an object that a data type may carry.
  46000.5,
  '2026-11-26',
  new Date(0),
  {},
  [],
  { type: 'Entity', text: 'a thing', properties: {} },
  { basicType: 'Double', basicValue: 12 },
  () => 1,
  'x'.repeat(32767),
  '9'.repeat(400),
  '\u202e762 mm',
  '762\u200b mm',
  '\ufeff762 mm',
  '\ud800',
  '762 mm\udc00',
  '７６２ mm',
  '٧٦٢ mm',
  '=1+1',
  "'; drop",
  '<b onmouseover=alert(1)>',
  '1,981 mm',
  '1.981,5 mm',
  '1 981 mm',
  '6\' 6"',
  "2' 6",
  '2ft 6',
  '6 1/8"',
  '1/0 mm',
  '-0 mm',
  '0 mm',
  '1e9 mm',
  '.',
  '-',
  '+',
  '#N/A',
  '__proto__',
  'constructor',
  'toString',
  'NaN',
  'Infinity mm',
  'open',
  'yes',
  'left',
];

/** An error value of a cell, as a host hands it over. */
export const ERROR_CODES = ['#DIV/0!', '#N/A', '#REF!', '#VALUE!', '#NAME?', '#NUM!', '#NULL!', '#SPILL!'] as const;
