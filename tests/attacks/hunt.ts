import { ownSeed, type ShutAttack, attackShut } from './shutAttack';
import { callInCells } from '../support/callInCells';
import { isCellError } from '../../src/sheetHost/hostValues';
import { sortedPiece, type PieceSize } from '../../src/core/measures/piece';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { stagePassages } from '../../src/core/route/stagePassages';
import { verdictRank, type Verdict } from '../../src/core/route/verdict';
import { seededStream } from '../../src/core/space/seededStream';
import type { StageRow } from '../../src/core/survey/table/stageRow';
import { judgeStage } from '../../src/taskpane/judgeStage';
import { readSelectedRow } from '../../src/taskpane/readSelectedRow';
import { randomRoute } from '../support/randomRoutes';
import { routeAir } from '../support/routeAir';
import { strays } from '../support/routeReplay';
import { stageRow, walked } from '../support/walkedRoute';

/** Two answers that cannot both be right, or a claim that does not hold. */
interface HuntFinding {
  readonly seed: number;
  readonly what: string;
}

interface HuntReport {
  stages: number;
  /** Stages of which row, table and pane gave a figure each. */
  compared: number;
  routes: number;
  claimed: number;
  drawn: number;
  /** Claims of "cannot go" that were attacked by a search, and of these with room for the piece on both sides. */
  shut: number;
  searched: number;
  readonly findings: HuntFinding[];
}

export const emptyReport = (): HuntReport => ({
  stages: 0,
  compared: 0,
  routes: 0,
  claimed: 0,
  drawn: 0,
  shut: 0,
  searched: 0,
  findings: [],
});

/** A stage as its own function takes it and as a row says it. */
interface OneStage {
  readonly id: string;
  readonly values: (piece: readonly number[]) => readonly number[];
  readonly row: Readonly<Record<string, string | number>>;
  /** A measure that can only help, by the name of its column, and where it stands among the values. */
  readonly helps: readonly [column: string, place: number];
  /** What a slightly larger place may cost: a search decides there [mm]. */
  readonly slack: number;
  /** In a route the room beside it is measured, which its function supposes to be enough. */
  readonly mayLackRoom?: boolean;
}

const HEADINGS = [
  ...['Step', 'Stage', 'Width', 'Width out', 'Height', 'Ceiling', 'Depth', 'Rise', 'Going', 'Well', 'Wall'],
  ...['Risers', 'Foot ceiling', 'Foot space', 'Head ceiling', 'Head space', 'Over rail'],
];

/** Answers agree where they differ by no more [mm]. */
const SAME = 1e-6;
/** A landing is searched: between two nearly alike the better is not always found [mm] (known limit of the search). */
const SEARCHED = 25;

