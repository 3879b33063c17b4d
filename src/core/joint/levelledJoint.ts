import { decidePassage, ROUNDING } from '../geometry/planar/decidePassage';
import type {
  ConvexPolygon,
  PlanarPlace,
  PlanarRegion,
  PlanarWorld,
  Point,
} from '../geometry/planar/planarWorld';
import type { PieceSize } from '../measures/piece';
import { attitudeInPlan } from '../motion/attitude';
import { ALL_HOLDS, poseOfHold, sizesOfHold, type Hold } from '../motion/hold';
import type { KeyAttitude, SceneBox } from '../space/motion';
import type { StageName } from '../stages/kinds';
import { centreAt, standBlock, type BlockEnd } from './blockEnds';
import { greatestShown } from './greatestShown';
import type { JointAsk, JointBlock, JointMotion, JointPassage, JointRow } from './jointRow';
import { placedBox, placedKey, placedPoint, placingOf, reversed, START, type Placing } from './place/frame';
import { boundsOf } from './planWorld';
import { planBetween, reachesInto, sideOf } from './sideOf';

const STRAIGHT: ReadonlySet<StageName> = new Set(['door', 'passage', 'flight']);
const LEVEL: ReadonlySet<StageName> = new Set(['door', 'passage', 'corner', 'side door', 'room']);
const TURNING: ReadonlySet<StageName> = new Set(['corner', 'side door']);
const CROSSED: Record<Hold, Hold> = { LT: 'BT', BT: 'LT', LB: 'TB', TB: 'LB', BL: 'TL', TL: 'BL' };
/** Padding that is of no more interest [mm a side]. */
const AMPLE = 200;
/** What is thinner counts as so thick [mm]. */
const THIN = 1;
/** Slices that one decision may look at. */
const WORK = 900;
/** Open ground that counts [mm]. */
const GROUND = 6500;
/** Room around a place where one motion gives over to the next [mm]. */
const AROUND = 0.5;
/** Of the height that is free over it at a stair's foot, it is held up by these shares, the least first. */
const RAISES = [0, 0.1, 0.2, 0.35, 0.5, 0.75, 1] as const;

/**
 * Rows that stand close with a stair at one end and turns on the level at the other: the piece comes level at the stair's
 * end with part of it still over the flight, and then moves level, in plan, at one height: over the flight as far as
 * nosings and headroom allow, round the turns and on. Coming level is decided in the vertical section, the rest in plan
 * among what stands between the two heights of the piece; both by the certified planar planner.
 *
 * Supposed: nothing but the block. The piece is level from the stair's end on, so that a turn in which it has to stay
 * tilted (`stairTurnPassages`) may leave more. It proves nothing: `atMost` is Infinity.
 *
 * @returns undefined where the rows are not straight ones with a flight, and then level ones that begin with a turn; or
 *   the same the other way round
 */
export function levelledJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
): JointPassage[] | undefined {
  const { rows } = block;
  const forward = splits(rows);
  const backward = splits([...rows].reverse());
  if (forward === undefined && backward === undefined) return undefined;
  const joined = new Levelled(
    block,
    piece.length + 2 * AMPLE,
    forward !== undefined ? 'stair first' : 'stair last',
    forward ?? backward ?? 0,
  );
  const passages: JointPassage[] = [];
  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const most =
      Math.min(joined.lane - across, joined.lowest - upright, joined.narrowest - Math.min(along, across)) / 2;
    for (const crosswise of joined.turnsAtEnd(Math.hypot(along, across) + 2 * AMPLE)
      ? [false]
      : [false, true]) {
      const end = crosswise ? CROSSED[hold] : hold;
      const ends = joined.turnsAtEnd(Math.hypot(along, across) + 2 * AMPLE) ? [end, CROSSED[end]] : [end];
      const pairs = ends.map((level): readonly [Hold, Hold] =>
        joined.stairFirst ? [hold, level] : [level, hold],
      );
      const wanted = pairs.filter(([from]) => !ask.from || ask.from.includes(from));
      if (wanted.length === 0) continue;
      const shown = greatestShown(ask, -Math.min(piece.breadth, 60) / 2, Math.min(most, AMPLE), (c) => {
        const grown = (side: number): number => Math.max(THIN, side + 2 * c);
        return joined.solve(grown(along), grown(across), grown(upright), crosswise);
      });
      if (!shown) continue;
      const { clearance, by } = shown;
      const answer = {
        clearance: clearance - ROUNDING,
        atMost: Infinity,
        pose: poseOfHold(hold),
        critical: "where it comes level at the stair's end and turns",
        raise: by.raise,
      };
      for (const [from, to] of wanted) {
        passages.push({ from, to, answer, shown: () => joined.motion(hold, clearance, by) });
      }
    }
  }
  return passages;
}

