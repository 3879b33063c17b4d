import fc from 'fast-check';
import type { Cell } from '../../../src/core/measures/readQuantity';
import { checkPieces } from '../../../src/core/survey/checks/checkPieces';
import { problemText } from '../../../src/core/survey/words/problemWords';
import { readPieces } from '../../../src/core/survey/table/readPieces';
import { surveyTable } from '../../support/surveyTable';

type Row = Readonly<Record<string, Cell>>;

// 1.83 x 0.93 x 0.025 m of 2850 kg/m3: 121.3 kg.
const SLATE: Row = {
  Build: 'one-piece',
  Piece: 'slate',
  Length: 1830,
  Breadth: 930,
  Thickness: 25,
  Mass: 121.3,
  Count: 1,
};
const LEGS: Row = { ...SLATE, Piece: 'legs', Length: 760, Breadth: 150, Thickness: 150, Mass: 8, Count: 4 };
// A third of a slate: 0.87 x 1.4 x 0.025 m of 2850 kg/m3: 86.8 kg.
const SECTION: Row = { ...SLATE, Build: 'three-piece', Length: 1400, Breadth: 870, Mass: 86.8 };

const found = (...rows: Row[]) => checkPieces(surveyTable(rows));
const kinds = (...rows: Row[]) => found(...rows).map((p) => p.kind);
const texts = (...rows: Row[]) =>
  found(...rows)
    .map(problemText)
    .join('\n');

test('sound pieces have no problem', () => {
  expect(texts(SLATE, LEGS)).toBe('');
});

describe('pieces are read as a table', () => {
  test('columns in any order, measures as text, sizes in any order, builds in the order they appear', () => {
    const table: Cell[][] = [
      ['COUNT', 'piece', 'Photo', ' build ', 'Mass', 'thickness', 'Length', 'breadth'],
      [4, 'legs', 'x', 'Oak', '8 kg', '15 cm', '2\' 6"', 150],
      ['', '', '', '', '', '', '', ''],
      [1, 'slate', 'y', 'Ash', '267.4 lb', 1830, '25 mm', '93 cm'],
      [1, 'slate', '', 'oak', 121, 25, 1830, 930],
    ];
    const { builds, pieces, problems } = readPieces(table);
    expect(problems).toEqual([]);
    expect(builds.map((b) => [b.name, b.pieces.length])).toEqual([
      ['Oak', 2],
      ['Ash', 1],
    ]);
    expect(pieces.map((p) => p.rowIndex)).toEqual([0, 2, 3]);
    expect(pieces[0]).toMatchObject({ size: { length: 762, breadth: 150, thickness: 150 }, count: 4 });
    expect(pieces[1]!.size).toEqual({ length: 1830, breadth: 930, thickness: 25 });
    expect(pieces[1]!.mass).toBeCloseTo(121.29, 2);
  });

  test('shuffled columns give the same pieces', () => {
    const table = surveyTable([SLATE, LEGS, SECTION]);
    const plain = readPieces(table);
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 }), (order) => {
        expect(readPieces(table.map((row) => order.map((i) => row[i])))).toEqual(plain);
      }),
      { seed: 5 },
    );
  });

  test('a column that is missing is named, the count may be', () => {
    const headers = (...names: string[]) =>
      readPieces([names, ['a', 'slate', 1830, 930, 25, 121]]).problems.map((p) =>
        p.kind === 'column missing' ? `${p.column}${p.near ? ` ${p.near}` : ''}` : p.kind,
      );
    expect(headers('Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass')).toEqual([]);
    expect(headers('Build', 'Piece', 'Length', 'Bredth', 'Thickness', 'Weight')).toEqual([
      'Breadth Bredth',
      'Mass',
    ]);
    expect(readPieces([]).problems.map((p) => p.kind)).toContain('no rows');
  });

  test.each<[string, Row, Partial<Record<string, unknown>>]>([
    ['a size that is not given', { ...SLATE, Breadth: '' }, { kind: 'size not given', measure: 'breadth' }],
    ['a size of 0', { ...SLATE, Breadth: 0 }, { kind: 'size refused', measure: 'breadth' }],
    ['a size of 0 mm', { ...SLATE, Breadth: '0 mm' }, { kind: 'size refused', measure: 'breadth' }],
    ['a size below 0', { ...SLATE, Thickness: -25 }, { kind: 'size refused', measure: 'thickness' }],
    ['what a formula leaves of nothing', { ...SLATE, Thickness: 5e-324 }, { measure: 'thickness' }],
    ['less than a millimetre', { ...SLATE, Thickness: 0.9 }, { kind: 'size refused', measure: 'thickness' }],
    ['too long', { ...SLATE, Length: 6001 }, { kind: 'size refused', measure: 'length' }],
    ['an error cell', { ...SLATE, Mass: { code: '#N/A' } }, { kind: 'size refused', got: '#N/A' }],
    ['no mass', { ...SLATE, Mass: null }, { kind: 'size not given', measure: 'mass' }],
    ['a count of 0.5', { ...SLATE, Count: 0.5 }, { kind: 'size refused', measure: 'count', got: 0.5 }],
    ['a count of one and a half', { ...SLATE, Count: 1.5 }, { kind: 'size refused', measure: 'count' }],
    ['no build', { ...SLATE, Build: ' ' }, { kind: 'no build' }],
  ])('%s is an error', (_name, row, problem) => {
    expect(found(row)).toMatchObject([{ severity: 'error', ...problem }]);
  });

  test('of a size below 1 mm the words say that 1 to 6000 is allowed, and no figure made from it is told', () => {
    const said = texts({ ...SLATE, Thickness: 5e-324 });
    expect(said).toMatch(/Thickness cannot be taken.*1 to 6000/);
    expect(said).not.toMatch(/Infinity|kg\/m3|sorted/);
    expect(texts({ ...SLATE, Thickness: 1, Mass: 4.9 })).not.toMatch(/cannot be taken/);
  });
  test('a bare count of 0 is an empty cell, and both are taken as 1', () => {
    for (const Count of [0, '', null]) {
      expect(readPieces(surveyTable([{ ...SLATE, Count }])).pieces).toMatchObject([
        { count: 1, refused: [] },
      ]);
      expect(found({ ...SLATE, Count })).toMatchObject([{ severity: 'warning', kind: 'count taken as one' }]);
    }
  });

  test('a build stays unknown through one size that is not known', () => {
    const { pieces } = readPieces(surveyTable([SLATE, { ...LEGS, Length: 'long' }]));
    expect(pieces[0]!.size).toBeDefined();
    expect(pieces[1]!.size).toBeUndefined();
  });

  test('an empty count is taken as 1, and says so', () => {
    const row = { ...SLATE, Count: null };
    expect(readPieces(surveyTable([row])).pieces[0]!.count).toBe(1);
    expect(found(row)).toMatchObject([{ kind: 'count taken as one', severity: 'warning' }]);
  });
});

