import { decidePassage, ROUNDING, type AngleLimits } from '../geometry/planar/decidePassage';
import {
  around,
  type ConvexPolygon,
  type PlanarPlace,
  type PlanarRegion,
  type PlanarWorld,
} from '../geometry/planar/planarWorld';
import { THINNEST, type PieceSize, type Pose } from '../measures/piece';
import { attitudeInPlan, leaningAttitude } from '../motion/attitude';
import { ALL_HOLDS, poseOfHold, sizesOfHold, type Hold } from '../motion/hold';
import { turnedFace } from '../motion/turnedFace';
import type { KeyAttitude, SceneBox } from '../space/motion';
import { goingOn } from '../space/quaternion';
import { roleOf } from '../stages/kinds';
import { SKY } from '../stages/measures';
import type { StageRole } from '../stages/stageKind';
import { greatestShown } from './greatestShown';
import { centreAt, standBlock, type BlockEnd } from './blockEnds';
import type { JointAsk, JointBlock, JointMotion, JointPassage } from './jointRow';
import { GROUND, boundsOf, type PlacedBlock } from './planWorld';
import { loweredPath } from './loweredPath';
import { raiseInSection } from './raiseInSection';
import { reachesInto, sideOf } from './sideOf';
import { smallTurns } from './smallTurns';
import { closestAt } from '../motion/closest';

/** What the way leads straight on through. */
const STRAIGHT: readonly (StageRole | undefined)[] = ['opening', 'straight', 'flight', 'room'];
/** Padding that is of no more interest [mm a side]. */
const AMPLE = 300;
/** Slices that one decision may look at. */
const WORK = 1200;
/** So near its place at the end of the way the piece has to come [mm]. */
const AT_THE_END = 0.5;
/** Tilted beyond level and beyond the pitch of the stairs by no more than this [rad]. */
const TURNS_BEYOND = 0.35;

/** A way of carrying the piece, seen from the side. */
interface Carried {
  readonly hold: Hold;
  /** Along the way and upright when level, at a padding; undefined where it cannot be held so. */
  readonly sides: (padding: number) => { readonly u: number; readonly v: number } | undefined;
  readonly most: number;
  readonly pose: Pose;
  readonly leaning: boolean;
  readonly turn: (angle: number, padding: number) => KeyAttitude['turn'];
}

/**
 * Rows in one straight line with one or more flights among them, solved as one vertical section: floors, plumb risers,
 * lines of nosings, ceilings, heads of doors and facing walls. Across, the piece keeps within what all rows leave open.
 * It may tilt as it will about the side across; it leans, if at all, by a constant angle.
 *
 * A flight as first or last row with a straight beyond it goes on, longer than the piece. So a piece carried level over a
 * few steps, a door that faces a stair at either end, and a short flight between level floors are all found here.
 *
 * Supposed: nothing but the block. The figure is that of the last padding shown, on a grid of `tolerance` [mm].
 * It proves nothing against motions that turn in plan: `atMost` is Infinity.
 *
 * @returns undefined where the rows do not lead straight on or have no flight among them
 * @source Lozano-Perez 1983, as in `decidePassage`
 */
export function sectionJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
): JointPassage[] | undefined {
  const { rows } = block;
  const roles = rows.map(({ stage }) => roleOf(stage));
  if (!roles.includes('flight') || roles.some((role) => !STRAIGHT.includes(role))) return undefined;
  // A room in the middle may be left by any wall.
  if (rows.slice(1, -1).some(({ stage, hand }) => roleOf(stage) === 'room' && hand !== undefined))
    return undefined;
  const section = new Section(block, piece.length + 2 * AMPLE);
  const passages: JointPassage[] = [];
  const best = new Map<Hold, number>();
  for (const carried of carriedWays(piece, section)) {
    if (ask.from && !ask.from.includes(carried.hold)) continue;
    const known = best.get(carried.hold) ?? -Infinity;
    const least = Math.max(-Math.min(piece.breadth, 60) / 2, known);
    const shown = greatestShown(ask, least, Math.min(carried.most, AMPLE), (padding) =>
      section.path(carried, padding),
    );
    if (!shown || shown.clearance <= known) continue;
    best.set(carried.hold, shown.clearance);
    const answer = {
      clearance: shown.clearance - ROUNDING,
      atMost: Infinity,
      pose: carried.pose,
      critical: closestAt('where the rows stand close, seen from the side', 'anything'),
      raise: section.raise(carried, shown.clearance, shown.by()),
    };
    passages.push({
      from: carried.hold,
      to: carried.hold,
      answer,
      ...(carried.leaning ? { needsTurningRoom: true } : {}),
      shown: () => section.motion(carried, shown.clearance, shown.by()),
    });
  }
  return passages;
}

const grown = (side: number, padding: number): number => Math.max(THINNEST, side + 2 * padding);

function carriedWays(piece: PieceSize, section: Section): Carried[] {
  const { lane, lowest } = section;
  const ways = ALL_HOLDS.map((hold): Carried => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    return {
      hold,
      sides: (c) => ({ u: grown(along, c), v: grown(upright, c) }),
      most: Math.min(lane - across, lowest - Math.min(along, upright)) / 2,
      pose: poseOfHold(hold),
      leaning: false,
      turn: (angle) => attitudeInPlan({ hold, turned: 'tilted', tilt: angle }, 0),
    };
  });
  const { breadth, thickness, length } = piece;
  // Over to one side as far as the lane allows: so far over it is least high.
  const face = (c: number) =>
    grown(breadth, c) > lane ? turnedFace(grown(breadth, c), grown(thickness, c), lane) : undefined;
  for (const hold of ['LB', 'LT'] as const) {
    ways.push({
      hold,
      sides: (c) => {
        const at = face(c);
        return at && { u: grown(length, c), v: at.plan };
      },
      most: (lane - thickness) / 2,
      pose: 'leaning',
      leaning: true,
      turn: (angle, padding) => leaningAttitude(face(padding)?.tilt ?? 0, angle),
    });
  }
  return ways.sort((one, other) => Number(one.leaning) - Number(other.leaning) || other.most - one.most);
}

