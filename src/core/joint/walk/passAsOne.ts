import { entryAt } from '../../lists/entryAt';
import { firstOf, lastOf } from '../../lists/ends';
import { sidesOfHold, type Hold, type PieceSide } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { rotate, type Quaternion } from '../../space/quaternion';
import { movedFrame, placedKey, placingOf, START, type Frame } from '../place/frame';
import type { PlacedRow } from '../place/placedRoute';
import { solveJoint } from '../solveJoint';
import { carriedSizes, turnOfCarriage, type Carriage } from './carriage';
import { flightMove } from './flightMove';
import { followedAlong } from './followedAlong';
import { isLanding } from '../place/rowContext';
import { levelTo } from './levelMoves';
import { passFlight } from './passFlight';
import { leavingMarks } from './passLanding';
import { spread } from './spread';
import { changeTo } from './takingUp';
import { OFF, type Walk, type WalkBlock } from './walk';

/**
 * Carries the piece through rows that are passed as one space by the motion with which that was shown, put into the scene
 * of the route.
 * @param i the placed row with which they begin
 * @returns the number of the last placed row that is passed; undefined, with nothing moved, where it cannot be carried so
 */
export function passAsOne(walk: Walk, i: number, asOne: WalkBlock): number | undefined {
  const keys = keysInScene(walk, i, asOne);
  const last = walk.route.rows.findIndex(
    ({ row, supposed }) => row === Math.min(asOne.ends.row, walk.rows.length - 1) && !supposed,
  );
  if (!keys || last < i) return undefined;
  const restore = walk.restorer();
  const { row } = walk.rowAt(last);
  if (asOne.motion && !broughtOn(walk, i, last, keys, asOne)) {
    restore();
    return undefined;
  }
  const own = walk.stretchOf(last);
  const stretch = { ...own, from: Math.min(own.from, walk.rowAt(i).row) };
  if (asOne.begins.at === 'row' && !walk.lying) changeTo(walk, i, asOne.from, 'before');
  const marks = leavingMarks(walk, i, { from: asOne.from, jointly: true });
  const start = walk.restorer();
  for (const how of ['without search', 'with search'] as const) {
    for (const mark of asOne.begins.at === 'along' && marks.length > 0 ? marks : [Infinity]) {
      start();
      walk.carrier.keys.splice(mark);
      for (const first of joints(keys, walk.carrier.last, how)) {
        start();
        walk.carrier.keys.splice(mark);
        const on =
          walk.carrier.go(first, walk.rowAt(i).row, stretch, how) &&
          followedAlong(walk, i, last, keys.slice(keys.indexOf(first) + 1), stretch);
        if (!on || !endsLevel(walk, last, asOne)) continue;
        walk.since = last;
        walk.turned = -1;
        // Lying along a flight it is carried on from there as the flight is.
        if (asOne.ends.at === 'along') return last - 1;
        const { leaves, to } = entryAt(walk.steps, row);
        if (leaves === to || !changeTo(walk, last, leaves, 'after')) return last;
      }
    }
  }
  restore();
  return undefined;
}

/** Brings the piece to where a known motion begins: along the flight there, on to the floor behind it, or level to that place. */
function broughtOn(
  walk: Walk,
  i: number,
  last: number,
  keys: readonly KeyAttitude[],
  { begins, from }: WalkBlock,
): boolean {
  const landing = walk.route.rows.findIndex(({ joint }, k) => k >= i && k <= last && isLanding(joint));
  if (landing >= 0) walk.landings.set(landing, [...keys]);
  const { row, entry, exit } = walk.rowAt(i);
  const step = entryAt(walk.steps, row);
  if (begins.at === 'along') {
    const back = walk.restorer();
    if (passFlight(walk, i, step) === undefined) return true;
    back();
    // Where no move in the flight's section leads there.
    return walk.carrier.go(firstOf(keys), row, walk.stretchOf(i));
  }
  if (begins.at === 'floor after' && passFlight(walk, i, step)) return false;
  if (changeTo(walk, i, from, 'before')) return false;
  const begin = firstOf(keys);
  const frame = begins.at === 'floor before' ? entry : exit;
  const x =
    (begin.at[0] - frame.at[0]) * Math.cos(frame.heading) +
    (begin.at[1] - frame.at[1]) * Math.sin(frame.heading);
  const upTo = begins.at === 'floor before' ? Math.max(0, i - 1) : i;
  if (begins.row >= 0) levelTo(walk, frame, x - 1, x + 1, from, upTo);
  return true;
}

