import { decidePassage, ROUNDING } from '../geometry/planar/decidePassage';
import {
  around,
  type PlanarPlace,
  type PlanarRegion,
  type PlanarWorld,
} from '../geometry/planar/planarWorld';
import { Lately } from '../lists/lately';
import type { PieceSize, Pose } from '../measures/piece';
import { motionInPlan, type TurnedHold } from '../motion/attitude';
import { CROSSED, ALL_HOLDS, poseOfHold, sizesOfHold, type Hold } from '../motion/hold';
import { turnedFace } from '../motion/turnedFace';
import type { SceneBox } from '../space/motion';
import { greatestShown } from './greatestShown';
import type { JointAsk, JointBlock, JointMotion, JointPassage } from './jointRow';
import { GROUND, boundsOf, placeBlock, plansBetween, wallAcross, type PlacedBlock } from './planWorld';
import { isLevel } from './place/rowContext';
import { smallTurns } from './smallTurns';
import type { Frame } from './place/frame';
import { closestAt } from '../motion/closest';

/** Padding that is of no more interest [mm a side]. */
const AMPLE = 300;
/** Slices that one decision may look at. */
const WORK = 900;
/** The centre may stand so far from where a straight's middle is [mm]. */
const AT_THE_END = 0.5;

/** A way of carrying the piece through in one attitude, with its sides in plan at a padding. */
interface Carried {
  readonly hold: Hold;
  readonly attitude: (padding: number) => TurnedHold;
  /** Undefined where it cannot be held so with that padding. */
  readonly plan: (
    padding: number,
  ) => { readonly along: number; readonly across: number; readonly height: number } | undefined;
  readonly most: number;
  readonly pose: Pose;
  readonly leaning: boolean;
}

/**
 * Level rows that stand close, solved as one plan: corners, side doors, doors, passages, a room at the end, with their
 * lengths, hands and places. The piece is carried through in one attitude, level or turned out of level by a constant
 * angle under the lowest head, and moves in plan among the walls, decided by the certified planar planner.
 *
 * Supposed: nothing but the block. The figure is that of the last padding shown, on a grid of `tolerance` [mm].
 * It proves nothing against other attitudes: `atMost` is Infinity.
 *
 * @returns undefined where a row is not level
 * @source Lozano-Perez 1983, as in `decidePassage`
 */
export function planJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
): JointPassage[] | undefined {
  if (block.rows.length === 0 || block.rows.some(({ stage }) => !isLevel(stage))) return undefined;
  const longest = piece.length + 2 * AMPLE;
  const { plan, narrowest, lowest } = PLANS.get(block, longest, () => planOfBlock(block, longest));
  const passages: JointPassage[] = [];
  const best = new Map<string, number>();
  for (const carried of carriedWays(piece, narrowest, lowest)) {
    if (ask.from && !ask.from.includes(carried.hold)) continue;
    for (const crosswise of plan.turnsAtEnd(carried) ? [false] : [false, true]) {
      const to = crosswise ? CROSSED[carried.hold] : carried.hold;
      const known = best.get(carried.hold + to) ?? -Infinity;
      const least = Math.max(-Math.min(piece.breadth, 60) / 2, known);
      const shown = greatestShown(ask, least, Math.min(carried.most, AMPLE), (padding) =>
        plan.path(carried, padding, crosswise),
      );
      if (!shown || shown.clearance <= known) continue;
      best.set(carried.hold + to, shown.clearance);
      const clearance = shown.clearance - ROUNDING;
      const answer = {
        clearance,
        atMost: Infinity,
        pose: carried.pose,
        critical: closestAt('where the rows stand close, in plan', 'anything'),
        raise: 0,
      };
      const draw = (): JointMotion => plan.motion(carried, shown.clearance, shown.by());
      const turning = carried.leaning ? { needsTurningRoom: true } : {};
      const froms = block.before === 'open' ? [carried.hold, CROSSED[carried.hold]] : [carried.hold];
      const tos = plan.turnsAtEnd(carried) ? [to, CROSSED[to]] : [to];
      for (const from of froms) {
        for (const end of tos) passages.push({ from, to: end, answer, ...turning, shown: draw });
      }
    }
  }
  return passages;
}

