import { entryAt } from '../../lists/entryAt';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { isStair, turns } from '../../stages/kinds';
import { LIFT_TRAVEL } from '../place/buildLift';
import { isLanding } from '../place/rowContext';
import { standsAlike } from './carriage';
import type { WalkKey } from './carrier';
import { levelTo, pathTo, stationAfter } from './levelMoves';
import { stationsPastDoors } from './pastDoors';
import { lengthAlong } from './straights';
import { tiltsFor } from './takingUp';
import { GAP, STATION, type NotDrawn, type Walk, type WalkStep } from './walk';

/**
 * Carries the piece on level floor until it is past row i, or as near as the rows beyond let it.
 * @returns undefined where it is carried so, else what could not be drawn
 */
export function passLevel(walk: Walk, i: number, step: WalkStep): NotDrawn | undefined {
  const { joint, row } = walk.rowAt(i);
  const last = i === walk.route.rows.length - 1;
  if (joint.stage === 'lift') return passLift(walk, i);
  if (last && joint.stage === 'room') return intoRoom(walk, i);
  const next = walk.route.rows[i + 1];
  if (!turns(joint.stage) && next && !mustStandBefore(walk, i + 1)) {
    standIn(walk, i, step.to);
    return undefined;
  }
  const station = stationAfter(walk, i, step.to);
  if (station && levelTo(walk, station.frame, station.from, station.to, step.to, i)) return undefined;
  // No room to stand before the next row: pushed past it, or passed together with it, where that can be.
  return pushedPast(walk, i, step) || deferred(walk, i) ? undefined : { row, what: 'level' };
}

/**
 * Goes on past row i from where the piece was tilted, or from a little farther on, clear of what its low end stands under.
 * @returns whether it got past; where it did not, it is where it was
 */
export function passFromFarther(walk: Walk, i: number, step: WalkStep): boolean {
  const restore = walk.restorer();
  const { row, entry } = walk.rowAt(i);
  const { at, turn } = walk.carrier.last;
  return [0, 200, 450, 800, 1200].some((by) => {
    restore();
    const there: KeyAttitude = {
      at: [at[0] + Math.cos(entry.heading) * by, at[1] + Math.sin(entry.heading) * by, at[2]],
      turn,
    };
    const on = by === 0 || walk.carrier.go(there, row, walk.stretchOf(i), 'without search');
    return on && passLevel(walk, i, step) === undefined;
  });
}

/** Stands in the passage beyond the door of the next turn, or of this one, where both are passed together. */
function pushedPast(walk: Walk, i: number, step: WalkStep): boolean {
  if (!step.jointly) return false;
  const restore = walk.restorer();
  for (const { frame, from, to, upTo } of stationsPastDoors(walk.route.rows, i)) {
    const half = walk.alongFor(step.to) / 2 + GAP;
    const [least, most] = [from + half, to - half];
    if (most < least) continue;
    // As near to the door as it can be.
    const [near, far] =
      from >= 0 ? [least, Math.min(most, least + STATION)] : [Math.max(least, most - STATION), most];
    if (levelTo(walk, frame, near, far, step.to, upTo)) {
      // The row that it comes from stands beside the way back.
      walk.since = i;
      return true;
    }
    restore();
  }
  return false;
}

/** Whether what could not be drawn up to behind row i may be drawn together with the next row. */
function deferred(walk: Walk, i: number): boolean {
  const next = walk.route.rows[i + 1];
  if (!next) return false;
  if (!mustStandBefore(walk, i + 1)) return true;
  const step = walk.steps[next.row];
  if (!step || walk.lying) return false;
  if (walk.carriage.turned !== undefined || step.from[1] !== walk.carriage.hold[1]) return false;
  // It is tilted or leaned before this row already, where there is room.
  if (!isStair(next.joint.stage)) return true;
  if (next.joint.stage !== 'flight') return false;
  walk.behind = true;
  return true;
}

/** Stands in a straight that is long enough, so that what is before it and what is behind are moves of their own. */
function standIn(walk: Walk, i: number, hold: Hold): void {
  const { exit } = walk.rowAt(i);
  const along = walk.alongFor(hold);
  const length = lengthAlong(walk.route.rows, i);
  if (length < along + 2 * GAP) return;
  const to = -along / 2 - GAP;
  levelTo(walk, exit, Math.max(-length + along / 2 + GAP, to - STATION), to, hold, i);
}

/** Whether the piece has to stand by itself before a row: to be turned over, or taken on to a stair. */
function mustStandBefore(walk: Walk, i: number): boolean {
  const next = walk.route.rows[i];
  if (!next) return true;
  if (next.joint.stage === 'flight' || isLanding(next.joint)) return true;
  const step = walk.steps[next.row];
  if (!step) return true;
  const turned = walk.carriage.turned !== undefined || step.pose === 'tilted' || step.pose === 'leaning';
  if (turned) return !tiltsFor(walk, i, step).some((tilt) => standsAlike(walk.carriage, tilt));
  return step.from[1] !== walk.carriage.hold[1];
}

/** Into the car, up or down in it, and out by the same door. */
function passLift(walk: Walk, i: number): NotDrawn | undefined {
  const { row, entry, exit } = walk.rowAt(i);
  const m = entryAt(walk.rows, row).measures;
  const [width, depth] = [m.widthOut ?? 0, m.depth ?? 0];
  // Seen with y into the car, so that it can be asked to be wholly inside.
  const frame = { at: entry.at, heading: entry.heading - Math.PI / 2 };
  const region = { xMin: -width / 2, xMax: width / 2, yMin: 0, yMax: depth, wholeAbove: 0 };
  const path = pathTo(walk, frame, region, undefined, i);
  if (!path || !walk.carrier.follow(path.keys, row, walk.stretchOf(i))) return { row, what: 'into the lift' };
  walk.carriage = { ...walk.carriage, yaw: path.yaw };
  walk.since = i;
  if (i === walk.route.rows.length - 1) return undefined;
  const { at, turn } = walk.carrier.last;
  const above: WalkKey = { at: [at[0], at[1], at[2] + LIFT_TRAVEL], turn, row, rides: true };
  if (!walk.carrier.stand(above, walk.stretchOf(i))) return { row, what: 'into the lift' };
  const step = entryAt(walk.steps, row);
  const station = stationAfter(walk, i, step.to);
  if (!station) return { row, what: 'level' };
  // Seen along the way out it is held as it was seen along the way in.
  return levelTo(walk, { ...station.frame, heading: exit.heading }, station.from, station.to, step.to, i)
    ? undefined
    : { row, what: 'level' };
}

/** Into the room at the end of the way: straight on, or wherever it holds the piece. */
function intoRoom(walk: Walk, i: number): NotDrawn | undefined {
  const { row, entry, joint } = walk.rowAt(i);
  const [length, width] = [joint.measures.length ?? 0, joint.measures.width ?? 0];
  const from = walk.alongFor(walk.carriage.hold) / 2 + GAP;
  const to = Math.min(length - from, from + STATION);
  if (to >= from && levelTo(walk, entry, from, to, walk.carriage.hold, i)) return undefined;
  const frame = { at: entry.at, heading: entry.heading - Math.PI / 2 };
  const region = { xMin: -width, xMax: width, yMin: 0, yMax: length, wholeAbove: 0 };
  const path = pathTo(walk, frame, region, undefined, i);
  if (!path || !walk.carrier.follow(path.keys, row, walk.stretchOf(i))) return { row, what: 'level' };
  walk.carriage = { ...walk.carriage, yaw: path.yaw };
  return undefined;
}
