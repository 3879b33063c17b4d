import { leastBetween } from '../geometry/goldenSection';

/** A load at a point of a span. */
export interface PointLoad {
  /** [N] */
  readonly load: number;
  /** From the left support, strictly inside the span [mm]. */
  readonly at: number;
}

/** A beam on two supports with an even load and point loads, all downward. */
export interface SpanLoads {
  /** [mm] */
  readonly span: number;
  /** [N/mm] */
  readonly line: number;
  readonly points: readonly PointLoad[];
}

/** The two reactions [N], by moments about the other support. */
export function reactions(loads: SpanLoads): { left: number; right: number } {
  const { span, line, points } = loads;
  let left = (line * span) / 2;
  let right = left;
  for (const { load, at } of points) {
    left += (load * (span - at)) / span;
    right += (load * at) / span;
  }
  return { left, right };
}

/** The bending moment at `x` [N mm]. */
export function momentAt(loads: SpanLoads, x: number): number {
  let moment = reactions(loads).left * x - (loads.line * x * x) / 2;
  for (const { load, at } of loads.points) if (x > at) moment -= load * (x - at);
  return moment;
}

/**
 * The greatest bending moment [N mm] and where it is: at a point load, or where the shear passes through 0 between two
 * of them. Textbook statics: wL^2/8, PL/4 for the plain cases.
 */
export function greatestMoment(loads: SpanLoads): { moment: number; at: number } {
  const { span, line, points } = loads;
  const places = points.map((p) => p.at).sort((a, b) => a - b);
  const { left } = reactions(loads);
  let best = { moment: 0, at: span / 2 };
  const consider = (x: number): void => {
    const moment = momentAt(loads, x);
    if (moment > best.moment) best = { moment, at: x };
  };
  places.forEach(consider);
  if (line > 0) {
    let from = 0;
    for (const to of [...places, span]) {
      let shear = left;
      for (const p of points) if (p.at <= from) shear -= p.load;
      // The shear is `shear - line x` on this stretch.
      const x = shear / line;
      if (x > from && x < to) consider(x);
      from = to;
    }
  }
  return best;
}

/** Bending stiffness EI [N mm2] and shear stiffness GA/k [N], k = 6/5 for a rectangle. */
export interface Stiffness {
  readonly bending: number;
  readonly shear: number;
}

/** Deflection at `x` [mm], bending and shear together; the shear part of a simple span is M(x) k/(GA). */
export function deflectionAt(loads: SpanLoads, stiffness: Stiffness, x: number): number {
  const { span: l, line, points } = loads;
  let bent = (line * x * (l ** 3 - 2 * l * x ** 2 + x ** 3)) / 24;
  for (const { load, at } of points) {
    // Macaulay's formula holds left of the load; from the other side it is the same, mirrored.
    const [s, b] = x <= at ? [x, l - at] : [l - x, at];
    bent += (load * b * s * (l ** 2 - b ** 2 - s ** 2)) / (6 * l);
  }
  return bent / stiffness.bending + momentAt(loads, x) / stiffness.shear;
}

/** Enough for the place to be known to a millionth of any span: 0.618^60 is 3e-13. */
const HALVINGS = 60;

/**
 * The greatest deflection [mm] and where it is. With downward loads the deflected shape is concave, so a golden-section
 * search finds its one greatest value; mid-span and the points are looked at as well.
 */
export function greatestDeflection(
  loads: SpanLoads,
  stiffness: Stiffness,
): { deflection: number; at: number } {
  const value = (x: number): number => deflectionAt(loads, stiffness, x);
  const lowest = leastBetween((x) => -value(x), 0, loads.span, HALVINGS).at;
  let best = { deflection: 0, at: loads.span / 2 };
  for (const x of [loads.span / 2, ...loads.points.map((p) => p.at), lowest]) {
    const deflection = value(x);
    if (deflection > best.deflection) best = { deflection, at: x };
  }
  return best;
}
