import fc from 'fast-check';
import type { Cell } from '../../../src/core/measures/readQuantity';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import { readHeaders } from '../../../src/core/survey/table/readHeaders';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { stepCalled, stepsCalled } from '../../../src/core/survey/table/stageRow';
import { surveyTable } from '../../support/surveyTable';
import { visitsOf } from '../../support/visits';

const HOUSE = surveyTable([
  { Survey: 'Mill House', Step: 1, Stage: 'door', Width: 762, Height: 1981 },
  {
    Survey: 'Mill House',
    Step: 2,
    Stage: 'corner',
    Width: 914.4,
    'Width out': 1016,
    Height: 2438.4,
    Turn: 90,
  },
  {
    Survey: 'Quay 4',
    Step: 1,
    Stage: 'lift',
    Width: 800,
    Height: 2100,
    'Width out': 1100,
    Depth: 1400,
    Ceiling: 2200,
    'Rated load': 630,
  },
  {
    Survey: 'Mill House',
    Step: 3,
    Stage: 'flight',
    Width: 838.2,
    Height: 2032,
    Rise: 190.5,
    Going: 254,
    Risers: 13,
  },
  { Survey: 'Mill House', Step: 4, Stage: 'room', Length: 6096, Width: 4572, Height: 2438.4 },
]);

const shuffledColumns = (table: Cell[][], order: readonly number[]): Cell[][] =>
  table.map((row) => order.map((i) => row[i]));

/** The same measure as people write it. */
const TEXT_FORMS: readonly ((mm: number) => string)[] = [
  (mm) => `${mm} mm`,
  (mm) => `${mm / 10} cm`,
  (mm) => ` ${mm / 1000} m`,
  (mm) => `${mm / 25.4} in`,
  (mm) => `${mm / 25.4}"`,
];
const LENGTH_HEADERS = ['Width', 'Width out', 'Height', 'Depth', 'Ceiling', 'Length', 'Rise', 'Going'];

const measuresOf = (table: Cell[][]) => readRoute(table).rows.map(({ measures }) => measures);

test('columns in any order, case and spacing, and others besides, give the same rows', () => {
  const plain = readRoute(HOUSE);
  const width = HOUSE[0]!.length;
  fc.assert(
    fc.property(
      fc.shuffledSubarray([...Array(width).keys()], { minLength: width }),
      fc.array(fc.constantFrom('upper', 'lower', 'spaced', 'plain'), { minLength: width, maxLength: width }),
      (order, styles) => {
        const table = shuffledColumns(HOUSE, order).map((row) => [...row, 'photo 3']);
        table[0] = table[0]!.map((header, i) => {
          const text = String(header);
          if (styles[i] === 'upper') return text.toUpperCase();
          if (styles[i] === 'lower') return text.toLowerCase();
          return styles[i] === 'spaced' ? `  ${text.replace(' ', '   ')} ` : text;
        });
        table[0][width] = 'Photographs';
        const read = readRoute(table);
        expect(read.rows).toEqual(plain.rows);
        expect(read.surveys).toEqual(plain.surveys);
        expect(read.problems).toEqual([]);
      },
    ),
    { seed: 7, numRuns: 200 },
  );
});

test('measures written as text read as the numbers do', () => {
  const expected = measuresOf(HOUSE);
  const lengthColumns = LENGTH_HEADERS.map((header) => HOUSE[0]!.indexOf(header)).filter((i) => i >= 0);
  fc.assert(
    fc.property(fc.array(fc.nat(), { minLength: 60, maxLength: 60 }), (picks) => {
      let next = 0;
      const table = HOUSE.map((row, r) =>
        row.map((cell, c) => {
          if (r === 0 || typeof cell !== 'number' || !lengthColumns.includes(c)) return cell;
          return TEXT_FORMS[picks[next++ % 60]! % TEXT_FORMS.length]!(cell);
        }),
      );
      const read = measuresOf(table);
      expected.forEach((measures, i) => {
        expect(Object.keys(read[i]!)).toEqual(Object.keys(measures));
        for (const [name, value] of Object.entries(measures)) {
          expect(read[i]![name as 'width']).toBeCloseTo(value, 6);
        }
      });
    }),
    { seed: 11, numRuns: 200 },
  );
});

