import type { Cell } from '../../src/core/measures/readQuantity';
import type { ArgumentDescription, FunctionDescription } from '../../src/worksheet/description';
import { hostFunction, type HostCell } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { LONGEST_MESSAGE, messageOf } from '../../src/worksheet/messages';
import { HostError } from '../support/callInCells';

// Every argument of every function in turn gets what it must not take. The rules are those of the worksheet: blank
// required -> #N/A "<argument> is not measured"; not readable or out of range -> #VALUE! that names the argument,
// shows what came and says what is allowed; an error value comes through as itself; nothing else is ever thrown.

type Given = Cell | readonly (readonly Cell[])[];

/** Calls as the host does. Anything thrown that is not the host's error fails the test. */
function call(description: FunctionDescription, given: readonly Given[]): HostCell[][] {
  const host = hostFunction(description, (code, message) => new HostError(code, message));
  const ranges = given.map((v) => (Array.isArray(v) || v === undefined ? v : [[v]]));
  const last = description.arguments.length - 1;
  const asHost = description.arguments[last]?.repeating
    ? [...ranges.slice(0, last), ranges.slice(last)]
    : ranges;
  try {
    return host(...asHost);
  } catch (error) {
    if (error instanceof HostError) return [[error]];
    throw error;
  }
}

/** Every cell is a finite number, a text, a truth value or a host error with one of the two codes of ours. */
function expectSound(table: HostCell[][], passed: readonly string[] = []): void {
  expect(table.length).toBeGreaterThan(0);
  for (const cell of table.flat()) {
    if (typeof cell === 'number') expect(Number.isFinite(cell)).toBe(true);
    else if (typeof cell === 'object') {
      expect(cell).toBeInstanceOf(HostError);
      expect(['#VALUE!', '#N/A', ...passed]).toContain(cell.code);
      expect(cell.message).not.toContain('fault of the add-in');
      // Some builds cut a message at about 255 characters (issue 4133 of office-js).
      expect(cell.message?.length ?? 0).toBeLessThan(255);
    } else expect(['string', 'boolean']).toContain(typeof cell);
  }
}

test('a message is cut at a word where it is too long to be shown', () => {
  const sentence = 'the measures contradict one another '.repeat(12);
  const { text } = messageOf({ kind: 'impossible', argument: 'route', got: 1, because: sentence });
  expect(text.length).toBeLessThanOrEqual(LONGEST_MESSAGE);
  expect(text).toMatch(/^route is 1: the measures .* (?:the|measures|contradict|one|another) …$/);
  const longest = 'x '.repeat(110);
  expect(messageOf({ kind: 'no answer', because: 'so', instead: longest }).text).toBe(`so: ${longest}`);
});

test('ranges that do not go together are named two by two, however many there are', () => {
  for (const f of FUNCTIONS.filter(({ kind }) => kind === 'number')) {
    if (f.arguments.length < 2) continue;
    const given = f.arguments.map((_, i) => Array.from({ length: 1000 + i }, (): Cell[] => [1, 2]));
    const error = onlyError(call(f, given));
    const [one, other] = f.arguments;
    expect(error.message).toContain(`: ${one!.name} 1000 x 2 and ${other!.name} 1001 x 2; `);
    expect(error.message.length).toBeLessThan(255);
  }
});

const onlyError = (table: HostCell[][]): HostError => {
  expect(table).toHaveLength(1);
  expect(table[0]).toHaveLength(1);
  expect(table[0]![0]).toBeInstanceOf(HostError);
  return table[0]![0] as HostError;
};

/** Scalar arguments of a function and their places. */
const scalars = (f: FunctionDescription): [number, ArgumentDescription][] =>
  f.arguments.flatMap((a, i) => (a.quantity === 'range' ? [] : [[i, a] as [number, ArgumentDescription]]));

/** The example's arguments with one replaced; optional ones between are left out. */
function exampleWith(f: FunctionDescription, at: number, value: Given): Given[] {
  const given = [...(f.example.arguments as readonly Given[])];
  while (given.length <= at) given.push(undefined);
  given[at] = value;
  return given;
}