function oneStage(next: () => number): OneStage {
  const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
  const [width, out, height] = [b(500, 1300), b(500, 1300), b(1850, 2600)];
  const [rise, going, headroom] = [b(150, 215), b(215, 290), b(1850, 2300)];
  const kinds: (() => OneStage)[] = [
    () => ({
      id: 'OPENING',
      values: (p) => [width, height, ...p],
      row: { Stage: 'door', Width: width, Height: height },
      helps: ['Width', 0],
      slack: SAME,
    }),
    () => ({
      id: 'CORNER',
      values: (p) => [width, out, height, ...p],
      row: { Stage: 'corner', Width: width, 'Width out': out, Height: height },
      helps: ['Width out', 1],
      slack: 1e-3,
    }),
    () => {
      const [wall, ceiling] = [b(20, 300), height + b(0, 300)];
      return {
        id: 'SIDEDOOR',
        values: (p) => [width, height, wall, out, ceiling, ...p],
        row: {
          Stage: 'side door',
          Width: width,
          Height: height,
          Wall: wall,
          'Width out': out,
          Ceiling: ceiling,
        },
        helps: ['Width out', 3],
        slack: 1e-3,
      };
    },
    () => {
      const [risers, foot, head] = [b(2, 16), headroom + b(0, 600), headroom + b(0, 600)];
      const [footSpace, headSpace] = [b(900, 5000), b(900, 5000)];
      return {
        id: 'FLIGHT',
        mayLackRoom: true,
        values: (p) => [width, headroom, rise, going, ...p, risers, foot, footSpace, head, headSpace],
        row: {
          ...{ Stage: 'flight', Width: width, Height: headroom, Rise: rise, Going: going, Risers: risers },
          ...{ 'Foot ceiling': foot, 'Foot space': footSpace, 'Head ceiling': head, 'Head space': headSpace },
        },
        helps: ['Width', 0],
        slack: 1e-3,
      };
    },
    () => {
      const [carWidth, depth, ceiling] = [b(900, 1800), b(1000, 2600), height + b(0, 300)];
      return {
        id: 'LIFTCAR',
        values: (p) => [width, height, carWidth, depth, ceiling, ...p],
        row: {
          Stage: 'lift',
          Width: width,
          Height: height,
          'Width out': carWidth,
          Depth: depth,
          Ceiling: ceiling,
        },
        helps: ['Depth', 3],
        slack: 1e-3,
      };
    },
    () => {
      const [well, depth] = [b(0, 300), b(600, 1400)];
      return {
        id: 'HALFLANDING',
        values: (p) => [width, well, depth, headroom, rise, going, ...p],
        row: {
          ...{ Stage: 'half landing', Width: width, Well: well, Depth: depth },
          ...{ Height: headroom, Rise: rise, Going: going },
        },
        helps: ['Depth', 2],
        slack: SEARCHED,
      };
    },
    () => ({
      id: 'QUARTERLANDING',
      values: (p) => [width, out, headroom, rise, going, ...p],
      row: {
        ...{ Stage: 'quarter landing', Width: width, 'Width out': out },
        ...{ Height: headroom, Rise: rise, Going: going },
      },
      helps: ['Width out', 1],
      slack: SEARCHED,
    }),
  ];
  // The last two take a hundred times as long as the others.
  const landing = next() < 0.05;
  const kind = landing ? 5 + Math.floor(2 * next()) : Math.floor(5 * next());
  return kinds[kind]!();
}

const single = (table: readonly (readonly unknown[])[]): number => {
  const value = table[0]?.[0];
  // Where no motion was found at all, there is no figure.
  return typeof value === 'number' ? value : -Infinity;
};

/** The greatest clearance of a motion that is not leaned over beside the stage [mm a side]. */
const unleaning = ({ stage, measures }: StageRow, piece: PieceSize): number =>
  Math.max(
    -Infinity,
    ...(stage ? stagePassages(stage, measures, piece, 'as in a route') : [])
      .filter(({ needsTurningRoom }) => needsTurningRoom !== true)
      .map(({ answer }) => answer.clearance),
  );