/** A block in plan, with the narrowest and the lowest of it [mm]. */
function planOfBlock(block: JointBlock, longest: number) {
  const placed = placeBlock(block, longest);
  const sections = placed.placed.rows.flatMap(({ entrySection, exitSection }) =>
    exitSection ? [entrySection, exitSection] : [entrySection],
  );
  const narrowest = Math.min(...sections.map(({ width }) => width));
  const lowest = Math.min(...sections.map(({ height }) => height));
  return { plan: new BlockPlan(block, placed, lowest), narrowest, lowest };
}

/** Level in each way of being held, then turned out of level until it just clears the lowest head. */
function carriedWays(piece: PieceSize, narrowest: number, lowest: number): Carried[] {
  const ways: Carried[] = ALL_HOLDS.map((hold) => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    return {
      hold,
      attitude: () => ({ hold }),
      plan: (c) => ({ along: grown(along, c), across: grown(across, c), height: grown(upright, c) }),
      most: Math.min(narrowest - Math.min(along, across), lowest - upright) / 2,
      pose: poseOfHold(hold),
      leaning: false,
    };
  });
  const turned = (hold: Hold, u: number, v: number, a: number, how: 'tilted' | 'leaning'): void => {
    const face = (c: number) => turnedFace(grown(u, c), grown(v, c), lowest);
    ways.push({
      hold,
      attitude: (c) => ({ hold, turned: how, tilt: face(c)?.tilt ?? 0 }),
      plan: (c) => {
        const at = face(c);
        // No shorter than level, or hardly: nothing is gained.
        if (!at || at.plan > grown(u, c) - 1) return undefined;
        const side = grown(a, c);
        return how === 'tilted'
          ? { along: at.plan, across: side, height: lowest }
          : { along: side, across: at.plan, height: lowest };
      },
      most: Math.min((lowest - v) / 2, (narrowest - Math.min(a, v)) / 2),
      pose: how,
      leaning: how === 'leaning',
    });
  };
  const { length, breadth, thickness } = piece;
  turned('LB', length, breadth, thickness, 'tilted');
  turned('LT', length, thickness, breadth, 'tilted');
  turned('LT', breadth, thickness, length, 'leaning');
  return ways.sort((one, other) => Number(one.leaning) - Number(other.leaning) || other.most - one.most);
}

const grown = (side: number, padding: number): number => Math.max(0, side + 2 * padding);

/** A block in plan. */
class BlockPlan {
  readonly endsOpen: boolean;
  private readonly world: PlanarWorld;
  private readonly lowest: number;
  /** What has been decided where it begins on open ground, by the rectangle's sides and how it ends. */
  private readonly decided = new Map<
    string,
    { readonly along: number; readonly path: (() => readonly PlanarPlace[]) | undefined }
  >();

  constructor(
    block: JointBlock,
    private readonly placed: PlacedBlock,
    lowest: number,
  ) {
    this.lowest = lowest;
    const { start, end, solids } = placed;
    this.endsOpen = end !== undefined && block.after === 'open';
    // All that stands lower than the lowest head; what is no higher than that head can pass under the others.
    const walls = plansBetween(solids, 0, lowest);
    const first = placed.placed.rows[0]?.entrySection.width ?? 0;
    const last = placed.placed.rows[placed.placed.rows.length - 1]?.exitSection?.width ?? 0;
    if (placed.lead > 0) walls.push(wallAcross(start, first, -1));
    if (end && !this.endsOpen) walls.push(wallAcross(end, last, 1));
    // Open ground on either side reaches as far as the piece can have use for.
    const grounds = [
      ...(block.before === 'open' ? [forward(start, -GROUND)] : []),
      ...(end && this.endsOpen ? [forward(end, GROUND)] : []),
    ].flatMap(([x, y]) => [[x - GROUND, y - GROUND] as const, [x + GROUND, y + GROUND] as const]);
    this.world = { obstacles: walls, centre: boundsOf(grounds.length > 0 ? [...walls, grounds] : walls, 0) };
  }

  /** Whether it ends where there is room to turn it about in plan. */
  turnsAtEnd(carried: Carried): boolean {
    if (this.endsOpen) return true;
    const { rows } = this.placed.placed;
    const last = rows[rows.length - 1];
    if (last === undefined || last.exitSection !== undefined) return false;
    const { length = 0, width = 0 } = last.joint.measures;
    const sides = carried.plan(Math.min(carried.most, AMPLE));
    return sides !== undefined && Math.hypot(sides.along, sides.across) + 2 < Math.min(length, width);
  }

