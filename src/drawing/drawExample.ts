import { sortedPiece, type PieceSize } from '../core/measures/piece';
import { stageBook } from '../core/route/stageBook';
import type { StageName } from '../core/stages/kinds';
import { SKY, type MeasureName, type StageMeasures } from '../core/stages/measures';
import type { StageRow } from '../core/survey/table/stageRow';
import { aloneRoute, carriedRoute } from './carriedRoute';
import { drawStage, type StageDrawing } from './drawStage';
import { drawUpended } from './drawUpended';

/** What a worked example is shown as: a stage with its measures in the order of what is given, then the piece. */
interface ShownAs {
  readonly stage: StageName;
  readonly measures: readonly MeasureName[];
  /** Measures that are not given and do not matter. */
  readonly also?: StageMeasures;
  /** Length, breadth and thickness follow. */
  readonly piece: boolean;
}

const RIGHT_ANGLE = { turn: 90 } as const;

const SHOWN_AS: Readonly<Record<string, ShownAs>> = {
  OPENING: { stage: 'door', measures: ['width', 'height'], piece: true },
  DIAGONAL: { stage: 'door', measures: ['width', 'height'], piece: false },
  CORNERLENGTH: {
    stage: 'corner',
    measures: ['width', 'widthOut'],
    also: { ...RIGHT_ANGLE, height: SKY },
    piece: false,
  },
  CORNER: { stage: 'corner', measures: ['width', 'widthOut', 'height'], also: RIGHT_ANGLE, piece: true },
  FLIGHT: { stage: 'flight', measures: ['width', 'height', 'rise', 'going'], piece: true },
  SIDEDOOR: {
    stage: 'side door',
    measures: ['width', 'height', 'wall', 'widthOut', 'ceiling'],
    piece: true,
  },
};

/** A worked example whose place is to be drawn. */
interface ExampleGiven {
  /** Function that answers it, without its namespace. */
  readonly id: string;
  /** What is given, in the order of the function's arguments [mm]. */
  readonly given: readonly number[];
  /** Its working is asked for, so that the answer is no secret. */
  readonly isAsked: boolean;
}

/** Pictures of a worked example with all of it in words. */
export interface ExamplePicture {
  readonly pictures: readonly StageDrawing[];
  readonly text: string;
}

/**
 * A worked example in pictures, from what is given: the place alone, and once its working is asked for the piece on its
 * way, ringed where it is closest.
 * @param id of the drawing on its page
 * @returns undefined where the example is no place that a piece passes
 */
export function drawExample(
  { id: called, given, isAsked }: ExampleGiven,
  id: string,
): ExamplePicture | undefined {
  if (called === 'UPEND') {
    const [ceiling = 0, ...sizes] = given;
    const size = sizesOf(sizes);
    const one = size && drawUpended(ceiling, size, isAsked ? 'with the answer' : 'without it', id);
    return one && { pictures: [one], text: one.text };
  }
  const as = SHOWN_AS[called];
  if (!as) return undefined;
  const named = as.measures.map((name, i) => [name, given[i]] as const);
  const measures: StageMeasures = { ...as.also, ...Object.fromEntries(named) };
  const size = as.piece ? sizesOf(given.slice(as.measures.length)) : undefined;
  if (isAsked && size) {
    const book = stageBook(0);
    const carried = carriedRoute(aloneRoute([rowOf(as.stage, measures)], book), size, 'slate', book, 0);
    const drawn = carried.draw(0, id);
    if (drawn) return drawn;
  }
  const alone = drawStage(as.stage, measures, { id });
  // Said under the picture, and not in it as well.
  const later = size ? ' The piece on its way is shown with the working.' : '';
  return alone && { pictures: [alone], text: alone.text + later };
}

function sizesOf([length, breadth, thickness]: readonly number[]): PieceSize | undefined {
  if (length === undefined || breadth === undefined || thickness === undefined) return undefined;
  return sortedPiece(length, breadth, thickness);
}

const rowOf = (stage: StageName, measures: StageMeasures): StageRow => ({
  survey: '',
  step: 1,
  stage,
  stageText: stage,
  measures,
  refused: [],
  note: '',
  rowIndex: 0,
});
