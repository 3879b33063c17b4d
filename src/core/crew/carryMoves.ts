import { lowerShare } from '../carrying/lowerShare';
import { radians } from '../measures/angle';
import type { PieceSize, Pose } from '../measures/piece';
import type { WalkKey } from '../joint/walk/carrier';
import { ALL_HOLDS, poseOfHold, sidesOfHold, sizesOfHold, type Hold } from '../motion/hold';
import type { ChainStep } from '../route/chain';
import { judgeRoute, type StepJudgement } from '../route/judgeRoute';
import type { PreparedRoute } from '../route/preparedRoute';
import { whereClosest } from '../route/reason';
import { routeMotion, judgedChain } from '../route/routeMotion';
import type { StageBook } from '../route/stageBook';
import type { Verdict } from '../route/verdict';
import { isStair, kindOf, type StageName } from '../stages/kinds';
import type { StageMeasures } from '../stages/measures';
import { aboveGuideline, aidFor, type Aid } from './aidFor';
import { heldTilt } from './heldTilt';
import { movesRoundLanding, turnedInPlan, type MoveRoundLanding } from './roundLanding';

/** What is done in one move. */
export type MoveKind = 'change' | 'pass' | 'no way shown' | MoveRoundLanding['kind'];

/** Where the hands find room at a piece. */
export type HandRoom = 'ends and sides' | 'ends only';

/** One move of the carry. */
export interface CarryMove {
  /** Number of the row, from 0. */
  readonly row: number;
  /** What the step is called. */
  readonly step: number | string;
  readonly stage: StageName | undefined;
  readonly stageText: string;
  /** Number of the move in the whole carry, from 1. */
  readonly number: number;
  readonly kind: MoveKind;
  /** How it is held before the move and after it; undefined where no way is shown. */
  readonly from: Hold | undefined;
  readonly to: Hold | undefined;
  /** The pose where the move is closest. */
  readonly pose: Pose | undefined;
  readonly hand: 'left' | 'right' | undefined;
  readonly way: 'up' | 'down' | undefined;
  /** Tilt in which it is carried on [rad]; undefined where the move could not be drawn. */
  readonly tilt: number | undefined;
  /** [mm] */
  readonly raise: number | undefined;
  readonly overRail: boolean;
  /** Clearance of the step [mm a side] in the moves that are told: STAGES may give more, for a motion that is raised farther. */
  readonly clearance: number | undefined;
  /** It is pushed past a side door on the way: on past the next, away from the own, back to it, or back past it. */
  readonly pastDoor?: 'on past the next' | 'away from the own' | 'back to the own' | 'back past the last';
  /** Where the step is closest, on the move that is; where no way is shown, why. */
  readonly closest: string;
  readonly verdict: Verdict;
  readonly hands: HandRoom | undefined;
  /** It is heavier than the guideline lets a team lift on the level. */
  readonly heavy: boolean;
  /** The first move after a step for which no way is shown: what that step is called. How the piece comes out of it is supposed. */
  readonly supposedAfter?: number | string;
  /** On the lower end [kg], on a slope; `tips` where it would tip over the lower carrier; undefined: no mass. */
  readonly lowerShare: number | 'tips' | undefined;
  readonly aid: Aid | undefined;
}

/** What the carry of a piece is told for. */
export interface CarryAsked {
  readonly size: PieceSize;
  /** The clearance the firm insists on [mm a side]. */
  readonly allowance: number;
  /** [kg]; undefined where it is not given. */
  readonly mass?: number | undefined;
}

/** Room beside a piece for a gloved hand [mm]: 25 to 40, common practice, no source. */
const GLOVED_HAND = 40;

/**
 * The carry of a piece along a route, a move each: first what is done to the piece where it stands, then the way through
 * the step, then what is done behind it. A step for which no way is shown has one move that says so.
 *
 * @param route prepared with the same book
 * @returns moves in the order of the way, at least one a step
 * @example
 * ((book) =>
 *   carryMoves(prepareRoute(readRoute([['Stage', 'Width', 'Height'], ['door', 900, 2000]]).rows, book), book, {
 *     size: { length: 1830, breadth: 930, thickness: 25 },
 *     allowance: 25,
 *     mass: 124,
 *   }).map(({ step }) => step))(stageBook(5)) // ['row 1']
 */