/** One stage by itself: every function that means it says the same, and more room or a smaller piece costs nothing. */
export function huntStage(seed: number, report: HuntReport): void {
  const next = seededStream(ownSeed(seed));
  const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
  const stage = oneStage(next);
  const piece = sortedPiece(b(1000, 2600), b(250, 1400), b(15, next() < 0.6 ? 120 : 600));
  const sizes = [piece.length, piece.breadth, piece.thickness];
  const found = (what: string): void => {
    const row = JSON.stringify(stage.row);
    report.findings.push({ seed, what: `${stage.id} ${row} ${sizes.join(' x ')}: ${what}` });
  };
  report.stages++;
  const rowOf = (row: OneStage['row']): (string | number)[] =>
    HEADINGS.map((heading) => (heading === 'Step' ? 1 : heading in row ? row[heading]! : ''));
  const measured = { ...stage.row, ...(stage.row['Well'] === 0 ? { Well: '0 mm' } : {}) };
  const own = single(callInCells(stage.id, ...stage.values(sizes)));
  const cleared = single(callInCells('STAGECLEAR', [HEADINGS], [rowOf(measured)], ...sizes));
  if (!(Math.abs(own - cleared) <= SAME || own === cleared)) found(`${own} and STAGECLEAR ${cleared}`);
  const table = callInCells('STAGES', [HEADINGS, rowOf(measured)], ...sizes, 25, '0 mm');
  const [, line] = table;
  const verdict = line?.[2];
  const step = line?.[3];
  if (table.length !== 3 || isCellError(line?.[0])) found(`STAGES gives ${JSON.stringify(table)}`);
  const shown = readSelectedRow(HEADINGS, rowOf(measured));
  // Beside a stair a route may find no room to lean the piece over; what does not lean counts there all the same.
  const least = stage.mayLackRoom === true && shown ? unleaning(shown.row, piece) : own;
  const same = (other: number): boolean =>
    Math.abs(other - own) <= SAME || other === own || (other < own && other >= least - SAME);
  if (typeof step === 'number' && !same(step)) found(`${own} and STAGES ${step}`);
  const pane = shown && judgeStage(shown.row, piece, 25, 0);
  if (!pane) found('the pane does not read it');
  else {
    if (pane.verdict !== verdict) found(`STAGES "${String(verdict)}" and the pane "${pane.verdict}"`);
    if (typeof step === 'number') report.compared++;
    if (typeof step === 'number' && !(Math.abs(step - (pane.measured ?? NaN)) <= SAME))
      found(`STAGES ${step} and the pane ${pane.measured}`);
    // With no tape the best and the worst of the pane are what is measured.
    if (!(Math.abs((pane.best ?? NaN) - own) <= SAME || pane.best === own))
      found(`${own} and the pane's best ${pane.best}`);
    if (own >= 0 && (!same(pane.worst ?? NaN) || pane.worst !== pane.measured))
      found(`${own} and the pane's worst ${pane.worst}`);
  }
  if (verdict === 'cannot go' && own >= 0) found(`${own} and "cannot go"`);
  if (verdict === 'goes' && own < 25) found(`${own} and "goes"`);
  const [column, place] = stage.helps;
  const by = b(1, 80);
  const larger = stage.values(sizes).map((v, k) => (k === place ? v + by : v));
  const wide = single(callInCells(stage.id, ...larger));
  if (wide < own - stage.slack) found(`${column} ${by} mm more takes ${own} to ${wide}`);
  const smaller = single(
    callInCells(
      stage.id,
      ...stage.values([piece.length - by, piece.breadth, piece.thickness].sort((p, q) => q - p)),
    ),
  );
  if (smaller < own - stage.slack) found(`a length ${by} mm less takes ${own} to ${smaller}`);
}

const surveyed = (rows: ReturnType<typeof randomRoute>['rows']): StageRow[] => rows.map(stageRow);

/** Between two nearly alike pieces a search may find the lesser way [mm]. */
const ROUTE_SLACK = 25;

/** A whole route: what goes is walked and cut against air worked out anew, and a smaller piece is judged no worse. */
export function huntRoute(seed: number, report: HuntReport): void {
  const { rows, piece } = randomRoute(seed);
  const found = (what: string): void => void report.findings.push({ seed, what: `route: ${what}` });
  report.routes++;
  const walk = walked(rows, piece);
  if (walk) {
    report.claimed++;
    if (!walk.notDrawn) report.drawn++;
    const stray = strays(walk.keys, piece, walk.padding, routeAir(rows), 12);
    if (stray) found(`strays in row ${stray.row} at ${stray.point.map(Math.round).join(', ')}`);
  }
  const book = stageBook(5);
  const route = prepareRoute(surveyed(rows), book);
  const judged = (size: PieceSize): { verdict: Verdict; clearance: number } => {
    const { verdict, clearance = -Infinity } = judgeRoute(route, size, book, 25).finding;
    return { verdict, clearance };
  };
  const whole = judged(piece);
  const less = judged(sortedPiece(piece.length - 60, piece.breadth - 20, piece.thickness));
  if (
    verdictRank(less.verdict) > verdictRank(whole.verdict) &&
    less.clearance < whole.clearance - ROUTE_SLACK
  ) {
    found(`${whole.verdict} ${whole.clearance}, and a smaller piece ${less.verdict} ${less.clearance}`);
  }
}

/** What is called impossible is attacked by a search in a building that its survey allows. */
export function huntShut(seed: number, tries: number, report: HuntReport): void {
  const attacks: readonly ShutAttack[] = attackShut(seed, tries);
  for (const { claim, stood, path } of attacks) {
    report.shut++;
    if (stood) report.searched++;
    if (path)
      report.findings.push({ seed, what: `shut: ${claim}, and a motion of ${path.length} places passes` });
  }
}
