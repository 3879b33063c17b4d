import { tiltOf, type StepMotion, type StepPlace } from '../core/joint/walk/stepMotion';
import type { PieceSize } from '../core/measures/piece';
import { slerp } from '../core/space/quaternion';
import { SpaceChecker } from '../core/space/spaceChecker';
import { seenBest, type StageName } from '../core/stages/kinds';
import { pieceBox } from './section';
import type { StepFacts } from './stepFacts';
import { HIGHEST, letDown } from '../core/space/letDown';

/** A place as it is drawn: let straight down on to what it is carried over, or to the raise that is claimed. */
export interface Shown {
  readonly number: number;
  readonly place: StepPlace;
  readonly isTightest: boolean;
  readonly solid: ReturnType<typeof pieceBox>;
  /** So far above what it is carried over [mm]. */
  readonly raised: number;
}

/** The places of a step that are drawn, numbered along the way. */
export function shownPlaces(step: StepMotion, facts: StepFacts): Shown[] {
  const { tightest } = step;
  const size = facts.smaller ?? facts.size;
  const settle = settler(step, size);
  return chosenPlaces(step, facts.stage).map((place, i): Shown => {
    const [x, y, low] = settle(place);
    // On a flight or steps it is drawn on the nosings: what it is raised by is there to be seen all the same.
    const raised =
      seenBest(facts.stage) === 'from the side' ? 0 : Math.min(place.raise, facts.raise, place.at[2] - low);
    return {
      number: i + 1,
      place,
      isTightest: place === tightest,
      solid: pieceBox({ at: [x, y, low + raised], turn: place.turn }, size),
      raised,
    };
  });
}

/** All places of what is more than straight; else where it passes the middle of the opening, or is most level. */
function chosenPlaces(step: StepMotion, stage: StageName): readonly StepPlace[] {
  const { positions, tightest, jointly } = step;
  if (seenBest(stage) !== 'from in front' || jointly) return positions;
  const through = placeThrough(step);
  if (through) return [through];
  const [first] = [...positions].sort(
    (a, b) =>
      Math.round(a.tilt * 100) - Math.round(b.tilt * 100) || Number(b === tightest) - Number(a === tightest),
  );
  return first ? [first] : [];
}

/** The place of the motion where the middle of the piece is in the middle of a straight row, if it comes there. */
function placeThrough({ keys, exit, tightest }: StepMotion): StepPlace | undefined {
  const middle = exit.at[0] / 2;
  for (const [k, a] of keys.entries()) {
    const b = keys[k + 1];
    if (!b || a.at[0] > middle || b.at[0] < middle || b.at[0] - a.at[0] < 1) continue;
    const s = (middle - a.at[0]) / (b.at[0] - a.at[0]);
    const mix = (axis: 0 | 1 | 2): number => a.at[axis] + (b.at[axis] - a.at[axis]) * s;
    const turn = slerp(a.turn, b.turn, s);
    return {
      at: [mix(0), mix(1), mix(2)],
      turn,
      part: 0.5,
      tilt: tiltOf(turn),
      raise: 0,
      closest: tightest?.closest,
    };
  }
  return undefined;
}

/** So near it is let down [mm]. */
const NEAR = 0.5;

/** Lets a piece straight down until it rests; everything between is free, so it stays a place of the way. */
function settler(step: StepMotion, size: PieceSize): (place: StepPlace) => readonly [number, number, number] {
  const checker = new SpaceChecker(step.solids.map((solid) => solid.box));
  checker.hold(size);
  return ({ at: [x, y, z], turn }) => {
    const free = letDown(checker, Float64Array.of(x, y, z, ...turn), NEAR);
    // Over what is not in the picture it stays where the motion has it.
    return [x, y, HIGHEST - free < 2 * NEAR ? z : z - free];
  };
}