export function carryMoves(route: PreparedRoute, book: StageBook, asked: CarryAsked): CarryMove[] {
  const { size, allowance, mass } = asked;
  const heavy = mass !== undefined && aboveGuideline(mass);
  const judged = judgeRoute(route, size, book, allowance).judge('every step');
  const chain = judgedChain(route, size, book, allowance);
  const walk = chain && routeMotion(chain, size);
  const moves: CarryMove[] = [];
  let notShown: { readonly name: number | string } | undefined;
  judged.steps.forEach((step, row) => {
    const taken = chain?.steps[row];
    const prepared = route.steps[row];
    if (!prepared) return;
    const add = (
      move: Omit<CarryMove, 'row' | 'step' | 'stage' | 'stageText' | 'number' | 'verdict' | 'heavy'>,
    ): void => {
      const { stage, stageText } = prepared.row;
      const { name, verdict } = { name: prepared.name, verdict: step.verdict };
      const supposed = notShown === undefined ? {} : { supposedAfter: notShown.name };
      notShown = move.kind === 'no way shown' ? { name } : undefined;
      const number = moves.length + 1;
      moves.push({ row, step: name, stage, stageText, number, verdict, heavy, ...supposed, ...move });
    };
    const { stage, hand, way } = prepared.row;
    const where = (at: ChainStep): string => whereClosest({ route, i: row }, at);
    if (!stage || !taken || !passes(step)) {
      add({
        kind: 'no way shown',
        from: undefined,
        to: undefined,
        pose: undefined,
        hand,
        way,
        tilt: undefined,
        raise: undefined,
        overRail: false,
        clearance: step.clearance,
        closest: step.because,
        hands: undefined,
        lowerShare: undefined,
        aid: undefined,
      });
      return;
    }
    // The motion that is told may leave less than the widest, which is raised farther than by hand.
    const clearance = step.clearance === undefined ? undefined : Math.min(step.clearance, taken.clearance);
    const [enters, from, to, leaves] = [taken.enters, taken.from, taken.to, taken.leaves].map(
      (hold) => ALL_HOLDS[hold] ?? 'LB',
    ) as [Hold, Hold, Hold, Hold];
    const drawn = walk && (walk.notDrawn === undefined || walk.notDrawn.row > row);
    const turned = (before: Hold, after: Hold, closest: boolean): void => {
      if (before === after) return;
      // Between lying and standing on end, all of it comes to stand on the lower end.
      const onEnd = poseOfHold(before) === 'on end' || poseOfHold(after) === 'on end';
      add({
        kind: 'change',
        from: before,
        to: after,
        pose: poseOfHold(after),
        hand,
        way,
        tilt: 0,
        raise: 0,
        overRail: false,
        clearance,
        closest: closest ? where(taken) : '',
        hands: 'ends and sides',
        lowerShare: mass === undefined ? undefined : onEnd ? mass : mass / 2,
        aid: aidFor({ stage, pose: poseOfHold(after), change: true, raise: 0, overRail: false }, mass),
      });
    };
    turned(enters, from, taken.closest === 'change before');
    const pose = taken.passage?.answer.pose ?? poseOfHold(from);
    const raise = taken.passage?.answer.raise ?? 0;
    const overRail = taken.passage?.answer.overRail === true;
    const carried = holdInPose(from, pose);
    const tilt = tiltOn(
      stage,
      from,
      pose,
      drawn ? walk.keys : [],
      row,
      prepared.row.measures,
      besideStair(route, taken),
    );
    const stoodUp = pose === 'on end' && poseOfHold(from) !== pose;
    const closest = taken.closest === 'change before' || taken.closest === 'change after' ? '' : where(taken);
    const same = { from, to, hand, way, overRail, clearance, hands: handRoom(taken) };
    const { rise, going } = prepared.row.measures;
    const onLanding =
      drawn && rise !== undefined && going !== undefined
        ? movesRoundLanding({
            stage,
            from,
            to,
            pose,
            pitch: Math.atan2(rise, going),
            tilt: pose === 'tilted' ? (tilt ?? 0) : 0,
            raise,
            turned:
              stage === 'winder'
                ? radians(prepared.row.measures.turn ?? 90)
                : turnedInPlan(walk.keys, row, from),
          })
        : undefined;
    if (onLanding) {
      const decides = onLanding.findIndex(
        ({ kind }) => kind === 'quarter' || kind === 'round' || kind === 'aside',
      );
      onLanding.forEach((move, k) => {
        const along = move.kind === 'approach' ? from : move.kind === 'go on' ? to : carried;
        const onWay = k >= decides && move.kind !== 'go on';
        const over = overRail && (onWay || move.kind === 'raise');
        add({
          ...same,
          ...move,
          overRail: over,
          closest: k === decides ? closest : '',
          lowerShare:
            move.pose === 'on end' && poseOfHold(along) !== 'on end'
              ? mass
              : move.kind === 'stand'
                ? mass
                : shareOf(size, along, move.pose, move.tilt, mass),
          aid: aidFor(
            {
              stage,
              pose: move.pose,
              change: move.kind === 'stand',
              raise: move.raise,
              overRail: over,
            },
            mass,
          ),
        });
      });
    } else {
      const past = pastDoorAt(taken, row);
      add({
        ...same,
        ...(past === undefined ? {} : { pastDoor: past }),
        kind: 'pass',
        pose,
        tilt,
        raise,
        closest,
        lowerShare: stoodUp ? mass : shareOf(size, carried, pose, tilt, mass),
        // On the floor beside a stair it is no level piece as long as it lies on the slope.
        aid: aidFor(
          {
            stage,
            pose: !isStair(stage) && (tilt ?? 0) > 0 ? 'tilted' : pose,
            change: false,
            raise,
            overRail,
          },
          mass,
        ),
      });
    }
    turned(to, leaves, taken.closest === 'change after');
  });
  return moves;
}

