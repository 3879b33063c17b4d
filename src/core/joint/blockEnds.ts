import type { SceneBox } from '../space/motion';
import type { JointBlock, JointRow } from './jointRow';
import { placedBox, placingOf, START, type Frame, type Vec3 } from './place/frame';
import { placeBlock, type PlacedBlock } from './planWorld';

/** An end of a block: a place on the floor or on the line of nosings, and how the piece lies there. */
export interface BlockEnd {
  readonly at: Vec3;
  /** The way's direction in plan [rad]. */
  readonly heading: number;
  /** By how much it rises [rad]. */
  readonly pitch: number;
  /** The piece lies ahead of that place (1), behind it (-1), or over it (0). */
  readonly side: -1 | 0 | 1;
  /** From that place on to where the flight ends on which it lies, along the pitch [mm]; 0 on the level. */
  readonly run: number;
}

/** A block in its place, its ends long enough for the piece. */
export interface StandingBlock {
  readonly placed: PlacedBlock;
  readonly ends: readonly [BlockEnd, BlockEnd];
  /** Walls that close what was made longer, so that nothing is gained beyond it. */
  readonly closings: readonly SceneBox[];
  /** Where the block's own frame begins in the scene's coordinates; the two point the same way. */
  readonly origin: Vec3;
}

/** Kept from where a straight or a flight was made longer [mm]. */
const MARGIN = 2;
/** Moved on along a flight it stays so far short of its end [mm]. */
const SHORT_OF = 100;
/** A flight at an end is longer than the piece by so much [mm]. */
const MORE = 600;

/**
 * Places a block with what its ends suppose: a level straight is put before or after it, a flight at an end goes on.
 * @param longest longer than the piece, padding included [mm]
 */
export function standBlock(block: JointBlock, longest: number): StandingBlock {
  const rows = [...block.rows];
  let moved: readonly [number, number] = [0, 0];
  const first = rows[0];
  const last = rows[rows.length - 1];
  const flightFirst = first?.stage === 'flight' && block.before === 'straight';
  const flightLast = last?.stage === 'flight' && block.after === 'straight';
  if (flightFirst) {
    const down = first.way === 'down';
    const { row, x, z } = longer(first, down ? 'head' : 'foot', longest);
    rows[0] = row;
    moved = [x, down ? -z : z];
  }
  if (flightLast) {
    const row = rows[rows.length - 1] ?? last;
    rows[rows.length - 1] = longer(row, row.way === 'down' ? 'foot' : 'head', longest).row;
  }
  const placed = placeBlock(
    {
      rows,
      before: flightFirst ? 'open' : block.before,
      after: flightLast ? 'open' : block.after,
    },
    longest,
  );
  const closings = [
    ...(flightFirst || placed.lead > 0 ? [closing(placed.start, -1)] : []),
    ...(placed.end && (flightLast || placed.trail > 0) ? [closing(placed.end, 1)] : []),
  ];
  return {
    placed,
    closings,
    ends: [endOf(placed, block, 'before', longest), endOf(placed, block, 'after', longest)],
    origin: [placed.lead + moved[0], 0, moved[1]],
  };
}

/**
 * Where the centre of a piece `along` x `upright` [mm] is at an end, resting there; or, moved on, so far along the flight
 * on which it lies that it nearly reaches its end.
 */
export function centreAt(
  { at, heading, pitch, side, run }: BlockEnd,
  along: number,
  upright: number,
  moved: 'at the end' | 'moved on' = 'at the end',
): Vec3 {
  const on = moved === 'moved on' ? Math.max(0, run - along - SHORT_OF) : 0;
  const forward = side * (along / 2 + MARGIN + on);
  const up = upright / 2;
  const plan = forward * Math.cos(pitch) - up * Math.sin(pitch);
  return [
    at[0] + plan * Math.cos(heading),
    at[1] + plan * Math.sin(heading),
    at[2] + forward * Math.sin(pitch) + up * Math.cos(pitch),
  ];
}

/** A wall right across the way in a plane of it, behind that plane (-1) or ahead of it (1). */
function closing(frame: Frame, side: -1 | 1): SceneBox {
  const wall: SceneBox = { centre: [side * 60, 0, 2000], size: [120, 8000, 12000], turn: [1, 0, 0, 0] };
  return placedBox(placingOf(START, frame), wall);
}

/** A flight with so many more risers at an end that the piece lies on them, and how far that end moves. */
function longer(
  row: JointRow,
  end: 'foot' | 'head',
  longest: number,
): { readonly row: JointRow; readonly x: number; readonly z: number } {
  const { rise = 1, going = 1, risers = 1 } = row.measures;
  const more = Math.ceil((2 * longest + MORE) / going) + 1;
  const cut: readonly string[] = end === 'foot' ? ['footSpace', 'footCeiling'] : ['headSpace', 'headCeiling'];
  const kept = Object.entries(row.measures).filter(([name]) => !cut.includes(name));
  const measures = Object.fromEntries([...kept, ['risers', risers + more]]) as JointRow['measures'];
  return { row: { ...row, measures }, x: more * going, z: more * rise };
}

function endOf(placed: PlacedBlock, block: JointBlock, which: 'before' | 'after', longest: number): BlockEnd {
  const { rows } = placed.placed;
  const row = rows[which === 'before' ? 0 : rows.length - 1];
  if (!row) return { at: [0, 0, 0], heading: 0, pitch: 0, side: 0, run: 0 };
  const frame = which === 'before' ? row.entry : row.exit;
  const { joint } = row;
  const [c, s] = [Math.cos(frame.heading), Math.sin(frame.heading)];
  const inward = which === 'before' ? 1 : -1;
  if (joint.stage === 'flight' && block[which] === 'straight') {
    const { rise = 1, going = 1 } = joint.measures;
    const down = joint.way === 'down';
    const pitch = Math.atan2(rise, going) * (down ? -1 : 1);
    // On the line of nosings, so far from where the prolonged flight ends that no corner reaches it; at its foot it stands a
    // rise higher.
    const clear = Math.ceil(longest / going) * going;
    const step = inward * clear;
    const base = (which === 'before') !== down ? rise : 0;
    return {
      at: [frame.at[0] + step * c, frame.at[1] + step * s, frame.at[2] + base + step * Math.tan(pitch)],
      heading: frame.heading,
      pitch,
      side: inward,
      run: ((joint.measures.risers ?? 1) - 1 - clear / going) * Math.hypot(rise, going),
    };
  }
  if (which === 'after' && row.exitSection === undefined) {
    // The middle of the room in which the way ends.
    const half = (joint.measures.length ?? 0) / 2;
    const { at, heading } = row.entry;
    return {
      at: [at[0] + half * Math.cos(heading), at[1] + half * Math.sin(heading), at[2]],
      heading,
      pitch: 0,
      side: 0,
      run: 0,
    };
  }
  const outward = inward === 1 ? -1 : 1;
  return {
    at: frame.at,
    heading: frame.heading,
    pitch: 0,
    side: block[which] === 'open' ? outward : inward,
    run: 0,
  };
}