test('turn, rated load and risers have units of their own', () => {
  const row = (extra: Record<string, Cell>) => readRoute(surveyTable([{ Step: 1, ...extra }])).rows[0]!;
  expect(row({ Stage: 'corner', Turn: '45 deg' }).measures.turn).toBe(45);
  expect(row({ Stage: 'lift', 'Rated load': '1000 lb' }).measures.ratedLoad).toBeCloseTo(453.59237, 9);
  expect(row({ Stage: 'flight', Risers: 13 }).measures.risers).toBe(13);
  expect(row({ Stage: 'flight', Risers: 12.5 }).refused[0]).toMatchObject({ measure: 'risers', got: 12.5 });
});

test('other headings are understood at their own stages only', () => {
  const table = surveyTable([
    {
      Step: 1,
      Stage: 'side door',
      Width: 800,
      Height: 2000,
      Wall: 100,
      Passage: 1200,
      Ceiling: 2400,
      'Dead end': 300,
    },
    { Step: 2, Stage: 'flight', Width: 900, Headroom: 2000, Rise: 190, Going: 240 },
    { Step: 3, Stage: 'lift', Width: 800, Height: 2100, 'Car width': 1100, 'Car depth': 1400, Ceiling: 2200 },
    { Step: 4, Stage: 'door', Width: 800, Headroom: 2000 },
  ]);
  const measures = measuresOf(table);
  expect(measures[0]).toMatchObject({ widthOut: 1200, depth: 300 });
  expect(measures[1]).toMatchObject({ height: 2000 });
  expect(measures[2]).toMatchObject({ widthOut: 1100, depth: 1400 });
  expect(measures[3]!.height).toBeUndefined();
  const kinds = checkRoute(table)
    .filter((p) => p.rowIndex === 3)
    .map((p) => p.kind);
  expect(kinds).toEqual(expect.arrayContaining(['not measured', 'column of another stage']));
});

test('two columns for one measure must agree where both are filled in', () => {
  const read = (height: Cell, headroom: Cell) =>
    readRoute(surveyTable([{ Step: 1, Stage: 'flight', Height: height, Headroom: headroom }])).rows[0]!;
  expect(read(2000, '2 m').measures.height).toBe(2000);
  expect(read(null, 2000).measures.height).toBe(2000);
  expect(read(0, 2000).measures.height).toBe(2000);
  expect(read(2000, 0).measures.height).toBe(2000);
  expect(read(2000, 1900).measures.height).toBeUndefined();
  expect(read(2000, 1900).refused).toMatchObject([{ measure: 'height', got: 1900 }]);
  expect(read(0, 0).refused).toMatchObject([{ measure: 'height', got: 0 }]);
});

describe('header problems', () => {
  const kinds = (headers: Cell[]) => readHeaders(headers).problems;

  test('a missing column is named, with the header that may be meant', () => {
    expect(kinds(['Step'])).toMatchObject([{ kind: 'column missing', column: 'Stage' }]);
    expect(kinds(['Step', 'Stge'])).toMatchObject([
      { kind: 'column missing', column: 'Stage', near: 'Stge' },
    ]);
    const [problem] = readRoute([
      ['Step', 'Stage', 'Width (mm)', 'Height'],
      [1, 'door', 800, 2000],
    ]).problems;
    expect(problem).toMatchObject({ kind: 'column missing', column: 'Width', near: 'Width (mm)' });
  });

  test('a measure is missing only when a stage of the table needs it', () => {
    const missing = (stage: string) =>
      readRoute([
        ['Step', 'Stage', 'Width', 'Height'],
        [1, stage, 800, 2000],
      ]).problems.map((p) => (p.kind === 'column missing' ? p.column : p.kind));
    expect(missing('door')).toEqual([]);
    expect(missing('corner')).toEqual(['Width out']);
    expect(missing('flight')).toEqual(['Rise', 'Going']);
  });

  test('a doubled column is named', () => {
    expect(kinds(['Step', 'Stage', 'width', 'Width '])).toMatchObject([
      { kind: 'column doubled', column: 'Width', times: 2 },
    ]);
  });

  test('a table without rows says so', () => {
    expect(readRoute([['Step', 'Stage']]).problems.map((p) => p.kind)).toContain('no rows');
    expect(readRoute([]).problems.map((p) => p.kind)).toContain('no rows');
    expect(
      readRoute([
        ['Step', 'Stage'],
        [null, ''],
        [0, 0],
      ]).problems.map((p) => p.kind),
    ).toContain('no rows');
  });
});

