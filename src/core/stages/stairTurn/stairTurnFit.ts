import { bracket } from '../../geometry/rootFinding';
import { THINNEST, type PieceSize } from '../../measures/piece';
import { sizesOfHold, type Hold } from '../../motion/hold';
import { YAWS, type LeavesAs, type TurnGrid, type TurnStep } from './turnGrid';
import type { StairTurnPlan } from './turnedPlace';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, max, min } = Math;

/** How a piece goes round a turn at a stair's end. */
export interface StairTurnFit {
  /** Padding [mm a side] with which the motion is free. */
  readonly clearance: number;
  /** Angles in plan and tilts from lying on the flight to standing in the passage. */
  readonly path: readonly TurnStep[];
  readonly leaves: LeavesAs;
  readonly limit: 'flight' | 'turn' | 'heights';
}

/** A step of the path found is drawn in so many parts. */
export const DRAWN_PARTS = 4;
/** How near the greatest padding has to be [mm]. */
const FINENESS = 0.1;
/** The same once steps are looked at between their ends, which takes longer [mm]. */
const THROUGH = 0.4;
/** How far beyond the clearance it is asked what stands in the way [mm]. */
const NEAR = 0.5;

/**
 * The widest turn at a stair's end for a piece held so on the flight: a path of angles in plan and tilts on a fixed
 * grid, each neighbour standing in a way that it shares with the last (`StairTurnPlaces`), and looked at between the
 * grid's points too. A larger opening or a smaller piece leaves every place free that was, but for places over a rail.
 *
 * @param grid of the turn; it is left holding the piece with the padding of the answer
 * @param atLeast padding [mm a side] below which no answer is wanted
 * @param enough padding [mm a side] above which more is of no interest
 * @returns undefined where no path bears that
 */
export function stairTurnFit(
  grid: TurnGrid,
  piece: PieceSize,
  hold: Hold,
  leaves: LeavesAs,
  atLeast = -piece.length / 2,
  enough = Infinity,
): StairTurnFit | undefined {
  const { places } = grid;
  const { plan } = places;
  const { along, across, upright } = sizesOfHold(piece, hold);
  const holdAt = (c: number): void =>
    grid.hold({
      u: max(THINNEST, along + 2 * c),
      v: max(THINNEST, upright + 2 * c),
      q: max(THINNEST, across + 2 * c),
    });
  // What it needs where it leaves: the widths across and the heights there.
  const head = min(plan.ceiling, plan.passageCeiling ?? plan.ceiling);
  const sideways = leaves === 'sideways' || leaves === 'upright sideways';
  const stood = leaves === 'upright' || leaves === 'upright sideways';
  const most = min(
    (plan.flightWidth - across) / 2,
    (places.channel - upright) / 2,
    (plan.passageWidth - (sideways ? (stood ? upright : along) : across)) / 2,
    (head - (stood ? along : upright)) / 2,
    max(enough, atLeast),
  );
  let low = max(atLeast, (THINNEST - min(along, upright, across)) / 2);
  if (most < low) return undefined;
  const tryAt = (c: number): boolean => {
    holdAt(c);
    return grid.leads(leaves);
  };
  if (!tryAt(low)) return undefined;
  low = tryAt(most) ? most : bracket(low, most, tryAt, FINENESS).holds;
  const floor = max(atLeast, (THINNEST - min(along, upright, across)) / 2);
  // Between the grid's points it may bear a hair less.
  let last = NaN;
  const bears = (c: number): boolean => {
    last = c;
    holdAt(c);
    return grid.leadsThrough(leaves);
  };
  let clearance = low;
  let step = 0.1;
  let above = low;
  while (!bears(clearance)) {
    if (clearance <= floor) return undefined;
    above = clearance;
    clearance = max(floor, clearance - step);
    step *= 2;
  }
  clearance = bracket(clearance, above, bears, THROUGH).holds;
  if (last !== clearance) bears(clearance);
  const path = grid.path();
  const limit =
    clearance >= most - NEAR
      ? 'flight'
      : turnsInPlan(plan, along, across, clearance + NEAR)
        ? 'heights'
        : 'turn';
  return { clearance, path, leaves, limit };
}

/** Whether its plan, level, goes round with that padding: then heights stand in the way. */
function turnsInPlan(plan: StairTurnPlan, along: number, across: number, c: number): boolean {
  const p = along + 2 * c;
  const q = max(THINNEST, across + 2 * c);
  const { flightWidth: w, passageWidth: d } = plan;
  for (let i = 0; i <= YAWS; i++) {
    const a = (PI / 2) * (i / YAWS);
    const [cos, sin] = [Math.cos(a), Math.sin(a)];
    const free =
      w * cos + d * sin - p * sin * cos - q >= 0 || p * sin + q * cos <= w || p * cos + q * sin <= d;
    if (!free) return false;
  }
  return true;
}

/** The same path with every step cut into so many [count], its own points among them. */
export function finer(path: readonly TurnStep[], parts: number): TurnStep[] {
  return path.flatMap((to, k) => {
    const from = path[k - 1];
    if (!from || (from.yaw === to.yaw && from.tilt === to.tilt)) return [to];
    return Array.from({ length: parts }, (_, n) => {
      const share = (n + 1) / parts;
      return {
        ...to,
        yaw: from.yaw + (to.yaw - from.yaw) * share,
        tilt: from.tilt + (to.tilt - from.tilt) * share,
      };
    });
  });
}
