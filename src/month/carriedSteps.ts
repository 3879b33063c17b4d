import { stepMotion } from '../core/joint/walk/stepMotion';
import type { RouteWalk } from '../core/joint/walk/walkRoute';
import type { PieceSize } from '../core/measures/piece';
import type { PreparedRoute } from '../core/route/preparedRoute';
import { whereClosest } from '../core/route/reason';
import { judgedChain, routeMotion, type JudgedChain } from '../core/route/routeMotion';
import type { StageBook } from '../core/route/stageBook';
import { stepWords } from '../core/route/stepWords';
import { isStair, stageNeeds } from '../core/stages/kinds';
import { measureAtStage } from '../core/survey/words/measureHeading';
import { drawStep, drawStepSmall, type StepDrawing, type StepFacts } from '../drawing/drawStep';
import type { StageDrawing } from '../drawing/drawStage';
import { mmText } from '../drawing/paper';

/** The carry of one piece along one route, ready to be drawn step by step. */
export interface CarriedRoute {
  readonly chain: JudgedChain;
  /** Pictures of a step: numbered places from above and from the side; undefined where the step is no stage. */
  draw(row: number, id: string, width?: number): StepDrawing | undefined;
  /** One small picture of it, without words. */
  drawSmall(row: number, id: string): StageDrawing | undefined;
  /** Its motion is drawn all the way through. */
  isDrawn(row: number): boolean;
}

/**
 * The judged chain of a piece with its one motion.
 * @returns undefined where no chain is shown
 */
export function carriedRoute(
  route: PreparedRoute,
  size: PieceSize,
  pieceName: string,
  book: StageBook,
  allowance: number,
): CarriedRoute | undefined {
  const chain = judgedChain(route, size, book, allowance);
  const walk = routeMotion(route, size, book, allowance);
  if (!chain || !walk) return undefined;
  const known = new Map<number, ReturnType<typeof stepMotion>>();
  const motionOf = (row: number) => {
    let found = known.get(row);
    if (!found) known.set(row, (found = passingMotion(walk, row, size, chain)));
    return found;
  };
  const factsOf = (row: number): StepFacts | undefined => {
    const step = route.steps[row];
    const taken = chain.steps[row];
    const stage = step?.row.stage;
    if (!step || !taken || !stage) return undefined;
    const { needs } = stageNeeds(stage);
    const measures = needs.flatMap((name) => {
      const value = step.row.measures[name];
      return value === undefined ? [] : [`${measureAtStage(name, stage)} ${mmText(value)}`];
    });
    return {
      name: stepWords(step.name),
      stage,
      pieceName,
      size,
      pose: taken.passage?.answer.pose,
      clearance: taken.clearance,
      closest: whereClosest({ route, i: row }, taken),
      measures: measures.join(', '),
      supposed: supposedAt(chain, row),
      raise: taken.passage?.answer.raise ?? 0,
      passes: taken.clearance >= 0,
    };
  };
  return {
    chain,
    draw(row, id, width) {
      const facts = factsOf(row);
      return facts && drawStep(motionOf(row), facts, { id, ...(width === undefined ? {} : { width }) });
    },
    drawSmall(row, id) {
      const facts = factsOf(row);
      return facts && drawStepSmall(motionOf(row), facts, id);
    },
    isDrawn: (row) => motionOf(row).whole,
  };
}

/** A survey that does not say which way its stair goes is drawn one way. */
function supposedAt({ reading }: JudgedChain, row: number): string | undefined {
  const read = reading.reading[row];
  if (!read?.stage || !isStair(read.stage) || read.row.way !== undefined) return undefined;
  return `Drawn going ${read.way}: the survey does not say`;
}

/** A step that does not pass is drawn alone: a piece that is made smaller would be a picture of something else. */
function passingMotion(
  walk: RouteWalk,
  row: number,
  size: PieceSize,
  chain: JudgedChain,
): ReturnType<typeof stepMotion> {
  const motion = stepMotion(walk, row, size);
  return chain.clearance < 0 ? { ...motion, whole: false } : motion;
}
