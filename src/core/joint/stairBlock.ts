import type { KeyAttitude, SceneBox } from '../space/motion';
import { leadsStraightOn, roleOf } from '../stages/kinds';
import { standBlock, type BlockEnd } from './blockEnds';
import type { JointBlock, JointMotion, JointRow } from './jointRow';
import {
  placedBox,
  placedKey,
  placedPoint,
  placingOf,
  reversed,
  START,
  type Placing,
  type Vec3,
} from './place/frame';
import type { PlacedRow } from './place/placedRoute';
import { isLevel } from './place/rowContext';

/**
 * How a block is made of a stair and of level rows that begin with a turn: how many straight rows [count] the stair has, and
 * whether it comes first; undefined where it is not made so.
 */
export function stairAndLevel(
  rows: readonly JointRow[],
): { readonly order: 'stair first' | 'stair last'; readonly straightRows: number } | undefined {
  const forward = splits(rows);
  if (forward !== undefined) return { order: 'stair first', straightRows: forward };
  const backward = splits([...rows].reverse());
  return backward === undefined ? undefined : { order: 'stair last', straightRows: backward };
}

/** How many straight rows with a flight stand before a turn from which on all is level; undefined where it is not so. */
function splits(rows: readonly JointRow[]): number | undefined {
  const turn = rows.findIndex(({ stage }) => roleOf(stage) === 'turn');
  if (turn < 1) return undefined;
  const stair = rows.slice(0, turn);
  if (
    !stair.some(({ stage }) => stage === 'flight') ||
    stair.some(({ stage }) => stage !== 'flight' && !leadsStraightOn(stage))
  )
    return undefined;
  return rows.slice(turn).every(({ stage }) => isLevel(stage)) ? turn : undefined;
}

/**
 * A block with a stair at one end and turns on the level at the other, in coordinates in which the way leads from the
 * stair along x.
 */
export class StairBlock {
  readonly stairFirst: boolean;
  readonly lane: number;
  /** Sides of the lane that all rows of the stair and the turn leave open. */
  readonly right: number;
  readonly left: number;
  /** Rows of the stair and level ones, both from the stair on; planes are walked the block's own way. */
  readonly stair: readonly PlacedRow[];
  readonly level: readonly PlacedRow[];
  readonly middle: number;
  /** Height of the level floor. */
  readonly floor: number;
  readonly solids: readonly SceneBox[];
  readonly stairEnd: BlockEnd;
  readonly levelEnd: BlockEnd;
  readonly open: boolean;
  readonly room: { readonly length: number; readonly width: number } | undefined;
  /** From the scene's coordinates to those in which the stair lies along x, and the block's own origin. */
  readonly placing: Placing;
  readonly back: Placing;
  readonly origin: readonly [number, number, number];
  /** Where the turning row begins. */
  readonly turnAt: number;
  /** The level floor is at the stair's foot. */
  readonly atFoot: boolean;

  constructor(block: JointBlock, longest: number, order: 'stair first' | 'stair last', straightRows: number) {
    this.stairFirst = order === 'stair first';
    const stood = standBlock(block, longest);
    const { placed } = stood;
    const rows = placed.placed.rows;
    this.origin = stood.origin;
    const lastFrame = rows[rows.length - 1]?.exit ?? START;
    const seenFrom = this.stairFirst ? START : reversed(lastFrame);
    this.placing = placingOf(seenFrom, START);
    this.back = placingOf(START, seenFrom);
    const put = (end: BlockEnd): BlockEnd => ({
      ...end,
      at: placedPoint(this.placing, end.at),
      heading: end.heading + this.placing.turn,
    });
    const [first, last] = stood.ends;
    this.stairEnd = this.stairFirst ? put(first) : turnedBack(put(last));
    this.levelEnd = this.stairFirst ? put(last) : turnedBack(put(first));
    this.open = (this.stairFirst ? block.after : block.before) === 'open';
    const ending = rows[rows.length - 1];
    this.room =
      this.stairFirst && ending?.exitSection === undefined
        ? { length: ending?.joint.measures.length ?? 0, width: ending?.joint.measures.width ?? 0 }
        : undefined;
    this.solids = [...placed.solids.map(({ box }) => box), ...stood.closings].map((box) =>
      placedBox(this.placing, box),
    );
    const lead = placed.lead > 0 ? 1 : 0;
    const stair = this.stairFirst
      ? rows.slice(0, straightRows + lead)
      : rows.slice(rows.length - straightRows - (placed.trail > 0 ? 1 : 0));
    const turning = this.stairFirst
      ? rows[straightRows + lead]
      : rows[rows.length - straightRows - 1 - (placed.trail > 0 ? 1 : 0)];
    const sections = stair.flatMap(({ entry, exit, entrySection, exitSection }) => [
      { y: placedPoint(this.placing, entry.at)[1], ...entrySection },
      ...(exitSection ? [{ y: placedPoint(this.placing, exit.at)[1], ...exitSection }] : []),
    ]);
    const left = Math.min(...sections.map(({ y, width }) => y + width / 2));
    const right = Math.max(...sections.map(({ y, width }) => y - width / 2));
    this.left = left;
    this.right = right;
    this.lane = left - right;
    this.middle = (left + right) / 2;
    const level = rows.filter((row) => !stair.includes(row));
    this.stair = this.stairFirst ? stair : [...stair].reverse();
    this.level = this.stairFirst ? level : [...level].reverse();
    const plane = this.stairFirst ? turning?.entry : turning?.exit;
    const at = plane ? placedPoint(this.placing, plane.at) : ([0, 0, 0] as const);
    this.turnAt = at[0];
    this.floor = at[2];
    this.atFoot = this.stairEnd.at[2] > this.floor || this.stairEnd.pitch < 0;
  }

  /** A point of the scene's own coordinates, seen from the stair. */
  seen(at: Vec3): Vec3 {
    return placedPoint(this.placing, at);
  }

  /** A motion from the stair on, in the block's own frame and direction, with the scene there. */
  drawn(keys: readonly KeyAttitude[], padding: number): JointMotion {
    const [dx, dy, dz] = this.origin;
    const home = (at: Vec3): Vec3 => [at[0] - dx, at[1] - dy, at[2] - dz];
    const motion = keys.map((key) => {
      const { at, turn } = placedKey(this.back, key);
      return { at: home(at), turn };
    });
    return {
      motion: this.stairFirst ? motion : motion.reverse(),
      scene: this.solids.map((box): SceneBox => {
        const placed = placedBox(this.back, box);
        return { ...placed, centre: home(placed.centre) };
      }),
      motionPadding: padding,
    };
  }
}

/** An end seen by one who walks the other way. */
const turnedBack = (end: BlockEnd): BlockEnd => ({
  ...end,
  heading: end.heading + Math.PI,
  pitch: -end.pitch,
  side: end.side === 0 ? 0 : end.side === 1 ? -1 : 1,
});