test('rows of a survey may stand anywhere; surveys keep the order in which they first appear', () => {
  const table: Cell[][] = [
    ['Survey', 'Step', 'Stage'],
    ['b', 2, 'room'],
    ['', '', ''],
    ['a', 1, 'door'],
    ['B ', 1, 'door'],
    [0, 0, 0],
    ['a', '2', 'room'],
  ];
  const { surveys, rows } = readRoute(table);
  expect(surveys.map((s) => s.name)).toEqual(['b', 'a']);
  expect(surveys.map((s) => s.rows.map((r) => [r.step, r.rowIndex]))).toEqual([
    [
      [1, 3],
      [2, 0],
    ],
    [
      [1, 2],
      [2, 5],
    ],
  ]);
  expect(rows.map((r) => r.rowIndex)).toEqual([0, 2, 3, 5]);
});

test('where a step has no number the rows stay as they stand', () => {
  const { surveys } = readRoute([
    ['Step', 'Stage'],
    [3, 'room'],
    ['?', 'door'],
    [1, 'door'],
  ]);
  expect(surveys[0]!.rows.map((r) => r.rowIndex)).toEqual([0, 1, 2]);
  expect(surveys[0]!.name).toBe('');
});

describe('a bare 0 may be an empty cell', () => {
  const row = (cells: Record<string, Cell>) => readRoute(surveyTable([{ Step: 1, ...cells }])).rows[0]!;

  test('refused where the stage needs the measure', () => {
    expect(row({ Stage: 'door', Width: 0, Height: 2000 }).refused).toMatchObject([
      { measure: 'width', got: 0 },
    ]);
  });
  test.each<Record<string, Cell>>([
    { Stage: 'flight', 'Foot ceiling': 0, Risers: 0, Length: 0, 'Foot space': 0 },
    { Stage: 'side door', 'Dead end': 0 },
    { Stage: 'corner', Run: 0, Turn: 0 },
    { Stage: 'door', Wall: 0 },
    { Stage: 'quarter landing', 'Over rail': 0 },
  ])('not taken, as an empty cell is not, where the stage does without: %p', (cells) => {
    const { measures, refused } = row(cells);
    expect(measures).toEqual({});
    expect(refused).toEqual([]);
  });
  test('a half landing without a well has a plain 0 there', () => {
    expect(row({ Stage: 'half landing', Well: 0 }).measures).toEqual({ well: 0 });
  });
  test('none where it is written with its unit', () => {
    expect(row({ Stage: 'side door', Wall: 0 }).refused).toMatchObject([
      { measure: 'wall', why: '0 may be an empty cell; write "0 mm" if there is none' },
    ]);
    expect(row({ Stage: 'side door', Wall: '0 mm' }).measures).toEqual({ wall: 0 });
    expect(row({ Stage: 'side door', 'Dead end': '0 mm' }).measures.depth).toBe(0);
    expect(row({ Stage: 'corner', Run: '0 mm' }).measures.run).toBe(0);
  });
});