/**
 * The same function with its reading alone: a landing is searched for half a second, and what a cell may hold is
 * settled before that.
 */
const readingOnly = (f: FunctionDescription): FunctionDescription =>
  f.kind === 'number' ? { ...f, compute: () => 0 } : { ...f, compute: () => ({ ok: true, value: [[0]] }) };
const SEARCHED = ['QUARTERLANDING', 'HALFLANDING'];
const quick = (f: FunctionDescription): FunctionDescription => (SEARCHED.includes(f.id) ? readingOnly(f) : f);

const PLACES = FUNCTIONS.flatMap((f) => scalars(f).map(([i, a]) => [f.id, a.name, f, i, a] as const));
const measured = PLACES.filter(([, , , , a]) => a.quantity !== 'choice' && a.quantity !== 'text');
const LENGTHS = ['length', 'mass', 'angle'];

const refusedWith = (f: FunctionDescription, i: number, a: ArgumentDescription, value: Cell): HostError => {
  const error = onlyError(call(f, exampleWith(f, i, value)));
  expect(error.code).toBe('#VALUE!');
  expect(error.message.startsWith(a.name)).toBe(true);
  expect(error.message).toMatch(/allowed is|may be|: /);
  return error;
};

test('there is something to test in every group', () => {
  expect(new Set(PLACES.map(([id]) => id)).size).toBeGreaterThan(30);
  expect(measured.length).toBeGreaterThan(100);
});

const messageIn = (cell: unknown): string => (cell instanceof HostError ? cell.message : '');

describe.each(PLACES)('%s, %s', (_id, name, described, i, a) => {
  const f = quick(described);
  test('blank', () => {
    for (const blank of [null, undefined, '', '  ']) {
      const table = call(f, exampleWith(f, i, blank));
      expectSound(table);
      if (a.optional) {
        for (const cell of table.flat()) {
          expect(messageIn(cell)).not.toBe(`${name} is not measured`);
        }
        continue;
      }
      const error = onlyError(table);
      expect([error.code, error.message]).toEqual(['#N/A', `${name} is not measured`]);
    }
  });

  test('an error value comes through as itself', () => {
    for (const code of ['#DIV/0!', '#N/A', '#REF!', '#VALUE!']) {
      const error = onlyError(call(f, exampleWith(f, i, new HostError(code, 'from elsewhere'))));
      expect([error.code, error.message]).toEqual([code, 'from elsewhere']);
    }
  });

  test('a truth value is no measure and no word', () => {
    if (a.quantity === 'text') return;
    for (const value of [true, false]) {
      expect(refusedWith(f, i, a, value).message).toContain(value ? 'TRUE' : 'FALSE');
    }
  });

  test('wrong-shaped ranges', () => {
    if (f.kind === 'table') {
      const error = onlyError(call(f, exampleWith(f, i, [[1], [2]])));
      expect(error.code).toBe('#VALUE!');
      expect(error.message).toContain(`${name} is a range of 2 x 1`);
      return;
    }
    const scalarValue = exampleWith(f, i, null)[i === 0 ? 1 : 0];
    const given = exampleWith(f, i, [[1], [2], [3]]);
    if (f.arguments.length > 1) {
      given[i === 0 ? 1 : 0] = [[scalarValue as Cell], [scalarValue as Cell]];
      const error = onlyError(call(f, given));
      expect(error.code).toBe('#N/A');
      expect(error.message).toContain(`${name} 3 x 1`);
    }
    const empty = call(f, exampleWith(f, i, []));
    expect(onlyError(empty).code).toBe('#N/A');
  });

  test('anything else gives a sound cell', () => {
    const odd: unknown[] = [
      1e308,
      -1e308,
      5e-324,
      '💥',
      "'",
      '"',
      '1/0 mm',
      '2 ft -3 in',
      '1e9 mm',
      {},
      [],
      () => 1,
    ];
    for (const value of odd) expectSound(call(f, exampleWith(f, i, [[value as Cell]])));
    // Handed over without the range about it, as a host might.
    const host = hostFunction(f, (code, message) => new HostError(code, message));
    for (const value of [NaN, 'x', null, 1e308]) {
      const given = exampleWith(f, i, value).map((v, k) => (k === i || Array.isArray(v) ? v : [[v as Cell]]));
      if (f.arguments.some((x) => x.repeating)) continue;
      let table: HostCell[][];
      try {
        table = host(...given);
      } catch (error) {
        expect(error).toBeInstanceOf(HostError);
        continue;
      }
      expectSound(table);
    }
  });
});

