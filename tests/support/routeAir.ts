/**
 * The free space of a route, read from its rows anew: a union of convex cells, each a few half-spaces. It shares no
 * code with the project: how rows join, how they are turned and placed across, where ceilings meet, is worked out here
 * from what the columns of a route mean. A box lies in it when what is left of the box after cutting every cell out of it
 * is nothing: exact, but for `TOLERANCE`.
 *
 * Coordinates: the origin midway across the entry plane of the first row, on the floor there; x along the way, y to the
 * left, z up. Walls between rows that lie beside each other are not told where they are thinner than nothing: the air
 * is then too large, never too small.
 */

export type Point = readonly [number, number, number];
/** n . p <= d. */
type Plane = readonly [number, number, number, number];

/** A convex piece of air that belongs to a row: -1 before the first, the number of rows behind the last. */
export interface Cell {
  readonly row: number;
  readonly planes: readonly Plane[];
}

export interface AirRow {
  readonly stage: string;
  readonly measures: Readonly<Record<string, number | undefined>>;
  readonly hand?: 'left' | 'right' | undefined;
  readonly way?: 'up' | 'down' | undefined;
  readonly into?: boolean | undefined;
  readonly place?: number | undefined;
}

/** Cells are taken to meet where they are no farther apart than this, and what is thinner is nothing [mm]. */
const TOLERANCE = 0.25;
const FAR = 20000;
const HIGH = 30000;
/** A door without a wall, and a lift's, is as thick as this [mm]. */
const SHEET = 0.3;
/** Thickness of a door's wall that is not given (as the columns say) [mm]. */
const WALL = 110;
/** How high a lift goes here [mm]. */
export const LIFT_RISE = 40000;

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly heading: number;
}

interface Section {
  readonly width: number;
}

const moved = (f: Frame, s: number, t: number, up = 0, turned = 0): Frame => ({
  x: f.x + s * Math.cos(f.heading) - t * Math.sin(f.heading),
  y: f.y + s * Math.sin(f.heading) + t * Math.cos(f.heading),
  z: f.z + up,
  heading: f.heading + turned,
});

/** A half-space a s + b t + c z <= d in a frame, seen in space. */
function placed(f: Frame, a: number, b: number, c: number, d: number): Plane {
  const [cos, sin] = [Math.cos(f.heading), Math.sin(f.heading)];
  const n: [number, number, number] = [a * cos - b * sin, a * sin + b * cos, c];
  const size = Math.hypot(...n);
  const away = d + n[0] * f.x + n[1] * f.y + n[2] * f.z;
  return [n[0] / size, n[1] / size, n[2] / size, away / size];
}

function block(
  f: Frame,
  [s0, s1]: readonly [number, number],
  [t0, t1]: readonly [number, number],
  [z0, z1]: readonly [number, number],
): Plane[] {
  return [
    placed(f, -1, 0, 0, -s0),
    placed(f, 1, 0, 0, s1),
    placed(f, 0, -1, 0, -t0),
    placed(f, 0, 1, 0, t1),
    placed(f, 0, 0, -1, -z0),
    placed(f, 0, 0, 1, z1),
  ];
}

const isLanding = (row: AirRow | undefined): boolean =>
  row?.stage === 'quarter landing' || row?.stage === 'half landing';
const isStraight = (row: AirRow | undefined): boolean => row?.stage === 'passage' || row?.stage === 'room';

const beforeEnd = (flight: AirRow): 'foot' | 'head' => (flight.way === 'down' ? 'head' : 'foot');
const afterEnd = (flight: AirRow): 'foot' | 'head' => (flight.way === 'down' ? 'foot' : 'head');
const spaceOf = (flight: AirRow, end: 'foot' | 'head'): number | undefined =>
  flight.measures[end === 'foot' ? 'footSpace' : 'headSpace'];
const ceilingOf = (flight: AirRow, end: 'foot' | 'head'): number | undefined =>
  flight.measures[end === 'foot' ? 'footCeiling' : 'headCeiling'];