test('an error of the host is refused in its own place and leaves the other cells alone', () => {
  const { rows } = readRoute([
    ['Survey', 'Step', 'Stage', 'Width', 'Height'],
    ['a', 1, 'door', { code: '#DIV/0!' }, 2000],
    ['a', { code: '#N/A' }, 'door', 800, 2000],
    ['a', 3, { code: '#REF!' }, 800, 2000],
  ]);
  expect(rows[0]).toMatchObject({
    measures: { height: 2000 },
    refused: [{ measure: 'width', got: '#DIV/0!' }],
  });
  expect(rows[1]!.step).toBeNaN();
  expect(rows[2]).toMatchObject({ stage: undefined, stageText: '#REF!' });
});

test('each end of a possible range is taken, and the next step beyond is refused', () => {
  const width = (cell: Cell) =>
    readRoute([
      ['Step', 'Stage', 'Width'],
      [1, 'door', cell],
    ]).rows[0]!;
  for (const ok of [100, 20000, '100 mm', '20 m']) expect(width(ok).refused).toEqual([]);
  for (const bad of [99.999, 20000.001, -800, '9 cm', NaN, Infinity, true]) {
    expect(width(bad).measures.width).toBeUndefined();
    expect(width(bad).refused).toHaveLength(1);
  }
});

test('a table of 20,000 rows is read and checked with work that grows with its rows', () => {
  const headers = HOUSE[0]!;
  const tableOf = (count: number): Cell[][] => [
    headers,
    ...Array.from({ length: count }, (_, i) => {
      const row = [...HOUSE[1 + (i % 5)]!];
      // Rows of a survey lie an eighth of the table apart.
      row[0] = `survey ${i % (count / 8)}`;
      row[1] = 1 + Math.floor(i / (count / 8));
      return row;
    }),
  ];
  const table = tableOf(20000);
  const read = readRoute(table);
  expect(read.rows).toHaveLength(20000);
  expect(read.surveys).toHaveLength(2500);
  expect(read.surveys.every((s) => s.rows.every((r, i) => r.step === i + 1))).toBe(true);
  // How long it takes is measured by the benchmark; here, how much is looked at.
  const tenth = tableOf(2000);
  for (const work of [readRoute, checkRoute]) {
    const few = visitsOf(() => work(tenth));
    const many = visitsOf(() => work(table));
    expect(few).toBeGreaterThan(2000);
    expect(many).toBeLessThan(11 * few);
  }
});

test('the count of work sees a search within a search', () => {
  const names = (count: number) => Array.from({ length: count }, (_, i) => i);
  const squared = (count: number) => () => names(count).forEach((n) => names(count).indexOf(n));
  const onePass = (count: number) => () => {
    for (const n of names(count)) names(3).includes(n);
  };
  expect(visitsOf(squared(1000)) / visitsOf(squared(100))).toBeGreaterThan(90);
  expect(visitsOf(onePass(1000)) / visitsOf(onePass(100))).toBeLessThan(11);
});

describe('what a step is called in a sentence', () => {
  const rows = (steps: readonly (number | string | null)[]) =>
    readRoute([['Step', 'Stage', 'Width', 'Height'], ...steps.map((step) => [step, 'door', 900, 2000])]).rows;

  test('by its number, its label, or its place where it has neither', () => {
    expect(rows([3, 'Front door', null]).map((row, i) => stepCalled(row, i))).toEqual([
      'step 3',
      'step Front door',
      'row 3',
    ]);
    // A label stays one, whatever its words.
    expect(stepCalled(rows(['row 7'])[0]!, 0)).toBe('step row 7');
  });

  test('several of them, each once', () => {
    const called = (steps: readonly (number | string | null)[]): string =>
      stepsCalled(rows(steps).map((row, i) => [row, i] as const));
    expect(called([2])).toBe('step 2');
    expect(called([2, 3, 3])).toBe('steps 2 and 3');
    expect(called([1, 'hall', 4])).toBe('steps 1, hall and 4');
    expect(called([1, null])).toBe('step 1 and row 2');
    expect(called([null])).toBe('row 1');
  });
});