describe('inches and metres typed as mm', () => {
  test('72 x 36 x 1: the longest size is refused and the unit named', () => {
    const row = { ...SLATE, Length: 72, Breadth: 36, Thickness: 1 };
    expect(texts(row)).toContain('72 in would be 1828.8 mm');
    expect(readPieces(surveyTable([row])).pieces[0]!.size).toBeUndefined();
  });
  test('300 is long enough, 299 is not', () => {
    const size = (Length: number) =>
      readPieces(surveyTable([{ ...LEGS, Length, Breadth: 100, Thickness: 50 }])).pieces[0]!.size;
    expect(size(300)).toBeDefined();
    expect(size(299)).toBeUndefined();
  });
});

describe('mass against size', () => {
  // Cardarelli, Materials Handbook: slate 2700 to 2950 kg/m3.
  test.each([2700, 2850, 2950])('a slate of %d kg/m3 is sound', (density) => {
    expect(kinds({ ...SLATE, Mass: 1.83 * 0.93 * 0.025 * density })).toEqual([]);
  });
  test('pockets and holes may take a tenth off', () => {
    const volume = 1.83 * 0.93 * 0.025;
    expect(kinds({ ...SLATE, Mass: volume * 2440 })).toEqual([]);
    expect(kinds({ ...SLATE, Mass: volume * 2400 })).toEqual(['density']);
    expect(kinds({ ...SLATE, Mass: volume * 3100 })).toEqual(['density']);
  });
  test.each<[string, Row, Record<string, unknown>]>([
    ['pounds for kg', { ...SLATE, Mass: 267.4 }, { measure: 'mass', unit: 'lb' }],
    ['thickness in cm', { ...SLATE, Thickness: 2.5 }, { measure: 'thickness', unit: 'cm', value: 25 }],
    ['thickness in inches', { ...SLATE, Thickness: 1 }, { measure: 'thickness', unit: 'in', value: 25.4 }],
    ['breadth in cm', { ...SLATE, Breadth: 93 }, { measure: 'breadth', unit: 'cm', value: 930 }],
    ['length in inches', { ...SLATE, Length: 72 }, { measure: 'length', unit: 'in', value: 1828.8 }],
    [
      'the mass of all three',
      { ...SECTION, Mass: 260.4, Count: 3 },
      { measure: 'mass', unit: 'all together', count: 3 },
    ],
  ])('%s is named as what was probably meant', (_name, row, meant) => {
    const density = found(row).find((p) => p.kind === 'density');
    expect(density).toMatchObject({ severity: 'warning' });
    expect(density?.kind === 'density' && density.meant).toMatchObject([meant]);
  });
  test('a mass that no single slip explains is doubted all the same', () => {
    const density = found({ ...SLATE, Mass: 60 }).find((p) => p.kind === 'density');
    expect(density?.kind === 'density' && density.meant).toEqual([]);
  });
  test('a cabinet is no slate', () => {
    const cabinet = { ...SLATE, Piece: 'cabinet', Length: 1900, Breadth: 1000, Thickness: 500, Mass: 60 };
    expect(kinds(cabinet)).toEqual([]);
    expect(kinds({ ...cabinet, Thickness: 5 })).toEqual(['density']);
  });
  test('a slate thicker than slates are', () => {
    expect(kinds({ ...SLATE, Thickness: 80, Mass: 121.3 * 3.2 })).toEqual(['slate thickness']);
  });
});