/** The ceiling that a row beside a flight gives over the floor there. */
function ownCeiling(row: AirRow | undefined): number | undefined {
  if (!row) return undefined;
  if (isLanding(row) || row.stage === 'side door') return row.measures['ceiling'] ?? row.measures['height'];
  if (row.stage === 'corner' || isStraight(row)) return row.measures['height'];
  return undefined;
}

/** Over one floor the least of the ceilings given holds. */
function leastCeiling(own: number, before: AirRow | undefined, after: AirRow | undefined): number {
  const told: (number | undefined)[] = [
    before?.stage === 'flight' ? ceilingOf(before, afterEnd(before)) : undefined,
    after?.stage === 'flight' ? ceilingOf(after, beforeEnd(after)) : undefined,
  ];
  return Math.min(own, ...told.filter((v): v is number => v !== undefined));
}

/** The air of a route. */
export function routeAir(rows: readonly AirRow[]): Cell[] {
  const cells: Cell[] = [];
  let frame: Frame = { x: 0, y: 0, z: 0, heading: 0 };
  let section: Section | undefined;
  const add = (row: number, planes: Plane[]): void => void cells.push({ row, planes });

  const enter = (width: number, place: number | undefined): void => {
    if (!section) return;
    const [wide, narrow] = [Math.max(width, section.width), Math.min(width, section.width)];
    // The narrower's middle stands so far left of the wider's.
    const left = ((wide - narrow) / 2) * (1 - 2 * (place ?? 0.5));
    frame = moved(frame, 0, width <= section.width ? left : -left);
  };
  const leave = (next: Frame, width: number): void => {
    frame = next;
    section = { width };
  };

  const flight = (i: number, row: AirRow, before: AirRow | undefined, after: AirRow | undefined): void => {
    const { width = 0, height: headroom = 0, rise = 0, going = 1, risers = 0 } = row.measures;
    enter(width, row.place);
    const up = row.way !== 'down';
    const slope = rise / going;
    const run = (risers - 1) * going;
    const floorAt = (end: 'foot' | 'head', beside: AirRow | undefined, follows: boolean): number => {
      const space = spaceOf(row, end) ?? 0;
      if (!beside || beside.stage === 'door' || beside.stage === 'lift') return space;
      if (!follows) return 0;
      if (beside.stage === 'corner') return Math.max(0, space - (beside.measures['widthOut'] ?? 0));
      if (beside.stage === 'side door')
        return Math.max(0, space - (beside.measures['width'] ?? 0) - (beside.measures['depth'] ?? 0));
      return 0;
    };
    const [footSide, headSide] = up ? [before, after] : [after, before];
    const footFloor = floorAt('foot', footSide, !up);
    const headFloor = floorAt('head', headSide, up);
    const foot = Math.min(ceilingOf(row, 'foot') ?? Infinity, ownCeiling(footSide) ?? Infinity);
    const head = Math.min(ceilingOf(row, 'head') ?? Infinity, ownCeiling(headSide) ?? Infinity);
    const footCeiling = Number.isFinite(foot) ? foot : rise + headroom;
    const headCeiling = Number.isFinite(head) ? head : headroom;
    // Seen upward from the first riser.
    const total = run + footFloor + headFloor;
    const base = up ? moved(frame, footFloor, 0) : moved(frame, headFloor + run, 0, -risers * rise, Math.PI);
    const across: readonly [number, number] = [-width / 2, width / 2];
    const steps = (planes: Plane[]): Plane[] => [...planes, placed(base, slope, 0, -1, -rise)];
    const underLine = placed(base, -slope, 0, 1, rise + headroom);
    if (run > 0) {
      add(i, [...steps(block(base, [0, run], across, [0, HIGH])), underLine]);
      const trimmer = (footCeiling - rise - headroom) / slope;
      if (trimmer > 0 && !isLanding(footSide)) {
        add(i, steps(block(base, [0, Math.min(trimmer, run)], across, [0, footCeiling])));
      } else if (trimmer < 0) add(i, [...block(base, [trimmer, 0], across, [0, HIGH]), underLine]);
    }
    if (footFloor > 0) add(i, block(base, [-footFloor, 0], across, [0, footCeiling]));
    if (headFloor > 0) {
      const top = risers * rise;
      add(i, block(base, [run, run + headFloor], across, [top, top + headCeiling]));
    }
    leave(moved(frame, total, 0, (up ? 1 : -1) * risers * rise), width);
  };

  const longFlight = (i: number, row: AirRow, lower: boolean): void => {
    const { width, widthOut, height, rise, going = 1 } = row.measures;
    const own = lower || row.stage !== 'quarter landing' ? width : widthOut;
    const measures = { width: own, height, rise, going, risers: Math.ceil(9000 / going) + 1 };
    flight(i, { stage: 'flight', way: row.way, measures }, undefined, undefined);
  };

  /** The straight that leaves a turn: between it and what does not begin at once. */
  const runOf = (row: AirRow, next: AirRow | undefined): number => {
    if (!next || isStraight(next)) return 0;
    const { run, width = 0, depth = 0 } = row.measures;
    if (run !== undefined) return run;
    const space = next.stage === 'flight' ? spaceOf(next, beforeEnd(next)) : undefined;
    if (space === undefined) return 0;
    return Math.max(0, space - width - (row.stage === 'side door' ? depth : 0));
  };

  // Open ground before the first row.
  add(-1, block(frame, [-FAR, 0], [-FAR, FAR], [0, HIGH]));
  rows.forEach((row, i) => {
    const [before, after] = [rows[i - 1], rows[i + 1]];
    const m = row.measures;
    const { width = 0, height = 0 } = m;
    const side = row.hand === 'right' ? -1 : 1;
    switch (row.stage) {
      case 'door': {
        enter(width, row.place);
        const wall = m['wall'] ?? WALL;
        const half = width / 2;
        // Where nothing is as thick as the door, the plane is.
        add(i, block(frame, [0, Math.max(wall, 0)], [-half, half], [0, height]));
        leave(moved(frame, wall, 0), width);
        return;
      }
      case 'passage': {
        enter(width, row.place);
        const length = m['length'] ?? 0;
        add(i, block(frame, [0, length], [-width / 2, width / 2], [0, leastCeiling(height, before, after)]));
        leave(moved(frame, length, 0), width);
        return;
      }
      case 'room': {
        enter(width, row.place);
        const length = m['length'] ?? 0;
        add(i, block(frame, [0, length], [-width / 2, width / 2], [0, leastCeiling(height, before, after)]));
        if (row.hand === undefined || !after) leave(moved(frame, length, 0), width);
        else leave(moved(frame, length / 2, (side * width) / 2, 0, (side * Math.PI) / 2), length);
        return;
      }
      case 'corner': {
        const { widthOut = 0, turn = 90 } = m;
        enter(width, row.place);
        const angle = (turn * Math.PI) / 180;
        const high: readonly [number, number] = [0, leastCeiling(height, before, after)];
        // Seen so that it turns left: the inner edge is at the origin of this frame.
        const edge = moved(frame, 0, (side * width) / 2);
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        // Between the plane across the arm in, its outer wall, the outer wall of the arm out, and the plane across it.
        add(i, [
          placed(edge, -1, 0, 0, 0),
          placed(edge, 0, -side, 0, width),
          placed(edge, s, -side * c, 0, widthOut),
          placed(edge, c, side * s, 0, 0),
          placed(edge, 0, 0, -1, 0),
          placed(edge, 0, 0, 1, high[1]),
        ]);
        const out = moved(edge, 0, 0, 0, side * angle);
        const run = runOf(row, after);
        const lane: readonly [number, number] = side > 0 ? [-widthOut, 0] : [0, widthOut];
        if (run > 0) add(i, block(out, [0, run], lane, high));
        leave(moved(out, run, (-side * widthOut) / 2), widthOut);
        return;
      }
      case 'side door': {
        const { wall = 0, widthOut = 0, ceiling = height, depth = FAR } = m;
        const high = leastCeiling(ceiling, before, after);
        const head = Math.min(height, ceiling);
        const half = width / 2;
        const told = before?.measures['widthOut'] !== undefined && before.stage !== 'passage';
        const comes = told ? before?.measures['widthOut'] : before?.measures['width'];
        const into = row.into ?? (before === undefined || before.stage === 'door' || comes !== widthOut);
        const lane = (from: number, to: number): readonly [number, number] =>
          side > 0 ? [from, to] : [-to, -from];
        if (into) {
          enter(width, row.place);
          const thick = Math.max(wall, SHEET);
          add(i, block(frame, [0, thick], [-half, half], [0, head]));
          const run = runOf(row, after);
          add(i, block(frame, [thick, wall + widthOut], lane(-half - depth, half + run), [0, high]));
          leave(moved(frame, wall + widthOut / 2, side * (half + run), 0, (side * Math.PI) / 2), widthOut);
          return;
        }
        enter(widthOut, row.place);
        add(i, block(frame, [0, width + depth], [-widthOut / 2, widthOut / 2], [0, high]));
        const thick = Math.max(wall, runOf(row, after), SHEET);
        add(i, block(frame, [0, width], lane(widthOut / 2, widthOut / 2 + thick), [0, head]));
        const through = Math.max(wall, runOf(row, after));
        leave(moved(frame, half, side * (widthOut / 2 + through), 0, (side * Math.PI) / 2), width);
        return;
      }
      case 'lift': {
        const { widthOut = 0, depth = 0, ceiling = height } = m;
        const door = Math.min(width, widthOut);
        enter(door, row.place);
        const car = (at: Frame): void => {
          add(i, block(at, [0, SHEET], [-door / 2, door / 2], [0, Math.min(height, ceiling)]));
          add(i, block(at, [SHEET, depth], [-widthOut / 2, widthOut / 2], [0, ceiling]));
        };
        car(frame);
        if (!after) return leave(frame, door);
        const above = moved(frame, 0, 0, LIFT_RISE);
        car(above);
        leave(moved(above, 0, 0, 0, Math.PI), door);
        return;
      }
      case 'flight':
        return flight(i, row, before, after);
      case 'steps': {
        // One riser, or the line of nosings from the first to the last; nothing above where no height is told.
        const { rise = 0, going = 0, risers = 1 } = m;
        const top = m['height'] ?? HIGH;
        if (risers > 1) {
          const measures = { width, height: top, rise, going, risers, footCeiling: top, headCeiling: top };
          return flight(i, { ...row, stage: 'flight', measures }, before, after);
        }
        enter(width, row.place);
        // Its going is the floor before it, walked up.
        add(i, block(frame, [0, going], [-width / 2, width / 2], row.way === 'down' ? [0, top] : [0, top]));
        leave(moved(frame, going, 0, row.way === 'down' ? -rise : rise), width);
        return;
      }
      case 'ramp': {
        const { rise = 0, length = 0 } = m;
        const top = m['height'] ?? HIGH;
        enter(width, row.place);
        const level = Math.sqrt(length ** 2 - rise ** 2);
        const slope = (row.way === 'down' ? -rise : rise) / level;
        add(i, [
          placed(frame, -1, 0, 0, 0),
          placed(frame, 1, 0, 0, level),
          placed(frame, 0, -1, 0, width / 2),
          placed(frame, 0, 1, 0, width / 2),
          placed(frame, slope, 0, -1, 0),
          placed(frame, -slope, 0, 1, top),
        ]);
        leave(moved(frame, level, 0, row.way === 'down' ? -rise : rise), width);
        return;
      }
      case 'winder': {
        // Walked up: treads run together in the inner edge, each as far round as the others, one rise above the last.
        const { widthOut = width, turn = 90, rise = 0, going = 1, height: headroom = 0 } = m;
        const treads = m['treads'] ?? Math.max(1, Math.round(turn / 30));
        const up = row.way !== 'down';
        enter(up ? width : widthOut, row.place);
        const angle = (turn * Math.PI) / 180;
        // Walked down the hand is seen from above: up it turns to the other.
        const left = up ? side : -side;
        const edge = up
          ? moved(frame, going, (left * width) / 2)
          : moved(frame, 0, (-left * widthOut) / 2, -treads * rise, Math.PI - left * angle);
        // From the last nosing of the lower flight to the first winding one.
        const slope = rise / going;
        add(i, [
          placed(edge, -1, 0, 0, going),
          placed(edge, 1, 0, 0, 0),
          placed(edge, 0, left, 0, 0),
          placed(edge, 0, -left, 0, width),
          placed(edge, slope, 0, -1, -rise),
          placed(edge, -slope, 0, 1, rise + headroom),
        ]);
        for (let k = 0; k < treads; k++) {
          const [from, to] = [k, k + 1].map((n) => -Math.PI / 2 + (angle * n) / treads) as [number, number];
          const top = (k + 1) * rise;
          add(i, [
            placed(edge, Math.sin(from), -left * Math.cos(from), 0, 0),
            placed(edge, -Math.sin(to), left * Math.cos(to), 0, 0),
            placed(edge, 0, -left, 0, width),
            placed(edge, Math.sin(angle), -left * Math.cos(angle), 0, widthOut),
            ...(turn > 120 ? [placed(edge, 1, 0, 0, width)] : []),
            placed(edge, 0, 0, -1, -top),
            placed(edge, 0, 0, 1, top + headroom),
          ]);
        }
        if (up) {
          const out = moved(edge, 0, 0, treads * rise, left * angle);
          return leave(moved(out, 0, (-left * widthOut) / 2), widthOut);
        }
        return leave(moved(edge, -going, (-left * width) / 2, 0, Math.PI), width);
      }
      case 'quarter landing': {
        const { widthOut = 0 } = m;
        const beside = (other: AirRow | undefined): boolean => other?.stage === 'flight' || isLanding(other);
        const up = row.way !== 'down';
        if (!beside(before)) longFlight(i, row, up);
        // Width is the lower flight's.
        const [comes, goes] = up ? [width, widthOut] : [widthOut, width];
        enter(comes, row.place);
        const ceiling = m['ceiling'] ?? height;
        add(i, block(frame, [0, goes], [-comes / 2, comes / 2], [0, ceiling]));
        leave(moved(frame, goes / 2, (side * comes) / 2, 0, (side * Math.PI) / 2), goes);
        if (!beside(after)) longFlight(i, row, !up);
        return;
      }
      case 'half landing': {
        const { well = 0, depth = 0 } = m;
        const beside = (other: AirRow | undefined): boolean => other?.stage === 'flight' || isLanding(other);
        const up = row.way !== 'down';
        if (!beside(before)) longFlight(i, row, up);
        enter(width, row.place);
        const ceiling = m['ceiling'] ?? height;
        const far = width / 2 + well + width;
        add(i, block(frame, [0, depth], side > 0 ? [-width / 2, far] : [-far, width / 2], [0, ceiling]));
        leave(moved(frame, 0, side * (width + well), 0, Math.PI), width);
        if (!beside(after)) longFlight(i, row, !up);
        return;
      }
      default:
        throw new RangeError(`no air is known for ${row.stage}`);
    }
  });
  const last = rows[rows.length - 1];
  const walled =
    last?.stage === 'flight' && spaceOf(last, afterEnd(last)) !== undefined ? true : last?.stage === 'room';
  if (!walled && last?.stage !== 'lift') add(rows.length, block(frame, [0, FAR], [-FAR, FAR], [0, HIGH]));
  return cells;
}

