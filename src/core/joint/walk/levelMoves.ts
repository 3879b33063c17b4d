import { lastOf } from '../../lists/ends';
import type { PlanarPlace } from '../../geometry/planar/planarWorld';
import type { Hold } from '../../motion/hold';
import { movedFrame, type Frame } from '../place/frame';
import { carriedSizes, holdSeenAlong, turnOfCarriage } from './carriage';
import { planeMove } from './planeMove';
import { lengthAlong, sidesOf, straightAhead, straightBehind } from './straights';
import { GAP, OFF, STATION, type Walk } from './walk';
import { turns } from '../../stages/kinds';

/** A turn in plan between two keys is at most so far [rad]: less than a quarter of a round. */
const SMALL_TURN = Math.PI / 4;

/** From where to where [mm] the middle of the piece can stand in the straight after row i, along that row's exit frame; undefined where it cannot. */
export function stationAfter(
  walk: Walk,
  i: number,
  hold: Hold,
): { readonly frame: Frame; readonly from: number; readonly to: number } | undefined {
  const { exit } = walk.rowAt(i);
  const behind = straightBehind(walk.route.rows, i);
  const ahead = straightAhead(walk.route.rows, i);
  const along = walk.alongFor(hold);
  const from = -behind + along / 2 + GAP;
  const to = ahead - along / 2 - GAP;
  if (to < from) return undefined;
  // Wholly past the row where there is room for it, else as far on as it can be.
  const past = Math.max(from, Math.min(to, along / 2 + GAP));
  // In the row itself where that holds it, not in front of a door before it.
  const inside = -lengthAlong(walk.route.rows, i) + along / 2 + GAP;
  const back = turns(walk.rowAt(i).joint.stage) || inside > to ? from : Math.max(from, inside);
  return {
    frame: exit,
    from: past === to ? Math.max(back, to - STATION) : past,
    to: Math.min(to, past + STATION),
  };
}

/**
 * Moves in plan until the piece stands somewhere from `from` to `to` [mm] along a frame, held so as seen along it.
 * @param upTo rows that it may touch: up to this one
 * @returns whether it came there
 */
export function levelTo(
  walk: Walk,
  frame: Frame,
  from: number,
  to: number,
  hold: Hold,
  upTo: number,
  where: 'anywhere' | 'middle' = 'anywhere',
): boolean {
  const row = walk.rowAt(upTo).row;
  if (walk.lying) return offStair(walk, frame, (from + to) / 2, hold, upTo);
  const crosswise =
    walk.carriage.turned === undefined && holdSeenAlong({ ...walk.carriage, yaw: 0 }, 0) !== hold;
  const sides = sidesOf(walk.route.rows, frame, from, to);
  const middle = (sides[0] + sides[1]) / 2;
  const [yMin, yMax] =
    where === 'middle' ? [Math.max(sides[0], middle - 60), Math.min(sides[1], middle + 60)] : sides;
  const path = pathTo(walk, frame, { xMin: from, xMax: to, yMin, yMax }, crosswise ? Math.PI / 2 : 0, upTo);
  if (!path || !walk.carrier.follow(path.keys, row, walk.stretchOf(upTo))) return false;
  walk.carriage = { ...walk.carriage, hold: crosswise ? hold : walk.carriage.hold, yaw: frame.heading };
  walk.since = upTo + 1;
  return true;
}

/** From lying along a flight to standing level beyond the turn at its end. */
function offStair(walk: Walk, frame: Frame, x: number, hold: Hold, upTo: number): boolean {
  const carriage = { hold, yaw: frame.heading };
  const { height } = carriedSizes(walk.piece, carriage, walk.drawn);
  const [yMin, yMax] = sidesOf(walk.route.rows, frame, x, x);
  const { at } = movedFrame(frame, x, Math.abs(yMin) > 5000 ? 0 : (yMin + yMax) / 2, height / 2 + 4 * OFF);
  const target = { at, turn: turnOfCarriage(carriage) };
  if (!walk.carrier.go(target, walk.rowAt(upTo).row, walk.stretchOf(upTo))) return false;
  walk.carriage = carriage;
  walk.lying = false;
  walk.since = upTo + 1;
  return true;
}

/**
 * A path in plan from where the piece stands into a region of a frame, in the layer that it fills; undefined where none is
 * shown.
 * @param angle at which it is to stand there, as seen along the frame [rad]; any where absent
 * @param upTo rows that it may touch: up to this one
 */
export function pathTo(
  walk: Walk,
  frame: Frame,
  region: {
    readonly xMin: number;
    readonly xMax: number;
    readonly yMin: number;
    readonly yMax: number;
    readonly wholeAbove?: number;
  },
  angle: number | undefined,
  upTo: number,
):
  | {
      readonly keys: { at: [number, number, number]; turn: ReturnType<typeof turnOfCarriage> }[];
      readonly yaw: number;
    }
  | undefined {
  const { p, q, height } = carriedSizes(walk.piece, walk.carriage, walk.drawn);
  const { last } = walk.carrier;
  const c = Math.cos(frame.heading);
  const s = Math.sin(frame.heading);
  const seen = (v: readonly [number, number, number]): [number, number, number] => {
    const [dx, dy] = [v[0] - frame.at[0], v[1] - frame.at[1]];
    return [c * dx + s * dy, -s * dx + c * dy, v[2]];
  };
  const start = seen(last.at);
  const by = walk.route.rows
    .slice(Math.max(0, walk.since - 1), upTo + 2)
    .flatMap((r) => [seen(r.entry.at), seen(r.exit.at)] as const)
    .filter(([, , z]) => Math.abs(z - last.at[2]) < 3000)
    .map(([x, y]) => [x, y] as const);
  const ys = [start[1], ...by.map((b) => b[1])];
  const span = 3000;
  const goal = {
    ...region,
    yMin: Math.max(region.yMin, Math.min(...ys) - span),
    yMax: Math.min(region.yMax, Math.max(...ys) + span),
    ...(angle === undefined ? {} : { angle }),
  };
  const path = planeMove({
    boxes: walk.boxesOf(upTo),
    seen,
    low: last.at[2] - height / 2,
    high: last.at[2] + height / 2,
    p,
    q,
    start: { x: start[0], y: start[1], angle: walk.carriage.yaw - frame.heading },
    goal,
    margin: Math.hypot(p, q) / 2 + 300,
    by,
  });
  if (!path) return undefined;
  return {
    keys: inSmallTurns(path).map(({ x, y, angle: yaw }) => ({
      at: [frame.at[0] + c * x - s * y, frame.at[1] + s * x + c * y, last.at[2]],
      turn: turnOfCarriage({ ...walk.carriage, yaw: yaw + frame.heading }),
    })),
    yaw: lastOf(path).angle + frame.heading,
  };
}

/**
 * The same path with no turn so far that a tilted piece, which looks the same in four attitudes, would be taken another
 * way than round the plumb line.
 */
function inSmallTurns(path: readonly PlanarPlace[]): PlanarPlace[] {
  return path.flatMap((place, n): PlanarPlace[] => {
    const before = path[n - 1];
    if (!before) return [place];
    const parts = Math.max(1, Math.ceil(Math.abs(place.angle - before.angle) / SMALL_TURN));
    const part = (from: number, to: number, k: number): number => from + ((to - from) * k) / parts;
    return Array.from({ length: parts }, (_, k) => ({
      x: part(before.x, place.x, k + 1),
      y: part(before.y, place.y, k + 1),
      angle: part(before.angle, place.angle, k + 1),
    }));
  });
}
