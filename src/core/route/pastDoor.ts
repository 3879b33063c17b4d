import { armOf, type Arm } from './arms';
import type { LimitCause } from './limitCause';
import { alone, type PassageSource, type PlannedJoint } from './partPlan';
import type { Planning } from './planning';
import type { BookStage } from './stageBook';
import { turnSources } from './turnSources';
import { leastLength, lengthOf, straightLength, together, type WayLength } from './wayLength';
import { entryAt } from '../lists/entryAt';
import { roleOf } from '../stages/kinds';

/** A passage that is not said to end goes on so far [mm]: beyond any piece. */
const GOES_ON: WayLength = { known: 20000, tapes: 0, open: false };

/**
 * Two turns that a passage joins, one of them a door in its side: the passage goes on past the door, so a piece that is
 * longer than what lies between the two turns may be pushed past the door until it is clear of it, and comes back
 * through it the other way round. For row i and the turn that follows it.
 *
 * Sufficient: the piece goes round the first turn with the passage as long as it is up to its closed end, stands wholly
 * beyond the door, and goes round the second turn as the mirrored one, its closed end on the side of the first.
 */
export function pastDoorJoints(planning: Planning, i: number): PlannedJoint[] {
  const { reading, stageAt } = planning;
  if (!isTurn(planning, i)) return [];
  const between = armOf(reading, i, 'after');
  const k = between.end.row;
  if (between.end.kind !== 'turn' || k === undefined || !isTurn(planning, k)) return [];
  const stages: BookStage[] = [];
  for (let row = i; row <= k; row++) {
    const stage = stageAt(row);
    if (!stage) return [];
    stages.push(stage);
  }
  const straight = stages.slice(1, -1).map(alone);
  const joint = (ways: readonly BothTurns[], pastDoor: number): PlannedJoint[] =>
    ways.length === 0
      ? []
      : [{ parts: k - i + 1, sources: ways.map(([one, other]) => [one, ...straight, other]), pastDoor }];
  return [...joint(pastSecond(planning, i, k), k), ...joint(pastFirst(planning, i, k), i)];
}

type BothTurns = readonly [PassageSource, PassageSource];

const isTurn = ({ reading }: Planning, i: number): boolean => roleOf(reading[i]?.stage) === 'turn';

/** Past the second turn, a door out of the passage, and back through it. */
function pastSecond(planning: Planning, i: number, k: number): BothTurns[] {
  const { reading } = planning;
  if (entryAt(reading, k).stage !== 'side door' || entryAt(reading, k).into) return [];
  const beyond = armPast(planning, armOf(reading, i, 'after'), k, [i, k]);
  const first = turned(planning, i, armOf(reading, i, 'before'), beyond.arm);
  return both(
    first.map((source) => upTo(source, 'after', beyond)),
    comingBack(planning, k, 'before'),
  );
}

/** Through the first turn, a door into the passage, to the side that leads away, and then past the door. */
function pastFirst(planning: Planning, i: number, k: number): BothTurns[] {
  const { reading } = planning;
  if (entryAt(reading, i).stage !== 'side door' || !entryAt(reading, i).into) return [];
  const beyond = armPast(planning, armOf(reading, k, 'before'), i, [i, k]);
  const second = turned(planning, k, beyond.arm, armOf(reading, k, 'after'));
  return both(
    comingBack(planning, i, 'after'),
    second.map((source) => upTo(source, 'before', beyond)),
  );
}

const both = (first: readonly PassageSource[], second: readonly PassageSource[]): BothTurns[] =>
  first.flatMap((one) => second.map((other): BothTurns => [one, other]));

/** How far the piece may reach on one side of a turn [mm], and why. */
interface Reach {
  readonly upTo: number;
  readonly cause: LimitCause;
}

/** A way round a turn on one side of which the piece must not reach farther than this. */
function upTo(source: PassageSource, side: 'before' | 'after', reach: Reach): PassageSource {
  if (side === 'before') {
    return reach.upTo < source.upToBefore
      ? { ...source, upToBefore: reach.upTo, causeBefore: reach.cause }
      : source;
  }
  return reach.upTo < source.upToAfter
    ? { ...source, upToAfter: reach.upTo, causeAfter: reach.cause }
    : source;
}

/** The ways round a turn with given arms; leaning is left out, since nothing is known of the room beside it. */
const turned = (
  planning: Planning,
  i: number,
  before: Arm,
  after: Arm,
  stage: BookStage | undefined = planning.stageAt(i),
): PassageSource[] =>
  stage
    ? turnSources(planning, i, stage, before, after).map((source) => ({ ...source, steadyOnly: true }))
    : [];

/** An arm of another turn that goes on past the side door of row `door` to the closed end of its passage. */
function armPast(
  { reading, tapeCase, tape }: Planning,
  arm: Arm,
  door: number,
  rows: readonly [number, number],
): Reach & { readonly arm: Arm } {
  const { measures } = entryAt(reading, door);
  const at = together(together(arm.end.at, lengthOf(measures.width)), deadEndOf(measures.depth));
  const past = { width: measures.widthOut ?? 0, height: measures.ceiling ?? 0, at: arm.end.at, row: door };
  return {
    arm: { sections: [...arm.sections, past], end: { kind: 'turn', at, row: door } },
    upTo: straightLength(at, tapeCase, tape),
    cause: { kind: 'straight', length: at.open ? undefined : at.known, rows },
  };
}

/** Round the side door of row `door` from the far side of its passage, the side of the other turn being closed. */
function comingBack(planning: Planning, door: number, passage: 'before' | 'after'): PassageSource[] {
  const { reading, tapeCase, tape, lookUp, stageAt } = planning;
  const stage = stageAt(door);
  if (!stage) return [];
  const { measures } = entryAt(reading, door);
  const far = deadEndOf(measures.depth);
  const mirrored = lookUp('side door', { ...stage.measures, depth: closedAt(planning, door, passage) });
  const beyond: Arm = { sections: [], end: { kind: 'turn', at: far, row: door } };
  const doorArm = armOf(reading, door, passage === 'before' ? 'after' : 'before');
  const [before, after] = passage === 'before' ? [beyond, doorArm] : [doorArm, beyond];
  const reach: Reach = {
    upTo: straightLength(far, tapeCase, tape),
    cause: { kind: 'straight', length: far.known, rows: [door, door] },
  };
  return turned(planning, door, before, after, mirrored).map((source) => upTo(source, passage, reach));
}

const deadEndOf = (depth: number | undefined): WayLength => (depth === undefined ? GOES_ON : lengthOf(depth));

/** From the nearer jamb towards the other turn, as far as the passage is no narrower and no lower than at the door [mm]. */
function closedAt({ reading, tape }: Planning, door: number, passage: 'before' | 'after'): number {
  const { widthOut = Infinity, ceiling = Infinity } = entryAt(reading, door).measures;
  const { sections, end } = armOf(reading, door, passage);
  const first = sections.find(({ width, height }) => width < widthOut || height < ceiling);
  return leastLength({ ...(first ?? end).at, open: false }, tape);
}
