import { FUNCTIONS } from '../../src/worksheet/functions';
import type { NumberFunction } from '../../src/worksheet/description';
import { HostError, callInCell, callInCells, type Given } from '../support/callInCells';

const numbers = FUNCTIONS.filter((f): f is NumberFunction => f.kind === 'number');

describe('the working of every function ends in its result', () => {
  test.each(numbers.map((f) => [f.id, f] as const))('%s', (id, f) => {
    const given = f.example.arguments as Given[];
    const table = callInCells('WORKING', id, ...given);
    expect(table[0]).toEqual(['What', 'Formula', 'Value', 'Unit', 'Source']);
    expect(table.at(-1)![2]).toBe(callInCell(id, ...given));
    expect(table.some((row) => row[0] === 'Caution')).toBe(f.caution !== undefined);
    for (const row of table) expect(row).toHaveLength(5);
    for (const row of table.slice(1)) expect(row[0]).not.toBe('');
  });
});

test('a default is shown as one, and a long search shows its decisive step', () => {
  const table = callInCells('WORKING', 'corner', 900, 900, 2400, 1830, 930, 25);
  expect(table.find((row) => row[0] === 'turn')).toEqual([
    'turn',
    'left out: its default',
    90,
    'degrees',
    '',
  ]);
  expect(table.some((row) => String(row[0]).startsWith('Pose'))).toBe(true);
  expect(table.some((row) => String(row[0]).startsWith('Angle'))).toBe(true);
});

test('what was typed with a unit stands beside the argument, and the source names no input', () => {
  const table = callInCells('WORKING', 'PITCH', '190 mm', 240);
  expect(table.slice(1, 3)).toEqual([
    ['rise', 'as given: 190 mm', 190, 'mm', ''],
    ['going', 'as given', 240, 'mm', ''],
  ]);
});

// A guideline's own limit in kg may well be what was given.
test('no source repeats a length that was given', () => {
  const repeated = numbers.flatMap(({ id, example }) => {
    const given = (example.arguments as Given[]).map(String);
    const rows = callInCells('WORKING', id, ...(example.arguments as Given[])).slice(1);
    return rows.flatMap(([what, , , , source]) => {
      const words = String(source).split(/[,;]? /);
      return words.some((word, i) => given.includes(word) && words[i + 1] === 'mm')
        ? [`${id}: ${String(what)}`]
        : [];
    });
  });
  expect(repeated).toEqual([]);
});

test('a function may be named with its namespace, as it stands in a cell', () => {
  expect(callInCells('WORKING', 'carry.Pitch', 190, 240)).toEqual(callInCells('WORKING', 'PITCH', 190, 240));
});

test.each([
  ['HALFLANDING', [900, 100, 1000, 2100, 190, 240, 2000, 600, 25]],
  ['QUARTERLANDING', [900, 900, 2100, 190, 240, 1900, 700, 25]],
] as const)('the working of %s tells how its best family goes', (id, given) => {
  const table = callInCells('WORKING', id, ...given);
  const value = (what: RegExp) => table.find((row) => what.test(String(row[0])))?.[2];
  // By hand: 2100 cos(atan(190/240)).
  expect(value(/square to the pitch/)).toBeCloseTo(2100 / Math.hypot(1, 190 / 240), 6);
  expect(value(/how it goes round/)).toMatch(/level|tilted|upright|swung/);
  expect(value(/tilt while/)).toEqual(expect.any(Number));
  // A family is sufficient: the function never says less.
  expect(value(/held off/)).toBeLessThanOrEqual((callInCell(id, ...given) as number) + 1e-9);
});

test.each<[string, Given[], string, RegExp]>([
  [
    'a name that is nearly one of ours',
    ['CORNRE', 1],
    '#VALUE!',
    /function cannot be read from "CORNRE": allowed is CORNER, TOMM, .*CORNERLENGTH/,
  ],
  ['a name that is none of ours', ['ATTIC', 1], '#VALUE!', /read from "ATTIC": allowed is TOMM, /],
  ['a table function', ['VERDICT', 1], '#VALUE!', /function cannot be read/],
  ['no name', [null], '#N/A', /function is not measured/],
  ['too many arguments', ['PITCH', 190, 240, 1], '#VALUE!', /PITCH takes 2 arguments/],
  ['a range', ['PITCH', [[190], [200]], 240], '#VALUE!', /arguments is a range of 2 x 1/],
])('%s', (_what, given, code, message) => {
  const error = callInCell('WORKING', ...given) as HostError;
  expect(error).toBeInstanceOf(HostError);
  expect(error.code).toBe(code);
  expect(error.message).toMatch(message);
});

describe('a refusal is a row, for hosts that do not show the message of an error', () => {
  test.each<[string, string[], (string | number)[], RegExp]>([
    ['a measure missing', ['rise'], ['PITCH', 190], /^going is not measured$/],
    ['a measure out of range', [], ['PITCH', 7.5, 240], /^rise is 7\.5: allowed is /],
    // Below 4 handlers only: Manual handling guidance L23 gives no factor beyond.
    ['no answer', ['handlers', 'limit_each'], ['TEAMLIMIT', 4], /^no factor is published for a team of 4/],
  ])('%s', (_what, before, given, message) => {
    const rows = callInCells('WORKING', ...given);
    const refused = rows.at(-1)!;
    expect(refused).toEqual(['Refused', expect.stringMatching(message), '', '', '']);
    const read = rows.slice(1, -1).map(([what]) => what);
    expect(read.filter((what) => what !== 'Caution')).toEqual(before);
    const [id, ...cells] = given;
    const error = callInCell(String(id), ...cells) as HostError;
    expect(refused[1]).toBe(error.message);
  });
});

test('an error value comes through as itself', () => {
  const error = callInCell('WORKING', 'PITCH', 190, new HostError('#REF!')) as HostError;
  expect(error.code).toBe('#REF!');
});
