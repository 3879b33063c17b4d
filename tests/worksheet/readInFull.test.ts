import type { Cell } from '../../src/core/measures/readQuantity';
import { allowedText, rangeText } from '../../src/worksheet/allowedText';
import type { ArgumentDescription } from '../../src/worksheet/description';
import { callInParts } from '../../src/worksheet/callFunction';
import { messageOf, shown } from '../../src/worksheet/messages';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { numberFunction, tableFunction } from '../../src/worksheet/namedArguments';
import { plainBounds, readArgument } from '../../src/worksheet/readArgument';
import { ratesOf, ordersOf } from '../../src/worksheet/routeInputs';
import { cutToUsed } from '../../src/worksheet/usedRows';
import { HostError, callInCell, callInCells } from '../support/callInCells';

/**
 * How an argument is read and refused, at the ends of what it allows: arguments made here, with what the worksheet contract
 * says of them worked out by hand.
 */
const argument = (more: Partial<ArgumentDescription> = {}): ArgumentDescription => ({
  name: 'it',
  help: '',
  quantity: 'length',
  ...more,
});
const reads = (more: Partial<ArgumentDescription>, cell: Cell): unknown => {
  const outcome = readArgument(argument(more), cell);
  return outcome.ok ? outcome.value : outcome.problem.kind;
};
const message = (value: unknown): string => (value instanceof HostError ? value.message : String(value));

describe('what is allowed', () => {
  test.each<[Partial<ArgumentDescription>, string]>([
    [{ least: 100, most: 2000 }, '100 to 2000 mm'],
    [{ above: 0, most: 2000 }, 'more than 0 and at most 2000 mm'],
    [{ least: 5, below: 90 }, 'at least 5 and less than 90 mm'],
    [{ above: 0, below: 90 }, 'more than 0 and less than 90 mm'],
    [{ least: 100 }, '100 or more mm'],
    [{ above: 100 }, 'more than 100 mm'],
    [{ most: 100 }, 'at most 100 mm'],
    [{ below: 100 }, 'less than 100 mm'],
    [{}, ''],
    [{ quantity: 'count', whole: true }, 'whole numbers'],
    [{ quantity: 'count', whole: true, least: 1, most: 12 }, 'whole numbers, 1 to 12'],
    [{ quantity: 'count', whole: true, least: 1 }, 'whole numbers, 1 or more'],
    [{ quantity: 'count', whole: true, most: 9 }, 'whole numbers, at most 9'],
    [{ quantity: 'percent', least: 0, most: 25 }, '0 to 25 %'],
  ])('%j: %s', (more, text) => {
    expect(rangeText(argument(more))).toBe(text);
  });
  test('with the forms that a cell may take, or these alone', () => {
    expect(allowedText(argument({ quantity: 'count', least: 1, most: 3 }))).toBe('1 to 3 (a plain number)');
    expect(allowedText(argument({ quantity: 'count' }))).toBe('a plain number');
  });
  test('of many words as many as 120 characters hold, and one at least', () => {
    const choices = (...words: string[]): string =>
      allowedText(argument({ quantity: 'choice', choices: words }));
    expect(choices('up', 'down')).toBe('up, down');
    // Two words and what parts them: 59 + 2 + 59 are 120.
    const [one, other] = ['a'.repeat(59), 'b'.repeat(59)];
    expect(choices(one, other)).toBe(`${one}, ${other}`);
    expect(choices(one, `${other}b`)).toBe(`${one} and 1 more, listed in the help`);
    expect(choices(one, other, 'c')).toBe(`${one}, ${other} and 1 more, listed in the help`);
    expect(choices('d'.repeat(130), 'c')).toBe(`${'d'.repeat(130)} and 1 more, listed in the help`);
  });
});