type Face = Point[];
type Solid = readonly Face[];

/** A box by its middle, its half sides and the directions of its sides. */
export function boxSolid(at: Point, half: Point, axes: readonly [Point, Point, Point]): Solid {
  const corner = (a: number, b: number, c: number): Point =>
    [0, 1, 2].map(
      (k) => at[k]! + a * half[0] * axes[0][k]! + b * half[1] * axes[1][k]! + c * half[2] * axes[2][k]!,
    ) as unknown as Point;
  const face = (make: (p: number, q: number) => Point): Face => [
    make(-1, -1),
    make(1, -1),
    make(1, 1),
    make(-1, 1),
  ];
  return [-1, 1].flatMap((k) => [
    face((p, q) => corner(k, p, q)),
    face((p, q) => corner(p, k, q)),
    face((p, q) => corner(p, q, k)),
  ]);
}

const reach = (solid: Solid, [a, b, c]: Plane): readonly [number, number] => {
  let [low, high] = [Infinity, -Infinity];
  for (const face of solid) {
    for (const p of face) {
      const v = a * p[0] + b * p[1] + c * p[2];
      if (v < low) low = v;
      if (v > high) high = v;
    }
  }
  return [low, high];
};

/** What of a convex solid lies on one side of a plane. */
function cut(solid: Solid, [a, b, c, d]: Plane, keep: 1 | -1): Solid {
  const faces: Face[] = [];
  const seam: Point[] = [];
  for (const face of solid) {
    const kept: Face = [];
    face.forEach((p, k) => {
      const q = face[(k + 1) % face.length]!;
      const u = keep * (d - a * p[0] - b * p[1] - c * p[2]);
      const v = keep * (d - a * q[0] - b * q[1] - c * q[2]);
      if (u >= 0) kept.push(p);
      if ((u > 0 && v < 0) || (u < 0 && v > 0)) {
        const share = u / (u - v);
        const at: Point = [
          p[0] + (q[0] - p[0]) * share,
          p[1] + (q[1] - p[1]) * share,
          p[2] + (q[2] - p[2]) * share,
        ];
        kept.push(at);
        seam.push(at);
      } else if (u === 0) seam.push(p);
    });
    if (kept.length >= 3) faces.push(kept);
  }
  // Only the corners count, so the seam closes the solid in any order.
  if (seam.length >= 3) faces.push(around(seam, [a, b, c]));
  return faces;
}

