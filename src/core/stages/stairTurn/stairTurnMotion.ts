import type { PieceSize } from '../../measures/piece';
import { attitudeInPlan } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { KeyAttitude, Motion, SceneBox } from '../../space/motion';
import { block, type NamedBox } from '../landing/stairScene';
import { DRAWN_PARTS, finer, type StairTurnFit, type TurnStep } from './stairTurnFit';
import {
  IN_CORNER,
  IN_FLIGHT_ARM,
  IN_OUTER_CORNER,
  IN_PASSAGE,
  OVER_RAIL,
  StairTurnPlaces,
  type StairTurnPlan,
  type TurnedPlace,
} from './turnedPlace';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, cos, max, sin } = Math;

/** How far a straight move between two places may stray [mm]. */
const STRAY = 0.02;
/** Moved at most so far over the flight between two places of one attitude [mm]. */
const SLIDE = 10;
/** Halvings of a step at most. */
const DEEPEST = 12;
/** How thick the line of nosings and the flight's ceiling are drawn [mm]: the ceiling would jut out over the floor. */
const THICK = 200;
const THIN = 0.5;
/** Preferred first: where least depends on anything. */
const WAYS = [IN_PASSAGE, IN_CORNER, IN_FLIGHT_ARM, OVER_RAIL] as const;

/**
 * The motion of a fit, from lying on the flight to beyond the turn, for the piece padded by `padding`, at most the fit's:
 * x from the flight's end over the level floor, y from the outer wall towards the passage, z up from that floor.
 */
export function stairTurnMotion(
  plan: StairTurnPlan,
  piece: PieceSize,
  hold: Hold,
  fit: StairTurnFit,
  padding = fit.clearance,
): Motion {
  const sizes = sizesOfHold(piece, hold);
  const padded = (side: number): number => max(0, side + 2 * padding);
  const box = { u: padded(sizes.along), v: padded(sizes.upright), q: padded(sizes.across) };
  const places = new StairTurnPlaces(plan);
  places.hold(box);
  const keys: KeyAttitude[] = [];
  const side = plan.end === 'head' ? 1 : -1;
  const put = ({ yaw, tilt }: TurnStep, { over, z }: TurnedPlace, along = 0): void => {
    const { p, height } = places.extent(tilt);
    const x = (p * cos(yaw) + box.q * sin(yaw)) / 2 - over;
    const y = (p * sin(yaw) + box.q * cos(yaw)) / 2 + along;
    let turn = attitudeInPlan({ hold, turned: 'tilted', tilt: side * tilt }, yaw);
    const last = keys[keys.length - 1]?.turn;
    if (last && last.reduce((sum, c, k) => sum + c * turn[k]!, 0) < 0) {
      turn = [-turn[0], -turn[1], -turn[2], -turn[3]];
    }
    keys.push({ at: [x, y, z + height / 2], turn });
  };
  const straight = (from: TurnedPlace, middle: TurnedPlace, to: TurnedPlace): boolean =>
    abs(middle.over - (from.over + to.over) / 2) + abs(middle.z - (from.z + to.z) / 2) < STRAY;
  // Farther back or forward in one attitude, resting on what is below it or at a height of its own.
  const slide = (at: TurnStep, from: TurnedPlace, to: TurnedPlace, depth = DEEPEST): void => {
    const over = (from.over + to.over) / 2;
    const middle = { over, z: places.restAt(at.yaw, at.tilt, over) };
    if (depth > 0 && (abs(to.over - from.over) > SLIDE || !straight(from, middle, to))) {
      slide(at, from, middle, depth - 1);
      slide(at, middle, to, depth - 1);
    } else put(at, to);
  };

  const steps = finer(fit.path, DRAWN_PARTS);
  const first = steps[0];
  if (!first) return [];
  // Down on the flight, and up to where it begins to turn.
  const begin = places.placeAt(first.yaw, first.tilt, IN_FLIGHT_ARM);
  const away = max(0, box.u * cos(places.pitch) + box.v * sin(places.pitch) - begin.over) + 200;
  const far = begin.over + away;
  const below = { over: far, z: places.restAt(0, first.tilt, far) };
  put(first, below);
  slide(first, below, begin);
  let way: number = IN_FLIGHT_ARM;
  let here = begin;
  const go = (from: TurnStep, to: TurnStep, depth: number): void => {
    const next = places.placeAt(to.yaw, to.tilt, way);
    const middle = { ...to, yaw: (from.yaw + to.yaw) / 2, tilt: (from.tilt + to.tilt) / 2 };
    const turned = abs(to.yaw - from.yaw) + abs(to.tilt - from.tilt);
    const slid = (abs(next.over - here.over) + abs(next.z - here.z)) * turned > 4 * STRAY;
    if (depth > 0 && (slid || !straight(here, places.placeAt(middle.yaw, middle.tilt, way), next))) {
      go(from, middle, depth - 1);
      go(middle, to, depth - 1);
      return;
    }
    put(to, next);
    here = next;
  };
  const advance = (from: TurnStep, to: TurnStep, depth: number): void => {
    const group = to.inCorner ? IN_OUTER_CORNER : IN_FLIGHT_ARM;
    const shared = places.waysAt(from.yaw, from.tilt) & places.waysAt(to.yaw, to.tilt) & group;
    if (shared === 0 && depth > 0) {
      const middle = { ...to, yaw: (from.yaw + to.yaw) / 2, tilt: (from.tilt + to.tilt) / 2 };
      advance(from, middle, depth - 1);
      advance(middle, to, depth - 1);
      return;
    }
    if ((shared & way) === 0) {
      way = WAYS.find((one) => (shared & one) !== 0) ?? way;
      const there = places.placeAt(from.yaw, from.tilt, way);
      if (there.over === here.over) put(from, there);
      else slide(from, here, there);
      here = there;
    }
    if (from.yaw !== to.yaw || from.tilt !== to.tilt) go(from, to, DEEPEST);
  };
  steps.forEach((to, k) => {
    const from = steps[k - 1];
    if (from) advance(from, to, DEEPEST);
  });
  const last = steps[steps.length - 1] ?? first;
  if (way === OVER_RAIL) put(last, places.placeAt(last.yaw, last.tilt, IN_PASSAGE));
  // Wholly past the inner corner.
  put(last, { over: here.over, z: 0 }, plan.flightWidth + 1);
  return keys;
}

