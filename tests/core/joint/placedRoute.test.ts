import type { JointRow } from '../../../src/core/joint/jointRow';
import { placeRoute, type PlacedRoute } from '../../../src/core/joint/place/placedRoute';
import { seededStream } from '../../../src/core/space/seededStream';
import { SpaceChecker } from '../../../src/core/space/spaceChecker';

/**
 * The scene of a route against what the functions say of their rows, told point by point by conditions that are
 * written anew here from those words: two strips for a corner, a line of nosings and a ceiling line for a flight.
 */
type Point = readonly [number, number, number];

/**
 * Carries a grain of 1 mm from points of the space to points near them: free where the whole way is in the space, and
 * stopped where the end is not. `skin`: places where the answer changes within so much are left out.
 */
function compare(
  route: PlacedRoute,
  expected: (p: Point) => boolean,
  within: readonly [Point, Point],
  next: () => number,
  count = 1200,
): { free: number; solid: number; wrong: string[] } {
  const checker = new SpaceChecker(route.solids.map(({ box }) => box));
  checker.hold({ length: 1, breadth: 1, thickness: 1 });
  const wrong: string[] = [];
  const told = { free: 0, solid: 0 };
  const skin = 3;
  const corners = [-skin, skin].flatMap((dx) =>
    [-skin, skin].flatMap((dy) => [-skin, skin].map((dz) => [dx, dy, dz] as const)),
  );
  const surely = (p: Point, e: boolean): boolean =>
    corners.every(([dx, dy, dz]) => expected([p[0] + dx, p[1] + dy, p[2] + dz]) === e);
  for (let n = 0; n < count; n++) {
    const p = within[0].map((low, k) => low + (within[1][k]! - low) * next()) as unknown as Point;
    if (!surely(p, true)) continue;
    const q = p.map((v) => v + 250 * (next() - 0.5)) as unknown as Point;
    const on = Array.from({ length: 60 }, (_, i) => i / 60).map((s) => p.map((v, k) => v + s * (q[k]! - v)));
    let e: boolean;
    if (surely(q, false)) e = false;
    else if (surely(q, true) && on.every((r) => surely(r as unknown as Point, true))) e = true;
    else continue;
    told[e ? 'free' : 'solid']++;
    const goes = checker.moveFree(Float64Array.of(...p, 1, 0, 0, 0), 0, Float64Array.of(...q, 1, 0, 0, 0), 0);
    if (goes !== e) wrong.push(`${p.map(Math.round).join()} to ${q.map(Math.round).join()}: ${goes}`);
  }
  return { ...told, wrong };
}

const row = (
  stage: JointRow['stage'],
  measures: JointRow['measures'],
  more: Partial<JointRow> = {},
): JointRow => ({
  stage,
  measures,
  ...more,
});

const between = (next: () => number, low: number, high: number): number => low + (high - low) * next();

test('a corner of any turn and hand between two passages is two strips of the plane', () => {
  for (let seed = 1; seed <= 12; seed++) {
    const next = seededStream(seed);
    const [a, b] = [between(next, 700, 1500), between(next, 700, 1500)];
    const turn = seed % 3 === 0 ? 90 : Math.round(between(next, 20, 120));
    const hand = next() < 0.5 ? 'left' : 'right';
    const height = between(next, 2000, 2600);
    const route = placeRoute([
      row('passage', { width: a, height, length: 3000 }),
      row('corner', { width: a, widthOut: b, height, turn }, { hand }),
      row('passage', { width: b, height, length: 3000 }),
    ]);
    const t = (turn * Math.PI) / 180;
    const sign = hand === 'left' ? 1 : -1;
    const expected = ([x, y, z]: Point): boolean => {
      if (z < 0 || z > height) return false;
      // Seen with the turn to the left, from the inner edge.
      const [u, v] = [x - 3000, sign * y - a / 2];
      const left = -u * Math.sin(t) + v * Math.cos(t);
      // Within the angle of the outer walls, and not behind the inner edge.
      return v > -a && left > -b && (v < 0 || left < 0);
    };
    const from: Point = [1500, -2200, -60];
    const to: Point = [4600, 2200, height + 60];
    const { wrong, free, solid } = compare(route, expected, [from, to], next);
    expect({ seed, wrong: wrong.slice(0, 3) }).toEqual({ seed, wrong: [] });
    expect(Math.min(free, solid)).toBeGreaterThan(8);
  }
});