/** Points of one plane in the order round their middle. */
function around(points: readonly Point[], n: Point): Point[] {
  const middle = [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k]!, 0) / points.length);
  const other: Point = Math.abs(n[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const cross = (p: Point, q: Point): Point => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ];
  const e = cross(n, other);
  const f = cross(n, e);
  const angle = (p: Point): number => {
    const v = p.map((x, k) => x - middle[k]!);
    return Math.atan2(v[0]! * f[0] + v[1]! * f[1] + v[2]! * f[2], v[0]! * e[0] + v[1]! * e[1] + v[2]! * e[2]);
  };
  return [...points].sort((p, q) => angle(p) - angle(q));
}

/** A corner of what stands outside the air, or undefined where all of it is inside. */
export function outside(solid: Solid, cells: readonly Cell[], from = 0): Point | undefined {
  let left = solid;
  for (let k = from; k < cells.length; k++) {
    const { planes } = cells[k]!;
    if (planes.some((plane) => reach(left, plane)[0] >= plane[3] - 1e-9)) continue;
    for (const plane of planes) {
      if (reach(left, plane)[1] <= plane[3] + TOLERANCE) continue;
      const found = outside(cut(left, plane, -1), cells, k + 1);
      if (found) return found;
      left = cut(left, plane, 1);
      if (left.length < 4) return undefined;
    }
    return undefined;
  }
  return middleOf(left);
}

function middleOf(solid: Solid): Point {
  const points = solid.flat();
  return [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k]!, 0) / points.length) as unknown as Point;
}
