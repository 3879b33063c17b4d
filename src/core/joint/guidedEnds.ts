import { attitudeInPlan } from '../motion/attitude';
import { sizesOfHold, type Hold } from '../motion/hold';
import type { PieceSize } from '../measures/piece';
import type { KeyAttitude, SceneBox } from '../space/motion';
import type { Vector } from '../space/vector';
import { firstOf, lastOf } from '../lists/ends';
import type { JointBlock, JointRow } from './jointRow';
import type { Section } from './place/builtRow';
import { movedFrame, placedBox, placedPoint, placingOf, START, type Frame } from './place/frame';
import { placeRoute, type PlacedRoute, type PlacedRow } from './place/placedRoute';

/** A block in its place, closed where it begins and ends in a straight: nothing is supposed beyond it. */
export interface ClosedBlock {
  readonly route: PlacedRoute;
  readonly closings: readonly SceneBox[];
  readonly ends: readonly [WayEnd, WayEnd];
  /** Where the block's own frame begins in these coordinates. */
  readonly origin: Vector;
}

/** Where a piece can be at rest at an end of a block: level in a straight, in a room or outdoors, or lying along a flight. */
export interface WayEnd {
  /** The piece is behind this plane or ahead of it, towards which the way leads from the block's middle. */
  readonly plane: Frame;
  readonly side: -1 | 1;
  /** What holds it [mm]; Infinity where nothing bounds it. */
  readonly length: number;
  /** [mm] */
  readonly width: number;
  /** Square to what it lies on [mm]. */
  readonly height: number;
  /** By how much the way rises there [rad]. */
  readonly pitch: number;
}

/** Kept off what it stands on, and from the planes between which it stands [mm]. */
const OFF = 2;
/** Held no higher off it [mm]. */
const MOST_OFF = 20;
/** So far from the block's middle it stands, where it may stand anywhere [mm]. */
const AWAY = 200;
/** How far what closes a block reaches beyond its section on every side [mm]. */
const CLOSED_BEYOND = 200;
/** How thick it is [mm]. */
const THICK = 120;
/** A piece lying along a flight is no higher square to it than this over its upright side [mm]. */
const PADDED = 300;

/**
 * Places a block between two places of rest.
 * @param upright of the piece as it is held [mm]: lying at a flight's foot it leans back over the floor there
 */
export function closedBlock({ rows, before, after }: JointBlock, upright: number): ClosedBlock {
  const last = rows.length - 1;
  const route = placeRoute(
    rows.map((row, i) => {
      if (i === 0 && before === 'straight') return withoutEnd(row, 'before', upright);
      return i === last && after === 'straight' ? withoutEnd(row, 'after', upright) : row;
    }),
  );
  const [begins, finishes] = [firstOf(route.rows), lastOf(route.rows)];
  const closings: SceneBox[] = [];
  if (before === 'straight') closings.push(wallAcross(begins.entry, begins.entrySection, -1));
  if (after === 'straight' && finishes.exitSection)
    closings.push(wallAcross(finishes.exit, finishes.exitSection, 1));
  const ends = [
    endOf(begins, firstOf(rows), before, 'before'),
    endOf(finishes, lastOf(rows), after, 'after'),
  ] as const;
  const { risers: placed = 0, rise = 0, going = 0 } = begins.joint.measures;
  const more = placed - (firstOf(rows).measures.risers ?? placed);
  return { route, closings, ends, origin: [more * going, 0, more * rise] };
}

/** A flight along which the piece lies at an end of a block, without what is beyond it; at its foot a few treads longer. */
function withoutEnd(row: JointRow, side: 'before' | 'after', upright: number): JointRow {
  if (row.stage !== 'flight') return row;
  const head = (row.way === 'down') === (side === 'before');
  const cut: readonly string[] = head ? ['headSpace', 'headCeiling'] : ['footSpace', 'footCeiling'];
  const { rise = 1, going = 1, risers = 1 } = row.measures;
  const leans = (upright + PADDED) * Math.sin(Math.atan2(rise, going));
  const more = head ? 0 : Math.ceil(leans / going) + 1;
  const kept = Object.entries(row.measures).filter(([name]) => !cut.includes(name));
  return {
    ...row,
    measures: Object.fromEntries([...kept, ['risers', risers + more]]),
  };
}

/** A wall right across the way, ahead of a plane of it or behind it. */
function wallAcross(frame: Frame, { width, height }: Section, side: -1 | 1): SceneBox {
  return placedBox(placingOf(START, frame), {
    centre: [(side * THICK) / 2, 0, height / 2],
    size: [THICK, width + 2 * CLOSED_BEYOND, height + 2 * CLOSED_BEYOND],
    turn: [1, 0, 0, 0],
  });
}

/** @param joint the row as it was given: a flight as long as it is */
function endOf(
  row: PlacedRow,
  joint: JointRow,
  kind: JointBlock['before'],
  which: 'before' | 'after',
): WayEnd {
  const side = which === 'before' ? -1 : 1;
  const outer = which === 'before' ? row.entry : row.exit;
  const inner = which === 'before' ? row.exit : row.entry;
  if (kind === 'open')
    return { plane: outer, side, length: Infinity, width: Infinity, height: Infinity, pitch: 0 };
  const { length = 0, width = 0, height = 0, rise = 1, going = 1, risers = 1 } = joint.measures;
  if (joint.stage === 'flight') {
    const pitch = Math.atan2(rise, going);
    const placed = row.joint.measures.risers ?? risers;
    const atHead = (which === 'before') === !row.back;
    const at = placedPoint(row.placing, atHead ? [(placed - 1) * going, 0, placed * rise] : [0, 0, rise]);
    return {
      plane: { at, heading: row.entry.heading },
      side,
      length: (risers - 1) * Math.hypot(rise, going),
      width,
      height: height * Math.cos(pitch),
      pitch: row.back ? -pitch : pitch,
    };
  }
  return { plane: inner, side, length, width, height: row.entrySection.height, pitch: 0 };
}

/** Padding [mm a side] with which a piece held so fills what holds it there. */
export function mostAt({ length, width, height }: WayEnd, piece: PieceSize, hold: Hold): number {
  const { along, across, upright } = sizesOfHold(piece, hold);
  return Math.min(length - along - 2 * OFF, width - across, height - upright - 2 * OFF) / 2;
}

/** The piece at rest there, padded [mm a side], as near to the block's middle as it need not be nearer. */
export function restingAt(
  { plane, side, length, height, pitch }: WayEnd,
  piece: PieceSize,
  hold: Hold,
  padding: number,
): KeyAttitude {
  const { along, upright } = sizesOfHold(piece, hold);
  const half = Math.max(0, along / 2 + padding);
  const high = Math.max(0, upright / 2 + padding);
  const room = (length - 2 * half - 2 * OFF) / 2;
  const away = side * (half + OFF + Math.max(0, Math.min(room, AWAY)));
  const up = high + Math.min(MOST_OFF, Math.max(OFF, height / 2 - high));
  const [c, s] = [Math.cos(pitch), Math.sin(pitch)];
  return {
    at: movedFrame(plane, away * c - up * s, 0, away * s + up * c).at,
    turn: attitudeInPlan({ hold, turned: 'tilted', tilt: pitch }, plane.heading),
  };
}