describe('a number', () => {
  test.each<[Partial<ArgumentDescription>, Cell, unknown]>([
    [{ least: 100, most: 2000 }, 100, 100],
    [{ least: 100, most: 2000 }, 99.999, 'out of range'],
    [{ least: 100, most: 2000 }, 2000, 2000],
    [{ least: 100, most: 2000 }, 2000.001, 'out of range'],
    [{ above: 100, below: 2000 }, 100, 'out of range'],
    [{ above: 100, below: 2000 }, 100.001, 100.001],
    [{ above: 100, below: 2000 }, 2000, 'out of range'],
    [{ above: 100, below: 2000 }, 1999.999, 1999.999],
    [{ quantity: 'count', whole: true }, 3, 3],
    [{ quantity: 'count', whole: true }, 3.5, 'out of range'],
    [{ optional: { default: null } }, null, undefined],
    [{ optional: { default: 7 } }, '', 7],
    [{}, '  ', 'not measured'],
    [{ least: 0 }, 0, 'out of range'],
    [{ least: 0, plainZero: true }, 0, 0],
    [{ least: 0, optional: { default: 0 } }, 0, 0],
    [{ least: 0, optional: { default: 5 } }, 0, 'out of range'],
    [{ least: 0, optional: { default: 5 } }, '0 mm', 0],
  ])('%j of %p', (more, cell, read) => {
    expect(reads(more, cell)).toBe(read);
  });

  test('of 0 it is said how to write none, where there may be none', () => {
    const hint = (more: Partial<ArgumentDescription>): unknown => {
      const outcome = readArgument(argument(more), 0);
      return outcome.ok ? 'taken' : { ...outcome.problem }.kind === 'out of range' && outcome.problem;
    };
    const none = { least: 0, most: 40, optional: { default: 5 } };
    expect(hint(none)).toMatchObject({ hint: 'write "0 mm" to mean none' });
    expect(hint({ ...none, least: 1 })).toMatchObject({ hint: '0 may be an empty cell' });
    expect(hint({ least: 0, most: 40 })).toMatchObject({ hint: '0 may be an empty cell' });
    expect(hint({ ...none, quantity: 'mass' })).toMatchObject({ hint: '0 may be an empty cell' });
  });

  test('the units that would make it ordinary are named for a length, by what is usual or else allowed', () => {
    const hint = (more: Partial<ArgumentDescription>, cell: Cell): string | undefined => {
      const outcome = readArgument(argument(more), cell);
      if (outcome.ok || outcome.problem.kind !== 'out of range') return 'taken';
      return outcome.problem.hint;
    };
    expect(hint({ least: 100, most: 2000 }, 76)).toBe('76 cm would be 760 mm; 76 in would be 1930.4 mm');
    expect(hint({ least: 100, most: 2000, usual: { least: 560, most: 1800 } }, 76)).toBe(
      '76 cm would be 760 mm',
    );
    expect(hint({ least: 100 }, 76)).toBeUndefined();
    expect(hint({ least: 0, below: 5 }, 76)).toBeUndefined();
    expect(hint({ quantity: 'mass', least: 100, most: 2000 }, 76)).toBeUndefined();
    expect(hint({ least: 100, most: 2000, beyond: 'use FLIGHT' }, 3000)).toBe('use FLIGHT');
    expect(hint({ least: 100, most: 2000, beyond: 'use FLIGHT' }, 1)).toBe(
      '1 m would be 1000 mm; 1 ft would be 304.8 mm; use FLIGHT',
    );
  });

  test('the short way takes no number that a look would refuse, and hardly any less', () => {
    for (const more of [
      { least: 100, most: 2000 },
      { above: 100, below: 2000 },
      { above: 0, below: 1 },
      { above: -5, below: -1 },
      { above: 3 },
      { below: 3 },
      { least: 3 },
      {},
    ] as const) {
      const { low, high } = plainBounds(argument(more));
      expect([more, reads(more, low), reads(more, high)]).toEqual([more, low, high]);
      const [least, most] = [
        'least' in more ? more.least : 'above' in more ? more.above : -Number.MAX_VALUE,
        'most' in more ? more.most : 'below' in more ? more.below : Number.MAX_VALUE,
      ];
      expect(Math.abs(low - least)).toBeLessThanOrEqual(1e-15 * Math.abs(least) + 1e-300);
      expect(Math.abs(high - most)).toBeLessThanOrEqual(1e-15 * Math.abs(most) + 1e-300);
      if ('above' in more) expect(low).toBeGreaterThan(more.above);
      if ('below' in more) expect(high).toBeLessThan(more.below);
    }
    for (const quantity of ['choice', 'text', 'range'] as const) {
      const { low, high } = plainBounds(argument({ quantity }));
      expect([quantity, low > high]).toEqual([quantity, true]);
    }
    const { low, high } = plainBounds(argument({ quantity: 'count', whole: true }));
    expect(low > high).toBe(true);
  });
});

