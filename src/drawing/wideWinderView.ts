import { pairs } from '../core/lists/pairs';
import { radians } from '../core/measures/angle';
import { Paper } from './paper';
import { bendShape } from './bendShape';
import type { Point, Points } from './plane';
import type { StageView } from './stageView';

export interface WideWinderDrawn {
  readonly width: number;
  /** [degrees], above 120 */
  readonly turn: number;
}

/** Thickness at which walls are drawn [mm]: nobody measured it. */
const WALL = 90;
/** Degrees of a winder's tread: three to a quarter turn (common practice, no source). */
const TREAD = 30;

/**
 * A winder that turns by more than 120 degrees, in plan: as its outer walls would meet far away, or not at all, a
 * wall faces the lower flight, one width beyond the inner corner, as the stage itself supposes.
 */
export function wideWinderView(m: WideWinderDrawn): StageView {
  const paper = new Paper();
  const { width } = m;
  const turn = radians(m.turn);
  const { inner, out, normal, alongOut } = bendShape(width, width, turn);
  const arm = Math.max(600, width);
  // Where the outer wall of the upper flight meets the facing wall.
  const met = alongOut((width - width * normal[1]) / out[1], width);
  const outer: Points = [[0, -arm], [0, width], met, alongOut(arm, width)];
  const innerFace: Points = [[width, -arm], inner, alongOut(arm, 0)];
  paper.wall([
    ...outer,
    alongOut(arm, width + WALL),
    alongOut((width + WALL - (width + WALL) * normal[1]) / out[1], width + WALL),
    [-WALL, width + WALL],
    [-WALL, -arm],
  ]);
  paper.wall([...innerFace, [width, -arm]]);
  paper.line(outer, 'face');
  paper.line(innerFace, 'face');
  for (let i = 0; i <= Math.round(m.turn / TREAD); i++) {
    const angle = (turn * i) / Math.round(m.turn / TREAD);
    paper.line([inner, outward(inner, [-Math.cos(angle), Math.sin(angle)], outer)], 'thin');
  }
  paper.label([width / 2, -arm / 2], 'up');
  paper.label(alongOut(arm / 2, width / 2), 'up');
  paper.dimension([width, -arm], [0, -arm], 14, 'width', width);

  return { paper, title: 'Plan of a winder' };
}

/** Where a ray from `from` first meets a line of walls. */
function outward(from: Point, towards: Point, walls: Points): Point {
  let reach = Infinity;
  for (const [a, b] of pairs(walls)) {
    const side: Point = [b[0] - a[0], b[1] - a[1]];
    const det = towards[0] * side[1] - towards[1] * side[0];
    if (Math.abs(det) < 1e-9) continue;
    const off: Point = [a[0] - from[0], a[1] - from[1]];
    const s = (off[0] * side[1] - off[1] * side[0]) / det;
    const t = (off[0] * towards[1] - off[1] * towards[0]) / det;
    if (s > 1e-6 && t >= -1e-9 && t <= 1 + 1e-9) reach = Math.min(reach, s);
  }
  return [from[0] + reach * towards[0], from[1] + reach * towards[1]];
}
