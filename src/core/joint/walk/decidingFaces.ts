import { WALL_NOT_GIVEN } from '../../stages/usualRanges';
import { levelBox } from '../../motion/planScene';
import type { DecidingFace } from '../../motion/closest';
import type { SceneBox } from '../../space/motion';
import { kindOf } from '../../stages/kinds';
import type { StageMeasures } from '../../stages/measures';
import { placedBox, type Frame } from '../place/frame';
import { rotate } from '../../space/quaternion';
import type { PlacedRoute, PlacedRow, PlacedSolid } from '../place/placedRoute';
import { isLanding } from '../place/rowContext';
import type { SolidPart } from '../place/solid';
import { pointDistance } from './nearestPoints';

/** A face or an edge that decides, in the scene, with the row that it belongs to. */
export interface DecidingSolid {
  readonly row: number;
  readonly face: DecidingFace;
  readonly box: SceneBox;
}

/** Faces drawn by themselves are so thick [mm]: nothing is seen of it. */
const SHEET = 0.5;
/** Far enough for a face whose length is not measured [mm]. */
const FAR = 3000;
/** A face on which nothing stands this near [mm] is not in the scene. */
export const BACKED = 3;

/** What decides at a step. */
export interface WhatDecides {
  readonly faces: readonly DecidingFace[];
  /** Of a flight only what is at this end, where one is told. */
  readonly atEnd?: 'foot' | 'head' | undefined;
  /** Rows that may have it: those that are passed together. */
  readonly rows: readonly number[];
}

/**
 * The faces that decide, where the scene has them: of the rows asked for, and of the flights beside a landing.
 * @returns boxes in the coordinates of the scene; none where what decides is not built there
 */
export function decidingSolids(route: PlacedRoute, { faces, atEnd, rows }: WhatDecides): DecidingSolid[] {
  return route.rows.flatMap((placed, n) => {
    const beside = [n - 1, n + 1].some((k) => {
      const other = route.rows[k];
      return other !== undefined && rows.includes(other.row) && isLanding(other.joint);
    });
    if (!rows.includes(placed.row) && !beside) return [];
    const own = route.solids.filter(({ row }) => row === placed.row);
    // What stands at its end is the next row's.
    const near = route.solids.filter(({ row }) => Math.abs(row - placed.row) <= 1);
    return faces.flatMap((face) =>
      facesOf(withLandingSpaces(route, n, placed), own, face)
        .flatMap((box) => (atEnd ? partAtEnd(placed, box, atEnd) : [box]))
        .filter((box) => near.some((solid) => backs(solid, box)))
        .map((box) => ({ row: placed.row, face, box })),
    );
  });
}

/** What of a flight's face is in the half at one of its ends; the faces of other rows as they are. */
function partAtEnd({ joint, entry, exit }: PlacedRow, box: SceneBox, end: 'foot' | 'head'): SceneBox[] {
  if (kindOf(joint.stage).stair !== 'flight') return [box];
  const rise = rotate(box.turn, [1, 0, 0]);
  // Along the slope: cut in the middle.
  if (Math.abs(rise[2]) > 1e-6 && Math.abs(rise[2]) < 1 - 1e-6) {
    const by = (rise[2] > 0 === (end === 'head') ? 1 : -1) * (box.size[0] / 4);
    const [x, y, z] = box.centre;
    const [length, ...across] = box.size;
    return [
      {
        ...box,
        centre: [x + rise[0] * by, y + rise[1] * by, z + rise[2] * by],
        size: [length / 2, ...across],
      },
    ];
  }
  const off = ({ at }: Frame): number => Math.hypot(at[0] - box.centre[0], at[1] - box.centre[1]);
  const [foot, head] = joint.way === 'down' ? [exit, entry] : [entry, exit];
  return off(end === 'foot' ? foot : head) <= off(end === 'foot' ? head : foot) ? [box] : [];
}

/** A flight beside a landing has no spaces of its own: there the wall that faces it is the landing's. */
function withLandingSpaces({ rows }: PlacedRoute, n: number, placed: PlacedRow): PlacedRow {
  const { joint } = placed;
  if (joint.stage !== 'flight') return placed;
  const across = (end: 'foot' | 'head'): number | undefined => {
    const beside = rows[(joint.way === 'down') === (end === 'foot') ? n + 1 : n - 1]?.joint;
    if (beside?.stage === 'half landing') return beside.measures.depth;
    if (beside?.stage !== 'quarter landing') return undefined;
    return end === 'head' ? beside.measures.widthOut : beside.measures.width;
  };
  const { footSpace = across('foot'), headSpace = across('head') } = joint.measures;
  const measures = {
    ...joint.measures,
    ...(footSpace === undefined ? {} : { footSpace }),
    ...(headSpace === undefined ? {} : { headSpace }),
  };
  return { ...placed, joint: { ...joint, measures } };
}

/** Whether a solid of the scene stands on a face, somewhere along it. */
function backs({ box: solid }: PlacedSolid, box: SceneBox): boolean {
  return pointDistance(solid, box.centre) <= BACKED || pointDistance(box, solid.centre) <= BACKED + REACH / 2;
}
/** Solids reach no farther behind their faces than this [mm]. */
const REACH = 130;

/** Which parts of a row's own solids are meant, where a face is no edge and no end of anything. */
const PARTS: Readonly<Partial<Record<DecidingFace, readonly SolidPart[]>>> = {
  sides: ['wall'],
  jambs: ['wall'],
  head: ['head', 'ceiling'],
  ceiling: ['ceiling'],
  'far wall': ['facing wall'],
  slope: ['flight ceiling'],
  nosings: ['nosings'],
  riser: ['riser'],
  rail: ['rail'],
  anything: ['wall', 'facing wall', 'ceiling', 'head', 'riser', 'flight ceiling', 'rail'],
};