test('a word: in any case, with what may stand before it, and near misses first', () => {
  const grip = { quantity: 'choice', choices: ['good', 'fair', 'poor'], prefix: 'CARRY.' } as const;
  expect(reads(grip, ' Fair ')).toBe('fair');
  expect(reads(grip, 'carry.POOR')).toBe('poor');
  const refusal = (cell: Cell) => {
    const outcome = readArgument(argument(grip), cell);
    return outcome.ok ? undefined : outcome.problem;
  };
  expect(refusal('poorr')).toMatchObject({ kind: 'not readable', allowed: 'poor, good, fair' });
  expect(refusal('x')).toMatchObject({ allowed: 'good, fair, poor' });
  expect(refusal(0)).toMatchObject({ got: 0, why: 'blank' });
  expect(Object.keys(refusal(1) ?? {})).not.toContain('why');
  expect(reads({ quantity: 'text' }, 'as it stands')).toBe('as it stands');
});

describe('what a value is called in a message', () => {
  test.each<[unknown, string]>([
    ['x'.repeat(40), `"${'x'.repeat(40)}"`],
    ['x'.repeat(41), `"${'x'.repeat(40)}…"`],
    [true, 'TRUE'],
    [false, 'FALSE'],
    [null, 'nothing'],
    [undefined, 'nothing'],
    [12.5, '12.5'],
    [{}, 'something that is no number'],
  ])('%p', (value, text) => {
    expect(shown(value)).toBe(text);
  });
});

