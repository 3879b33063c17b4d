import { decidePassage } from '../../src/core/geometry/planar/decidePassage';
import { doorPassage } from '../../src/core/geometry/doorIntoPassage';
import { paddedPiece, sortedPiece } from '../../src/core/measures/piece';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import type { StageName } from '../../src/core/stages/kinds';
import { seeded } from '../support/parkMiller';
import { greatestStanding, type BuiltLanding } from '../support/standsOnStairs';
import { stageRow } from '../support/walkedRoute';
import { placedCells } from './attitudes';
import { check, halfOf, landingOf, nowhereOverLanding, type Row, type ShutCertificate } from './check';
import { shutCertificates } from './shutCertificate';

// Certificates of landings, flights and side doors: that they are made and verified, that a changed one is not, and that none
// is verified where a way to stand or to pass is known from elsewhere.

type Measures = Record<string, number | undefined>;
type Surveyed = readonly [stage: StageName, measures: Measures, hand?: 'left' | 'right'];

/** Off by no more [mm]. */
const TAPE = 5;

/** The certificate of the first thing proved of a survey. */
function certified(rows: readonly Surveyed[], sizes: readonly [number, number, number]): ShutCertificate {
  const piece = sortedPiece(...sizes);
  const book = stageBook(TAPE);
  const route = prepareRoute(
    rows.map(([stage, measures, hand], i) => stageRow({ stage, measures, hand, way: 'up' }, i)),
    book,
  );
  const made = shutCertificates(route, piece, book, {
    survey: 'S',
    build: 'B',
    piece: { ...piece, name: 'P' },
  });
  if (typeof made === 'string') throw new Error(made);
  return made[0]!;
}

const faultsOf = (one: ShutCertificate): string => check(one).faults.join('; ');

/** The certificate with some measures of a row changed. */
const withRow = (one: ShutCertificate, k: number, change: Measures | Partial<Row>): ShutCertificate => ({
  ...one,
  measured: one.measured.map((row, i) =>
    i !== k
      ? row
      : 'stage' in change || 'into' in change
        ? { ...row, ...change }
        : { ...row, measures: { ...row.measures, ...(change as Measures) } },
  ),
});

const FLIGHT = { width: 800, height: 2000, rise: 190, going: 240, risers: 14, footCeiling: 2150 };

describe('a flight, by the section square to its pitch', () => {
  // By hand: 2000 x 240 / hypot(190, 240) = 1568.1 mm between nosings and ceiling, and the tape.
  const rows: Surveyed[] = [
    ['passage', { width: 900, height: 2150, length: 3000 }],
    ['flight', FLIGHT],
    ['passage', { width: 900, height: 2150, length: 3000 }],
  ];
  // Broader than the section's diagonal, hypot(805, 1580), and less than any diagonal of 900 by 2150.
  const one = certified(rows, [2300, 1850, 60]);

  test('is verified', () => {
    expect(one).toMatchObject({ row: 1, proof: { by: 'section', which: 'square to the pitch' } });
    expect(faultsOf(one)).toBe('');
  });
  test('where the stair is higher or the piece narrower is not', () => {
    expect(faultsOf(withRow(one, 1, { height: 2500 }))).toMatch(/may pass/);
    expect(faultsOf({ ...one, piece: { ...one.piece, breadth: 1760 } })).toMatch(/may pass/);
  });
  test('where its own ceiling is not known far enough is not', () => {
    for (const change of [{ risers: 4 }, { footCeiling: 4300 }, { rise: undefined }])
      expect(faultsOf(withRow(one, 1, change))).toMatch(/not known to reach|not measured/);
    const open = withRow(one, 1, { footCeiling: undefined });
    expect(faultsOf(open)).toBe('');
    expect(faultsOf(withRow(open, 0, { stage: 'door' }))).toMatch(/not known to reach/);
    expect(faultsOf({ ...one, row: 0 })).toMatch(/no pitch/);
  });
});

