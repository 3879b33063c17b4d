import { PieceSize, sortedPiece } from '../../src/core/measures/piece';
import { solverOf, type PlacedMeasures } from '../../src/core/stages/solvers';
import type { StageName } from '../../src/core/stages/kinds';
import { deepProof } from '../../src/core/route/deepProof';
import { routePassages } from '../../src/core/stages/landing/landingPassages';
import { seeded } from '../support/parkMiller';

/**
 * The open gap between what is shown and what is proved, for random realistic stages: a padding [mm a side] is shown by
 * a motion up to `shown`, and from `proved` on no motion passes; and how often at no padding neither is known.
 * `npx tsx tests/bench/openGap.ts 100`; figures of single kinds: `npx tsx tests/bench/openGap.ts 100 "side door"`.
 */
type Draw = (next: () => number) => Record<string, number>;

const within = (next: () => number, low: number, high: number): number =>
  Math.round(low + (high - low) * next());

const stair = (next: () => number) => ({
  height: within(next, 1900, 2350),
  rise: within(next, 160, 220),
  going: within(next, 210, 290),
});

const KINDS: Readonly<Partial<Record<StageName, Draw>>> = {
  corner: (next) => ({
    width: within(next, 750, 1200),
    widthOut: within(next, 750, 1200),
    height: within(next, 2100, 2600),
  }),
  'half landing': (next) => {
    const width = within(next, 700, 1050);
    const depth = width + within(next, -50, 250);
    return { ...stair(next), width, depth, well: next() < 0.5 ? 0 : within(next, 0, 200) };
  },
  'quarter landing': (next) => {
    const width = within(next, 700, 1050);
    return { ...stair(next), width, widthOut: width + within(next, -50, 250) };
  },
  winder: (next) => {
    const turn = [60, 90, 90, 135, 180][Math.floor(5 * next())] ?? 90;
    return { ...stair(next), width: within(next, 750, 1050), turn, treads: Math.round(turn / 30) };
  },
  'side door': (next) => ({
    width: within(next, 680, 900),
    height: within(next, 1950, 2100),
    wall: within(next, 80, 200),
    widthOut: within(next, 800, 1300),
    ceiling: within(next, 2200, 2600),
  }),
  lift: (next) => {
    const car = within(next, 900, 1700);
    return {
      width: within(next, 700, Math.min(1100, car)),
      height: within(next, 1900, 2150),
      widthOut: car,
      depth: within(next, 1000, 2200),
      ceiling: within(next, 2050, 2450),
    };
  },
  flight: (next) => ({
    ...stair(next),
    width: within(next, 700, 1050),
    risers: within(next, 5, 16),
    footCeiling: within(next, 2000, 2600),
    footSpace: within(next, 700, 2500),
    headCeiling: within(next, 2000, 2600),
    headSpace: within(next, 700, 2500),
  }),
};

const padded = ({ length, breadth, thickness }: PieceSize, by: number): PieceSize => ({
  length: length + 2 * by,
  breadth: breadth + 2 * by,
  thickness: Math.max(0, thickness + 2 * by),
});

function shownAndProved(stage: StageName, measures: PlacedMeasures, piece: PieceSize) {
  const solver = solverOf(stage);
  const passages =
    solver.solvedBy === 'closed form'
      ? solver.passages(measures, piece, 'with leaning')
      : // Widened too; what one place of a search by chance finds gives no figure.
        routePassages(solver.searched(measures), piece, 1)
          .map(({ passage }) => passage)
          .filter(({ answer }) => !answer.byChance);
  const shown = Math.max(
    -piece.length / 2,
    ...passages.map(({ answer }) => (answer.nothingFound ? -Infinity : answer.clearance)),
  );
  const quick = Math.min(...passages.map(({ answer }) => answer.atMost));
  const blocked = (by: number): boolean =>
    by >= quick || deepProof(stage, measures, 0, padded(piece, by)) !== undefined;
  const from = process.cpuUsage();
  const refused = shown < 0 && blocked(0);
  const used = process.cpuUsage(from);
  let [open, shut] = [shown, Math.min(quick, shown + 800)];
  for (let i = 0; i < 8 && shut - open > 3; i++) {
    const middle = (open + shut) / 2;
    if (blocked(middle)) shut = middle;
    else open = middle;
  }
  return { shown, gap: shut - shown, refused, took: (used.user + used.system) / 1000 };
}

const part = (row: number[], share: number): number =>
  [...row].sort((a, b) => a - b)[Math.min(row.length - 1, Math.floor(row.length * share))] ?? NaN;

const count = Number(process.argv[2] ?? 60);
const only = process.argv[3];
for (const [name, draw] of Object.entries(KINDS)) {
  if (only !== undefined && only !== name) continue;
  const next = seeded(2024);
  const gaps: number[] = [];
  const proofs: number[] = [];
  let [open, short] = [0, 0];
  for (let i = 0; i < count; i++) {
    const measures = draw(next) as PlacedMeasures;
    const piece = sortedPiece(within(next, 1400, 2500), within(next, 700, 1250), within(next, 20, 50));
    const { shown, gap, refused, took } = shownAndProved(name as StageName, measures, piece);
    gaps.push(gap);
    if (shown >= 0) continue;
    proofs.push(took);
    short++;
    if (!refused) open++;
  }
  const figures = [part(gaps, 0.5), part(gaps, 0.9)].map((x) => x.toFixed(0)).join(' / ');
  console.log(
    `${name}: gap ${figures} mm; of ${count} not shown ${short}, neither ${open} (${((100 * open) / count).toFixed(0)} %); ` +
      `proof at most ${Math.max(0, ...proofs).toFixed(0)} ms`,
  );
}
