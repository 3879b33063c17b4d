import { decidePassage, ROUNDING } from '../geometry/planar/decidePassage';
import { placeFree } from '../geometry/planar/edgeFree';
import {
  around,
  type ConvexPolygon,
  type PlanarPlace,
  type PlanarWorld,
  type Point,
} from '../geometry/planar/planarWorld';
import { Lately } from '../lists/lately';
import { once } from '../lists/once';
import { THINNEST, type PieceSize } from '../measures/piece';
import { attitudeInPlan } from '../motion/attitude';
import { CROSSED, ALL_HOLDS, poseOfHold, sizesOfHold, type Hold } from '../motion/hold';
import type { KeyAttitude } from '../space/motion';
import { nearestAlike } from '../space/quaternion';
import { centreAt } from './blockEnds';
import { greatestShown } from './greatestShown';
import { loweredPath } from './loweredPath';
import { raiseInSection } from './raiseInSection';
import type { JointAsk, JointBlock, JointMotion, JointPassage } from './jointRow';
import { GROUND, boundsOf } from './planWorld';
import { planBetween, reachesInto, sideOf } from './sideOf';
import { smallTurns } from './smallTurns';
import { stairAndLevel, StairBlock } from './stairBlock';
import { closestAt } from '../motion/closest';

/** Padding that is of no more interest [mm a side]. */
const AMPLE = 200;
/** Slices that one decision may look at. */
const WORK = 900;
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
  const made = stairAndLevel(block.rows);
  if (made === undefined) return undefined;
  const longest = piece.length + 2 * AMPLE;
  const joined = JOINED.get(
    block,
    longest,
    () => new Levelled(block, longest, made.order, made.straightRows),
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
        const grown = (side: number): number => Math.max(THINNEST, side + 2 * c);
        return joined.solve(grown(along), grown(across), grown(upright), crosswise);
      });
      if (!shown) continue;
      const { clearance, by } = shown;
      const answer = {
        clearance: clearance - ROUNDING,
        atMost: Infinity,
        pose: poseOfHold(hold),
        critical: closestAt("where it comes level at the stair's end and turns", 'anything'),
        raise: by.raise(),
      };
      for (const [from, to] of wanted) {
        passages.push({ from, to, answer, shown: () => joined.motion(hold, clearance, by) });
      }
    }
  }
  return passages;
}

/** What shows a padding: how it comes level, and how it goes on. */
interface Solved {
  readonly section: () => readonly PlanarPlace[];
  readonly plan: () => readonly PlanarPlace[];
  readonly upright: number;
  /** How high it is raised at most [mm]; work, and only done when called: most paddings shown are only steps to the greatest. */
  readonly raise: () => number;
}

/** A stair and level rows, as they are solved here. */
class Levelled extends StairBlock {
  readonly lowest: number;
  readonly narrowest: number;
  private readonly sectionWorld: PlanarWorld;
  /** Where it ends with room to turn about, one motion ends in two ways of being held: asked for each, it is looked for once. */
  private readonly solved = new Map<string, Solved | undefined>();

  constructor(block: JointBlock, longest: number, order: 'stair first' | 'stair last', straightRows: number) {
    super(block, longest, order, straightRows);
    const all = this.level.flatMap(({ entrySection, exitSection }) =>
      exitSection ? [entrySection, exitSection] : [entrySection],
    );
    this.lowest = Math.min(...all.map(({ height }) => height));
    this.narrowest = Math.min(...all.map(({ width }) => width));
    const inLane = this.solids
      .filter((box) => reachesInto(box, this.right + 1e-3, this.left - 1e-3))
      .map(sideOf);
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
    const key = `${along}|${across}|${upright}|${crosswise}`;
    const known = this.solved.get(key);
    if (known !== undefined || this.solved.has(key)) return known;
    const solved = this.solveNow(along, across, upright, crosswise);
    this.solved.set(key, solved);
    return solved;
  }

  private solveNow(along: number, across: number, upright: number, crosswise: boolean): Solved | undefined {
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
      { ...around(sx, sz, AROUND), angle: this.stairEnd.pitch },
      { ...around(x, z, AROUND), angle: 0 },
      WORK,
    );
    if (section.verdict !== 'passes') return undefined;
    if (raise > 0 && !this.setsDown(plan(), low, along, across, upright)) return undefined;
    const sides = { u: along, v: upright };
    const onto = once(() => loweredPath(this.sectionWorld, sides, section.path()));
    const most = (): number => Math.max(raise, raiseInSection(this.sectionWorld.obstacles, sides, onto()));
    return { section: onto, plan, upright, raise: most };
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
    const goal = around(
      at[0] + Math.cos(heading) * side * off,
      at[1] + Math.sin(heading) * side * off,
      AROUND,
    );
    const decision = decidePassage(
      { obstacles, centre: boundsOf([grounds], 0) },
      along,
      across,
      { ...around(x, this.middle, AROUND), angle: 0 },
      turns ? goal : { ...goal, angle: heading + (crosswise ? Math.PI / 2 : 0) },
      WORK,
    );
    return decision.verdict === 'passes' ? decision.path : undefined;
  }

  /** Whether nothing stands below it where its motion ends. */
  private setsDown(
    path: readonly PlanarPlace[],
    low: number,
    along: number,
    across: number,
    upright: number,
  ): boolean {
    const last = path[path.length - 1];
    if (!last) return false;
    const obstacles: ConvexPolygon[] = [];
    for (const box of this.solids) {
      const polygon = planBetween(box, this.floor + 1e-3, low + upright + 2 * AROUND);
      if (polygon) obstacles.push(polygon);
    }
    return placeFree({ obstacles, centre: boundsOf([[[last.x, last.y]]], 1) }, along, across, last);
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
    for (const place of smallTurns(solved.section())) {
      put([place.x, this.middle, place.y], attitudeInPlan({ hold, turned: 'tilted', tilt: place.angle }, 0));
      z = place.y;
    }
    for (const { x, y, angle } of smallTurns(solved.plan())) put([x, y, z], attitudeInPlan({ hold }, angle));
    const end = keys[keys.length - 1];
    if (end) put([end.at[0], end.at[1], this.floor + solved.upright / 2 + 1e-3], end.turn);
    return this.drawn(keys, padding - ROUNDING);
  }
}

/** Blocks looked at lately: one is asked for each way of being held in turn. */
const JOINED = new Lately<JointBlock, Levelled>(32);