describe('a call', () => {
  const makeError = (code: string, text?: string): HostError => new HostError(code, text);
  const run = (parts: Generator<unknown, unknown>): { pauses: number; result: unknown } => {
    let pauses = 0;
    for (;;) {
      const { done, value } = parts.next();
      if (done) return { pauses, result: value };
      pauses++;
    }
  };
  const base = { group: 'Room', summary: '', source: '', validity: '' } as const;
  const sum = numberFunction({
    ...base,
    id: 'SUM2',
    arguments: [
      { name: 'one', help: '', quantity: 'count' },
      { name: 'other', help: '', quantity: 'count', optional: { default: 0 } },
    ],
    result: { meaning: '', unit: '' },
    example: { arguments: [1, 2], result: 3, within: 0, source: '' },
    compute: ({ one, other }: { one: number; other: number }) => (one === 13 ? NaN : one + other),
  } as never);
  const called = (...values: unknown[]): unknown =>
    run(callInParts(sum, makeError)(values as never) as never).result;

  test('of single cells, however they are handed over, and of ranges', () => {
    expect(called(1, 2)).toEqual([[3]]);
    expect(called([[1]], 2)).toEqual([[3]]);
    expect(called(1, [[2]])).toEqual([[3]]);
    expect(called([[1, 2]], 2)).toEqual([[3, 4]]);
    expect(called([[1], [2]], 2)).toEqual([[3], [4]]);
    expect(called([[1], [2]], [[10, 20]])).toEqual([
      [11, 21],
      [12, 22],
    ]);
    expect(called(2, [[1, 2]])).toEqual([[3, 4]]);
    expect(called(2, [[1], [2]])).toEqual([[3], [4]]);
  });
  test('a range without a cell is named, before ranges that do not go together', () => {
    const words = (...values: unknown[]): string => message((called(...values) as unknown[][])[0]?.[0]);
    expect(words([], 1)).toMatch(/^one is a range without a cell/);
    expect(words([[]], 1)).toMatch(/^one is a range without a cell/);
    expect(words([[1], [2]], [[]])).toMatch(/^other is a range without a cell/);
    expect(words([[1], [2]], [[1], [2], [3]])).toMatch(
      /^the ranges do not go together: one 2 x 1 and other 3 x 1/,
    );
  });
  test('over a long range pauses now and then, and of single cells never', () => {
    const parts = (...values: unknown[]) => run(callInParts(sum, makeError)(values as never) as never);
    expect(parts(1, 2).pauses).toBe(0);
    const long = parts(
      Array.from({ length: 50_000 }, (_, n) => [n]),
      2,
    );
    expect(long.pauses).toBeGreaterThan(1);
    expect(long.pauses).toBeLessThan(10_000);
    expect((long.result as unknown[]).length).toBe(50_000);
    expect((long.result as unknown[][])[49_999]).toEqual([50_001]);
  });
  test('a figure that is none is told as a fault, each in its own cell', () => {
    expect(called([[12], [13]], 1)).toEqual([[13], [expect.any(HostError)]]);
  });
  test('an error of a single cell is thrown as it came, of a range it stays where it is', () => {
    const error = new HostError('#REF!');
    expect(callInCells('PITCH', error, 200)).toEqual([[error]]);
    expect(called([[error], [1]], 1)).toEqual([[expect.objectContaining({ code: '#REF!' })], [2]]);
    expect(called([[1], [2]], error)).toEqual([
      [expect.objectContaining({ code: '#REF!' })],
      [expect.objectContaining({ code: '#REF!' })],
    ]);
  });

  const echo = (rows: number, text = 'x') =>
    tableFunction({
      ...base,
      id: 'ECHO',
      arguments: [{ name: 'some', help: '', quantity: 'range', repeating: true }],
      result: { meaning: '', unit: '' },
      example: { arguments: [], result: [[1]], within: 0, source: '' },
      compute: () => ({ ok: true, value: Array.from({ length: rows }, () => [text]) }),
    } as never);
  const echoed = (rows: number, text?: string, given: unknown[] = []): unknown[][] =>
    run(callInParts(echo(rows, text), makeError)([given] as never) as never).result as unknown[][];
  test('a result has 100,000 rows at the most', () => {
    expect(echoed(100_000)).toHaveLength(100_000);
    expect(message(echoed(100_001)[0]?.[0])).toMatch(
      /^the result would be 100001 rows long: allowed is 100000/,
    );
  });
  test('a text has 32,767 characters at the most, the last of which says that there are more', () => {
    const long = 'y'.repeat(32_767);
    expect(echoed(1, long)).toEqual([[long]]);
    expect(echoed(1, `${long}y`)).toEqual([[`${'y'.repeat(32_766)}…`]]);
  });
  test('a repeating argument takes single cells, and none of these an error', () => {
    expect(echoed(1, 'x', [1, [[2]]])).toEqual([['x']]);
    for (const many of [[[1, 2]], [[1], [2]], []])
      expect([many, message(echoed(1, 'x', [1, many])[0]?.[0])]).toEqual([
        many,
        expect.stringMatching(/^some is a range of \d x \d: allowed is a single cell$/),
      ]);
    expect(echoed(1, 'x', [1, new HostError('#NAME?')])).toEqual([
      [expect.objectContaining({ code: '#NAME?' })],
    ]);
  });
});

