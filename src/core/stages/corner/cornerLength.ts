import { rectangleRoundCorner } from '../../geometry/rectangleRoundCorner';
import type { Working } from '../../measures/working';
import { degrees } from '../../measures/angle';
import { bracket } from '../../geometry/rootFinding';

/**
 * Length [mm] of the longest level piece that turns a corner, of a given size across: turning with the corner,
 * or crabwise. Both ways end at some length for every turn above 0.
 * @source Moretti, College Math. J. 33(3), 2002, 196-200: the length with no clearance left, by halving
 * @param measures widths of the two arms [mm], turn [rad], and the size across in plan [mm], at most the
 *   narrower width
 * @returns length [mm]
 * @example cornerLength({ widthIn: 900, widthOut: 900, turn: Math.PI / 2, thickness: 25 }) // 2495.58 = 1800 sqrt 2 - 50
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
  const { widthIn, widthOut, thickness, turn } = measures;
  const fit = (length: number) => rectangleRoundCorner(length, thickness, widthIn, widthOut, turn);
  const passes = (length: number): boolean => fit(length).clearance >= 0;
  let tooLong = 2 * (widthIn + widthOut);
  while (passes(tooLong)) tooLong *= 2;
  // At a turn other than a right angle not even a square passes that is nearly as wide as the way; without any length
  // the size across is a rod no longer than the arms are wide, which always does.
  const sure = passes(thickness) ? thickness : 0;
  const longest = bracket(sure, sure === 0 ? thickness : tooLong, passes, 1e-9 * tooLong).holds;
  const critical = fit(longest);
  working?.({
    what: 'Angle of the piece to the way in, where it is closest',
    formula: 'least over f of (b1 sin f2 + b2 sin f - T sin g)/(sin f sin f2), f + f2 = turn',
    value: degrees(critical.angle),
    unit: 'degrees',
    source: 'Moretti, College Math. J. 33(3), 2002, 196-200',
  });
  working?.({
    what: critical.crabwise ? 'Longest length, crabwise' : 'Longest length, turning',
    formula: 'the length at which no clearance is left',
    value: longest,
    unit: 'mm',
    source: 'Moretti 2002, by halving',
  });
  return longest;
}
