import { degrees } from '../core/measures/angle';
import { sizesOfHold, type Hold } from '../core/motion/hold';
import type { PieceSize } from '../core/measures/piece';
import type { AnswerWithMotion, StageAnswer } from '../core/motion/stageAnswer';
import type { Paper } from './paper';
import { nearestPlaces, rectangle, type Corners, type Point, type Points } from './plane';
import { shownGiven } from '../core/measures/shown';

/** What a drawing takes from a stage's answer; a motion, where there is one, places the piece. */
export type DrawnAnswer = Pick<StageAnswer, 'clearance' | 'pose' | 'critical'> &
  Partial<Pick<AnswerWithMotion, 'motion' | 'scene'>> & { readonly hold?: Hold };

/** The piece that is drawn, with the answer that says how. */
export interface DrawnPiece {
  readonly size: PieceSize;
  readonly answer: DrawnAnswer;
}

/** A view of a stage: the drawing and the sentences that say the same. */
export interface StageView {
  readonly paper: Paper;
  /** What is drawn: `Plan of a corner`. */
  readonly title: string;
  /** Where the piece stands, in words; '' without a piece. */
  readonly place: string;
  /** The piece's outline as drawn, and the faces of walls, floors and ceilings round it. */
  readonly outline?: Points;
  readonly faces: readonly Points[];
  /** What the marks mean, where it is not the usual. */
  readonly legend?: string;
}

/** Places nearer to each other than this are one mark, and at most this many are marked. */
const SAME_PLACE = 60;
const MOST_MARKS = 3;

/**
 * Draws a rectangle of the piece, dashed the size that would just pass (its padding is the clearance), and
 * rings where it is nearest to a face.
 */
export function placeRectangle(
  paper: Paper,
  centre: Point,
  along: number,
  across: number,
  angle: number,
  clearance: number,
  faces: readonly Points[],
): Corners {
  const outline = rectangle(centre, along, across, angle);
  paper.piece(outline);
  const paddedAlong = along + 2 * clearance;
  const paddedAcross = across + 2 * clearance;
  if (Math.abs(clearance) >= 3 && paddedAlong > 0 && paddedAcross > 0) {
    paper.outline(rectangle(centre, paddedAlong, paddedAcross, angle), 'dashed');
  }
  markNearest(paper, outline, faces);
  return outline;
}

/** Rings the places where the outline is nearest to the faces. */
export function markNearest(paper: Paper, outline: Points, faces: readonly Points[]): void {
  const places = nearestPlaces(outline, faces);
  const least = places[0]?.distance ?? 0;
  const marked: Point[] = [];
  for (const { at, distance } of places) {
    if (distance > least + 2 || marked.length === MOST_MARKS) break;
    if (marked.some(([x, y]) => Math.hypot(x - at[0], y - at[1]) < SAME_PLACE)) continue;
    marked.push(at);
    paper.mark(at);
  }
}

/** The two sizes that a pose shows across the way and upright. */
export function sectionOf({ size, answer }: DrawnPiece): { across: number; upright: number } {
  if (answer.hold) {
    const { across, upright } = sizesOfHold(size, answer.hold);
    return { across, upright };
  }
  switch (answer.pose) {
    case 'flat':
      return { across: size.breadth, upright: size.thickness };
    case 'on end':
      return { across: size.thickness, upright: size.length };
    default:
      return { across: size.thickness, upright: size.breadth };
  }
}

/** `38 degrees`, for sentences. */
export const degreesText = (angle: number): string => `${shownGiven(degrees(Math.abs(angle)), 0)} degrees`;