describe('whole columns', () => {
  const column = (rows: number, filled: number, empty: Cell): Cell[][] =>
    Array.from({ length: rows }, (_, row) => [row < filled ? 1 : empty]);
  test('are cut to the last row in use, to one at least; shorter ranges keep their shape', () => {
    const cut = (...ranges: Cell[][][]): number[] => cutToUsed(ranges).map((range) => range.length);
    expect(cut(column(100_001, 12, null))).toEqual([12]);
    expect(cut(column(100_001, 0, ''))).toEqual([1]);
    expect(cut(column(100_000, 12, null))).toEqual([100_000]);
    expect(cut(column(100_001, 12, null), column(100_001, 20, ''))).toEqual([20, 20]);
    expect(cut(column(100_001, 12, null), column(1, 1, null))).toEqual([12, 1]);
    expect(cut(column(100_001, 12, null), column(40, 3, null))).toEqual([40, 40]);
    // A 0 below the end of a whole column is an empty cell, anywhere else it is a figure.
    expect(cut(column(100_001, 12, 0))).toEqual([100_001]);
  });
});

describe('orders and rates', () => {
  const orders = (table: Cell[][]): unknown => {
    const outcome = ordersOf(table);
    return outcome.ok ? outcome.value : outcome.problem;
  };
  test('by their headings in either order, or as they stand', () => {
    const one = [{ survey: 'A', build: 'B' }];
    expect(
      orders([
        ['Survey', 'Build'],
        ['A', 'B'],
      ]),
    ).toEqual(one);
    expect(
      orders([
        ['Build', 'Survey'],
        ['B', 'A'],
      ]),
    ).toEqual(one);
    expect(orders([['A', 'B']])).toEqual(one);
    expect(
      orders([
        ['A', 'B', 'x'],
        ['', '', 'y'],
        [0, 0, 0],
      ]),
    ).toEqual(one);
    expect(orders([['A']])).toMatchObject({
      got: '1 column',
      because: 'it has two columns, Survey and Build',
    });
  });
  const rates = (table: Cell[][]): unknown => {
    const outcome = ratesOf(table);
    return outcome.ok ? outcome.value : outcome.problem;
  };
  test('a rate without a name is left out, and none has less than 0 minutes', () => {
    const plain = rates([]);
    expect(
      rates([
        ['', 5],
        [0, 6],
      ]),
    ).toEqual(plain);
    expect(
      rates([
        ['What', 'Minutes'],
        ['', ''],
      ]),
    ).toEqual(plain);
    expect(rates([['nothing', 5]])).toMatchObject({ got: 'nothing' });
    expect(rates([['Set-up of A', -1]])).toMatchObject({ got: -1 });
    expect(rates([['Set-up of A', 0]])).toMatchObject({ got: 0 });
    expect(rates([['set-up of Long One', '0 min']])).toMatchObject({ setUpOf: new Map([['long one', 0]]) });
  });
});

test('a stair lower than the piece is thin is none, one as low as that may be', () => {
  const flight = (headroom: number): unknown => callInCell('FLIGHT', 900, headroom, 190, 240, 1830, 930, 200);
  expect(message(flight(199))).toContain("less than the piece's least size, 200 mm");
  expect(typeof flight(200)).toBe('number');
});

test('a rise and a going from 50 to 1000, no more and no less', () => {
  for (const [rise, going, taken] of [
    [50, 1000, true],
    [1000, 50, true],
    [49, 200, false],
    [1001, 200, false],
    [200, 49, false],
    [200, 1001, false],
  ] as const)
    expect([rise, going, typeof callInCell('PITCH', rise, going) === 'number']).toEqual([rise, going, taken]);
});

test('a message is cut between two words where a host may cut it, and says so', () => {
  const text = messageOf({ kind: 'impossible', argument: 'it', got: 1, because: 'word '.repeat(80) }).text;
  expect(text.length).toBeLessThanOrEqual(250);
  expect(text.length).toBeGreaterThan(240);
  expect(text).toMatch(/^it is 1: (word )+…$/);
  // 'it is 1: ' is 9 characters long.
  const whole = 'x'.repeat(241);
  expect(messageOf({ kind: 'impossible', argument: 'it', got: 1, because: whole }).text).toBe(
    `it is 1: ${whole}`,
  );
  expect(messageOf({ kind: 'impossible', argument: 'it', got: 1, because: `${whole}x` }).text).toBe(
    'it is 1: …',
  );
});