/** A block seen from the side: x along the way, z up. */
class Section {
  /** What all rows leave open across [mm]. */
  readonly lane: number;
  /** The lowest head [mm]. */
  readonly lowest: number;
  private readonly middle: number;
  private readonly world: PlanarWorld;
  private readonly placed: PlacedBlock;
  private readonly shift: readonly [number, number, number];
  private readonly ends: readonly [BlockEnd, BlockEnd];
  private readonly turns: AngleLimits;

  constructor(block: JointBlock, longest: number) {
    const stood = standBlock(block, longest);
    const { placed } = stood;
    this.placed = placed;
    this.shift = stood.origin;
    const sections = placed.placed.rows.flatMap(({ entry, exit, entrySection, exitSection }) => [
      { y: entry.at[1], ...entrySection },
      ...(exitSection ? [{ y: exit.at[1], ...exitSection }] : []),
    ]);
    const left = Math.min(...sections.map(({ y, width }) => y + width / 2));
    const right = Math.max(...sections.map(({ y, width }) => y - width / 2));
    this.lane = left - right;
    this.middle = (left + right) / 2;
    this.lowest = Math.min(...sections.map(({ height }) => height));
    const solids = placed.solids.filter(({ box }) => reachesInto(box, right + 1e-3, left - 1e-3));
    const obstacles = solids.map(({ box }) => sideOf(box));
    const [first, last] = stood.ends;
    obstacles.push(...stood.closings.map(sideOf));
    this.ends = stood.ends;
    // Nobody stands it up who need not.
    const pitches = block.rows.map(({ stage, way, measures: { rise = 0, going = 1 } }) =>
      roleOf(stage) === 'flight' ? Math.atan2(rise, going) * (way === 'down' ? -1 : 1) : 0,
    );
    this.turns = { from: Math.min(0, ...pitches) - TURNS_BEYOND, to: Math.max(0, ...pitches) + TURNS_BEYOND };
    if (block.rows.some(({ measures }) => (measures.height ?? 0) > SKY / 2))
      obstacles.push(skyOver(stood.ends, longest));
    const grounds: ConvexPolygon = [
      [first.at[0] - (block.before === 'open' ? GROUND : longest), first.at[2] - longest],
      [last.at[0] + (block.after === 'open' ? GROUND : longest), last.at[2] + longest],
    ];
    const built = placed.solids.filter(({ part }) => part !== 'ground' && part !== 'wall' && part !== 'head');
    this.world = {
      obstacles,
      centre: boundsOf([...built.map(({ box }) => sideOf(box)), grounds], 0),
    };
  }

  path(carried: Carried, padding: number): (() => readonly PlanarPlace[]) | undefined {
    const sides = carried.sides(padding);
    if (!sides) return undefined;
    const { u, v } = sides;
    const [first, last] = this.ends;
    const start = { ...regionAt(first, u, v), angle: first.pitch };
    const goal = { ...regionAt(last, u, v), angle: last.pitch };
    const decision = decidePassage(this.world, u, v, start, goal, WORK, this.turns);
    if (decision.verdict !== 'passes') return undefined;
    const { path } = decision;
    let low: readonly PlanarPlace[] | undefined;
    return () => (low ??= loweredPath(this.world, sides, path()));
  }

  /** How high the padded piece is raised at most above what is below it along a path [mm]. */
  raise(carried: Carried, padding: number, path: readonly PlanarPlace[]): number {
    const sides = carried.sides(padding);
    return sides ? raiseInSection(this.world.obstacles, sides, path) : Infinity;
  }

  motion(carried: Carried, padding: number, path: readonly PlanarPlace[]): JointMotion {
    const [dx, dy, dz] = this.shift;
    let last: KeyAttitude['turn'] | undefined;
    const motion = smallTurns(path).map(({ x, y, angle }): KeyAttitude => {
      const turn = goingOn(carried.turn(angle, padding), last);
      last = turn;
      return { at: [x - dx, this.middle - dy, y - dz], turn };
    });
    const scene = this.placed.solids.map(({ box }): SceneBox => ({
      ...box,
      centre: [box.centre[0] - dx, box.centre[1] - dy, box.centre[2] - dz],
    }));
    return { motion, scene, motionPadding: padding - ROUNDING };
  }
}

/** Under the open sky nobody need carry it higher than this. */
function skyOver(ends: readonly BlockEnd[], longest: number): ConvexPolygon {
  const xs = ends.map(({ at }) => at[0]);
  const [west, east] = [Math.min(...xs) - 2 * GROUND, Math.max(...xs) + 2 * GROUND];
  const sky = Math.max(...ends.map(({ at }) => at[2])) + longest;
  return [
    [west, sky],
    [east, sky],
    [east, sky + GROUND],
    [west, sky + GROUND],
  ];
}

/** Where the centre begins or ends: clear of what is there, on the floor or on the pitch. */
function regionAt(end: BlockEnd, u: number, v: number): PlanarRegion {
  const [x, , z] = centreAt(end, u, v + 2 * AT_THE_END);
  return around(x, z, AT_THE_END);
}