test('sizes out of order are sorted, and say so', () => {
  expect(kinds({ ...SLATE, Length: 930, Breadth: 1830 })).toEqual(['sizes out of order']);
  expect(kinds({ ...SLATE, Length: 930, Breadth: 930 })).not.toContain('sizes out of order');
});

describe('a build with a piece missing', () => {
  const sections = (...numbers: number[]) =>
    numbers.map((n): Row => ({ ...SECTION, Piece: `slate ${n} of 3` }));
  test('numbered sections', () => {
    expect(kinds(...sections(1, 2, 3))).toEqual([]);
    expect(found(...sections(1, 3))).toMatchObject([
      { kind: 'sections missing', severity: 'warning', of: 3, missing: [2] },
    ]);
    expect(texts(...sections(2))).toContain('sections 1 and 3 are not there');
  });
  test('sections counted against what the build is called', () => {
    expect(kinds({ ...SECTION, Piece: 'slate section', Count: 3 })).toEqual([]);
    expect(found({ ...SECTION, Piece: 'slate section', Count: 2 })).toMatchObject([
      { kind: 'sections missing', of: 3, found: 2 },
    ]);
  });
  test('a part that the other builds have', () => {
    const other = { ...SLATE, Build: 'knocked down' };
    expect(found(SLATE, LEGS, other)).toMatchObject([
      { kind: 'part missing', build: 'knocked down', part: 'legs' },
    ]);
    expect(found(SLATE, { ...LEGS, Build: 'b' }).map((p) => p.kind === 'part missing' && p.part)).toEqual([
      'legs',
      'slate',
    ]);
    expect(kinds(SLATE, LEGS, other, { ...LEGS, Build: 'knocked down' })).toEqual([]);
  });
  test('the same piece twice', () => {
    expect(kinds(SLATE, { ...SLATE, Piece: 'Slate' })).toContain('piece doubled');
    expect(kinds(SLATE, { ...SLATE, Build: 'other' })).toEqual([]);
  });
});

// Slate of 2700 to 2950 kg/m3 (Cardarelli), a tenth cut away and 3 % of backing; other parts of 10 to 2000: common practice.
describe('how heavy and how thick a piece may be before it is doubted', () => {
  const slab = (mass: number, thickness = 20) =>
    found({ ...SLATE, Length: 1000, Breadth: 1000, Thickness: thickness, Mass: mass });
  // 0.02 m3.
  test.each([
    [48.61, false],
    [48.59, true],
    [60.76, false],
    [60.78, true],
  ])('a slate of 0.02 m3 and %f kg: doubted %s', (mass, doubted) => {
    expect(slab(mass).map(({ kind }) => kind)).toEqual(doubted ? ['density'] : []);
    if (doubted) expect(slab(mass)[0]).toMatchObject({ least: 2700, most: 2950, slate: true });
  });
  test('pounds typed for kilograms: what it would be in kilograms is told', () => {
    const [problem] = found({ ...SLATE, Mass: 267.4 });
    // 267.4 x 0.45359237.
    expect(problem?.kind === 'density' && problem.meant).toEqual([
      { measure: 'mass', unit: 'lb', value: expect.closeTo(121.2906, 4) },
    ]);
  });
  // 0.76 x 0.15 x 0.15 m: 0.0171 m3.
  test.each([
    [0.1711, false],
    [0.1709, true],
    [34.19, false],
    [34.21, true],
  ])('a leg of 0.0171 m3 and %f kg: doubted %s', (Mass, doubted) => {
    const problems = found(SLATE, { ...LEGS, Mass });
    expect(problems.map(({ kind }) => kind)).toEqual(doubted ? ['density'] : []);
    if (doubted) expect(problems[0]).toMatchObject({ least: 10, most: 2000, slate: false, meant: [] });
  });
  // 2850 kg/m3 whatever the thickness; slate beds are 18 to 60 mm thick (common practice).
  test.each([
    [17.9, true],
    [18, false],
    [60, false],
    [60.1, true],
  ])('a slate %f mm thick: doubted %s', (thickness, doubted) => {
    expect(slab(2.85 * thickness, thickness).map(({ kind }) => kind)).toEqual(
      doubted ? ['slate thickness'] : [],
    );
  });
});
