import { doorPassageBracket } from '../support/doorPassageBracket';
import { doorIntoPassage, doorPassage } from '../../src/core/geometry/doorIntoPassage';
import { decidePassage } from '../../src/core/geometry/planar/decidePassage';
import { passageBracket, type PlanarPassage } from '../../src/core/geometry/planar/passageBracket';
import { boxPolygon } from '../../src/core/geometry/planar/planarWorld';
import { sortedPiece } from '../../src/core/measures/piece';
import { flightEndsFit } from '../../src/core/stages/flight/flightEnds';
import { liftCarAnswer } from '../../src/core/stages/lift/liftCar';
import { sideDoorAnswer } from '../../src/core/stages/sideDoor/sideDoor';
import { seeded } from '../support/parkMiller';

type Figure = { name: string; figure: number; unit: string; goal?: number };

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

const timed = (runs: number, work: (i: number) => void): number => {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work(i);
    times.push(performance.now() - start);
  }
  return median(times);
};

function corner(width: number, p: number, q: number): PlanarPassage {
  const reach = Math.hypot(p, q);
  const deep = reach + width + 2;
  const far = 3 * deep;
  return {
    world: {
      obstacles: [
        boxPolygon(-far, -far, 0, far),
        boxPolygon(-far, -far, far, 0),
        boxPolygon(width, width, far, far),
      ],
      centre: { xMin: 0, xMax: deep + 1, yMin: 0, yMax: deep + 1 },
    },
    start: { xMin: 0, xMax: width, yMin: deep, yMax: deep + 1, angle: Math.PI / 2 },
    goal: { xMin: deep, xMax: deep + 1, yMin: 0, yMax: width, angle: 0 },
  };
}

const expectVerdict = (got: string, wanted: string): void => {
  if (got !== wanted) throw new Error(`the planner says ${got}, not ${wanted}`);
};

/** The planar planner and what stands on it: slab 1830 x 930 x 25 as in the recorded scenes. */
export async function run(): Promise<Figure[]> {
  const figures: Figure[] = [];
  const add = (name: string, figure: number, unit: string, goal?: number): void => {
    figures.push({ name, figure: rounded(figure), unit, ...(goal === undefined ? {} : { goal }) });
  };
  const CRITICAL_CORNER = 664.68;
  const CRITICAL_DOOR = 511.67;
  const decideCorner = (width: number, wanted: string) => (): void => {
    const c = corner(width, 1830, 25);
    expectVerdict(decidePassage(c.world, 1830, 25, c.start, c.goal).verdict, wanted);
  };
  const decideDoor = (passage: number, wanted: string) => (): void => {
    const plan = { door: 762, wall: 120, approach: 900, passage };
    const c = doorPassage(1830, 25, plan);
    expectVerdict(decidePassage(c.world, 1830, 25, c.start, c.goal).verdict, wanted);
  };
  add(
    'corner, 2 mm wider: planner shows a path',
    timed(9, decideCorner(CRITICAL_CORNER + 2, 'passes')),
    'ms',
    50,
  );
  add(
    'corner, 20 mm wider: planner shows a path',
    timed(9, decideCorner(CRITICAL_CORNER + 20, 'passes')),
    'ms',
  );
  add(
    'corner, 2 mm narrower: planner proves no',
    timed(9, decideCorner(CRITICAL_CORNER - 2, 'blocked')),
    'ms',
    50,
  );
  add(
    'side door, 10 mm wider: planner shows a path',
    timed(9, decideDoor(CRITICAL_DOOR + 10, 'passes')),
    'ms',
    20,
  );
  add(
    'side door, 50 mm wider: planner shows a path',
    timed(9, decideDoor(CRITICAL_DOOR + 50, 'passes')),
    'ms',
    20,
  );
  add(
    'side door, 10 mm narrower: planner proves no',
    timed(9, decideDoor(CRITICAL_DOOR - 10, 'blocked')),
    'ms',
    20,
  );
  add(
    'corner: bracket of the clearance, to 1 mm',
    timed(5, () => void passageBracket((p, q) => corner(CRITICAL_CORNER, p, q), 1830, 25, 300)),
    'ms',
    270,
  );
  const plan = { door: 762, wall: 120, approach: 900, passage: CRITICAL_DOOR };
  add(
    'side door: bracket of the clearance, to 1 mm',
    timed(5, () => void doorPassageBracket(1830, 25, plan)),
    'ms',
    270,
  );

  const next = seeded(1);
  const REPEATS = 2000;
  const each = (work: () => void): number =>
    (timed(5, () => {
      for (let i = 0; i < REPEATS; i++) work();
    }) /
      REPEATS) *
    1000;
  add(
    'side door in plan, closed form, every cell different',
    each(() => void doorIntoPassage(1700 + 300 * next(), 25, plan)),
    'us',
    50,
  );
  add(
    'SIDEDOOR with its proof, every cell different',
    each(
      () =>
        void sideDoorAnswer(
          {
            doorWidth: 762,
            doorHeight: 1981,
            wallThickness: 120,
            passageWidth: 500 + 300 * next(),
            ceiling: 2400,
          },
          sortedPiece(1830, 930, 25),
        ),
    ),
    'us',
  );
  add(
    'flight with foot and head, every cell different',
    each(
      () =>
        void flightEndsFit(
          { width: 800, headroom: 2000, rise: 190, going: 240 },
          { footCeiling: 2400, footSpace: 1800 + 500 * next(), headCeiling: 2400, headSpace: 2500 },
          1830,
          930,
        ),
    ),
    'us',
  );
  add(
    'LIFTCAR with its proof, every cell different',
    timed(30, () => {
      liftCarAnswer(
        {
          doorWidth: 800 + 100 * next(),
          doorHeight: 2000,
          carWidth: 1100 + 300 * next(),
          carDepth: 1400 + 700 * next(),
          carHeight: 2200,
        },
        sortedPiece(1700 + 300 * next(), 600 + 300 * next(), 25 + 30 * next()),
      );
    }),
    'ms',
  );
  return figures;
}
