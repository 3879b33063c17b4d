import { leaningRoom, tiltingRoom } from '../../../src/core/route/poseChange';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { judgedChain } from '../../../src/core/route/routeMotion';
import { stageBook } from '../../../src/core/route/stageBook';
import type { StageName } from '../../../src/core/stages/kinds';
import type { StageMeasures } from '../../../src/core/stages/measures';
import type { PieceSize } from '../../../src/core/measures/piece';
import { stageRow } from '../../support/walkedRoute';
import { piece } from './routeFixtures';

type Row = { stage: StageName; way?: 'up' | 'down'; hand?: 'left' | 'right'; measures: StageMeasures };

/** What is left with everything as measured and nothing open [mm a side]; undefined: nothing is shown. */
function left(rows: readonly Row[], size: PieceSize): number | undefined {
  const book = stageBook(0);
  return judgedChain(prepareRoute(rows.map(stageRow), book), size, book, 0, 'worst')?.clearance;
}

describe('over one floor the least of the ceilings given holds', () => {
  const cabinet = piece(2060, 1150, 330);
  const upFrom = (height: number, footCeiling: number): Row[] => [
    { stage: 'passage', measures: { width: 885, height, length: 4386 } },
    {
      stage: 'flight',
      way: 'up',
      measures: {
        width: 734,
        height: 2123,
        rise: 197,
        going: 264,
        risers: 6,
        footCeiling,
        footSpace: 4386,
        headCeiling: 2600,
        headSpace: 4000,
      },
    },
  ];

  test('a piece is stood up under the lower of two', () => {
    // Stood up with its 1150 in the plane of turning it comes as high as the diagonal; with 1150 across the way it does
    // not fit between walls 885 apart.
    const diagonal = Math.hypot(2060, 1150);
    expect(diagonal).toBeLessThan(2369);
    expect(diagonal).toBeGreaterThan(2290);
    for (const [height, footCeiling] of [
      [2369, 2290],
      [2290, 2369],
    ] as const) {
      expect(left(upFrom(height, footCeiling), cabinet)).toBe(left(upFrom(2290, 2290), cabinet));
    }
  });

  test('whichever row says it', () => {
    const panel = piece(2640, 320, 40);
    const down = (height: number, footCeiling: number): Row[] => [
      {
        stage: 'flight',
        way: 'down',
        measures: {
          width: 900,
          height: 2050,
          rise: 190,
          going: 250,
          risers: 12,
          footCeiling,
          footSpace: 4456,
          headCeiling: 2400,
          headSpace: 4000,
        },
      },
      { stage: 'passage', measures: { width: 960, height, length: 4456 } },
      { stage: 'corner', hand: 'left', measures: { width: 960, widthOut: 705, height: 2410 } },
      { stage: 'passage', measures: { width: 705, height: 2410, length: 5000 } },
    ];
    expect(left(down(2485, 2209), panel)).toBeCloseTo(left(down(2209, 2209), panel)!, 9);
    expect(left(down(2209, 2485), panel)).toBeCloseTo(left(down(2209, 2209), panel)!, 9);
    expect(left(down(2485, 2485), panel)).toBeGreaterThanOrEqual(left(down(2209, 2209), panel)!);
  });

  test('nor is a floor longer than the shorter of what is said of it', () => {
    const slate = piece(1500, 750, 25);
    const from = (length: number, footSpace: number): Row[] => {
      const [passage, flight] = upFrom(2300, 2300);
      return [
        { ...passage!, measures: { ...passage!.measures, length, width: 1334 } },
        { ...flight!, measures: { ...flight!.measures, width: 1334, footSpace } },
        { stage: 'corner', hand: 'left', measures: { width: 1334, widthOut: 1334, height: 2400 } },
      ];
    };
    expect(left(from(1954, 2913), slate)).toBeCloseTo(left(from(1954, 1954), slate)!, 9);
    expect(left(from(2913, 1954), slate)).toBeCloseTo(left(from(1954, 1954), slate)!, 9);
  });
});

test('in a room whose doors may be in any wall a piece leans and tilts as the shorter side allows', () => {
  const size = piece(2000, 700, 60);
  for (const turned of [leaningRoom, tiltingRoom]) {
    const space = { along: 3000, across: 1200, height: 2400 };
    const either = turned({ ...space, eitherWay: true }, size);
    const one = turned(space, size);
    const other = turned({ ...space, along: 1200, across: 3000 }, size);
    either.forEach((value, hold) => expect(value).toBe(Math.min(one[hold]!, other[hold]!)));
    expect(one).not.toEqual(other);
  }
});

describe('a flight that is narrower low down, beside a landing', () => {
  const stair = { height: 2050, rise: 190, going: 240 };
  const ends = { footCeiling: 2600, footSpace: 6000, headCeiling: 2600, headSpace: 6000 };
  const house = (landing: Row, flight: StageMeasures): Row[] => [
    { stage: 'flight', way: 'up', measures: { ...stair, risers: 16, ...ends, ...flight } },
    landing,
    { stage: 'flight', way: 'up', measures: { ...stair, risers: 16, ...ends, ...flight } },
  ];
  const landings: Row[] = [
    {
      stage: 'half landing',
      way: 'up',
      hand: 'left',
      measures: { ...stair, width: 950, well: 100, depth: 950 },
    },
    { stage: 'quarter landing', way: 'up', hand: 'left', measures: { ...stair, width: 950, widthOut: 950 } },
  ];
  const pieces = [piece(1500, 750, 25), piece(1900, 600, 25), piece(1400, 640, 100)];

  /** A quarter landing as narrow: beside a narrower flight it would not be told where its treads begin. */
  const narrowed = ({ measures, ...row }: Row): Row => ({
    ...row,
    measures: { ...measures, width: 800, ...(measures.widthOut === undefined ? {} : { widthOut: 800 }) },
  });

  // By the meaning of the words: a part that is narrower up to the ceiling is all of the flight.
  test.each(landings)('leaves no more than one as narrow all the way up: $stage', (landing) => {
    for (const size of pieces) {
      const low = left(house(landing, { width: 950, lowWidth: 800, lowHeight: 2050 }), size);
      const narrow = left(house(narrowed(landing), { width: 800 }), size);
      expect(low ?? -Infinity).toBeLessThanOrEqual((narrow ?? -Infinity) + 1e-6);
    }
    // And it says something.
    expect(left(house(landing, { width: 800 }), piece(1500, 300, 25))).toBeGreaterThan(0);
  });
});
