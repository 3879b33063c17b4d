import { entryAt } from '../../lists/entryAt';
import type { KeyAttitude } from '../../space/motion';
import { stairTurnKeys, turnNear } from './stairTurnKeys';
import { pastStraights } from './straights';
import type { Walk, WalkStep } from './walk';

/**
 * Carries the piece round the turn of row i and on to the stair behind it, where both are passed together.
 * @returns whether it was; if not, nothing has been moved
 */
export function turnOnToStair(walk: Walk, i: number, step: WalkStep): boolean {
  const k = pastStraights(walk.route.rows, i, 1);
  const flight = walk.route.rows[k];
  const next = flight && walk.steps[flight.row];
  if (!step.jointly || !next?.jointly || flight?.joint.stage !== 'flight') return false;
  if (turnNear(walk.route, k, 'before') !== i) return false;
  const keys = stairTurnKeys(walk.route, k, 'before', walk.piece, walk.drawn, step.from, next.from);
  const mark = walk.carrier.keys.length;
  const [first] = keys ?? [];
  if (!keys || !first || !goOn(walk, first, i)) return false;
  if (!walk.carrier.follow(keys, flight.row, walk.stretchOf(k))) {
    walk.carrier.keys.length = mark;
    return false;
  }
  walk.carriage = { hold: next.from, yaw: flight.entry.heading };
  walk.since = i;
  walk.onStair = true;
  walk.onto = k;
  return true;
}

/** Straight on to a place, or by turns in plan on the way. */
function goOn(walk: Walk, key: KeyAttitude, i: number): boolean {
  const { row } = walk.rowAt(i);
  return (
    walk.carrier.go(key, row, walk.stretchOf(i), 'without search') ||
    walk.carrier.go(key, row, walk.stretchOf(i))
  );
}

/** The keys of the turn behind the flight of row i; undefined where the two are not passed together. */
export function turnBehind(walk: Walk, i: number, step: WalkStep): KeyAttitude[] | undefined {
  const k = turnNear(walk.route, i, 'after');
  const turn = k === undefined ? undefined : walk.route.rows[k];
  const next = turn && walk.steps[turn.row];
  if (!step.jointly || !next?.jointly) return undefined;
  return stairTurnKeys(walk.route, i, 'after', walk.piece, walk.drawn, step.from, next.to);
}

/**
 * Carries the piece on round the turn behind the flight of row i, from one of its keys.
 * @returns whether every move of it is free
 */
export function followTurn(walk: Walk, i: number, keys: readonly KeyAttitude[], from: KeyAttitude): boolean {
  const k = turnNear(walk.route, i, 'after') ?? i + 1;
  const turn = walk.rowAt(k);
  if (!walk.carrier.follow(keys.slice(keys.indexOf(from) + 1), turn.row, walk.stretchOf(k))) return false;
  walk.carriage = { hold: entryAt(walk.steps, turn.row).to, yaw: turn.exit.heading };
  walk.since = k;
  walk.turned = k;
  return true;
}