/** How many straight rows with a flight stand before a turn from which on all is level; undefined where it is not so. */
function splits(rows: readonly JointRow[]): number | undefined {
  const turn = rows.findIndex(({ stage }) => TURNING.has(stage));
  if (turn < 1) return undefined;
  const stair = rows.slice(0, turn);
  if (!stair.some(({ stage }) => stage === 'flight') || stair.some(({ stage }) => !STRAIGHT.has(stage)))
    return undefined;
  return rows.slice(turn).every(({ stage }) => LEVEL.has(stage)) ? turn : undefined;
}

/** What shows a padding: how it comes level, and how it goes on. */
interface Solved {
  readonly section: () => readonly PlanarPlace[];
  readonly plan: () => readonly PlanarPlace[];
  readonly upright: number;
  readonly raise: number;
}

/** A block whose stair lies along x, seen from the stair; turned back when it is drawn. */
class Levelled {
  readonly stairFirst: boolean;
  readonly lane: number;
  readonly lowest: number;
  readonly narrowest: number;
  private readonly middle: number;
  /** Height of the level floor, and the headroom over it. */
  private readonly floor: number;
  private readonly solids: readonly SceneBox[];
  private readonly stairEnd: BlockEnd;
  private readonly levelEnd: BlockEnd;
  private readonly open: boolean;
  private readonly room: { readonly length: number; readonly width: number } | undefined;
  /** From the scene's coordinates to those in which the stair lies along x, and the block's own origin. */
  private readonly placing: Placing;
  private readonly back: Placing;
  private readonly origin: readonly [number, number, number];
  private readonly turnAt: number;
  private readonly sectionWorld: PlanarWorld;
  private readonly atFoot: boolean;

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
    this.lane = left - right;
    this.middle = (left + right) / 2;
    const level = rows.filter((row) => !stair.includes(row));
    const all = level.flatMap(({ entrySection, exitSection }) =>
      exitSection ? [entrySection, exitSection] : [entrySection],
    );
    this.lowest = Math.min(...all.map(({ height }) => height));
    this.narrowest = Math.min(...all.map(({ width }) => width));
    const plane = this.stairFirst ? turning?.entry : turning?.exit;
    const at = plane ? placedPoint(this.placing, plane.at) : ([0, 0, 0] as const);
    this.turnAt = at[0];
    this.floor = at[2];
    this.atFoot = this.stairEnd.at[2] > this.floor || this.stairEnd.pitch < 0;
    const inLane = this.solids.filter((box) => reachesInto(box, right + 1e-3, left - 1e-3)).map(sideOf);
    const ground: ConvexPolygon = [
      [this.stairEnd.at[0] - longest, Math.min(this.stairEnd.at[2], this.floor) - longest],
      [this.turnAt + longest, Math.max(this.stairEnd.at[2], this.floor) + longest],
    ];
    this.sectionWorld = { obstacles: inLane, centre: boundsOf([ground], 0) };
  }

  /** Whether the level end leaves room to turn a plan of this diagonal about. */
  turnsAtEnd(diagonal: number): boolean {
    return this.open || (this.room !== undefined && diagonal < Math.min(this.room.length, this.room.width));
  }

  solve(along: number, across: number, upright: number, crosswise: boolean): Solved | undefined {
    const free = this.lowest - upright;
    for (const share of this.atFoot ? RAISES : [0]) {
      const raise = Math.max(0, share * (free - 2 * AROUND));
      const solved = this.solveAt(raise, along, across, upright, crosswise);
      if (solved) return solved;
      if (free < 20) break;
    }
    return undefined;
  }

  /** With its lower side so high above the level floor. */
  private solveAt(
    raise: number,
    along: number,
    across: number,
    upright: number,
    crosswise: boolean,
  ): Solved | undefined {
    const low = this.floor + raise;
    const wall = this.facingWall(low, low + upright);
    // Its front at the wall that faces the stair, or all of it past the turn's plane where there is none.
    const x = Math.min(wall - AROUND, this.turnAt + along + 100) - along / 2 - AROUND;
    const z = low + upright / 2 + AROUND;
    const plan = this.planAt(low, upright, along, across, x, crosswise);
    if (!plan) return undefined;
    const [sx, , sz] = centreAt(this.stairEnd, along, upright + 2 * AROUND);
    const section = decidePassage(
      this.sectionWorld,
      along,
      upright,
      { ...around(sx, sz), angle: this.stairEnd.pitch },
      { ...around(x, z), angle: 0 },
      WORK,
    );
    if (section.verdict !== 'passes') return undefined;
    return { section: section.path, plan, upright, raise };
  }

  private planAt(
    low: number,
    upright: number,
    along: number,
    across: number,
    x: number,
    crosswise: boolean,
  ): (() => readonly PlanarPlace[]) | undefined {
    const obstacles: ConvexPolygon[] = [];
    for (const box of this.solids) {
      const polygon = planBetween(box, low + 1e-3, low + upright + 2 * AROUND);
      if (polygon) obstacles.push(polygon);
    }
    const { at, heading, side } = this.levelEnd;
    const reach = Math.hypot(along, across) / 2;
    const grounds: Point[] = [
      [at[0] - GROUND, at[1] - GROUND],
      [at[0] + GROUND, at[1] + GROUND],
      [x - along, this.middle - along],
      [x + along, this.middle + along],
    ];
    const turns = this.turnsAtEnd(2 * reach);
    const off = this.room ? 0 : this.open ? reach + 60 : (crosswise ? across : along) / 2 + 2;
    const goal = around(at[0] + Math.cos(heading) * side * off, at[1] + Math.sin(heading) * side * off);
    const decision = decidePassage(
      { obstacles, centre: boundsOf([grounds], 0) },
      along,
      across,
      { ...around(x, this.middle), angle: 0 },
      turns ? goal : { ...goal, angle: heading + (crosswise ? Math.PI / 2 : 0) },
      WORK,
    );
    return decision.verdict === 'passes' ? decision.path : undefined;
  }

  /** The nearest face ahead of the turn's plane in the stair's lane, between two heights. */
  private facingWall(low: number, high: number): number {
    let wall = this.turnAt + 2 * GROUND;
    for (const polygon of this.sectionWorld.obstacles) {
      const xs = polygon.map((p) => p[0]);
      const zs = polygon.map((p) => p[1]);
      if (Math.min(...zs) >= high - 1e-3 || Math.max(...zs) <= low + 1e-3) continue;
      const near = Math.min(...xs);
      if (near > this.turnAt + 1 && near < wall) wall = near;
    }
    return wall;
  }

  motion(hold: Hold, padding: number, solved: Solved): JointMotion {
    const keys: KeyAttitude[] = [];
    const put = (at: KeyAttitude['at'], turn: KeyAttitude['turn']): void => {
      keys.push({ at, turn: nearestAlike(turn, keys[keys.length - 1]?.turn ?? turn) });
    };
    let z = 0;
    for (const place of solved.section()) {
      put([place.x, this.middle, place.y], attitudeInPlan({ hold, turned: 'tilted', tilt: place.angle }, 0));
      z = place.y;
    }
    for (const { x, y, angle } of solved.plan()) put([x, y, z], attitudeInPlan({ hold }, angle));
    const end = keys[keys.length - 1];
    if (end) put([end.at[0], end.at[1], this.floor + solved.upright / 2 + 1e-3], end.turn);
    const { back } = this;
    const [dx, dy, dz] = this.origin;
    const home = ({ at, turn }: KeyAttitude): KeyAttitude => {
      const key = placedKey(back, { at, turn });
      return { at: [key.at[0] - dx, key.at[1] - dy, key.at[2] - dz], turn: key.turn };
    };
    const motion = keys.map(home);
    return {
      motion: this.stairFirst ? motion : motion.reverse(),
      scene: this.solids.map((box): SceneBox => {
        const placed = placedBox(back, box);
        return { ...placed, centre: [placed.centre[0] - dx, placed.centre[1] - dy, placed.centre[2] - dz] };
      }),
      motionPadding: padding - ROUNDING,
    };
  }
}

/** A box looks the same in four attitudes: the one nearest to another. */
function nearestAlike(turn: KeyAttitude['turn'], to: KeyAttitude['turn']): KeyAttitude['turn'] {
  const [w, x, y, z] = turn;
  const alike: KeyAttitude['turn'][] = [turn, [x, -w, -z, y], [y, z, -w, -x], [z, -y, x, -w]];
  const near = (t: KeyAttitude['turn']): number => t.reduce((sum, v, k) => sum + v * (to[k] ?? 0), 0);
  const nearest = alike.reduce((one, other) => (Math.abs(near(other)) > Math.abs(near(one)) ? other : one));
  return near(nearest) < 0 ? [-nearest[0], -nearest[1], -nearest[2], -nearest[3]] : nearest;
}

/** An end seen by one who walks the other way. */
const turnedBack = (end: BlockEnd): BlockEnd => ({
  ...end,
  heading: end.heading + Math.PI,
  pitch: -end.pitch,
  side: end.side === 0 ? 0 : end.side === 1 ? -1 : 1,
});

const around = (x: number, y: number): PlanarRegion => ({
  xMin: x - AROUND,
  xMax: x + AROUND,
  yMin: y - AROUND,
  yMax: y + AROUND,
});
