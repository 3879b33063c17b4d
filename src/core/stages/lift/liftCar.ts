import { degrees } from '../../measures/angle';
import { decidePassage } from '../../geometry/planar/decidePassage';
import { carFromSide, raisedIntoCar } from '../../geometry/raisedIntoCar';
import { rectangleThroughOpening } from '../../geometry/rectangleThroughOpening';
import {
  carPassage,
  slantedIntoCar,
  turnedIntoCar,
  type CarPlan,
  type SlantedFit,
} from '../../geometry/slantedIntoCar';
import type { PieceSize, Pose } from '../../measures/piece';
import { attitudeInPlan, motionInPlan, type TurnedHold } from '../../motion/attitude';
import { ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import { liftCarAtMost } from './liftCarAtMost';
import { levelBox, planScene } from '../../motion/planScene';
import type { KeyAttitude, Motion, SceneBox } from '../../space/motion';
import { goingOn } from '../../space/quaternion';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import { roomiest, type StagePassage } from '../../motion/stagePassage';
import { shownGiven } from '../../measures/shown';
import { present } from '../../lists/present';
import { closestAt, type Closest } from '../../motion/closest';
import type { LiftCarMeasures } from './liftCarMeasures';

interface CarEntry {
  readonly passage: StagePassage;
  readonly hold: TurnedHold;
  /** Straight in at a constant attitude; else level, turned in plan, or its front raised as it goes in. */
  readonly straight: boolean;
  readonly raised?: true;
  /** Straight in leaning or tilted: sizes along, across and upright as it is held, at a padding. */
  readonly box: (padding: number) => { along: number; across: number; upright: number };
}

const padded = (size: number, c: number): number => Math.max(0, size + 2 * c);

/**
 * The ways into a lift car, by how the piece is held before the door: through the door and to where the door
 * can shut behind it.
 *
 * Model: a box-shaped car, its door in the middle of the width, the front wall thin; the landing before it
 * open, its ceiling no lower than the door's head. Handrails and the fold of the door are taken off by the
 * user.
 *
 * Families: level, straight in or turning in plan as it goes in (`turnedIntoCar`); straight in at a constant
 * attitude turned out of level, tilted (in the plane of travel, under the door's head) or leaning (across it); straight
 * in, its front raised past the door's head on the way (`raisedIntoCar`).
 * @source turnedIntoCar; Carver's condition for a turned face (Wetzel, Math. Mag. 73, 2000, 204-211)
 */
export function liftCarPassages(measures: LiftCarMeasures, piece: PieceSize): StagePassage[] {
  return carEntries(measures, piece, 'each').map((entry) => entry.passage);
}

/**
 * What a lift car answers for a piece, in the best of the ways that `liftCarPassages` lists.
 * @param measures [mm]
 * @returns clearance [mm a side] with its pose and where it is closest, and what is proved
 * @example
 * liftCarAnswer({ doorWidth: 800, doorHeight: 2000, carWidth: 1100, carDepth: 1400, carHeight: 2200 },
 *   { length: 1830, breadth: 930, thickness: 25 }).clearance // 97.06
 */
export function liftCarAnswer(measures: LiftCarMeasures, piece: PieceSize): StageAnswer {
  return roomiest(carEntries(measures, piece)).passage.answer;
}

const RAISED_INSIDE = closestAt('in the car, its front raised as it goes in', 'head', 'ceiling', 'far wall');

/** Clearance [mm a side] above which nothing depends on more. */
const AMPLE = 150;
/** How it is held as it begins whose front may be raised on the way in. */
const RAISED: readonly Hold[] = ['LB', 'LT'];
/** A way that by its sections leaves less than this [mm a side] is not asked of the planner: its closed form stands. */
const HOPELESS = -80;

/**
 * Every way; the planner is asked only about those that could beat all others, where each counts also about those
 * that pass with less than is ample: the rest keep the closed form.
 */
function carEntries(
  measures: LiftCarMeasures,
  piece: PieceSize,
  which: 'the best' | 'each' = 'the best',
): CarEntry[] {
  const { doorWidth, carWidth, carDepth, carHeight } = measures;
  const door = Math.min(doorWidth, carWidth);
  const head = Math.min(measures.doorHeight, carHeight);
  const { atMost, bound } = liftCarAtMost(measures, piece);
  const floor = -piece.length / 2;
  const entries: CarEntry[] = [];
  const entryOf = (
    hold: TurnedHold,
    clearance: number,
    pose: Pose,
    critical: Closest,
    straight: boolean,
    box: CarEntry['box'],
  ): CarEntry => {
    const answer = { clearance: Math.max(floor, clearance), atMost, bound, pose, critical };
    const passage: StagePassage = { from: hold.hold, to: hold.hold, answer };
    return {
      passage: hold.turned ? { ...passage, needsTurningRoom: true } : passage,
      hold,
      straight,
      box,
    };
  };

  const car = { door, width: carWidth, depth: carDepth };
  const level = (hold: Hold, turning: (p: number, q: number, car: CarPlan) => SlantedFit): CarEntry => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const under = (head - upright) / 2;
    const box = (c: number) => ({
      along: padded(along, c),
      across: padded(across, c),
      upright: padded(upright, c),
    });
    const straight = Math.min((door - across) / 2, (carDepth - along) / 2);
    // Only lengthwise can turning help; and not when the height decides anyway.
    const inPlan = along >= across && straight < under ? turning(along, across, car).clearance : straight;
    const plan = Math.max(straight, inPlan);
    const critical =
      under <= plan
        ? measures.doorHeight <= carHeight
          ? closestAt("under the head of the lift's door", 'head')
          : closestAt('under the ceiling of the car', 'ceiling')
        : plan > straight
          ? closestAt('slanted in the car, turning in through its door', 'jambs', 'sides', 'far wall')
          : (door - across) / 2 <= (carDepth - along) / 2
            ? closestAt("between the jambs of the lift's door", 'jambs')
            : closestAt('between the closed door and the back of the car', 'far wall');
    return entryOf({ hold }, Math.min(plan, under), poseOfHold(hold), critical, plan <= straight, box);
  };
  for (const hold of ALL_HOLDS) entries.push(level(hold, slantedIntoCar));
  const levelOf = (hold: Hold): (typeof entries)[number] =>
    present(
      entries.find((entry) => entry.hold.hold === hold),
      'the level way into the car of every hold',
    );

  const turned = (hold: Hold, how: 'tilted' | 'leaning'): void => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const [face, other, room, rest] =
      how === 'tilted' ? [along, across, carDepth, door] : [across, along, door, carDepth];
    const fit = rectangleThroughOpening(room, head, face, upright);
    const clearance = Math.min(fit.clearance, (rest - other) / 2);
    const level = levelOf(hold).passage.answer.clearance;
    if (fit.angle === 0 || clearance <= level) return;
    // The fit's angle is between the long sides; the tilt is out of level.
    const faceLong = face >= upright;
    const roomLong = room >= head;
    const tilt = faceLong === roomLong ? fit.angle : Math.PI / 2 - fit.angle;
    const words = how === 'tilted' ? 'with one end raised' : 'leaning';
    const entry = entryOf(
      { hold, turned: how, tilt },
      clearance,
      how,
      closestAt(
        `${words}, ${shownGiven(degrees(tilt), 0)} degrees out of level, under the head of the lift's door`,
        'head',
      ),
      true,
      (c) => {
        const f = padded(face, c);
        const u = padded(upright, c);
        const long = f * Math.cos(tilt) + u * Math.sin(tilt);
        const high = f * Math.sin(tilt) + u * Math.cos(tilt);
        const o = padded(other, c);
        return how === 'tilted'
          ? { along: long, across: o, upright: high }
          : { along: o, across: long, upright: high };
      },
    );
    entries.push(entry);
  };
  turned('LB', 'tilted');
  turned('LT', 'tilted');
  turned('BT', 'tilted');
  turned('LT', 'leaning');
  turned('BT', 'leaning');
  turned('TB', 'leaning');
  let best = roomiest(entries).passage.answer.clearance;
  ALL_HOLDS.forEach((hold, i) => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const inside = rectangleThroughOpening(carWidth, carDepth, along, across).clearance;
    const most = Math.min((head - upright) / 2, (door - across) / 2, inside);
    const shown = levelOf(hold).passage.answer.clearance;
    if (most < HOPELESS) return;
    if (most <= best && (which === 'the best' || most < 0 || shown >= Math.min(most, AMPLE))) return;
    const round = level(hold, turnedIntoCar);
    entries[i] = round;
    best = Math.max(best, round.passage.answer.clearance);
  });
  for (const hold of RAISED) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const inside = rectangleThroughOpening(carDepth, carHeight, along, upright).clearance;
    const most = Math.min(inside, (door - across) / 2);
    if (most < HOPELESS || most <= best) continue;
    const clearance = raisedIntoCar(along, upright, { head, depth: carDepth, height: carHeight }, most, best);
    if (clearance <= best) continue;
    best = clearance;
    const box = (c: number) => ({
      along: padded(along, c),
      across: padded(across, c),
      upright: padded(upright, c),
    });
    // It is tilted before the door already: there has to be room for that.
    const entry = entryOf({ hold, turned: 'tilted' }, clearance, 'tilted', RAISED_INSIDE, false, box);
    entries.push({ ...entry, raised: true });
  }
  return entries;
}

