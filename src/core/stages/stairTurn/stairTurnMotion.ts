import type { PieceSize } from '../../measures/piece';
import { attitudeInPlan } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { KeyAttitude, Motion } from '../../space/motion';
import { goingOn } from '../../space/quaternion';
import { DRAWN_PARTS, finer, type StairTurnFit } from './stairTurnFit';
import type { TurnStep } from './turnGrid';
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
    const attitude = attitudeInPlan({ hold, turned: 'tilted', tilt: side * tilt }, yaw);
    const turn = goingOn(attitude, keys[keys.length - 1]?.turn);
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
  const short = plan.short !== undefined;
  const away = short ? 0 : max(0, box.u * cos(places.pitch) + box.v * sin(places.pitch) - begin.over) + 200;
  const far = begin.over + away;
  const below = { over: far, z: places.restAt(0, first.tilt, far) };
  put(first, below);
  if (!short) slide(first, below, begin);
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
