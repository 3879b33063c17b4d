import { Lately } from '../lists/lately';
import { sizesOfHold, type Hold } from '../motion/hold';
import type { PieceSize } from '../measures/piece';
import { foundMotion, widestFrom, type MotionTask } from '../stages/landing/landingSearch';
import type { StageName } from '../stages/kinds';
import type { NamedBox } from '../stages/landing/namedBoxes';
import { closedBlock, mostAt, restingAt, type ClosedBlock } from './guidedEnds';
import { guidesThrough, stationsAlong } from './guidedWay';
import type { JointAsk, JointBlock, JointPassage } from './jointRow';
import type { KeyAttitude } from '../space/motion';
import type { Vector } from '../space/vector';
import { groundsOf } from './place/groundsOf';
import { isLanding } from './place/rowContext';
import type { SolidPart } from './place/solid';

/** Padding that is of no more interest [mm a side]. */
const AMPLE = 150;
/** Places that the widening of one way of holding it looks at in all. */
const WORK = 40000;
/** How it is held where it begins and ends: lengthwise, or stood on end all the way. */
const HOLDS: readonly Hold[] = ['LB', 'LT', 'BL', 'TL'];

/**
 * Rows that stand close with a landing or winding treads among them, from one place of rest to another: motions drawn
 * down the middle of the air in the ways in which a piece mostly goes (`guidesThrough`), widened in space without chance. So
 * a stair is passed that turns between flights shorter than the piece, with whatever doors, halls and turns stand close
 * beyond them.
 *
 * Supposed: nothing but the block, closed where it begins and ends. It proves nothing: `atMost` is Infinity.
 *
 * @returns undefined where no stair turns among the rows
 */
export function guidedJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
): JointPassage[] | undefined {
  if (!block.rows.some(isLanding)) return undefined;
  const least = Math.max(0, ask.atLeast ?? 0);
  return HOLDS.flatMap((hold): JointPassage[] => {
    if (ask.from && !ask.from.includes(hold)) return [];
    const { upright } = sizesOfHold(piece, hold);
    const closed = CLOSED.get(block, String(upright), () => closedBlock(block, upright));
    const task = taskOf(block, closed, piece, hold);
    if (task.mostPadding < least) return [];
    const shrunk = -piece.length / 2;
    const { start, goal } = task.ends(shrunk);
    const guides = guidesThrough(stationsAlong(closed.route, block), hold, start, goal);
    const wider = widestFrom(
      task,
      piece,
      guides.map((motion) => ({ clearance: shrunk, motion })),
      { enough: ask.enough ?? AMPLE, shown: least, budget: { left: WORK } },
    );
    if (!wider || wider.clearance < least) return [];
    const found = foundMotion(task, piece, wider);
    const [x, y, z] = closed.origin;
    const moved = (at: Vector): Vector => [at[0] - x, at[1] - y, at[2] - z];
    const { clearance, pose, critical, raise, motion, scene } = found;
    const own = motion.map((key): KeyAttitude => ({ ...key, at: moved(key.at) }));
    return [
      {
        from: hold,
        to: hold,
        answer: { clearance, atMost: Infinity, pose, critical, raise },
        motion: own,
        shown: () => ({
          motion: own,
          scene: scene.map((box) => ({ ...box, centre: moved(box.centre) })),
          motionPadding: clearance,
        }),
      },
    ];
  });
}

/** Asked of one block in one way of holding it after the other. */
const CLOSED = new Lately<JointBlock, ClosedBlock>(12);

function taskOf(
  { rows, before, after }: JointBlock,
  closed: ClosedBlock,
  piece: PieceSize,
  hold: Hold,
): MotionTask {
  const { route, closings, ends } = closed;
  const obstacles: NamedBox[] = route.solids
    .filter(({ row }) => (row >= 0 || before === 'open') && (row < rows.length || after === 'open'))
    .map(({ row, part, box }) => ({ name: nameOf(part, rows[row]?.stage), box }));
  for (const box of closings) obstacles.push({ name: 'the end of the straight', box });
  return {
    obstacles,
    ends: (padding) => ({
      start: restingAt(ends[0], piece, hold, padding),
      goal: restingAt(ends[1], piece, hold, padding),
    }),
    mostPadding: Math.min(mostAt(ends[0], piece, hold), mostAt(ends[1], piece, hold)),
    grounds: groundsOf(route),
  };
}

const PART_WORDS: Readonly<Record<SolidPart, string>> = {
  wall: 'a wall',
  'facing wall': 'the facing wall',
  floor: 'the floor',
  ceiling: 'the ceiling',
  head: 'the head',
  riser: 'the first riser',
  nosings: 'the nosings',
  'flight ceiling': 'the ceiling',
  tread: 'a tread',
  rail: 'the handrail',
  ground: 'the ground',
};

const nameOf = (part: SolidPart, stage: StageName | undefined): string =>
  stage === undefined ? PART_WORDS[part] : `${PART_WORDS[part]} of the ${stage}`;