test('a flight between passages: plumb first riser, line of nosings, ceiling line from the trimmer to the last nosing', () => {
  for (let seed = 1; seed <= 12; seed++) {
    const next = seededStream(100 + seed);
    const [width, headroom] = [between(next, 700, 1100), between(next, 1900, 2300)];
    const [rise, going] = [between(next, 160, 220), between(next, 200, 300)];
    const risers = 2 + Math.floor(12 * next());
    const footCeiling = headroom + between(next, 0, 700);
    const headCeiling = headroom + between(next, -100, 400);
    const way = next() < 0.5 ? 'up' : 'down';
    const lower = row('passage', { width, height: footCeiling, length: 2000 });
    const upper = row('passage', { width, height: headCeiling, length: 2000 });
    const flight = row(
      'flight',
      { width, height: headroom, rise, going, risers, footCeiling, headCeiling },
      { way },
    );
    const route = placeRoute(way === 'up' ? [lower, flight, upper] : [upper, flight, lower]);
    const X = (risers - 1) * going;
    const Z = risers * rise;
    const expected = ([x, y, z]: Point): boolean => {
      if (Math.abs(y) > width / 2) return false;
      // From the first riser upward.
      const u = way === 'up' ? x - 2000 : 2000 + X - x;
      const w = way === 'up' ? z : z + Z;
      const line = rise + headroom + (u * rise) / going;
      const floor = u < 0 ? 0 : u > X ? Z : rise + (u * rise) / going;
      const ceiling = u > X ? Z + headCeiling : Math.max(line, footCeiling);
      return w > floor && w < ceiling;
    };
    const base = way === 'up' ? 0 : -Z;
    const { wrong, free, solid } = compare(
      route,
      expected,
      [
        [200, -width / 2 - 60, base - 60],
        [3800 + X, width / 2 + 60, base + Z + headroom + 900],
      ],
      next,
    );
    expect({ seed, wrong: wrong.slice(0, 3) }).toEqual({ seed, wrong: [] });
    expect(Math.min(free, solid)).toBeGreaterThan(8);
  }
});

test('a door into a passage and out of it are one place, seen from both sides', () => {
  for (let seed = 1; seed <= 12; seed++) {
    const next = seededStream(200 + seed);
    const [width, height] = [between(next, 600, 1000), between(next, 1900, 2100)];
    const [wall, widthOut] = [between(next, 0, 300), between(next, 800, 1500)];
    const [ceiling, depth] = [height + between(next, 0, 500), between(next, 0, 1500)];
    const side = row('side door', { width, height, wall, widthOut, ceiling, depth }, { hand: 'left' });
    const passage = row('passage', { width: widthOut, height: ceiling, length: 2500 });
    const into = placeRoute([side, passage]);
    // Back the same way: out of the passage the door is on the right.
    const out = placeRoute([passage, { ...side, hand: 'right' }]);
    const expected = ([x, y, z]: Point): boolean => {
      if (z < 0) return false;
      if (x < 0) return true;
      if (x < wall) return Math.abs(y) < width / 2 && z < height;
      const far = x < wall + widthOut && y > -width / 2 - depth && y < width / 2 + 2500;
      return (far || y > width / 2 + 2500) && (z < ceiling || y > width / 2 + 2500);
    };
    const box: readonly [Point, Point] = [
      [-200, -2500, -60],
      [wall + widthOut + 60, 2000, ceiling + 60],
    ];
    const one = compare(into, expected, box, next);
    expect({ seed, wrong: one.wrong.slice(0, 3) }).toEqual({ seed, wrong: [] });
    expect(Math.min(one.free, one.solid)).toBeGreaterThan(8);
    // The other route's frame: it begins where this one ends, and runs back along -y.
    const there = ([x, y, z]: Point): boolean => expected([wall + widthOut / 2 + y, width / 2 + 2500 - x, z]);
    const other = compare(
      out,
      there,
      [
        [600, -widthOut / 2 - wall - 200, -60],
        [2500 + width + 1000, widthOut / 2 + 60, ceiling + 60],
      ],
      next,
    );
    expect({ seed, wrong: other.wrong.slice(0, 3) }).toEqual({ seed, wrong: [] });
    expect(Math.min(other.free, other.solid)).toBeGreaterThan(8);
  }
});