/** The turn as boxes, in the motion's coordinates, long enough for the piece. */
export function stairTurnScene(plan: StairTurnPlan, piece: PieceSize): NamedBox[] {
  const { end, flightWidth: w, passageWidth, straight, headroom, rise, going, ceiling, overRail } = plan;
  const depth = straight + passageWidth;
  const slope = rise / going;
  const reach = 2 * Math.hypot(piece.length, piece.breadth, piece.thickness) + 1500;
  const far = slope * reach + max(headroom, ceiling) + rise + 1000;
  const open = overRail > 0;
  const side = open ? w + reach : w;
  const up = end === 'foot';
  const first = up ? rise : 0;
  const boxes: NamedBox[] = [
    block('the floor', [0, -200, -200], [depth + 200, w + reach, 0]),
    block('the ceiling over the floor', [0, -200, ceiling], [depth + 200, w + reach, ceiling + 1000]),
    block('the outer wall', [-reach, -200, -far], [depth + 200, 0, far]),
    block('the wall facing the flight', [depth, -200, -far], [depth + 200, w + reach, far]),
    plate('the nosings of the flight', first, up ? -slope : slope, -THICK, reach, side),
    plate('the ceiling over the flight', first + headroom, up ? -slope : slope, THIN, reach, side),
    block('the ceiling over the flight', [-1, 0, first + headroom + (up ? slope : 0)], [0, side, far]),
  ];
  const { passageCeiling = ceiling } = plan;
  if (passageCeiling < ceiling) {
    boxes.push(block('the head of the way on', [straight, w, passageCeiling], [depth, w + reach, ceiling]));
  }
  if (up) boxes.push(block('the first riser', [-1, 0, -far], [0, side, rise]));
  if (open) {
    const top = up ? first + overRail : overRail;
    // Steps of a rail that rises with the flight; level over one that falls.
    const count = up ? 40 : 1;
    for (let i = 0; i < count; i++) {
      const [from, to] = [(-reach * (i + 1)) / count, (-reach * i) / count];
      const height = up ? top + slope * ((reach * i) / count) : top;
      boxes.push(block('the handrail', [from, w, -far], [to, w + reach, height]));
    }
    if (straight > 0) boxes.push(block('the handrail', [0, w, -far], [straight, w + reach, top]));
  } else boxes.push(block('the inner corner', [-reach, w, -far], [straight, w + reach, far]));
  return boxes;
}

/** A plate over the flight, x < 0, one face on the line through (0, height), as thick as said on its other side, upward. */
function plate(
  name: string,
  height: number,
  slope: number,
  thick: number,
  reach: number,
  side: number,
): NamedBox {
  const angle = Math.atan(slope);
  const [c, s] = [cos(angle), sin(angle)];
  const long = reach / c;
  return {
    name,
    box: {
      centre: [-reach / 2 - (s * thick) / 2, side / 2, height - (slope * reach) / 2 + (c * thick) / 2],
      size: [long, side, abs(thick)],
      turn: [cos(angle / 2), 0, -sin(angle / 2), 0],
    },
  };
}

/** The boxes alone. */
export const boxesOf = (named: readonly NamedBox[]): SceneBox[] => named.map(({ box }) => box);
