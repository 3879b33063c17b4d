import { entryAt } from '../../lists/entryAt';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { flightMove } from './flightMove';
import { landingKeys } from './landingKeys';
import { spread } from './spread';
import type { NotDrawn, Walk, WalkStep } from './walk';

/**
 * Carries the piece round the landing or the winding treads of row i, from the flight before to the flight behind.
 * @returns undefined where it is carried so, else what could not be drawn
 */
export function passLanding(walk: Walk, i: number, step: WalkStep): NotDrawn | undefined {
  const { row, joint } = walk.rowAt(i);
  const what = joint.stage === 'winder' ? 'winder' : 'landing';
  const stretch = walk.stretchOf(i);
  const keys = keysRound(walk, i);
  if (keys) {
    const mark = walk.carrier.keys.length;
    // What lies before the place where it is now has been left out.
    const { at } = walk.carrier.last;
    const far = (k: KeyAttitude): number => Math.hypot(k.at[0] - at[0], k.at[1] - at[1], k.at[2] - at[2]);
    const joined = keys.findIndex((key) => far(key) < 1e-6);
    const round = keys.slice(joined + 1).every((key) => walk.carrier.go(key, row, stretch));
    // On a short flight it need not come to lie as far along it as on a long one.
    if (
      round ||
      (walk.carrier.keys.length > mark && leavingMarks(walk, i + 1, entryAt(walk.steps, row)).length > 0)
    ) {
      walk.carriage = { hold: step.to, yaw: walk.rowAt(i).exit.heading };
      return undefined;
    }
    walk.carrier.keys.length = mark;
  }
  const goal = flightMove.lying(walk.route, i + 1, walk.piece, step.to, walk.drawn, 'near');
  if (!walk.carrier.go(goal, row, stretch)) return { row, what };
  walk.carriage = { hold: step.to, yaw: walk.rowAt(i).exit.heading };
  return undefined;
}

/** The places of the motion round the landing of row i at which it may be joined from the flight before it, from low on the flight to level. */
export function landingGoals(walk: Walk, i: number): KeyAttitude[] {
  const { row } = walk.rowAt(i);
  const step = entryAt(walk.steps, row);
  const inSection = (keysRound(walk, i) ?? []).filter((key) =>
    flightMove.inSection(walk.route, i - 1, key, step.from, step.jointly ? 'upright' : 'lying'),
  );
  // One that leans all the way begins where the piece lies along the flight.
  return inSection.length > 0
    ? spread(inSection)
    : [flightMove.lying(walk.route, i - 1, walk.piece, step.from, walk.drawn, 'far')];
}

/** The motion round it, drawn once. */
function keysRound(walk: Walk, i: number): KeyAttitude[] | undefined {
  const known = walk.landings.get(i);
  if (known) return known;
  const step = entryAt(walk.steps, walk.rowAt(i).row);
  const keys = landingKeys(walk.route, i, walk.piece, step, walk.drawn);
  if (keys) walk.landings.set(i, keys);
  return keys;
}

/** How it is held on a flight. */
interface HeldOnFlight {
  readonly from: Hold;
  /** Passed together with others: it may be stood up there. */
  readonly jointly?: boolean;
}

/** How many keys [count] may be kept of a motion that has come off a landing on to the flight of row i: all, or fewer, back to the landing. */
export function leavingMarks(walk: Walk, i: number, { from: hold, jointly }: HeldOnFlight): number[] {
  const { keys } = walk.carrier;
  const marks: number[] = [];
  for (let n = keys.length; n > 1; n--) {
    if (!flightMove.inSection(walk.route, i, entryAt(keys, n - 1), hold, jointly ? 'upright' : 'lying'))
      break;
    marks.push(n);
  }
  return spread(marks);
}
