import type { ConvexPolygon, PlanarPlace, Point } from '../geometry/planar/planarWorld';
import { inSteps } from './inSteps';

/** No point of the rectangle moves farther between two places looked at [mm]. */
const STEP = 20;
/** What stands higher than its lower side by no more than this is still below it [mm]. */
const TOUCHES = 1;

/**
 * How high a rectangle is raised at most above what is below it, along straight moves and turns on the spot in an upright
 * section: the greatest along the path of the least plumb gap. Looked at in steps, with what it can be more in between.
 *
 * @param obstacles what stands in the section, x along it and y up
 * @param sides the rectangle's sides along and upright when level [mm]
 * @returns [mm]; Infinity where nothing is below it
 */
export function raiseInSection(
  obstacles: readonly ConvexPolygon[],
  { u, v }: { readonly u: number; readonly v: number },
  path: readonly PlanarPlace[],
): number {
  let most = 0;
  for (const place of inSteps(path, Math.hypot(u, v) / 2, STEP)) {
    most = Math.max(most, plumbGap(cornersOf(place, u, v), obstacles));
  }
  // Half a step from the nearest place looked at no point is farther than this from where it is there.
  return most > 0 ? most + STEP : 0;
}

/** The corners of a rectangle u x v [mm] in an upright section. */
export function cornersOf({ x, y, angle }: PlanarPlace, u: number, v: number): ConvexPolygon {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const corner = (a: number, b: number): Point => [
    x + (c * a * u - s * b * v) / 2,
    y + (s * a * u + c * b * v) / 2,
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** The least plumb gap between a polygon and what is below it [mm]: over some corner of the one or of the other. */
export function plumbGap(polygon: ConvexPolygon, obstacles: readonly ConvexPolygon[]): number {
  const [from, to] = spanOf(polygon);
  let least = Infinity;
  for (const obstacle of obstacles) {
    const [low, high] = knownSpan(obstacle);
    if (high < from || low > to) continue;
    const left = Math.max(from, low);
    const right = Math.min(to, high);
    for (const corners of [polygon, obstacle]) {
      for (const [x] of corners) {
        if (x < left || x > right) continue;
        const gap = lowestAt(polygon, x) - highestAt(obstacle, x);
        if (gap > -TOUCHES) least = Math.min(least, Math.max(0, gap));
      }
    }
  }
  return least;
}

type Span = readonly [least: number, most: number];

function spanOf(polygon: ConvexPolygon): Span {
  let [least, most] = [Infinity, -Infinity];
  for (const [x] of polygon) {
    least = Math.min(least, x);
    most = Math.max(most, x);
  }
  return [least, most];
}

/** Of what stands still: it is asked at every step of a path. */
const SPANS = new WeakMap<ConvexPolygon, Span>();

function knownSpan(obstacle: ConvexPolygon): Span {
  let span = SPANS.get(obstacle);
  if (!span) SPANS.set(obstacle, (span = spanOf(obstacle)));
  return span;
}

/** How low a polygon reaches at some x within its span. */
const lowestAt = (polygon: ConvexPolygon, x: number): number => -heightAt(polygon, x, -1);
/** How high it reaches there. */
const highestAt = (polygon: ConvexPolygon, x: number): number => heightAt(polygon, x, 1);

/** The greatest height at some x, each multiplied by a sign. */
function heightAt(polygon: ConvexPolygon, x: number, sign: 1 | -1): number {
  let most = -Infinity;
  let p = polygon[polygon.length - 1];
  for (const q of polygon) {
    if (p && x >= Math.min(p[0], q[0]) && x <= Math.max(p[0], q[0])) {
      if (p[0] === q[0]) most = Math.max(most, sign * p[1], sign * q[1]);
      else most = Math.max(most, sign * (p[1] + ((q[1] - p[1]) * (x - p[0])) / (q[0] - p[0])));
    }
    p = q;
  }
  return most;
}
