import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { endsOpen } from '../place/placedRoute';
import { isLanding } from '../place/rowContext';
import { carriedSizes } from './carriage';
import type { Stretch } from './carrier';
import { flightMove, type FlightAsk } from './flightMove';
import { levelTo, stationAfter } from './levelMoves';
import { landingGoals, leavingMarks } from './passLanding';
import { spread } from './spread';
import { lastAhead, straightAhead } from './straights';
import { changeTo } from './takingUp';
import { followTurn, turnBehind } from './turnsAtStairs';
import { OFF, type NotDrawn, type Walk, type WalkStep } from './walk';

/** Where the piece is to go along a flight: level floor beyond it, or a place in its section. */
type Goal = FlightAsk['goal'];

/**
 * Carries the piece along the flight of row i: from level floor, a landing or a turn before it, to the same behind it.
 * @returns undefined where it is carried so, else what could not be drawn
 */
export function passFlight(walk: Walk, i: number, step: WalkStep): NotDrawn | undefined {
  const { supposed } = walk.rowAt(i);
  const after = walk.route.rows[i + 1];
  const begun = takenOn(walk, i, step, supposed);
  if (typeof begun !== 'string') return begun;
  if (after === undefined && supposed) return undefined;
  const turn = turnBehind(walk, i, step);
  const goals: Goal[] =
    after !== undefined && isLanding(after.joint)
      ? landingGoals(walk, i + 1)
      : turn
        ? spread(turn.filter((key) => flightMove.inSection(walk.route, i, key, step.from, 'upright')))
        : ['level floor'];
  // From where the landing before leaves it, or from a place before, still over that landing; leaning, it lies down first.
  if (begun === 'along it' && leavingMarks(walk, i, step).length === 0) {
    const on = flightMove.lying(walk.route, i, walk.piece, step.from, walk.drawn, 'near');
    walk.carrier.go(on, walk.rowAt(i).row, walk.stretchOf(i));
  }
  const { keys } = walk.carrier;
  const marks = begun === 'from level floor' ? [keys.length] : leavingMarks(walk, i, step);
  const kept = keys.slice();
  for (const mark of marks) {
    for (const goal of goals) {
      const back = (): void => void keys.splice(0, Infinity, ...kept.slice(0, mark));
      back();
      const there = goal === 'level floor' ? undefined : goal;
      if (there && walk.carrier.go(there, walk.rowAt(i).row, walk.stretchOf(i), 'without search')) {
        if (!turn) {
          walk.since = i + 1;
          return undefined;
        }
        if (followTurn(walk, i, turn, there)) return undefined;
        back();
      }
      if (!movedOn(walk, i, step, goal) && !(there && movedAsideOn(walk, i, step, there))) continue;
      if (turn && there) {
        if (followTurn(walk, i, turn, there)) return undefined;
        continue;
      }
      walk.carriage = { hold: step.to, yaw: walk.rowAt(i).exit.heading };
      walk.since = i + 1;
      if (there) return undefined;
      settle(walk, i);
      return step.leaves === step.to ? undefined : changeTo(walk, i, step.leaves, 'after');
    }
  }
  keys.splice(0, Infinity, ...kept);
  return atLast(walk, i, step, goals) ? undefined : { row: walk.rowAt(i).row, what: 'flight' };
}

/** Brings the piece to the flight in its hold, or on to it; what could not be drawn, else. */
function takenOn(
  walk: Walk,
  i: number,
  step: WalkStep,
  supposed: boolean,
): 'from level floor' | 'along it' | NotDrawn {
  const { row } = walk.rowAt(i);
  if (walk.onStair) {
    walk.onStair = false;
    return 'along it';
  }
  if (walk.behind) {
    // Round the turn and on to the stair at once.
    walk.behind = false;
    const on = (['near', 'far'] as const).some((where) =>
      walk.carrier.go(
        flightMove.lying(walk.route, i, walk.piece, step.from, walk.drawn, where),
        row,
        walk.stretchOf(i),
      ),
    );
    return on ? 'along it' : { row, what: 'flight' };
  }
  const before = walk.route.rows[i - 1];
  if (before === undefined ? supposed : isLanding(before.joint)) return 'along it';
  const change = changeTo(walk, i, step.from, 'before');
  if (change) return change;
  if (walk.carriage.hold === step.from || i === 0) return 'from level floor';
  // Turned about on the floor before the stair.
  const station = stationAfter(walk, i - 1, step.from);
  return station && levelTo(walk, station.frame, station.from, station.to, step.from, i - 1)
    ? 'from level floor'
    : { row, what: 'pose change' };
}