describe('a landing, by a line over it', () => {
  const beside = { width: 800, height: 2000, rise: 190, going: 240, risers: 16 };
  const quarter = certified(
    [
      ['flight', { ...beside, footCeiling: 2000 }],
      [
        'quarter landing',
        { width: 800, widthOut: 800, height: 2000, rise: 190, going: 240, ceiling: 2000 },
        'left',
      ],
      ['flight', beside],
    ],
    [2700, 1300, 450],
  );
  const half = certified(
    [
      ['flight', { ...beside, footCeiling: 2000 }],
      [
        'half landing',
        { width: 800, well: 60, depth: 750, height: 2000, rise: 190, going: 240, ceiling: 2000 },
        'left',
      ],
      ['flight', beside],
    ],
    [2700, 1350, 500],
  );
  const partsOf = (one: ShutCertificate) => {
    if (one.proof.by !== 'landing') throw new Error(`by ${one.proof.by}`);
    return one.proof;
  };

  test.each([
    ['a quarter landing', quarter],
    ['a half landing', half],
  ])('%s: is verified, and with a cell or a steepness left out, or a bound of less, it is not', (_, one) => {
    expect(one.row).toBe(1);
    expect(faultsOf(one)).toBe('');
    const proof = partsOf(one);
    expect(proof.parts.length).toBe(2);
    const changed = (change: Partial<typeof proof>): string =>
      faultsOf({ ...one, proof: { ...proof, ...change } });
    const [first, last] = proof.parts as [(typeof proof.parts)[0], (typeof proof.parts)[0]];
    const cells = first.cells.length;
    for (let k = 0; k < cells; k += Math.ceil(cells / 5))
      expect(
        changed({ parts: [{ ...first, cells: first.cells.filter((_cell, i) => i !== k) }, last] }),
      ).toMatch(/gap/);
    for (const parts of [
      [first],
      [last],
      [],
      [first, { ...last, slope: [last.slope[0] + 0.01, last.slope[1]] as const }],
    ])
      expect(changed({ parts })).toMatch(/steepness/);
    const scaled = (factor: number) =>
      first.cells.map((cell) => [...cell.slice(0, 8), cell[8] * factor] as unknown as typeof cell);
    expect(changed({ parts: [{ ...first, cells: scaled(0.9) }, last] })).toMatch(/wider than its bound/);
    expect(changed({ parts: [{ ...first, cells: scaled(3) }, last] })).toMatch(/may stand/);
  });

  test('with a line that is none, or leads nowhere is not', () => {
    for (const one of [quarter, half]) {
      const proof = partsOf(one);
      for (const change of [
        { from: [-50, 805] },
        { from: [0, 700] },
        { to: [-20, 0] },
        { to: [300, 300] },
        { to: [NaN, 0] },
      ] as const)
        expect(faultsOf({ ...one, proof: { ...proof, ...change } })).toMatch(/the line/);
    }
    expect(faultsOf({ ...quarter, row: 0 })).toMatch(/a line over a flight/);
  });

  test('where the stairs beside it are wide, high, short, steep, or another turn is not', () => {
    for (const one of [quarter, half]) {
      for (const k of [0, 2]) {
        for (const [change, said] of [
          [{ width: 900 }, /wider/],
          [{ height: 2100 }, /higher/],
          [{ risers: 4 }, /far enough/],
          [{ rise: 200 }, /another rise/],
          [{ going: 260 }, /another going/],
          [{ stage: 'winder' }, /another turn/],
        ] as const)
          expect([k, faultsOf(withRow(one, k, change))]).toEqual([k, expect.stringMatching(said)]);
      }
      expect(faultsOf(withRow(one, 1, { overRail: 900 }))).toMatch(/rail/);
    }
    expect(faultsOf(withRow(half, 1, { well: 5 }))).toMatch(/spine/);
  });

  test('that is larger or higher, or for a smaller piece, is not', () => {
    for (const one of [quarter, half]) {
      for (const change of [{ ceiling: 3500 }, { widthOut: 2500, depth: 2500 }])
        expect(faultsOf(withRow(one, 1, change))).toMatch(/may stand|outer wall/);
      expect(faultsOf({ ...one, piece: { ...one.piece, length: 900, breadth: 500, thickness: 40 } })).toMatch(
        /./,
      );
    }
  });

  test('no line is shut on which a box was found to stand on treads and risers; for one much larger it is', () => {
    const next = seeded(9);
    let shut = 0;
    for (let n = 0; n < 4; n++) {
      const [width, other, rise, going] = [
        700 + 250 * next(),
        700 + 250 * next(),
        160 + 60 * next(),
        210 + 70 * next(),
      ];
      const [height, ceiling] = [1850 + 300 * next(), 1900 + 300 * next()];
      const [piece, well] = [
        sortedPiece(1200 + 1200 * next(), 400 + 700 * next(), 20 + 250 * next()),
        30 + 100 * next(),
      ];
      const isHalf = n % 2 === 0;
      const row: Row = isHalf
        ? {
            stage: 'half landing',
            way: 'up',
            measures: { width, well, depth: other, height, rise, going, ceiling },
          }
        : {
            stage: 'quarter landing',
            way: 'up',
            measures: { width, widthOut: other, height, rise, going, ceiling },
          };
      const built: BuiltLanding = {
        ...{ rise, going, headroom: height, landingCeiling: ceiling, depth: other, lower: width },
        upper: isHalf ? { from: width + well, to: 2 * width + well } : 'square',
      };
      const to: readonly [number, number] = n < 2 ? [other, 0] : [0.3 * other, 0];
      const cut = [[0, width], to] as const;
      const found = greatestStanding(built, cut, piece, n);
      const shutFor = (padding: number): boolean => {
        const half = halfOf({ ...paddedPiece(piece, padding), name: 'P' }, 0);
        const landing = landingOf([row], 0, half, 0);
        const along = Math.hypot(cut[1][0], cut[1][1] - cut[0][1]);
        return (
          placedCells(half, along, (cell) => nowhereOverLanding(cell, half, landing, ...cut), 6000) !==
          undefined
        );
      };
      expect([n, found, shutFor(found - 0.5)]).toEqual([n, found, false]);
      if (shutFor(found + 260)) shut++;
    }
    expect(shut).toBeGreaterThan(1);
  });
});