/**
 * The best answer with a motion and the scene it is free in: x along the door's wall, y into the car, the
 * door's middle at the origin, the car from y = 0. Free for the piece padded by `motionPadding`, a
 * millimetre below the clearance. It ends wholly inside.
 * @internal for the tests, which replay it
 */
export function liftCarMotion(
  measures: LiftCarMeasures,
  piece: PieceSize,
): AnswerWithMotion & { readonly motionPadding: number } {
  const entry = roomiest(carEntries(measures, piece));
  const { answer } = entry.passage;
  const motionPadding = Math.max(answer.clearance - 1, -piece.length / 2);
  const { along, across, upright } = entry.box(motionPadding);
  const { carWidth, carDepth, carHeight, doorHeight } = measures;
  const door = Math.min(measures.doorWidth, carWidth);
  const plan = { door, width: carWidth, depth: carDepth };
  const high = upright / 2 + Math.min(1, Math.max(0, Math.min(doorHeight, carHeight) - upright) / 2);
  let motion: Motion;
  const passage = carPassage(along, across, plan);
  if (entry.straight) {
    const inside = along / 2 + Math.max(0, carDepth - along) / 2;
    const path = [
      { x: 0, y: -along / 2 - 10, angle: Math.PI / 2 },
      { x: 0, y: inside, angle: Math.PI / 2 },
    ];
    motion = motionInPlan(path, entry.hold, high);
  } else if (entry.raised) {
    const side = carFromSide(along, upright, {
      head: Math.min(doorHeight, carHeight),
      depth: carDepth,
      height: carHeight,
    });
    const decision = decidePassage(side.world, along, upright, side.start, side.goal);
    const keys: KeyAttitude[] = [];
    for (const { x, y, angle } of decision.verdict === 'passes' ? decision.path() : []) {
      const turn = attitudeInPlan({ ...entry.hold, tilt: Math.PI / 2 - angle }, Math.PI / 2);
      keys.push({ at: [0, y, x], turn: goingOn(turn, keys[keys.length - 1]?.turn) });
    }
    motion = keys;
  } else {
    const decision = decidePassage(passage.world, along, across, passage.start, passage.goal);
    motion = motionInPlan(decision.verdict === 'passes' ? decision.path() : [], entry.hold, high);
  }
  const scene: SceneBox[] = planScene(passage.world.obstacles, carHeight);
  if (doorHeight < carHeight) {
    scene.push(levelBox([-door / 2, -1e-3, doorHeight], [door / 2, 0, carHeight]));
  }
  return { ...answer, motion, scene, motionPadding };
}
