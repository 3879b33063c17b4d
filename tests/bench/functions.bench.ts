import { radians, RIGHT_ANGLE } from '../../src/core/measures/angle';
import type { CellError } from '../../src/core/measures/readQuantity';
import { lowerShare } from '../../src/core/carrying/lowerShare';
import { corner } from '../../src/core/stages/corner/corner';
import { openingClearance } from '../../src/core/stages/opening/opening';
import { sortedPiece } from '../../src/core/measures/piece';
import { hostFunction } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';
import type { Figure } from './figure';
import { seeded } from './seeded';

const ROWS = 10_000;
const ROUNDS = 15;

/** Median time [ms] of a call, over several rounds after a warm-up. */
function median(call: () => unknown): number {
  const times: number[] = [];
  for (let i = 0; i < ROUNDS + 3; i++) {
    const start = performance.now();
    call();
    if (i >= 3) times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[ROUNDS >> 1]!;
}

/** CORNER, OPENING and LOWERSHARE as one range call, as cell calls, and as a bare loop over the core. */
export async function run(): Promise<Figure[]> {
  const random = seeded(7);
  const column = (low: number, high: number) =>
    Array.from({ length: ROWS }, () => [low + random() * (high - low)]);
  const length = column(900, 2600);
  const breadth = column(400, 1200);
  const thickness = column(20, 60);
  const cases: [string, number[][][], (i: number, c: number[][][]) => unknown][] = [
    [
      'CORNER',
      [column(600, 1300), column(600, 1300), column(2000, 2600), length, breadth, thickness],
      (i, c) =>
        corner(
          { widthIn: c[0]![i]![0]!, widthOut: c[1]![i]![0]!, ceiling: c[2]![i]![0]!, turn: RIGHT_ANGLE },
          sortedPiece(c[3]![i]![0]!, c[4]![i]![0]!, c[5]![i]![0]!),
        ).clearance,
    ],
    [
      'OPENING',
      [column(600, 1300), column(1800, 2300), length, breadth, thickness],
      (i, c) =>
        openingClearance(
          { width: c[0]![i]![0]!, height: c[1]![i]![0]! },
          sortedPiece(c[2]![i]![0]!, c[3]![i]![0]!, c[4]![i]![0]!),
        ),
    ],
    [
      'LOWERSHARE',
      [column(80, 200), column(1000, 2000), column(50, 300), column(0, 40)],
      (i, c) =>
        lowerShare({
          mass: c[0]![i]![0]!,
          gripSpacing: c[1]![i]![0]!,
          massHeight: c[2]![i]![0]!,
          pitch: radians(c[3]![i]![0]!),
        }),
    ],
  ];
  const figures: Figure[] = [];
  for (const [id, columns, bare] of cases) {
    const call = hostFunction(
      FUNCTIONS.find((f) => f.id === id)!,
      (code, message) => ({ code, message }) as CellError,
    );
    const loop = median(() => {
      let last: unknown;
      for (let i = 0; i < ROWS; i++) last = bare(i, columns);
      return last;
    });
    const range = median(() => call(...columns));
    const cells = median(() => {
      for (let i = 0; i < ROWS; i++) call(...columns.map((c) => [c[i]!]));
    });
    figures.push(
      { name: `${id}: bare loop over the core, a row`, figure: (loop / ROWS) * 1000, unit: 'us' },
      {
        name: `${id}: one range call, a row`,
        figure: (range / ROWS) * 1000,
        unit: 'us',
        ...(id === 'CORNER' ? { goal: 5 } : {}),
      },
      { name: `${id}: range call against bare loop`, figure: range / loop, unit: 'x', goal: 1.3 },
      { name: `${id}: cell calls, a cell`, figure: (cells / ROWS) * 1000, unit: 'us' },
    );
  }
  return figures;
}