test('landings between flights: floors, ceilings and flights as their functions say, up and down, both hands', () => {
  for (let seed = 1; seed <= 12; seed++) {
    const next = seededStream(300 + seed);
    const half = next() < 0.5;
    const [a, b] = [between(next, 700, 1100), between(next, 700, 1100)];
    const [well, depth] = [between(next, 20, 300), between(next, 700, 1200)];
    const [rise, going] = [between(next, 160, 220), between(next, 200, 300)];
    const headroom = between(next, 1900, 2300);
    const ceiling = headroom + between(next, 0, 500);
    const way = next() < 0.5 ? 'up' : 'down';
    const hand = next() < 0.5 ? 'left' : 'right';
    const measures = half
      ? { width: a, well, depth, height: headroom, rise, going, ceiling }
      : { width: a, widthOut: b, height: headroom, rise, going, ceiling };
    const landing = row(half ? 'half landing' : 'quarter landing', measures, { way, hand });
    const flight = (width: number): JointRow =>
      row('flight', { width, height: headroom, rise, going, risers: 9 }, { way });
    const [low, high] = [flight(a), flight(half ? a : b)];
    const route = placeRoute(way === 'up' ? [low, landing, high] : [high, landing, low]);
    const placed = route.rows[1]!;
    const slope = rise / going;
    // In the landing's own coordinates: up and to the left.
    const own = ([x, y, z]: Point): boolean => {
      const within = (lo: number, v: number, hi: number): boolean => v > lo && v < hi;
      const d = half ? depth : b;
      const w = half ? 2 * a + well : a;
      if (within(0, x, d) && within(0, y, w)) return within(0, z, ceiling);
      if (x < 0 && within(0, y, a)) return within(slope * x, z, slope * x + headroom);
      const up = half ? (x < 0 && within(a + well, y, w) ? -x : NaN) : y > a && within(0, x, b) ? y - a : NaN;
      return within(rise + slope * up, z, rise + slope * up + headroom);
    };
    const { shift, turn, mirrored } = placed.placing;
    const expected = ([x, y, z]: Point): boolean => {
      const [u, v] = [x - shift[0], y - shift[1]];
      const across = -u * Math.sin(turn) + v * Math.cos(turn);
      return own([u * Math.cos(turn) + v * Math.sin(turn), mirrored ? -across : across, z - shift[2]]);
    };
    const reach = 1500;
    const centre = placed.entry.at;
    const { wrong, free, solid } = compare(
      route,
      expected,
      [
        [centre[0] - reach, centre[1] - reach, centre[2] - 500],
        [centre[0] + reach, centre[1] + reach, centre[2] + 2600],
      ],
      next,
    );
    expect({ seed, wrong: wrong.slice(0, 3) }).toEqual({ seed, wrong: [] });
    expect(Math.min(free, solid)).toBeGreaterThan(8);
    // The way turns to the hand that was asked for.
    const turned = placed.exit.heading - placed.entry.heading;
    const quarter = half ? -1 : Math.sin(turned);
    expect(half ? Math.cos(turned) : Math.sign(quarter)).toBeCloseTo(half ? -1 : hand === 'left' ? 1 : -1);
  }
});