test.each([
  ['QUARTERLANDING', [900, 900, 2000, 190, 240, 5e-324, 1e-9, 300, '0 mm']],
  ['HALFLANDING', [100, 0, 100, 100, 1000, 50, 6000, 6000, 6000]],
  ['HALFLANDING', [20000, 20000, 20000, 20000, 50, 1000, 300, 1, 1]],
] as const)('%s of what is allowed but absurd gives a sound cell', (id, given) => {
  const f = FUNCTIONS.find((x) => x.id === id)!;
  expectSound(call(f, given));
});

describe.each(measured)('%s, %s, a measure', (_id, name, described, i, a) => {
  const f = quick(described);
  test('text without a number, an unknown unit, and no number at all are refused', () => {
    expect(refusedWith(f, i, a, 'wide').message).toContain('"wide"');
    expect(refusedWith(f, i, a, '76 furlong').message).toContain('"76 furlong"');
    expect(refusedWith(f, i, a, "2' 14").message).toContain('"2\' 14"');
    expect(refusedWith(f, i, a, '1,981 mm').message).toContain('comma');
    for (const value of [NaN, Infinity, -Infinity]) {
      expect(refusedWith(f, i, a, value).message).toContain(String(value));
    }
    if (LENGTHS.includes(a.quantity)) expect(refusedWith(f, i, a, '30').message).toContain('needs its unit');
  });

  test('0, a negative and a huge number are refused where the range says so', () => {
    const low = a.least ?? a.above;
    const high = a.most ?? a.below;
    if (low !== undefined && low >= 0) {
      const error = refusedWith(f, i, a, -7.25);
      expect(error.message).toContain('-7.25');
      expect(error.message).toContain('allowed is');
    }
    if (high !== undefined) {
      const error = refusedWith(f, i, a, 1e12);
      expect(error.message).toContain('1000000000000');
    }
    const zero = call(f, exampleWith(f, i, 0));
    expectSound(zero);
    if (!a.plainZero && a.optional?.default !== 0) {
      const error = onlyError(zero);
      expect(error.code).toBe('#VALUE!');
      expect(error.message.startsWith(`${name} is 0`)).toBe(true);
    } else {
      for (const cell of zero.flat()) {
        expect(messageIn(cell)).not.toMatch(/empty cell|to mean none/);
      }
    }
  });

  test('each end of its range is taken as it says, and a hair beyond is not', () => {
    const beside = (v: number, way: number) => v + way * Math.max(Math.abs(v), 1) * 1e-9;
    const named = (value: number): boolean =>
      call(readingOnly(f), exampleWith(f, i, value))
        .flat()
        .some(
          (cell) =>
            cell instanceof HostError &&
            cell.message.startsWith(`${name} is `) &&
            cell.message.includes('allowed is'),
        );
    if (a.least !== undefined) {
      if (a.least !== 0) expect(named(a.least)).toBe(false);
      expect(named(beside(a.least, -1))).toBe(true);
    }
    if (a.above !== undefined) expect(named(a.above)).toBe(true);
    if (a.most !== undefined) {
      expect(named(a.most)).toBe(false);
      expect(named(beside(a.most, 1))).toBe(true);
    }
    expect(a.below === undefined || named(a.below)).toBe(true);
    if (a.whole) expect(named((a.least ?? 1) + 0.5)).toBe(true);
  });
});