/** Where a motion may be joined: it may have come farther than where that begins. */
function joints(
  keys: readonly KeyAttitude[],
  { at }: KeyAttitude,
  how: 'with search' | 'without search',
): KeyAttitude[] {
  const off = keys.map((key) => Math.hypot(key.at[0] - at[0], key.at[1] - at[1], key.at[2] - at[2]));
  const near = off.indexOf(Math.min(...off));
  if (how === 'with search') return keys.slice(near, near + 1);
  return [...new Set([...spread(keys.slice(0, near + 1)).reverse(), ...spread(keys.slice(near))])];
}

/** The motion that shows the passage, in the coordinates of the scene. */
function keysInScene(walk: Walk, i: number, asOne: WalkBlock): KeyAttitude[] | undefined {
  const { block, from, to, pose, clearance, motion } = asOne;
  const placing = placingOf(START, whereItBegins(walk.rowAt(i), asOne));
  if (motion) return motion.map((key) => placedKey(placing, key));
  const ask = { atLeast: clearance, enough: clearance, from: [from] };
  const passage = solveJoint(block, walk.piece, ask).find(
    (one) => one.to === to && one.answer.pose === pose && one.answer.clearance >= walk.drawn,
  );
  return passage?.shown()?.motion.map((key) => placedKey(placing, key));
}

/** The plane with which the block's first row begins: on a flight its first riser, or the last nosing on the way down. */
function whereItBegins(placed: PlacedRow, { begins }: WalkBlock): Frame {
  const { entry, exit } = placed;
  switch (begins.at) {
    case 'along':
      return movedFrame(entry, flightMove.floorBefore(placed));
    case 'floor after':
      return movedFrame(exit, -flightMove.floorAfter(placed));
    default:
      return entry;
  }
}

/** Level behind the last row, or lying along it, as the way goes on; in a room in which it ends as it comes. */
function endsLevel(walk: Walk, last: number, { ends, to }: WalkBlock): boolean {
  const { row, exit } = walk.rowAt(last);
  if (ends.at === 'along') {
    walk.carriage = { hold: to, yaw: exit.heading };
    walk.onStair = true;
    return true;
  }
  const { turn } = lastOf(walk.carrier.keys);
  const level = levelCarriage(turn, to);
  if (level) {
    walk.carriage = level;
    return true;
  }
  if (last === walk.route.rows.length - 1) return true;
  const yaw = Math.atan2(...directionOf(turn, sidesOfHold(to).along));
  const carriage = { hold: to, yaw };
  const floor = exit.at[2];
  const stretch = walk.stretchOf(last);
  if (!walk.carrier.turnOnFloor(turnOfCarriage(carriage), floor, row, stretch)) return false;
  const { height } = carriedSizes(walk.piece, carriage, walk.drawn);
  const { at, turn: set } = walk.carrier.last;
  const down: KeyAttitude = { at: [at[0], at[1], floor + height / 2 + OFF], turn: set };
  if (!walk.carrier.go(down, row, stretch, 'without search')) return false;
  walk.carriage = carriage;
  return true;
}

const AXIS_OF: Readonly<Record<PieceSide, readonly [number, number, number]>> = {
  L: [1, 0, 0],
  B: [0, 1, 0],
  T: [0, 0, 1],
};

/** Where one of its sides points in plan: y before x, as an arctangent is asked. */
function directionOf(turn: Quaternion, side: PieceSide): [number, number] {
  const [x, y] = rotate(turn, AXIS_OF[side]);
  return [y, x];
}

/** Out of level by no more than this [rad] it is level. */
const LEVEL_WITHIN = 1e-6;

/** How it is carried, where it stands level in a hold; undefined where it does not. */
function levelCarriage(turn: Quaternion, hold: Hold): Carriage | undefined {
  const { along, upright } = sidesOfHold(hold);
  const steep = Math.abs(rotate(turn, AXIS_OF[upright])[2]);
  if (Math.acos(Math.min(1, steep)) > LEVEL_WITHIN) return undefined;
  return { hold, yaw: Math.atan2(...directionOf(turn, along)) };
}