/** What is done about a side door that the piece is pushed past, at the rows between which that is. */
function pastDoorAt({ joint, passage }: ChainStep, row: number): CarryMove['pastDoor'] {
  const door = passage?.pastDoor;
  if (!joint || door === undefined) return undefined;
  const [first, last] = joint;
  if (row === first) return door === first ? 'away from the own' : 'on past the next';
  if (row === last) return door === last ? 'back to the own' : 'back past the last';
  return undefined;
}

/** Out of level by less than this [rad], five degrees, nobody need be told. */
const LEVEL_WITHIN = radians(5);

/** Whether a step is passed by itself. */
export const passes = ({ verdict }: Pick<StepJudgement, 'verdict'>): boolean =>
  verdict === 'goes' || verdict === 'tight';

/** The rows with which a step is passed, where a stair is among them: the piece comes from it, or goes on to it, out of level. */
const besideStair = ({ steps }: PreparedRoute, { joint }: ChainStep): ChainStep['joint'] =>
  joint && steps.slice(joint[0], joint[1] + 1).some(({ row: { stage } }) => stage && isStair(stage))
    ? joint
    : undefined;

/**
 * The tilt [rad] in which it is carried through a step; on level floor it is level unless its pose says otherwise, or it
 * still lies partly on a stair.
 */
function tiltOn(
  stage: StageName,
  from: Hold,
  pose: Pose,
  keys: readonly WalkKey[],
  row: number,
  measures: StageMeasures,
  withStair: ChainStep['joint'],
): number | undefined {
  const turned = pose === 'tilted' || pose === 'leaning';
  const { upright } = sidesOfHold(holdInPose(from, pose));
  if (!isStair(stage) && !turned) {
    if (!withStair || poseOfHold(from) !== pose) return 0;
    const beside = heldTilt(keys, row, upright, 'carried') ?? 0;
    // What is only let down at the end of the stair is told with the stair.
    return beside < LEVEL_WITHIN ? 0 : beside;
  }
  const { rise, going } = measures;
  if (kindOf(stage).stair === 'flight' && pose !== 'leaning' && rise !== undefined && going !== undefined) {
    // Steeper than the pitch it only is while it is stood up or laid down, which the moves before and after tell.
    const carried = heldTilt(keys, row, upright, 'carried');
    // On a short flight it is brought up to the slope or level all the while.
    const held = turned && (carried ?? 0) < LEVEL_WITHIN ? heldTilt(keys, row, upright, 'greatest') : carried;
    return held === undefined ? undefined : Math.min(held, Math.atan2(rise, going));
  }
  if (turned) {
    const own = heldTilt(keys, row, upright, 'greatest');
    if (isStair(stage) || !withStair || (own ?? 0) >= LEVEL_WITHIN) return own;
    // Of a turn that is made with a stair beside it, what is drawn may belong to the row beside it, or to any of them.
    const [first, last] = withStair;
    const among = (rows: readonly number[]): number | undefined => {
      const tilts = rows.flatMap((at) => heldTilt(keys, at, upright, 'greatest') ?? []);
      return tilts.length > 0 ? Math.max(...tilts) : undefined;
    };
    const beside = among([row - 1, row + 1]);
    if ((beside ?? 0) >= LEVEL_WITHIN) return beside;
    return among(Array.from({ length: last - first + 1 }, (_, k) => first + k));
  }
  if (poseOfHold(from) === pose) return heldTilt(keys, row, upright, 'carried');
  const least = heldTilt(keys, row, upright, 'least');
  // Where what is drawn is never near the pose, it shows another way.
  return least !== undefined && least > Math.PI / 4 ? undefined : least;
}

/** The hold of a passage where it is closest: on a landing the piece may be stood up and laid down on the way. */
function holdInPose(from: Hold, pose: Pose): Hold {
  if (pose === 'tilted' || pose === 'leaning' || poseOfHold(from) === pose) return from;
  return ALL_HOLDS.find((hold) => poseOfHold(hold) === pose) ?? from;
}

/** A hand beside the piece wants its own room; the clearance is what is there at the closest. */
const handRoom = ({ clearance }: ChainStep): HandRoom =>
  clearance >= GLOVED_HAND ? 'ends and sides' : 'ends only';

/**
 * What its lower end bears while it is carried on a slope, taken hold of at both ends of its lower edge, the centre of mass
 * at half its height. Leaning turns it across the way and leaves the ends alike.
 */
function shareOf(
  size: PieceSize,
  hold: Hold,
  pose: Pose,
  tilt: number | undefined,
  mass: number | undefined,
): number | 'tips' | undefined {
  if (mass === undefined) return undefined;
  const slope = pose === 'leaning' ? 0 : tilt;
  // What was not drawn has a slope all the same.
  if (slope === undefined) return undefined;
  const { along, upright } = sizesOfHold(size, hold);
  const share = lowerShare({ mass, gripSpacing: along, massHeight: upright / 2, pitch: slope });
  return share.ok ? share.value : 'tips';
}