/** Moves in the section of flight i from where the piece is to a goal; undefined where none is shown. */
const movesTo = (
  walk: Walk,
  i: number,
  hold: Hold,
  goal: Goal,
  side: FlightAsk['side'],
  ahead = 0,
  stretch = walk.stretchOf(i),
): KeyAttitude[] | undefined =>
  flightMove.pass(walk.route, i, {
    piece: walk.piece,
    hold,
    drawn: walk.drawn,
    start: walk.carrier.last,
    solids: walk.carrier.solids(stretch).map(({ box }) => box),
    goal,
    side,
    ahead,
  });

/** Such moves, kept where every one is free. */
function moved(walk: Walk, i: number, ...ask: [Hold, Goal, FlightAsk['side'], number?, Stretch?]): boolean {
  const keys = movesTo(walk, i, ...ask);
  const stretch = ask[4] ?? walk.stretchOf(i);
  return keys !== undefined && walk.carrier.follow(keys, walk.rowAt(i).row, stretch);
}

/** On to a goal along one line across the flight: the goal's, where the piece is, or the way's. */
function movedOn(walk: Walk, i: number, { from }: WalkStep, goal: Goal): boolean {
  const goesOn = walk.route.rows[i + 1] !== undefined;
  const ahead = goesOn ? straightAhead(walk.route.rows, i) : endsOpen(walk.rowAt(i).joint) ? Infinity : 0;
  const sides = goal === 'level floor' ? (["start's", "way's"] as const) : (["goal's", "start's"] as const);
  if (sides.some((side) => moved(walk, i, from, goal, side, ahead))) return true;
  // What is level only beyond the row behind is in the rows there too: what crosses those is not in its way.
  const reached = { ...walk.stretchOf(i), to: lastAhead(walk.route.rows, i) };
  return (
    goal === 'level floor' &&
    walk.route.crosses &&
    sides.some((side) => moved(walk, i, from, goal, side, ahead, reached))
  );
}

/**
 * To a place in the section of flight i, moved aside while it lies along the middle of it: where a door at its one end and
 * a turn at the other leave it no room on one line.
 */
function movedAsideOn(walk: Walk, i: number, { from }: WalkStep, goal: KeyAttitude): boolean {
  const mark = walk.carrier.keys.length;
  const beside = (other: KeyAttitude): KeyAttitude =>
    flightMove.lyingBeside(walk.route, i, walk.piece, from, walk.drawn, other);
  const on =
    moved(walk, i, from, beside(walk.carrier.last), "start's") &&
    walk.carrier.go(beside(goal), walk.rowAt(i).row, walk.stretchOf(i), 'without search') &&
    moved(walk, i, from, goal, "goal's");
  if (!on) walk.carrier.keys.length = mark;
  return on;
}

/** Where no move in the section led on: round the bends of a short flight at once, or no farther than along it. */
function atLast(walk: Walk, i: number, step: WalkStep, goals: readonly Goal[]): boolean {
  const next = walk.route.rows[i + 1];
  if (!next) return false;
  const { row, exit } = walk.rowAt(i);
  if (isLanding(next.joint)) {
    const on = goals.some((goal) => goal !== 'level floor' && walk.carrier.go(goal, row, walk.stretchOf(i)));
    if (on) walk.since = i + 1;
    return on;
  }
  // No room to be level before the next turn: it stays on the flight.
  const goal = flightMove.lying(walk.route, i, walk.piece, step.to, walk.drawn, 'far');
  const keys = movesTo(walk, i, step.from, goal, "start's") ?? [goal];
  if (!walk.carrier.follow(keys, row, walk.stretchOf(i))) return false;
  walk.carriage = { hold: step.to, yaw: exit.heading };
  walk.since = i;
  walk.lying = true;
  return true;
}

/** Sets the piece down on the floor behind row i, where it is held higher than it need be. */
function settle(walk: Walk, i: number): void {
  const { row, exit } = walk.rowAt(i);
  const { height } = carriedSizes(walk.piece, walk.carriage, walk.drawn);
  const { at, turn } = walk.carrier.last;
  walk.carrier.go(
    { at: [at[0], at[1], exit.at[2] + height / 2 + OFF], turn },
    row,
    walk.stretchOf(i),
    'without search',
  );
}
