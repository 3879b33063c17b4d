import { degrees } from '../../measures/angle';
import { doorIntoPassage, doorPassage, passageNeeded, type DoorPlan } from '../../geometry/doorIntoPassage';
import { decidePassage } from '../../geometry/planar/decidePassage';
import type { PieceSize, Pose } from '../../measures/piece';
import { motionInPlan, type TurnedHold } from '../../motion/attitude';
import { greatestPadding } from '../../geometry/rootFinding';
import { CROSSED, ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import { levelBox, planScene } from '../../motion/planScene';
import { sideDoorAtMost } from './sideDoorAtMost';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import { roomiest, type StagePassage } from '../../motion/stagePassage';
import { turnedFace } from '../../motion/turnedFace';
import { shownGiven } from '../../measures/shown';
import { closestAt, closestAtFigure, closestHeld, type Closest } from '../../motion/closest';
import type { SideDoorMeasures } from './sideDoorMeasures';

/** A family of motions out of the door, with what its plan rectangle is at a padding. */
interface DoorTurn {
  readonly passage: StagePassage;
  /** Its tilt suits the clearance; with less padding the piece then stays off head and floor. */
  readonly attitude: TurnedHold;
  /** The face turned by that tilt (level, the one seen from the side), u x v with v upright when level [mm]. */
  readonly u: number;
  readonly v: number;
  /** The third side [mm]. */
  readonly a: number;
  /** It leaves without having turned. */
  readonly sideways: boolean;
}

const planOf = (m: SideDoorMeasures): DoorPlan => {
  const door = Math.min(m.doorWidth, m.approachWidth ?? m.doorWidth);
  return {
    door,
    wall: m.wallThickness,
    approach: Math.max(door, m.approachWidth ?? door),
    passage: m.passageWidth,
    // A door narrowed by its approach has its jamb farther from the closed end.
    deadEnd: m.deadEnd === undefined ? undefined : m.deadEnd + (m.doorWidth - door) / 2,
  };
};

/**
 * The ways out of a door into a passage across it, by how the piece is held before and after it.
 *
 * Model: walls full height; the approach is square to the door, centred on it, as wide as the door unless
 * said otherwise, and longer than the piece, as is the passage where it is open; with a closed end the piece
 * leaves to the open side. Door leaf and lining are taken off the clear sizes by the user. One ceiling.
 *
 * Families: level in each way of being held, turning out of the door (`doorIntoPassage`, exact in plan) or
 * moved out straight and then sideways; turned out of level by a constant angle so that it just clears the
 * door's head and the ceiling, tilted or leaning. Other motions may do better: that is what `atMost` is for.
 * @source doorIntoPassage; trigonometry of the turned rectangle
 */
export function sideDoorPassages(measures: SideDoorMeasures, piece: PieceSize): StagePassage[] {
  return doorTurns(measures, piece).map((turn) => turn.passage);
}

/**
 * What a door into a passage answers for a piece, in the best of the ways that `sideDoorPassages` lists.
 * @param measures [mm]
 * @returns clearance [mm a side] with its pose and where it is closest, and what is proved
 * @example
 * sideDoorAnswer({ doorWidth: 762, doorHeight: 1981, wallThickness: 110, passageWidth: 1000, ceiling: 2400 },
 *   { length: 1830, breadth: 930, thickness: 25 }).clearance // 100.30
 */
export function sideDoorAnswer(measures: SideDoorMeasures, piece: PieceSize): StageAnswer {
  return roomiest(doorTurns(measures, piece, true)).passage.answer;
}

/** @param onlyBest ways that cannot beat those before them are left out; the best is the same */
function doorTurns(measures: SideDoorMeasures, piece: PieceSize, onlyBest = false): DoorTurn[] {
  const { ceiling, doorHeight } = measures;
  const plan = planOf(measures);
  const { atMost, bound } = sideDoorAtMost(measures, piece);
  const head = Math.min(ceiling, doorHeight);
  const floor = -piece.length / 2;
  const turns: DoorTurn[] = [];
  let best = -Infinity;
  const beaten = (most: number): boolean => onlyBest && most <= best;
  const places = {
    head:
      doorHeight <= ceiling
        ? closestAt('under the head of the door', 'head')
        : closestAtFigure(`under the ceiling of ${shownGiven(ceiling)} mm`, 'ceiling'),
    jambs: closestAtFigure(`between the jambs of the door, ${shownGiven(plan.door)} mm apart`, 'jambs'),
    passage: closestAtFigure(
      `between the door's jamb and the far wall of the passage, ${shownGiven(plan.passage)} mm away`,
      'jambs',
      'far wall',
    ),
  };
  const add = (
    from: Hold,
    to: Hold,
    clearance: number,
    pose: Pose,
    critical: Closest,
    turn: Omit<DoorTurn, 'passage'>,
    turningRoom = false,
  ): void => {
    const answer = { clearance: Math.max(clearance, floor), atMost, bound, pose, critical };
    best = Math.max(best, answer.clearance);
    const passage: StagePassage = { from, to, answer };
    turns.push({ ...turn, passage: turningRoom ? { ...passage, needsTurningRoom: true } : passage });
  };

  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const under = (head - upright) / 2;
    const shown = { attitude: { hold }, u: along, v: upright, a: across };
    const byDoor = (plan.door - across) / 2;
    if (along >= across && !beaten(Math.min(under, byDoor, (plan.passage - across) / 2))) {
      const fit = doorIntoPassage(along, across, plan).clearance;
      const clearance = Math.min(fit, under);
      const critical = tell(places, under, fit, byDoor, clearance);
      add(hold, hold, clearance, poseOfHold(hold), critical, { ...shown, sideways: false });
    }
    const sideways = Math.min(byDoor, (plan.passage - along) / 2);
    const clearance = Math.min(sideways, under);
    if (beaten(clearance) && turns.length > 0) continue;
    const pose = hold[1] === 'L' ? 'on end' : 'crabwise';
    const critical = tell(places, under, sideways, byDoor, clearance);
    add(hold, CROSSED[hold], clearance, pose, critical, { ...shown, sideways: true });
  }

  const turned = (hold: Hold, u: number, v: number, a: number, how: 'tilted' | 'leaning'): void => {
    const level = onlyBest
      ? best
      : (turns.find((w) => w.passage.from === hold && w.passage.to === hold)?.passage.answer.clearance ??
        -Infinity);
    // Below this the diagonal is under the head, and the face may stand in any attitude.
    const low = Math.max(level, diagonalMeets(u, v, head)) + 1e-6;
    const high = (head - v) / 2;
    if (low > high) return;
    const clearance = greatestPadding(low, high, (c) => {
      const face = turnedFace(Math.max(0, u + 2 * c), Math.max(0, v + 2 * c), head);
      if (!face) return -Infinity;
      const a1 = Math.max(0, a + 2 * c);
      const long = Math.max(face.plan, a1);
      const short = Math.min(face.plan, a1);
      return Math.min(plan.door - short, plan.passage - passageNeeded(long, short, plan));
    });
    if (clearance === undefined) return;
    const face = turnedFace(Math.max(0, u + 2 * clearance), Math.max(0, v + 2 * clearance), head);
    if (!face) return;
    const { tilt } = face;
    const turned = shownGiven(degrees(tilt), 0);
    add(
      hold,
      hold,
      clearance,
      how,
      closestHeld(`turned ${turned} degrees out of level`, places.passage),
      { attitude: { hold, turned: how, tilt }, u, v, a, sideways: false },
      how === 'leaning',
    );
  };
  const { length, breadth, thickness } = piece;
  turned('LB', length, breadth, thickness, 'tilted');
  turned('LT', length, thickness, breadth, 'tilted');
  turned('LT', breadth, thickness, length, 'leaning');
  return turns;
}

