import type { PieceSize } from '../core/measures/piece';
import type { StageMeasures } from '../core/stages/measures';
import { type StageName, stageNeeds } from '../core/stages/kinds';
import { measureAtStage } from '../core/survey/words/measureHeading';
import { motionView } from './motionView';
import { mmText } from './paper';
import type { DrawnAnswer, DrawnPiece, StageView } from './stageView';
import { viewOf } from './stageViews';
import { mmLeft, mmNeeded } from '../core/route/reason';

export interface DrawingOptions {
  /** Begins the ids inside the drawing: letters, digits and dashes; two drawings on a page need two of them. */
  readonly id?: string;
  /** Greatest size of the drawing [px]; the words under it come on top. */
  readonly width?: number;
  readonly height?: number;
  /** What the piece is called. */
  readonly pieceName?: string;
}

export interface StageDrawing {
  /** SVG text, complete with its title and description. */
  readonly svg: string;
  /** The same in words. */
  readonly text: string;
}

/**
 * Draws a stage to scale, with the piece where it is closest.
 *
 * Plan for what turns (corner, side door, landings, winder, lift, room), side view for a flight, front view for
 * a door or a passage. Solid building is hatched, the piece heavily outlined, dashed the size that would just
 * pass, rings where it is closest.
 *
 * @param measures as surveyed [mm, degrees]
 * @param size the piece; undefined: the stage alone
 * @param answer what the stage answers for the piece, as measured; undefined: the stage alone
 * @returns SVG text and the same in words; undefined when a measure that the view needs is missing or cannot be
 *   drawn
 */
export function drawStage(
  stage: StageName,
  measures: StageMeasures,
  size: PieceSize | undefined,
  answer: DrawnAnswer | undefined,
  options: DrawingOptions = {},
): StageDrawing | undefined {
  if (stageNeeds(stage).needs.some((name) => measures[name] === undefined)) return undefined;
  if (!viewOf(stage).canDraw(measures)) return undefined;
  // At a clearance that takes its whole length away a piece passes because nothing of it is left.
  const shown = size && answer && answer.clearance > -Math.max(size.length, size.breadth, size.thickness) / 2;
  const piece = shown ? { size, answer } : undefined;
  const view = shownMotion(stage, measures, piece) ?? viewOf(stage).view(measures, piece);
  const { id = 'stage', width = 296, height = 260, pieceName = 'Piece' } = options;
  const sentences = [`${view.title}, to scale, in mm: ${view.paper.dimensions.join(', ')}.`];
  for (const note of view.paper.noted) sentences.push(`${note}.`);
  if (piece) {
    const { length, breadth, thickness } = piece.size;
    const sizes = [length, breadth, thickness].map(mmText).join(' x ');
    view.paper.note(`${pieceName}: ${sizes}, ${piece.answer.pose}`);
    view.paper.note(view.legend ?? 'Ring: closest. Dashed: the size that just passes');
    sentences.push(
      `${pieceName}, ${sizes} mm, ${piece.answer.pose}.`,
      `${view.place}.`,
      closest(piece.answer),
    );
  }
  if (size && !piece) {
    const why = 'No way through is shown, so the piece is not drawn';
    view.paper.note(why);
    sentences.push(`${why}.`);
  }
  const text = sentences.join(' ');
  return { svg: view.paper.svg(view.title, text, id, width, height), text };
}

function closest({ clearance, critical }: DrawnAnswer): string {
  const spare =
    clearance >= 0 ? `${mmLeft(clearance)} a side to spare` : `${mmNeeded(-clearance)} a side too large`;
  return `Closest ${critical}: ${spare}.`;
}

function shownMotion(
  stage: StageName,
  measures: StageMeasures,
  piece: DrawnPiece | undefined,
): StageView | undefined {
  const { motion, scene } = piece?.answer ?? {};
  if (!piece || !motion || !scene || motion.length === 0 || !viewOf(stage).byMotion) return undefined;
  const { needs, may } = stageNeeds(stage);
  const given = [...needs, ...may].map((name) => [measureAtStage(name, stage), measures[name]] as const);
  return motionView(`Plan of a ${stage}`, given, piece.size, motion, scene);
}