describe('a side door, by the rod that has to come out of it', () => {
  const SIDE_DOOR = { width: 530, height: 1900, wall: 115, widthOut: 690, ceiling: 2000, depth: 1400 };
  const one = certified(
    [
      ['passage', { width: 690, height: 1950, length: 4500 }],
      ['side door', SIDE_DOOR, 'left'],
      ['passage', { width: 530, height: 1950, length: 3000 }],
    ],
    [2450, 1078, 420],
  );
  const rod = (depth: number): ShutCertificate => ({ ...one, proof: { by: 'rod', depth } });

  test('is verified', () => {
    expect(one).toMatchObject({ row: 1, proof: { by: 'rod' } });
    expect(faultsOf(one)).toBe('');
  });
  test('with a tail not as deep, or deeper than it can be, is not', () => {
    for (const depth of [0, 5, 2400, -1, NaN]) expect(faultsOf(rod(depth))).toMatch(/come out|so deep|tail/);
  });
  test('where the ways are wider, higher or not known so far is not', () => {
    for (const [k, change, said] of [
      [1, { width: 800 }, /come out|so deep/],
      [1, { widthOut: 1300 }, /come out/],
      [1, { ceiling: 2900 }, /come out|doorway/],
      [1, { into: undefined }, /a rod out of/],
      [0, { width: 900 }, /wider/],
      [0, { height: 2300 }, /higher/],
      [0, { length: 900 }, /far enough/],
      [2, { length: 900 }, /far enough/],
      [2, { height: 2300 }, /higher/],
      [2, { width: 1500 }, /come out|so deep/],
      [2, { stage: 'room' }, /far enough/],
    ] as const)
      expect([k, change, faultsOf(withRow(one, k, change))]).toEqual([
        k,
        change,
        expect.stringMatching(said),
      ]);
  });

  test('no rod is refused that the certified planner leads out of the door', () => {
    // A thin piece that stands on edge under 1000 mm with 10 to spare: nothing but the rod can stop it.
    const next = seeded(5);
    let [passed, refused] = [0, 0];
    for (let n = 0; n < 36; n++) {
      const [door, wall, passage] = [550 + 350 * next(), 20 + 300 * next(), 400 + 700 * next()];
      const length = 1100 + 1400 * next();
      const floor = n % 2 === 0 ? door : door + 300 * next();
      const plan = doorPassage(length, 0, { door, wall, approach: floor, passage });
      const free = decidePassage(plan.world, length, 0, plan.start, plan.goal, 400).verdict === 'passes';
      const sizes = { length: Math.sqrt(length ** 2 + 1000 ** 2 - 990 ** 2), breadth: 990, thickness: 1 };
      const at = (depth: number): ShutCertificate => ({
        ...one,
        tape: 0,
        piece: { ...sizes, name: 'P' },
        measured: [
          { stage: 'passage', measures: { width: passage, height: 1000, length: 9000 } },
          {
            stage: 'side door',
            measures: { width: door, height: 1000, wall, widthOut: passage, ceiling: 1000 },
            into: false,
          },
          { stage: 'passage', measures: { width: floor, height: 1000, length: 9000 } },
        ],
        proof: { by: 'rod', depth },
      });
      let shut = false;
      for (let depth = 1; depth < length && !shut; depth += 4) shut = faultsOf(at(depth)) === '';
      if (free) passed++;
      if (shut) refused++;
      expect([n, free && shut]).toEqual([n, false]);
    }
    expect(passed).toBeGreaterThan(4);
    expect(refused).toBeGreaterThan(4);
  });
});