describe.each(PLACES.filter(([, , , , a]) => a.quantity === 'choice'))(
  '%s, %s, a word',
  (_id, _n, f, i, a) => {
    test('only its own words, in any case', () => {
      for (const bad of ['wide', "2' 6", 7, -1, 0, NaN]) {
        const error = refusedWith(f, i, a, bad);
        expect(error.message).toContain(a.choices![0]!);
      }
    });
  },
);

describe.each(
  FUNCTIONS.flatMap((f) =>
    f.arguments.flatMap((a, i) =>
      a.quantity === 'range' && !a.repeating ? [[f.id, a.name, f, i, a] as const] : [],
    ),
  ),
)('%s, %s, a range', (_id, name, f, i, a) => {
  test('nothing, one odd cell, errors and ragged ranges give sound cells', () => {
    const nothing = call(f, exampleWith(f, i, undefined));
    expectSound(nothing);
    if (!a.optional) expect(onlyError(nothing).message).toBe(`${name} is not measured`);
    const odd: Given[] = [
      [[null]],
      [[0]],
      [[NaN]],
      [['x']],
      [[true]],
      [[-1, 'x', null]],
      [[''], ['']],
      [['Step', 'Stage']],
      [
        [null, null],
        ['Step', 'Stage'],
        [1, 'door'],
      ],
      [
        ['Step', 'Stage', 'Width', 'Width'],
        [1, 'door', 1e308, -1],
        ['a', 'nonsense', "2' 6", NaN],
      ],
      [['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'], ['a'], [1, 2, 3, 4, 5, 6, 7]],
    ];
    for (const value of odd) expectSound(call(f, exampleWith(f, i, value)));
    const withError: Given = [[new HostError('#DIV/0!')]];
    expectSound(call(f, exampleWith(f, i, withError)), ['#DIV/0!']);
  });
});

// The inch is 25.4 mm exactly (international yard and pound agreement, 1959); what is ordinary is that of a route's row.
test.each<[string, Given[], string | undefined]>([
  ['OPENING', [76, 1981, 1830, 930, 25], '76 cm would be 760 mm'],
  ['OPENING', [30, 1981, 1830, 930, 25], '30 in would be 762 mm'],
  ['CORNER', [900, 900, 96, 1830, 930, 25], '96 in would be 2438.4 mm'],
  ['PITCH', [7.5, 240], '7.5 in would be 190.5 mm'],
  ['PITCH', [190, 24], '24 cm would be 240 mm'],
  ['OPENING', [760, 1981, 72, 36, 1], '72 in would be 1828.8 mm'],
  ['ROOMSPARE', [6000, 4800, 84, 1070, 1470], '84 in would be 2133.6 mm'],
  ['ROOMSPARE', [6, 4800, 2540, 1270, 1470], '6 m would be 6000 mm'],
  ['OPENING', [0.762, 1981, 1830, 930, 25], '0.762 m would be 762 mm'],
  // A height is ordinary as a height, not as a width.
  ['OPENING', [762, 78, 1830, 930, 25], 'such as 76 cm, 0.76 m, 30 in or 2\' 6"); 78 in would be 1981.2 mm'],
  ['FLIGHT', [900, 2000, 190, 240, 1830, 930, 25, 12, 90], '30 in or 2\' 6"); 90 in would be 2286 mm'],
  ['FLIGHT', [900, 2000, 190, 240, 1830, 930, 25, 12, 2300, 95], '95 cm would be 950 mm'],
  // Already said with a unit, and ordinary in none: nothing is guessed.
  ['OPENING', ['76 mm', 1981, 1830, 930, 25], undefined],
  ['OPENING', [25000, 1981, 1830, 930, 25], undefined],
])('%s of %j: the refusal names the unit that may be missing: %s', (id, given, hint) => {
  const description = FUNCTIONS.find((f) => f.id === id)!;
  const { code, message } = onlyError(call(description, given));
  expect(code).toBe('#VALUE!');
  if (hint === undefined) expect(message).not.toContain('would be');
  else expect(message).toContain(hint);
});