/** Where a level way is closest: under the head, between the jambs or in the passage. */
function tell(
  places: { readonly head: Closest; readonly jambs: Closest; readonly passage: Closest },
  under: number,
  inPlan: number,
  byDoor: number,
  clearance: number,
): Closest {
  if (under <= inPlan) return places.head;
  return byDoor <= clearance + 1e-6 ? places.jambs : places.passage;
}

/** Sides in plan [mm] along and across the approach, and the height taken, at a padding. */
function sizesAt({ u, v, a, attitude }: DoorTurn, padding: number) {
  const u1 = Math.max(0, u + 2 * padding);
  const v1 = Math.max(0, v + 2 * padding);
  const a1 = Math.max(0, a + 2 * padding);
  const { turned, tilt = 0 } = attitude;
  const inPlan = u1 * Math.cos(tilt) + v1 * Math.sin(tilt);
  const height = u1 * Math.sin(tilt) + v1 * Math.cos(tilt);
  return turned === 'leaning' ? { along: a1, across: inPlan, height } : { along: inPlan, across: a1, height };
}

/** The padding [mm] at which a face's diagonal is as long as a height. */
function diagonalMeets(u: number, v: number, height: number): number {
  const inside = 2 * height * height - (u - v) ** 2;
  const both = inside >= 0 ? (Math.sqrt(inside) - (u + v)) / 4 : -Infinity;
  return both >= -v / 2 ? both : Math.min((height - u) / 2, -v / 2);
}

/**
 * The best answer with a motion and the scene it is free in: x along the passage, y from the door into it,
 * z up; the passage from y = 0, the door's middle at x = 0. The motion is free for the piece padded by
 * `motionPadding`, a millimetre below the clearance.
 * @internal for the tests, which replay it
 */
export function sideDoorMotion(
  measures: SideDoorMeasures,
  piece: PieceSize,
): AnswerWithMotion & { readonly motionPadding: number } {
  const turn = roomiest(doorTurns(measures, piece, true));
  const { answer } = turn.passage;
  const motionPadding = Math.max(answer.clearance - 1, -piece.length / 2);
  const plan = planOf(measures);
  const { along, across, height } = sizesAt(turn, motionPadding);
  const start = Math.PI / 2;
  // A face turned nearly upright may be shorter in plan than the side across: then that side leads.
  const quarter = !turn.sideways && along < across ? Math.PI / 2 : 0;
  const [p, q] = quarter > 0 ? [across, along] : [along, across];
  const { world, start: from, goal } = doorPassage(p, q, plan, start, turn.sideways ? start : 0);
  const decision = decidePassage(world, p, q, from, goal);
  const path = (decision.verdict === 'passes' ? decision.path() : []).map((at) => ({
    ...at,
    angle: at.angle - quarter,
  }));
  const room = Math.min(measures.ceiling, measures.doorHeight) - height;
  const scene = planScene(world.obstacles, measures.ceiling);
  if (measures.doorHeight < measures.ceiling && plan.wall > 0) {
    const { door, wall } = plan;
    scene.push(levelBox([-door / 2, -wall, measures.doorHeight], [door / 2, 0, measures.ceiling]));
  }
  const middle = height / 2 + Math.min(Math.max(0, room) / 2, 1);
  return { ...answer, motion: motionInPlan(path, turn.attitude, middle), scene, motionPadding };
}
