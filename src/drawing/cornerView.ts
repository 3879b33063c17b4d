import { corner } from '../core/stages/corner/corner';
import { sizesOfHold, type Hold } from '../core/motion/hold';
import { radians } from '../core/measures/angle';
import { Paper, mmText } from './paper';
import { bendShape, placeInBend } from './placeInBend';
import type { Point, Points } from './plane';
import { degreesText, placeRectangle, type DrawnPiece, type StageView } from './stageView';

export interface CornerDrawn {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly height: number;
  /** [degrees] */
  readonly turn: number;
}

/** Thickness at which walls are drawn [mm]: nobody measured it. */
const WALL = 90;

/** A corner in plan, the piece at its closest angle. `details` adds what a winder has on its floor. */
export function cornerView(
  measures: CornerDrawn,
  piece: DrawnPiece | undefined,
  title = 'Plan of a corner',
  details?: (paper: Paper, shape: ReturnType<typeof bendShape>) => void,
): StageView {
  const paper = new Paper();
  const { widthIn, widthOut } = measures;
  const turn = radians(measures.turn);
  const shape = bendShape(widthIn, widthOut, turn);
  const plan = piece ? planSizes(measures, piece) : undefined;
  const place = plan ? placeInBend(plan.p, plan.q, widthIn, widthOut, turn) : undefined;

  // The arms as far as the piece reaches into them, and a little more.
  let back = Math.max(400, 0.5 * widthIn, -shape.outer[1] + 200);
  let on = Math.max(400, 0.5 * widthOut, shape.meets(0, widthOut) + 200);
  if (plan && place) {
    const reach = Math.max(plan.p, plan.q) / 2;
    back = Math.max(back, -place.centre[1] + reach * Math.cos(place.angle) + 150);
    const ahead =
      (place.centre[0] - shape.inner[0]) * shape.out[0] + (place.centre[1] - shape.inner[1]) * shape.out[1];
    on = Math.max(on, ahead + reach * Math.abs(Math.cos(turn - place.angle)) + 150);
  }
  const outerFace: Points = [[0, -back], shape.outer, shape.alongOut(on, widthOut)];
  const innerFace: Points = [[widthIn, -back], shape.inner, shape.alongOut(on, 0)];
  const outerBack: Point = shape.alongOut(shape.meets(-WALL, widthOut + WALL), widthOut + WALL);
  const innerBack: Point = shape.alongOut(shape.meets(widthIn + WALL, -WALL), -WALL);
  paper.wall([...outerFace, shape.alongOut(on, widthOut + WALL), outerBack, [-WALL, -back]]);
  paper.wall([...innerFace, shape.alongOut(on, -WALL), innerBack, [widthIn + WALL, -back]]);
  paper.line(outerFace, 'face');
  paper.line(innerFace, 'face');
  details?.(paper, shape);
  paper.dimension([widthIn, -back], [0, -back], 14, 'width in', widthIn);
  paper.dimension(shape.alongOut(on, widthOut), shape.alongOut(on, 0), 14, 'width out', widthOut);

  const faces = [outerFace, innerFace];
  if (!piece || !plan || !place) return { paper, title, place: '', faces };
  const angle = Math.PI / 2 - place.angle;
  const outline = placeRectangle(
    paper,
    place.centre,
    plan.p,
    plan.q,
    angle,
    Math.min(piece.answer.clearance, place.clearance),
    faces,
  );
  paper.dimension(outline[0], outline[3], plan.q < 150 ? -14 : -8, '', plan.p);
  return {
    paper,
    title,
    place:
      `The piece, ${mmText(plan.p)} x ${mmText(plan.q)} mm in plan` +
      `${plan.tilt > 0 ? ` and ${degreesText(plan.tilt)} out of level` : ''}, has its long side at ` +
      `${degreesText(Math.min(place.angle, Math.PI - place.angle))} to the way in`,
    outline,
    faces,
  };
}

const LEVEL: Readonly<Record<string, Hold>> = {
  'on edge': 'LB',
  flat: 'LT',
  'on end': 'BL',
  crabwise: 'LB',
};

/** The rectangle that the piece shows in plan, long side first, in the answer's pose. */
function planSizes({ widthIn, widthOut, height, turn }: CornerDrawn, { size, answer }: DrawnPiece) {
  if (answer.pose === 'tilted' || answer.pose === 'leaning') {
    const best = corner({ widthIn, widthOut, ceiling: height, turn: radians(turn) }, size);
    if (best.tilt > 0) return tiltedSizes(best.tilt, best.clearance, height, size);
  }
  const { along, across } = sizesOfHold(size, answer.hold ?? LEVEL[answer.pose] ?? 'LB');
  return { p: Math.max(along, across), q: Math.min(along, across), tilt: 0 };
}

/** Of the three faces that can be tilted, the one that just meets the ceiling when padded. */
function tiltedSizes(tilt: number, clearance: number, ceiling: number, size: DrawnPiece['size']) {
  const { length, breadth, thickness } = size;
  const sin = Math.sin(tilt);
  const cos = Math.cos(tilt);
  const faces = [
    { u: length, v: breadth, a: thickness },
    { u: length, v: thickness, a: breadth },
    { u: breadth, v: thickness, a: length },
  ];
  const off = ({ u, v }: { u: number; v: number }): number =>
    Math.abs((u + 2 * clearance) * sin + (v + 2 * clearance) * cos - ceiling);
  const { u, v, a } = faces.reduce((best, next) => (off(next) < off(best) ? next : best));
  const plan = u * cos + v * sin;
  return { p: Math.max(plan, a), q: Math.min(plan, a), tilt };
}
