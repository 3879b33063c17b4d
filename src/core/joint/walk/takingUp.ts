import { rectangleThroughOpening } from '../../geometry/rectangleThroughOpening';
import { paddedPiece } from '../../measures/piece';
import type { TurnedHold } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import { turnedFace } from '../../motion/turnedFace';
import { carriedSizes, quarterTurns, turnOfCarriage, type Carriage } from './carriage';
import { levelTo } from './levelMoves';
import { GROUND_AWAY } from './reach';
import { lowestBeside, straightAhead, straightBehind } from './straights';
import { DRAWN, GAP, OFF, type NotDrawn, type Walk, type WalkStep } from './walk';

/** So far along a straight it is looked for room to change the pose [mm]. */
const OUT = 6000;

/** How the piece may be held for row i: tilted or leaning as its passage asks, under its own ceiling or under the lowest beside it; level where it is carried so. */
export function tiltsFor(walk: Walk, i: number, step: WalkStep): TurnedHold[] {
  const tilts = [tiltFor(walk, i, step), tiltFor(walk, i, step, lowestBeside(walk.route.rows, i))];
  const turned = tilts.filter((tilt) => tilt.turned !== undefined);
  return turned.length > 0 ? turned : tilts.slice(0, 1);
}

/** Tilted or leaning as the row's own passage asks, under its ceiling and this [mm]; level where it is carried so. */
function tiltFor(walk: Walk, i: number, step: WalkStep, under = Infinity): TurnedHold {
  const { from, pose, clearance = walk.drawn, jointly } = step;
  const { joint } = walk.rowAt(i);
  if ((pose !== 'tilted' && pose !== 'leaning') || (jointly && joint.stage === 'door')) return { hold: from };
  const own = Math.max(walk.drawn, clearance - DRAWN);
  const { along, across, upright } = sizesOfHold(paddedPiece(walk.piece, own), from);
  const face = pose === 'tilted' ? along : across;
  const m = joint.measures;
  const height = Math.min(m.height ?? Infinity, m.ceiling ?? Infinity, under) - 2 * OFF;
  const straight = joint.stage === 'door' || joint.stage === 'passage' || joint.stage === 'lift';
  if (straight) {
    const room = joint.stage === 'lift' && pose === 'tilted' ? (m.depth ?? 0) : (m.width ?? 0);
    const fit = rectangleThroughOpening(room - 2 * GAP, height, face, upright);
    const alike = face >= upright === room - 2 * GAP >= height;
    return { hold: from, turned: pose, tilt: alike ? fit.angle : Math.PI / 2 - fit.angle };
  }
  const fit = turnedFace(face, upright, height);
  return fit ? { hold: from, turned: pose, tilt: fit.tilt } : { hold: from };
}

/**
 * Changes how the piece is held, before row i or after it.
 * @returns undefined where that is done or not needed, else what could not be drawn
 */
export function changeTo(walk: Walk, i: number, hold: Hold, when: 'before' | 'after'): NotDrawn | undefined {
  if (walk.carriage.turned === undefined && hold[1] === walk.carriage.hold[1]) return undefined;
  return takeUpIn(walk, i, { hold }, when);
}

/**
 * Takes it up where it stands, or where the straight before row i or after it, or the room itself, lets it.
 * @param then what has to succeed from there
 * @returns undefined where it is done, else what could not be drawn
 */
