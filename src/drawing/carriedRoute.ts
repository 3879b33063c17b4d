import { stepMotion, type StepMotion } from '../core/joint/walk/stepMotion';
import type { RouteWalk } from '../core/joint/walk/walkRoute';
import { paddedPiece, type PieceSize } from '../core/measures/piece';
import type { ChainStep } from '../core/route/chain';
import { prepareRoute, type PreparedRoute } from '../core/route/preparedRoute';
import { closestOfStep } from '../core/route/reason';
import { judgedChain, routeMotion, type JudgedChain } from '../core/route/routeMotion';
import type { StageBook } from '../core/route/stageBook';
import { rowThatDecides } from '../core/route/rowThatDecides';
import { NOWHERE_CLOSEST } from '../core/motion/closest';
import { isStair, stageNeeds } from '../core/stages/kinds';
import { SKY } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import type { StageRow } from '../core/survey/table/stageRow';
import { drawStage, type StageDrawing } from './drawStage';
import { drawStep, drawStepSmall } from './drawStep';
import type { StepFacts } from './stepFacts';
import { measureOfFace } from './measureOfFace';
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
  /** Where it is drawn without the others: the row with which what is drawn begins. */
  readonly from: number | undefined;
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
      const inRoute = chain && walk && motionIn(walk, route, chain, row, size);
      known.set(row, inRoute ?? byItself(row));
    }
    return known.get(row);
  };
  const byItself = (row: number): Drawn | undefined => {
    const step = route.steps[row];
    if (!step?.stage || isAlone(route)) return undefined;
    const told = chain?.steps[row];
    // What the route does not pass is not shown to pass by a part of it, nor is another way shown than the one told.
    if (!chain || !told || chain.clearance < 0) return undefined;
    // Rows that are passed together are drawn together.
    const [first, last] = told.joint ?? [row, row];
    const rows = route.steps.slice(first, last + 1).map((one) => one.row);
    const alone = aloneRoute(rows, book);
    const own = chainAlone(alone, chain, first, last);
    const ownWalk = own && routeMotion(own, size);
    return ownWalk && motionIn(ownWalk, alone, own, row - first, size, first);
  };
  const factsOf = (row: number, drawn: Drawn | undefined): StepFacts | undefined => {
    const step = route.steps[row];
    const stage = step?.row.stage;
    if (!step || !stage) return undefined;
    // Of the route, also where it is drawn by itself.
    const taken = chain?.steps[row];
    const { needs, may } = stageNeeds(stage);
    const measures = [...needs, ...may].flatMap((name) => {
      const value = step.row.measures[name];
      return value === undefined ? [] : [`${measureAtStage(name, stage)} ${measured(value)}`];
    });
    const shownChain = drawn?.chain ?? chain;
    const shownRoute = drawn?.route ?? route;
    const at = taken ? closestOfStep({ route, i: row }, taken) : NOWHERE_CLOSEST;
    return {
      name: step.called,
      stage,
      pieceName,
      size,
      smaller: shownChain && shownChain.clearance < 0 ? shownSize(size, shownChain) : undefined,
      pose: taken?.passage?.answer.pose,
      clearance: taken?.clearance,
      closest: at.words,
      decidingMeasure: at.figured ? undefined : decidingMeasure(drawn),
      measures: measures.join(', '),
      supposed: [
        ...(drawn?.from === undefined ? [] : ['Drawn by itself, with room before it and behind it']),
        ...(drawn ? supposedAt(drawn.chain, drawn.row) : []),
      ],
      raise: taken?.passage?.answer.raise ?? 0,
      passes: taken !== undefined && taken.clearance >= 0 && (chain?.clearance ?? -1) >= 0,
      stepsAt: (at) => {
        const { stage: there, measures: known = {} } = shownRoute.steps[at]?.row ?? {};
        const { rise, going } = known;
        const stepped = there !== undefined && isStair(there) && there !== 'winder';
        return stepped && rise !== undefined && going !== undefined ? { rise, going } : undefined;
      },
      wayAt: (at) => {
        const read = shownChain?.reading.reading[at];
        return read?.stage && isStair(read.stage) ? read.way : undefined;
      },
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

/** Rows between the outdoors and an ample room: what is said and drawn of them by themselves. */
export function aloneRoute(rows: readonly StageRow[], book: StageBook): PreparedRoute {
  const [first] = rows;
  if (!first) return prepareRoute([], book);
  // The number of a step matters to the route, not to the stage; one row keeps its own.
  const from = rows.length > 1 || Number.isNaN(first.step) ? 1 : first.step;
  const numbered = rows.map((row, i) => ({ ...row, step: from + i }));
  const ample: StageRow = {
    ...first,
    step: from + rows.length,
    stage: 'room',
    stageText: 'room',
    measures: { length: AMPLE, width: AMPLE, height: AMPLE },
    refused: [],
  };
  return prepareRoute([...numbered, ample], book, 'by themselves');
}

/** Whether a route is one row by itself already. */
const isAlone = ({ steps }: PreparedRoute): boolean =>
  steps.length < 2 || (steps.length === 2 && steps[1]?.row.measures.length === AMPLE);

/** The chain that takes some steps as they are told, between the outdoors and the ample room, in which it is held as it comes. */
function chainAlone(
  alone: PreparedRoute,
  { steps, reading: told }: JudgedChain,
  first: number,
  last: number,
): JudgedChain | undefined {
  const reading = alone.readings.find(({ reading: rows }) =>
    rows.every(({ way }, k) => way === told.reading[first + k]?.way || k > last - first),
  );
  const own = steps.slice(first, last + 1);
  const [begins, ends] = [own[0], own[own.length - 1]];
  if (!reading || !begins || !ends || own.some(({ passage }) => !passage)) return undefined;
  const clearance = Math.min(
    ...own.map((step) => (step.closest === 'passage' ? step.clearance : (step.passage?.clearance ?? 0))),
  );
  const inside = own.map((step, k): ChainStep => {
    const [enters, leaves] = [k === 0 ? step.from : step.enters, first + k === last ? step.to : step.leaves];
    const joint = step.joint && ([0, last - first] as const);
    return { ...step, enters, leaves, joint };
  });
  const room: ChainStep = {
    enters: ends.to,
    from: ends.to,
    to: ends.to,
    leaves: ends.to,
    passage: undefined,
    clearance: Infinity,
    closest: 'passage',
  };
  return { reading, steps: [...inside, room], clearance };
}

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
  from?: number,
): Drawn | undefined {
  const shown = shownSize(size, chain);
  const step = chain.steps[row];
  const [first, last] = step?.joint ?? [row, row];
  const decidingRow = rowThatDecides(route, chain.steps, row);
  const motion =
    shown &&
    stepMotion(
      walk,
      row,
      shown,
      step && {
        // A limit beside the step, which has no face, names rows of the route that may not be drawn here.
        faces: step.closest === 'passage' && step.passage ? step.passage.answer.critical.faces : [],
        atEnd: step.passage?.answer.critical.atEnd,
        rows:
          decidingRow === undefined
            ? Array.from({ length: last - first + 1 }, (_, k) => first + k)
            : [decidingRow],
        together: [first, last],
      },
    );
  return motion?.whole ? { motion, route, chain, row, from } : undefined;
}

/** The measure of the face that the piece is closest to, as a survey has it: `Height 2040`. */
function decidingMeasure(drawn: Drawn | undefined): string | undefined {
  const contact = drawn?.motion.tightest?.closest;
  const row = contact && drawn.route.steps[contact.row]?.row;
  if (!contact?.face || !row?.stage) return undefined;
  const { stage, measures } = row;
  const named = measureOfFace(stage, contact.face).flatMap((name) => {
    const value = measures[name];
    return value === undefined || value >= SKY ? [] : [`${measureAtStage(name, stage)} ${mmText(value)}`];
  });
  return named.length > 0 ? named.join(', ') : undefined;
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
