import { rectangleRoundCorner } from '../../geometry/rectangleRoundCorner';
import type { Working } from '../../measures/working';
import { turnRadians } from '../../motion/turnRadians';

/**
 * Length [mm] of the longest level piece that turns a corner, of a given size across: turning with the corner,
 * or crabwise. Both ways end at some length for every turn above 0.
 * @source Moretti, College Math. J. 33(3), 2002, 196-200: the length with no clearance left, by halving
 * @param measures widths of the two arms [mm], turn [degrees], and the size across in plan [mm], at most the
 *   narrower width
 */
export function cornerLength(
  measures: {
    readonly widthIn: number;
    readonly widthOut: number;
    readonly turn: number;
    readonly thickness: number;
  },
  working?: Working,
): number {
  const { widthIn, widthOut, thickness } = measures;
  const turn = turnRadians(measures.turn);
  const fit = (length: number) => rectangleRoundCorner(length, thickness, widthIn, widthOut, turn);
  // A rectangle as long as its size across passes crabwise, so the lower end is sure.
  let low = thickness;
  let high = 2 * (widthIn + widthOut);
  while (fit(high).clearance >= 0) high *= 2;
  while (high - low > 1e-9 * high) {
    const middle = (low + high) / 2;
    if (fit(middle).clearance >= 0) low = middle;
    else high = middle;
  }
  const critical = fit(low);
  working?.({
    what: 'Angle of the piece to the way in, where it is closest',
    formula: 'least over f of (b1 sin f2 + b2 sin f - T sin g)/(sin f sin f2), f + f2 = turn',
    value: (critical.angle * 180) / Math.PI,
    unit: 'degrees',
    source: 'Moretti, College Math. J. 33(3), 2002, 196-200',
  });
  working?.({
    what: critical.crabwise ? 'Longest length, crabwise' : 'Longest length, turning',
    formula: 'the length at which no clearance is left',
    value: low,
    unit: 'mm',
    source: 'Moretti 2002, by halving',
  });
  return low;
}
