import { stepMotion, type StepMotion } from '../core/joint/walk/stepMotion';
import type { RouteWalk } from '../core/joint/walk/walkRoute';
import { paddedPiece, type PieceSize } from '../core/measures/piece';
import { prepareRoute, type PreparedRoute } from '../core/route/preparedRoute';
import { whereClosest } from '../core/route/reason';
import { judgedChain, routeMotion, type JudgedChain } from '../core/route/routeMotion';
import type { StageBook } from '../core/route/stageBook';
import { stepWords } from '../core/route/stepWords';
import { isStair, stageNeeds } from '../core/stages/kinds';
import { SKY } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import type { StageRow } from '../core/survey/table/stageRow';
import { drawStage, type StageDrawing } from './drawStage';
import { drawStep, drawStepSmall, type StepFacts } from './drawStep';
import { mmText } from './paper';

/** A step in pictures: the plan or the place alone first, then each numbered place from the side. */
export interface StepPictures {
  readonly pictures: readonly StageDrawing[];
  /** All of it in words. */
  readonly text: string;
  /** Clearance [mm a side] of what is drawn, where a way is: of the step by itself where the route's is not drawn. */
  readonly clearance?: number;
}

/** The carry of one piece along one route, ready to be drawn step by step. */
export interface CarriedRoute {
  /** Undefined where no chain is shown. */
  readonly chain: JudgedChain | undefined;
  /** Pictures of a step; undefined where it is no stage, or a measure that they need is missing. */
  draw(row: number, id: string, width?: number): StepPictures | undefined;
  /** One small picture of it, without words. */
  drawSmall(row: number, id: string): StageDrawing | undefined;
}

/** Greatest measure the worksheet takes [mm]: a room that holds any piece in any pose. */
const AMPLE = 20000;
/** Where a piece that passes would have lost more of its length than this share, it would be a picture of another. */
const MOST_LOST = 0.1;
/** What has lost all its thickness is drawn so thick [mm]. */
const LEAST_THICKNESS = 1;

/** A motion that is drawn, with what is said of it. */
interface Drawn {
  readonly motion: StepMotion;
  /** The route that it is drawn in, with its chain and the number of the row there. */
  readonly route: PreparedRoute;
  readonly chain: JudgedChain;
  readonly row: number;
  /** The step is drawn without the others. */
  readonly byItself: boolean;
}

/**
 * The judged chain of a piece with its one motion, to be drawn. A step to which the drawn motion does not reach is drawn
 * by itself, in the same pose, with room before it and behind it; one that shows no way is drawn without a piece, or,
 * where a piece that is little smaller passes, with that.
 */