  /** A path for a padding, where one is shown. */
  path(carried: Carried, padding: number, crosswise: boolean): (() => readonly PlanarPlace[]) | undefined {
    const sides = carried.plan(padding);
    if (!sides || sides.height > this.lowest + 1e-9) return undefined;
    const { along, across } = sides;
    const ends = this.ends(carried, along, across, crosswise);
    if (!ends) return undefined;
    const decide = (): (() => readonly PlanarPlace[]) | undefined => {
      const decision = decidePassage(this.world, along, across, ends.start, ends.goal, WORK);
      return decision.verdict === 'passes' ? decision.path : undefined;
    };
    if (this.placed.lead > 0) return decide();
    // Where it begins on open ground it may be turned about before: held crosswise it is the same rectangle.
    const lengthwise = along >= across;
    const [long, short] = lengthwise ? [along, across] : [across, along];
    const ending = this.turnsAtEnd(carried) ? 'turned' : crosswise === lengthwise ? 'across' : 'along';
    const key = `${long}|${short}|${ending}`;
    const known = this.decided.get(key);
    if (!known) {
      const path = decide();
      this.decided.set(key, { along, path });
      return path;
    }
    const { path } = known;
    return path && known.along !== along ? () => turnedBefore(path()) : path;
  }

  private ends(
    carried: Carried,
    along: number,
    across: number,
    crosswise: boolean,
  ): { readonly start: PlanarRegion & { readonly angle: number }; readonly goal: PlanarRegion } | undefined {
    const { placed } = this;
    const reach = Math.hypot(along, across) / 2;
    const back = placed.lead > 0 ? along / 2 + 1 : -reach - 60;
    const start = { ...around(back, 0, AT_THE_END), angle: 0 };
    const { end } = placed;
    if (!end) {
      const room = placed.placed.rows[placed.placed.rows.length - 1];
      if (!room) return undefined;
      const [x, y] = forward(room.entry, (room.joint.measures.length ?? 0) / 2);
      if (this.turnsAtEnd(carried)) return { start, goal: around(x, y, AT_THE_END) };
      return {
        start,
        goal: { ...around(x, y, AT_THE_END), angle: room.entry.heading + (crosswise ? Math.PI / 2 : 0) },
      };
    }
    const half = (crosswise ? across : along) / 2;
    const [x, y] = forward(end, this.endsOpen ? reach + 60 : -half - 1);
    if (this.endsOpen) return { start, goal: around(x, y, AT_THE_END) };
    return {
      start,
      goal: { ...around(x, y, AT_THE_END), angle: end.heading + (crosswise ? Math.PI / 2 : 0) },
    };
  }

  /** Drawn in the block's own frame. */
  motion(carried: Carried, padding: number, path: readonly PlanarPlace[]): JointMotion {
    const { lead, solids } = this.placed;
    const height = carried.plan(padding)?.height ?? 0;
    const keys = motionInPlan(smallTurns(path), carried.attitude(padding), height / 2);
    const scene = solids.map(({ box }): SceneBox => ({
      ...box,
      centre: [box.centre[0] - lead, box.centre[1], box.centre[2]],
    }));
    return {
      motion: keys.map(({ at, turn }) => ({ at: [at[0] - lead, at[1], at[2]], turn })),
      scene,
      motionPadding: padding - ROUNDING,
    };
  }
}

/** A path for the rectangle held crosswise: first it is turned by a right angle where it stands. */
function turnedBefore(path: readonly PlanarPlace[]): readonly PlanarPlace[] {
  const turned = path.map((place) => ({ ...place, angle: place.angle - Math.PI / 2 }));
  const [first] = turned;
  return first ? [{ ...first, angle: first.angle + Math.PI / 2 }, ...turned] : [];
}

const forward = ({ at: [x, y], heading }: Frame, by: number): [number, number] => [
  x + Math.cos(heading) * by,
  y + Math.sin(heading) * by,
];

/** Blocks looked at lately: one is asked for each way of being held in turn. */
const PLANS = new Lately<JointBlock, ReturnType<typeof planOfBlock>>(32);
