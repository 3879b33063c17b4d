import type { PieceSize, Pose } from '../core/measures/piece';
import { drawnPassage } from '../core/route/drawnPassage';
import { judgeRoute, worstClearance } from '../core/route/judgeRoute';
import { prepareRoute } from '../core/route/preparedRoute';
import { stageBook } from '../core/route/stageBook';
import { stagePassages } from '../core/route/stagePassages';
import { tapedMeasures, tapedPiece } from '../core/route/tapeCase';
import type { Verdict } from '../core/route/verdict';
import { ALL_HOLDS } from '../core/motion/hold';
import type { StageRow } from '../core/survey/table/stageRow';
import type { DrawnAnswer } from '../drawing/stageView';

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
  /** What to draw; absent where no motion is shown. */
  readonly answer?: DrawnAnswer;
}

/** Greatest measure the worksheet takes [mm]: a room that holds any piece in any pose. */
const AMPLE = 20000;

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

/** The pane reads its row again at every change of the workbook, and a landing can take a while to judge. */
const known = new Map<string, JudgedStage>();
const MOST_KNOWN = 100;

function judgeAnew(row: StageRow, size: PieceSize, allowance: number, tape: number): JudgedStage {
  const book = stageBook(tape);
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
  const route = prepareRoute([{ ...row, step }, ample], book);
  const judged = judgeRoute(route, size, book, allowance).judge('every step').steps[0]!;
  const { stage } = route.steps[0]!;
  const { verdict, because, pose } = judged;
  if (!stage) return { verdict, because, pose, worst: undefined, measured: undefined, best: undefined };

  const piece = book.pieceOf(size);
  const { passages } = book.caseOf(stage, piece, 'measured');
  const shown = drawnPassage(passages, judged.clearance, pose);
  return {
    verdict,
    because,
    pose,
    worst: worstClearance(route, size, book),
    measured: judged.clearance ?? -Infinity,
    best: Math.max(
      judged.clearance ?? -Infinity,
      greatest(
        tapedMeasures(row.stage!, row.measures, tape, 'best').flatMap((measures) =>
          stagePassages(row.stage!, measures, tapedPiece(size, tape, 'best'), 'as in a route'),
        ),
      ),
    ),
    ...(shown ? { answer: { ...shown.answer, hold: ALL_HOLDS[shown.from]! } } : {}),
  };
}

const greatest = (passages: readonly { readonly answer: { readonly clearance: number } }[]): number =>
  passages.reduce((most, { answer }) => Math.max(most, answer.clearance), -Infinity);
