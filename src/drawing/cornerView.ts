import { radians } from '../core/measures/angle';
import { Paper } from './paper';
import { bendShape } from './bendShape';
import type { Point, Points } from './plane';
import type { StageView } from './stageView';

export interface CornerDrawn {
  readonly widthIn: number;
  readonly widthOut: number;
  /** [degrees] */
  readonly turn: number;
}

/** Thickness at which walls are drawn [mm]: nobody measured it. */
const WALL = 90;

/** A corner in plan. `details` adds what a winder has on its floor. */
export function cornerView(
  measures: CornerDrawn,
  title = 'Plan of a corner',
  details?: (paper: Paper, shape: ReturnType<typeof bendShape>) => void,
): StageView {
  const paper = new Paper();
  const { widthIn, widthOut } = measures;
  const turn = radians(measures.turn);
  const shape = bendShape(widthIn, widthOut, turn);

  const back = Math.max(400, 0.5 * widthIn, -shape.outer[1] + 200);
  const on = Math.max(400, 0.5 * widthOut, shape.meets(0, widthOut) + 200);
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

  return { paper, title };
}