export function carriedRoute(
  route: PreparedRoute,
  size: PieceSize,
  pieceName: string,
  book: StageBook,
  allowance: number,
): CarriedRoute {
  const chain = judgedChain(route, size, book, allowance);
  const walk = chain && shownSize(size, chain) ? routeMotion(chain, size) : undefined;
  const known = new Map<number, Drawn | undefined>();
  const drawnAt = (row: number): Drawn | undefined => {
    if (!known.has(row)) {
      const inRoute = chain && walk && motionIn(walk, route, chain, row, size, false);
      known.set(row, inRoute ?? byItself(row));
    }
    return known.get(row);
  };
  const byItself = (row: number): Drawn | undefined => {
    const step = route.steps[row];
    if (!step?.stage || isAlone(route)) return undefined;
    const alone = aloneRoute(step.row, book);
    const own = judgedChain(alone, size, book, allowance);
    // What the route does not pass is not shown to pass by a part of it.
    if (!own || own.clearance < 0 || (chain && chain.clearance < 0)) return undefined;
    // Nor is another way shown in place of the one that is told.
    const told = chain?.steps[row];
    if (told && (told.joint || told.passage?.answer.pose !== own.steps[0]?.passage?.answer.pose))
      return undefined;
    const ownWalk = routeMotion(own, size);
    return ownWalk && motionIn(ownWalk, alone, own, 0, size, true);
  };
  const factsOf = (row: number, drawn: Drawn | undefined): StepFacts | undefined => {
    const step = route.steps[row];
    const stage = step?.row.stage;
    if (!step || !stage) return undefined;
    const taken = drawn?.chain.steps[drawn.row] ?? chain?.steps[row];
    const { needs, may } = stageNeeds(stage);
    const measures = [...needs, ...may].flatMap((name) => {
      const value = step.row.measures[name];
      return value === undefined ? [] : [`${measureAtStage(name, stage)} ${measured(value)}`];
    });
    const shownChain = drawn?.chain ?? chain;
    return {
      name: stepWords(step.name),
      stage,
      pieceName,
      size,
      smaller: shownChain && shownChain.clearance < 0 ? shownSize(size, shownChain) : undefined,
      pose: taken?.passage?.answer.pose,
      clearance: taken?.clearance,
      closest: taken ? whereClosest({ route: drawn?.route ?? route, i: drawn?.row ?? row }, taken) : '',
      measures: measures.join(', '),
      supposed: [
        ...(drawn?.byItself ? ['Drawn by itself, with room before it and behind it'] : []),
        ...(drawn ? supposedAt(drawn.chain, drawn.row) : []),
      ],
      raise: taken?.passage?.answer.raise ?? 0,
      passes: taken !== undefined && taken.clearance >= 0 && (chain?.clearance ?? -1) >= 0,
      wayAt: (at) => shownChain?.reading.reading[drawn?.byItself ? at - row : at]?.way,
    };
  };
  return {
    chain,
    draw(row, id, width) {
      const drawn = drawnAt(row);
      const facts = factsOf(row, drawn);
      if (!facts) return undefined;
      if (!drawn) return placeAlone(route, row, facts, id, width);
      const { together, sides, text } = drawStep(drawn.motion, facts, {
        id,
        ...(width === undefined ? {} : { width }),
      });
      return {
        pictures: [together, ...sides],
        text,
        ...(facts.clearance === undefined ? {} : { clearance: facts.clearance }),
      };
    },
    drawSmall(row, id) {
      const drawn = drawnAt(row);
      const facts = factsOf(row, drawn);
      if (drawn && facts) return drawStepSmall(drawn.motion, facts, id);
      const motion = walk && stepMotion(walk, row, size);
      return motion && facts && drawStepSmall({ ...motion, whole: false }, facts, id);
    },
  };
}

/** A measure as it was taken; a height under the sky is none. */
const measured = (value: number): string => (value >= SKY ? 'open' : mmText(value));

/** A row between the outdoors and an ample room: what is said and drawn of a stage by itself. */
export function aloneRoute(row: StageRow, book: StageBook): PreparedRoute {
  // The number of the step matters to the route, not to the stage.
  const step = Number.isNaN(row.step) ? 1 : row.step;
  const ample: StageRow = {
    ...row,
    step: step + 1,
    stage: 'room',
    stageText: 'room',
    measures: { length: AMPLE, width: AMPLE, height: AMPLE },
    refused: [],
  };
  return prepareRoute([{ ...row, step }, ample], book);
}

/** Whether a route is one row by itself already. */
const isAlone = ({ steps }: PreparedRoute): boolean =>
  steps.length < 2 || (steps.length === 2 && steps[1]?.row.measures.length === AMPLE);

/** The size that is drawn: the piece, or one that just passes, where that is little smaller. */
function shownSize(size: PieceSize, { clearance }: JudgedChain): PieceSize | undefined {
  if (clearance >= 0) return size;
  if (-2 * clearance > MOST_LOST * size.length) return undefined;
  const smaller = paddedPiece(size, clearance);
  return { ...smaller, thickness: Math.max(LEAST_THICKNESS, smaller.thickness) };
}

function motionIn(
  walk: RouteWalk,
  route: PreparedRoute,
  chain: JudgedChain,
  row: number,
  size: PieceSize,
  byItself: boolean,
): Drawn | undefined {
  const shown = shownSize(size, chain);
  const motion = shown && stepMotion(walk, row, shown);
  return motion?.whole ? { motion, route, chain, row, byItself } : undefined;
}

function placeAlone(
  route: PreparedRoute,
  row: number,
  { passes, stage }: StepFacts,
  id: string,
  width: number | undefined,
): StepPictures | undefined {
  const why = passes
    ? 'This part of the way could not be drawn: the place alone'
    : 'No way shown: the place alone';
  const measures = route.steps[row]?.row.measures ?? {};
  const drawing = drawStage(stage, measures, {
    id,
    notes: [why],
    ...(width === undefined ? {} : { width }),
  });
  return drawing && { pictures: [drawing], text: drawing.text };
}

/** A survey that does not say which way its stair goes is drawn one way. */
function supposedAt({ reading }: JudgedChain, row: number): string[] {
  const read = reading.reading[row];
  if (!read?.stage || !isStair(read.stage) || read.row.way !== undefined) return [];
  return [`Drawn going ${read.way}: the survey does not say`];
}