function facesOf(placed: PlacedRow, own: readonly PlacedSolid[], face: DecidingFace): readonly SceneBox[] {
  const drawn = edgesOf(placed, face);
  if (drawn) return drawn.map((box) => placedBox(placed.placing, box));
  const parts = PARTS[face] ?? [];
  return own.flatMap(({ part, box }) => (parts.includes(part) ? [box] : []));
}

/** Edges, and faces that are but a part of a solid, in the row's own coordinates; undefined: whole solids are meant. */
function edgesOf({ joint }: PlacedRow, face: DecidingFace): SceneBox[] | undefined {
  const kind = kindOf(joint.stage);
  const measures = kind.solvedAsFlight?.(joint.measures) ?? joint.measures;
  if (kind.stair === 'flight') return flightEdges(measures, face);
  if (joint.stage === 'corner') return cornerEdges(measures, face);
  if (joint.stage === 'quarter landing' || joint.stage === 'half landing') {
    return landingEdges(joint.stage, measures, face);
  }
  if (joint.stage === 'side door') return sideDoorEdges(measures, face);
  if (joint.stage === 'lift') return liftEdges(measures, face);
  return undefined;
}

function flightEdges(m: StageMeasures, face: DecidingFace): SceneBox[] | undefined {
  const { width = 0, height = 0, rise = 0, going = 1, risers = 1, footCeiling, headCeiling } = m;
  const half = width / 2;
  const [X, Z] = [(risers - 1) * going, risers * rise];
  const footHeight = footCeiling ?? rise + height;
  const headHeight = headCeiling ?? height;
  const trimmer =
    footCeiling === undefined
      ? 0
      : Math.min(X, Math.max(-FAR, ((footCeiling - height - rise) * going) / rise));
  switch (face) {
    case 'top nosing':
      return [levelBox([X - SHEET, -half, Z - SHEET], [X, half, Z])];
    case 'stairwell edge':
      return [levelBox([trimmer, -half, footHeight], [trimmer + SHEET, half, footHeight + SHEET])];
    case 'foot ceiling':
      return [levelBox([-(m.footSpace ?? FAR), -half, footHeight], [trimmer, half, footHeight + SHEET])];
    case 'head ceiling': {
      const z = Z + headHeight;
      return [levelBox([X, -half, z], [X + (m.headSpace ?? FAR), half, z + SHEET])];
    }
    case 'foot wall': {
      const x = -(m.footSpace ?? FAR);
      return [levelBox([x - SHEET, -half, 0], [x, half, footHeight])];
    }
    case 'head wall': {
      const x = X + (m.headSpace ?? FAR);
      return [levelBox([x, -half, Z], [x + SHEET, half, Z + headHeight])];
    }
    // It has none of its own.
    case 'head':
    case 'jambs':
    case 'far wall':
      return [];
    default:
      return undefined;
  }
}

/** So far below a landing its inner edge stands beside the lower flight [mm]. */
const BELOW = 1000;

/** The upright edges about which it goes round: the inner one, or the two ends of the spine. */
function landingEdges(
  stage: 'quarter landing' | 'half landing',
  { width = 0, well = 0, height = 0, ceiling = height }: StageMeasures,
  face: DecidingFace,
): SceneBox[] | undefined {
  if (face !== 'inner corner') return undefined;
  const edge = (y: number): SceneBox => levelBox([-SHEET, y, -BELOW], [0, y + SHEET, ceiling]);
  return stage === 'quarter landing' ? [edge(width)] : [edge(width), edge(width + well - SHEET)];
}

function cornerEdges({ width = 0, height = 0 }: StageMeasures, face: DecidingFace): SceneBox[] | undefined {
  const y = width / 2;
  return face === 'inner corner' ? [levelBox([-SHEET, y, 0], [SHEET, y + SHEET, height])] : undefined;
}

function sideDoorEdges(m: StageMeasures, face: DecidingFace): SceneBox[] | undefined {
  const { width = 0, height = 0, wall = WALL_NOT_GIVEN, widthOut = 0, ceiling = height } = m;
  const half = width / 2;
  const head = Math.min(height, ceiling);
  const far = wall + widthOut;
  switch (face) {
    case 'jambs':
      return [half, -half - SHEET].map((y) => levelBox([0, y, 0], [wall, y + SHEET, head]));
    case 'inner corner':
      return [half, -half - SHEET].map((y) => levelBox([wall - SHEET, y, 0], [wall, y + SHEET, head]));
    case 'head':
      return [levelBox([0, -half, head], [wall, half, head + SHEET])];
    case 'far wall':
      return [levelBox([far, -FAR, 0], [far + SHEET, FAR, ceiling])];
    default:
      return undefined;
  }
}

function liftEdges(m: StageMeasures, face: DecidingFace): SceneBox[] | undefined {
  const { width = 0, height = 0, widthOut = 0, ceiling = height } = m;
  const door = Math.min(width, widthOut) / 2;
  const head = Math.min(height, ceiling);
  switch (face) {
    case 'jambs':
      return [door, -door - SHEET].map((y) => levelBox([-SHEET, y, 0], [0, y + SHEET, head]));
    case 'head':
      return [levelBox([-SHEET, -door, head], [0, door, head + SHEET])];
    default:
      return undefined;
  }
}