export function takeUpIn(
  walk: Walk,
  i: number,
  wanted: TurnedHold,
  when: 'before' | 'after',
  then: () => boolean = () => true,
): NotDrawn | undefined {
  const { row, joint, entry, exit } = walk.rowAt(i);
  const failed: NotDrawn = { row, what: 'pose change' };
  if (walk.lying) return failed;
  const { hold } = wanted;
  const ways: readonly (readonly ['front' | 'back' | 'middle', number])[] =
    wanted.turned !== undefined
      ? // Tilted it may have either end up, leaning either side.
        [
          ['front', 0],
          ['middle', 0],
          ['middle', Math.PI],
        ]
      : walk.carriage.turned !== undefined
        ? [
            ['back', 0],
            ['middle', 0],
            ['front', 0],
          ]
        : [['middle', 0]];
  const taken = (): boolean => {
    const restore = walk.restorer();
    return ways.some(([end, by]) => {
      const done = !takeUp(walk, { ...wanted, yaw: walk.carriage.yaw + by }, row, end) && then();
      if (!done) restore();
      return done;
    });
  };
  if (taken()) return undefined;
  const frame = when === 'before' ? entry : exit;
  const level = joint.stage === 'room' || joint.stage === 'passage';
  const own = level ? (joint.measures.length ?? 0) : 0;
  const { rows } = walk.route;
  const upTo = when === 'before' ? i - 1 : i;
  const behind = upTo < 0 ? GROUND_AWAY : straightBehind(rows, upTo);
  const ahead = Math.max(when === 'before' ? own : 0, straightAhead(rows, upTo));
  const restore = walk.restorer();
  const { carriage: before, since } = walk;
  const half = walk.alongFor(before.hold) / 2 + GAP;
  const [low, high] = [-Math.min(behind, OUT) + half, Math.min(ahead, OUT) - half];
  if (high < low) return failed;
  for (const part of wanted.turned === undefined ? [0.5, 0.3, 0.7, 0.1, 0.9] : [1, 0.8, 0.5, 0.3]) {
    const x = low + (high - low) * part;
    restore();
    const near = (by: number): [number, number] => [Math.max(low, x - by), Math.min(high, x + by)];
    if (!levelTo(walk, frame, ...near(50), before.hold, Math.max(0, upTo), 'middle')) continue;
    walk.since = since;
    if (taken()) return undefined;
    if (wanted.turned !== undefined) continue;
    // Turned over across the way, and then about.
    if (takeUp(walk, { hold, yaw: walk.carriage.yaw + Math.PI / 2 }, row, 'middle')) continue;
    if (levelTo(walk, frame, ...near(600), hold, Math.max(0, upTo))) {
      walk.since = since;
      return undefined;
    }
  }
  restore();
  return failed;
}

/** Turns the piece where it stands into another carriage, by quarter turns one after the other, and sets it down. */
function takeUp(
  walk: Walk,
  wanted: Carriage,
  row: number,
  end: 'front' | 'back' | 'middle',
): NotDrawn | undefined {
  const ways =
    wanted.turned === undefined && walk.carriage.turned === undefined
      ? quarterTurns(walk.carriage.hold, wanted.hold).map((way) =>
          way.map((hold): Carriage => ({ hold, yaw: wanted.yaw })),
        )
      : [[wanted]];
  const mark = walk.carrier.keys.length;
  const stretch = walk.stretchOf(walk.at);
  const floor = walk.floorHere();
  for (const way of ways) {
    const done = way.every((to) => {
      const wantedTurn = turnOfCarriage(to);
      const turned =
        walk.carrier.turnOnFloor(
          wantedTurn,
          floor,
          row,
          stretch,
          end === 'middle' ? undefined : { heading: walk.carriage.yaw, end },
        ) ||
        (end === 'middle' && walk.carrier.turn(wantedTurn, row, stretch));
      if (!turned) return false;
      const { height } = carriedSizes(walk.piece, to, walk.drawn);
      const { at, turn } = walk.carrier.last;
      return walk.carrier.go(
        { at: [at[0], at[1], floor + height / 2 + OFF], turn },
        row,
        stretch,
        'without search',
      );
    });
    if (done) {
      walk.carrier.standOff(walk.drawn, row, stretch);
      walk.carriage = way[way.length - 1] ?? wanted;
      return undefined;
    }
    walk.carrier.keys.length = mark;
  }
  return { row, what: 'pose change' };
}
