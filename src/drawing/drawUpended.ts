import type { PieceSize } from '../core/measures/piece';
import { shownUp } from '../core/measures/shown';
import { mmText, Paper } from './paper';
import { box, type Point, type Points } from './plane';
import type { StageDrawing } from './drawStage';

/** How far floor and ceiling reach beyond the piece [mm], and how thick they are drawn. */
const BESIDE = 250;
const THICK = 90;

/**
 * A piece that is stood on its short end under a ceiling, to scale, from the side: as it lies on its long edge, and with the
 * answer in the attitude in which it reaches highest, its diagonal plumb.
 * @param ceiling height [mm]
 */
export function drawUpended(
  ceiling: number,
  { length, breadth, thickness }: PieceSize,
  answer: 'with the answer' | 'without it',
  id: string,
): StageDrawing {
  const paper = new Paper();
  const diagonal = Math.hypot(length, thickness);
  const wide = length + 2 * BESIDE;
  for (const [low, high] of [
    [-THICK, 0],
    [ceiling, ceiling + THICK],
  ] as const) {
    paper.wall(box(0, low, wide, high));
    paper.outline(box(0, low, wide, high), 'edge');
  }
  const at: Point = [wide / 2, 0];
  // Turned about the corner that it stands on, flat by its thickness as it comes up.
  const slope = Math.PI / 2 - Math.atan2(thickness, length);
  const [c, s] = [Math.cos(slope), Math.sin(slope)];
  const corner = (u: number, v: number): Point => [at[0] + u * c - v * s, at[1] + u * s + v * c];
  const raised: Points = [corner(0, 0), corner(length, 0), corner(length, thickness), corner(0, thickness)];
  const lying = box(BESIDE, 0, BESIDE + length, thickness);
  paper.dimension([wide, 0], [wide, ceiling], 14, 'ceiling', ceiling);
  if (answer === 'without it') {
    paper.piece(lying);
  } else {
    paper.outline(lying, 'dashed');
    // What is too high for the ceiling stands nowhere.
    if (diagonal <= ceiling) paper.piece(raised);
    else paper.outline(raised, 'dashed');
    paper.mark([at[0], ceiling]);
    paper.note(`Its diagonal, ${mmText(shownUp(diagonal))}, plumb. Ring: closest`);
  }
  const title = 'A piece stood on end under a ceiling, from the side';
  const sizes = [length, breadth, thickness].map((side) => mmText(side)).join(' x ');
  // Said under the picture, and not in it as well.
  const told = answer === 'without it' ? ['How it comes up is shown with the working'] : paper.noted;
  const text = `${title}, to scale, in mm: ${sizes}; ${paper.dimensions.join(', ')}. ${told.map((note) => `${note}.`).join(' ')}`;
  return { svg: paper.svg(title, text, id, 296, 240), text };
}
