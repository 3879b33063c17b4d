import type { PieceSize, Pose } from '../core/measures/piece';
import { worstClearance } from '../core/route/casesOf';
import { judgeRoute } from '../core/route/judgeRoute';
import { stageBook } from '../core/route/stageBook';
import { stagePassages } from '../core/route/stagePassages';
import { tapedMeasures, tapedPiece } from '../core/route/tapeCase';
import type { Verdict } from '../core/route/verdict';
import type { StageRow } from '../core/survey/table/stageRow';
import { aloneRoute, carriedRoute, type StepPictures } from '../drawing/carriedRoute';
import { firstOf } from '../core/lists/ends';

/** What is said of one stage by itself, with room for everything before it and after it. */
export interface JudgedStage {
  readonly verdict: Verdict;
  /** Why, in a clause that can be read to a customer. */
  readonly because: string;
  readonly pose: Pose | undefined;
  /** Clearances [mm a side]; -Infinity where no motion is shown, undefined where nothing can be computed. */
  readonly worst: number | undefined;
  readonly measured: number | undefined;
  readonly best: number | undefined;
  /** The stage in pictures, with the way of the piece where one is shown; undefined where a measure is missing. */
  draw(pieceName: string): StepPictures | undefined;
}

/**
 * Judges one stage of a route for one piece, with the words and rules of the whole route: it is put between
 * the outdoors and an ample room.
 * @param allowance clearance that the firm insists on [mm a side]
 * @param tape how far off a measure may be [mm]
 */
export function judgeStage(row: StageRow, size: PieceSize, allowance: number, tape: number): JudgedStage {
  const key = JSON.stringify([row.stage, row.stageText, row.measures, row.refused, size, allowance, tape]);
  let judged = known.get(key);
  if (!judged) {
    if (known.size >= MOST_KNOWN) known.clear();
    judged = judgeAnew(row, size, allowance, tape);
    known.set(key, judged);
  }
  return judged;
}

/** The pane reads its row again at every change of the workbook, and a landing can take a while to judge and to draw. */
const known = new Map<string, JudgedStage>();
const MOST_KNOWN = 100;

function judgeAnew(row: StageRow, size: PieceSize, allowance: number, tape: number): JudgedStage {
  const book = stageBook(tape);
  const route = aloneRoute([row], book);
  const judged = firstOf(judgeRoute(route, size, book, allowance).judge('every step').steps);
  const { stage } = firstOf(route.steps);
  const given = row.stage;
  const { verdict, because, pose } = judged;
  const drawn = new Map<string, StepPictures | undefined>();
  const draw = (pieceName: string): StepPictures | undefined => {
    if (!drawn.has(pieceName)) {
      drawn.set(pieceName, carriedRoute(route, size, pieceName, book, allowance).draw(0, 'pane-stage'));
    }
    return drawn.get(pieceName);
  };
  if (!stage || !given)
    return { verdict, because, pose, worst: undefined, measured: undefined, best: undefined, draw };

  return {
    verdict,
    because,
    pose,
    worst: worstClearance(route, size, book),
    measured: judged.clearance ?? -Infinity,
    best: Math.max(
      judged.clearance ?? -Infinity,
      greatest(
        tapedMeasures(given, row.measures, tape, 'best').flatMap((measures) =>
          stagePassages(given, measures, tapedPiece(size, tape, 'best'), 'as in a route'),
        ),
      ),
    ),
    draw,
  };
}

/** What a search found by chance gives no figure. */
const greatest = (
  passages: readonly { readonly answer: { readonly clearance: number; readonly byChance?: boolean } }[],
): number =>
  passages.reduce(
    (most, { answer }) => (answer.byChance === true ? most : Math.max(most, answer.clearance)),
    -Infinity,
  );
