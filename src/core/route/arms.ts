import { hasRun, kindOf, roleOf } from '../stages/kinds';
import type { StageRole } from '../stages/stageKind';
import { WALL_NOT_GIVEN } from '../stages/usualRanges';
import { endBeside, spaceAt, standsAlone, type ReadRow, type Reading } from './reading';
import { lengthOf, NO_LENGTH, OPEN_LENGTH, together, type WayLength } from './wayLength';
import { entryAt } from '../lists/entryAt';

/** A straight part of the way, seen from a place where the way bends. */
export interface ArmSection {
  /** [mm] */
  readonly width: number;
  /** [mm] */
  readonly height: number;
  /** From the bend to where it begins. */
  readonly at: WayLength;
  /** Index of its row. */
  readonly row: number;
  /** The piece is carried over it so high above what is below it [mm]. */
  readonly raised?: number;
}

/** What a straight arm comes to. */
export interface ArmEnd {
  /** Open ground, a room, another turn, a stair, a landing's own long flight, or a row that cannot be read. */
  readonly kind: 'open' | 'room' | 'turn' | 'stair' | 'long flight' | 'unread';
  readonly at: WayLength;
  /** Index of the row there; undefined for open ground. */
  readonly row: number | undefined;
}

/** What lies straight on from a bend on one of its sides. */
export interface Arm {
  readonly sections: readonly ArmSection[];
  readonly end: ArmEnd;
}

/** What an arm comes to at a row; null: it goes on through it. */
const ENDS: Readonly<Record<StageRole, ArmEnd['kind'] | null>> = {
  opening: null,
  straight: null,
  room: 'room',
  flight: 'stair',
  turn: 'turn',
  car: 'turn',
  // A landing has its own long flight where no flight stands beside it.
  landing: 'long flight',
};

/** These begin at once, without a straight before them. */
const BEGINS_AT_ONCE: readonly (StageRole | undefined)[] = ['straight', 'flight', 'room'];
/** What leaves the floor between it and a flight to the flight's own space. */
export const HAS_NO_FLOOR: readonly (StageRole | undefined)[] = ['opening', 'car'];

/** The floor between one row and the next that belongs to neither of them as a section. */
export function floorBetween(one: ReadRow, next: ReadRow): WayLength {
  if (one.straightAfter) return one.straightAfter;
  if (one.stage === 'flight' && HAS_NO_FLOOR.includes(roleOf(next.stage))) {
    return lengthOf(spaceAt(one.measures, endBeside(one.way, 'after')));
  }
  if (next.stage === 'flight' && HAS_NO_FLOOR.includes(roleOf(one.stage))) {
    return lengthOf(spaceAt(next.measures, endBeside(next.way, 'before')));
  }
  if (!hasRun(one.stage) || BEGINS_AT_ONCE.includes(roleOf(next.stage))) return NO_LENGTH;
  return lengthOf(one.measures.run);
}

/**
 * The arm of row i on one of its sides: the sections [mm] that the way passes there, from the plane through the row's
 * inner edge on, up to what ends it: a turn, a stair, a room, or open ground.
 */
export function armOf(reading: Reading, i: number, side: 'before' | 'after'): Arm {
  const step = side === 'after' ? 1 : -1;
  const sections: ArmSection[] = [];
  let at = NO_LENGTH;
  for (let k = i + step; ; k += step) {
    const row = reading[k];
    const last = entryAt(reading, k - step);
    if (!row) return { sections, end: { kind: 'open', at, row: undefined } };
    const floor = side === 'after' ? floorBetween(last, row) : floorBetween(row, last);
    at = together(at, floor);
    const { stage, measures } = row;
    const ended = stage && ENDS[kindOf(stage).role];
    if (ended) return { sections, end: { kind: ended, at, row: k } };
    const { height, lowWidth = Infinity } = measures;
    const width = measures.width === undefined ? undefined : Math.min(measures.width, lowWidth);
    if (stage === undefined || width === undefined) return { sections, end: { kind: 'unread', at, row: k } };
    sections.push({ width, height: height ?? Infinity, at, row: k });
    at = together(at, ownLength(reading, k));
  }
}

/**
 * The same arm for a piece that is carried level in it: a few steps or a ramp that lead up to it from open ground are no
 * end of it. The piece is then over them at the height of their head (`levelSources` in `flightPlan`), under what is
 * above the lower ground.
 * @param less taken off the height above the lower ground [mm]: the tape, against the piece
 */
export function levelArm(reading: Reading, i: number, side: 'before' | 'after', less: number): Arm {
  const arm = armOf(reading, i, side);
  const { kind, row: k, at } = arm.end;
  const steps = kind === 'stair' && k !== undefined ? reading[k] : undefined;
  if (!steps || k === undefined || !standsAlone(steps)) return arm;
  const outdoors = k === (side === 'before' ? 0 : reading.length - 1);
  const upToIt = steps.way === (side === 'before' ? 'up' : 'down');
  const { width, height, rise, risers } = steps.measures;
  if (!outdoors || !upToIt || [width, height, rise, risers].includes(undefined)) return arm;
  const raised = (rise ?? 0) * (risers ?? 0) + less;
  return {
    sections: [...arm.sections, { width: width ?? 0, height: (height ?? 0) - raised, at, row: k, raised }],
    end: { kind: 'open', at, row: undefined },
  };
}

/**
 * Length of a straight row along the way [mm]. A passage beside a stair is the floor that the space there measures: where
 * they differ it is no longer than the shorter.
 */
export function ownLength(reading: Reading, k: number): WayLength {
  const { stage, measures } = entryAt(reading, k);
  if (stage === 'door') {
    return measures.wall === undefined
      ? { known: WALL_NOT_GIVEN, tapes: 0, open: false }
      : lengthOf(measures.wall);
  }
  if (stage !== 'passage') return OPEN_LENGTH;
  const own = measures.length === undefined ? [] : [measures.length];
  const lengths = [...own, ...spacesBeside(reading, k)];
  return lengths.length > 0 ? lengthOf(Math.min(...lengths)) : OPEN_LENGTH;
}

/** The spaces [mm] that the flights beside a row measure on its floor. */
export function spacesBeside(reading: Reading, k: number): number[] {
  const [before, after] = [reading[k - 1], reading[k + 1]];
  return [
    before?.stage === 'flight' ? spaceAt(before.measures, endBeside(before.way, 'after')) : undefined,
    after?.stage === 'flight' ? spaceAt(after.measures, endBeside(after.way, 'before')) : undefined,
  ].filter((space) => space !== undefined);
}
