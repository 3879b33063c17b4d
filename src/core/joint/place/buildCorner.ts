import type { BuiltRow } from './builtRow';
import { behindFace, behindWall, openBox, type Solid } from './solid';

/** A corner that turns to the left [mm, rad]. */
export interface CornerShape {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly height: number;
  readonly turn: number;
  /** The straight in the arm that leaves it. */
  readonly run: number;
}

/**
 * A corner as `cornerPassages` describes it, without its arms: x along the arm in, from the plane across it through
 * the inner edge, which stands at (0, widthIn/2); it ends at the plane across the arm out through that edge, or `run`
 * beyond. The outer walls reach to where they meet, and no less far than those planes.
 */
export function buildCorner({ widthIn, widthOut, height, turn, run }: CornerShape): BuiltRow {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const inner = [0, widthIn / 2] as const;
  const along = (from: readonly [number, number], d: number): readonly [number, number] => [
    from[0] + c * d,
    from[1] + s * d,
  ];
  /** On the outer side of the arm out, level with the inner edge. */
  const outer = [inner[0] + s * widthOut, inner[1] - c * widthOut] as const;
  // Where the outer walls meet, measured back along the arm out from there; and along the arm in.
  const back = (widthIn - widthOut * c) / s;
  const meet = along(outer, -back);
  const right = -widthIn / 2;
  const end = along(outer, run);
  const solids: Solid[] = [
    ...(meet[0] > 0 ? behindWall('wall', [0, right], [meet[0], right], 0, height) : []),
    ...(back > -run ? behindWall('wall', meet, end, 0, height) : []),
    ...behindWall('wall', along(inner, run), inner, 0, height),
  ];
  // Floor and ceiling under everything that the corner may cover.
  const xs = [0, inner[0], outer[0], meet[0], end[0], along(inner, run)[0]];
  const ys = [right, inner[1], outer[1], meet[1], end[1], along(inner, run)[1]];
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
  solids.push(
    ...behindFace('floor', [x0, y0, 0], [x1, y1, 0], '-z'),
    ...behindFace('ceiling', [x0, y0, height], [x1, y1, height], '+z'),
  );
  const middle = along([(inner[0] + outer[0]) / 2, (inner[1] + outer[1]) / 2], run);
  const square = Math.abs(turn - Math.PI / 2) < 1e-9;
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: { at: [middle[0], middle[1], 0], heading: turn },
    entrySection: { width: widthIn, height },
    exitSection: { width: widthOut, height },
    solids,
    open: square ? [openBox([0, right, 0], [widthOut, inner[1] + run, height])] : [],
  };
}