describe('what a table function takes', () => {
  const ROUTE: Cell[][] = [
    ['Step', 'Stage', 'Width', 'Height'],
    [1, 'door', 760, 1980],
    [2, 'door', 800, 1980],
  ];
  const figure = (...more: Cell[]): unknown => callInCells('STAGES', ROUTE, 1830, 930, 25, ...more);
  const refusal = (table: Cell[][]): string => message(callInCells('STAGES', table, 1830, 930, 25)[0]?.[0]);

  test('an allowance of 0 to 200, 25 where none is given, and a tape of 0 to 40, 5 where none is given', () => {
    // 760 thick, and no way to stand narrower: 760 + 2 x 25 + 2 x 5, with no tape 760 + 50.
    const wide = (width: number, ...more: Cell[]): unknown =>
      callInCells(
        'STAGES',
        [
          ['Step', 'Stage', 'Width', 'Height'],
          [1, 'door', width, 1980],
          [2, 'door', 1200, 1980],
        ],
        800,
        780,
        760,
        ...more,
      )[1]?.[2];
    expect([wide(819), wide(820)]).toEqual(['tight', 'goes']);
    expect([wide(809, 25, '0 mm'), wide(810, 25, '0 mm')]).toEqual(['tight', 'goes']);
    expect([wide(821, 26), wide(822, 26)]).toEqual(['tight', 'goes']);
    expect(message(callInCells('STAGES', ROUTE, 1830, 930, 25, 201)[0]?.[0])).toMatch(
      /^allowance is 201: allowed is 0 to 200 mm/,
    );
    expect(message(callInCells('STAGES', ROUTE, 1830, 930, 25, 25, 41)[0]?.[0])).toMatch(
      /^tape is 41: allowed is 0 to 40 mm/,
    );
    expect(figure(200, 40)).toHaveLength(4);
  });
  test('a route that is there, with rows, with its columns, and of one survey', () => {
    expect(message(callInCells('STAGES', undefined, 1830, 930, 25)[0]?.[0])).toBe('route is not measured');
    expect(refusal([['Step', 'Stage', 'Width', 'Height']])).toContain('there are no rows below the headers');
    expect(
      refusal([
        ['Step', 'Stge', 'Width'],
        [1, 'door', 700],
      ]),
    ).toContain('"Stge" may be meant');
    expect(
      refusal([
        ['Survey', 'Step', 'Stage'],
        ['A', 1, 'door'],
        ['B', 1, 'door'],
      ]),
    ).toContain('it holds more than one survey');
    expect(
      refusal([
        ['Survey', 'Step', 'Stage'],
        ['A', 1, 'door'],
        ['', 2, 'door'],
      ]),
    ).toContain('one without a name');
  });
  test('a piece with what is wrong with its size, and with that alone', () => {
    const pieces = (...sizes: Cell[]): string =>
      String(
        callInCells('VERDICT', ROUTE, [
          ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
          ['A', 'slate', ...sizes],
        ])[1]?.at(-1) ?? '',
      );
    const reason = (...sizes: Cell[]): string =>
      callInCells('VERDICT', ROUTE, [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['A', 'slate', ...sizes],
      ])[1]
        ?.map(String)
        .join(' | ') ?? '';
    expect(reason('', 930, 25, 121, 1)).toContain('the piece slate: Length is not given');
    expect(reason(1830, '', 25, 121, 1)).toContain('the piece slate: Breadth is not given');
    expect(reason(1830, 930, 'thin', 121, 1)).toContain('the piece slate: Thickness cannot be taken');
    // What is wrong with its mass or its count hides no size.
    expect(reason(1830, 930, 25, 'heavy', 1)).toContain('goes');
    expect(reason(1830, '', 25, 'heavy', 'many')).toContain('Breadth is not given');
    expect(pieces(1830, 930, 25, 121, 1)).not.toContain('not given');
  });
  test('one cell for each size, and none of them an error', () => {
    const ranges: readonly (readonly [Cell[][], string])[] = [
      [[[1830, 900]], '1 x 2'],
      [[[1830], [900]], '2 x 1'],
    ];
    for (const [many, shape] of ranges)
      expect(message(callInCells('STAGES', ROUTE, many, 930, 25)[0]?.[0])).toBe(
        `length is a range of ${shape}: allowed is a single cell`,
      );
    expect(callInCells('STAGES', ROUTE, new HostError('#NUM!'), 930, 25)).toMatchObject([
      [{ code: '#NUM!' }],
    ]);
    expect(message(callInCells('STAGES', ROUTE, 'long', 930, 25)[0]?.[0])).toMatch(
      /^length cannot be read from "long"/,
    );
  });
  test('an error in place of a table, and in a cell of it', () => {
    const makeError = (code: string, text?: string): HostError => new HostError(code, text);
    const stages = FUNCTIONS.find(({ id }) => id === 'STAGES');
    if (!stages) throw new Error('no STAGES');
    const called = (route: unknown): unknown[][] => {
      const parts = callInParts(stages, makeError)([route, 1830, 930, 25] as never);
      for (;;) {
        const { done, value } = parts.next();
        if (done) return value;
      }
    };
    expect(called(new HostError('#REF!'))).toMatchObject([[{ code: '#REF!' }]]);
    expect(called(undefined)).toMatchObject([[{ code: '#N/A', message: 'route is not measured' }]]);
    const withCell = (cell: unknown): string =>
      called([ROUTE[0], [1, 'door', cell, 1980], ROUTE[2]])[1]
        ?.map(String)
        .join(' | ') ?? '';
    expect(withCell(new HostError('#REF!'))).toContain('#REF!');
    // A data type of the host's own is no figure: an error in its cell.
    expect(withCell({ type: 'Entity', text: '760' })).toContain('#VALUE!');
    for (const blank of [null, undefined, '']) expect(withCell(blank)).toContain('Width is not measured');
    expect(withCell(760)).toContain('| goes |');
    expect(withCell(true)).toContain('TRUE');
  });
  test('a rate that is named, and no other', () => {
    const table = (name: string): unknown => {
      const outcome = ratesOf([[name, 17]]);
      return outcome.ok ? outcome.value : undefined;
    };
    const plain = table('Set-up of A') as { minutes: Record<string, number> };
    const names = Object.keys(plain.minutes);
    expect(names.length).toBeGreaterThan(2);
    for (const name of names) {
      expect(plain.minutes[name]).not.toBe(17);
      expect(table(name.toUpperCase())).toEqual({
        minutes: { ...plain.minutes, [name]: 17 },
        setUpOf: new Map(),
      });
    }
  });
  test('orders by words in their heads only where both are there', () => {
    const outcome = ordersOf([
      ['Survey', 'A'],
      ['B', 'C'],
    ]);
    expect(outcome.ok && outcome.value).toEqual([
      { survey: 'Survey', build: 'A' },
      { survey: 'B', build: 'C' },
    ]);
    const odd = ordersOf([
      [new HostError('#N/A'), undefined],
      [7, 'C'],
    ] as Cell[][]);
    expect(odd.ok && odd.value).toEqual([{ survey: '7', build: 'C' }]);
  });
  test('orders of which one half is empty', () => {
    const outcome = ordersOf([
      ['A', ''],
      ['', 'B'],
      ['', ''],
    ]);
    expect(outcome.ok && outcome.value).toEqual([
      { survey: 'A', build: '' },
      { survey: '', build: 'B' },
    ]);
  });
});
