import type { SceneBox } from '../../space/motion';
import { SpaceChecker } from '../../space/spaceChecker';
import { isStair } from '../../stages/kinds';
import type { JointRow } from '../jointRow';
import type { Section } from './builtRow';
import { buildRow } from './buildRow';
import { movedFrame, placedBox, placedFrame, placingOf, START, type Frame, type Placing } from './frame';
import { isLanding, withLeastCeilings } from './rowContext';
import { behindFace, openBox, THIN, type Solid, type SolidPart } from './solid';
import { entryAt } from '../../lists/entryAt';
import { once } from '../../lists/once';

/** A solid of the scene, with the row that it belongs to: -1 before the first, the number of rows after the last. */
export interface PlacedSolid {
  readonly row: number;
  readonly part: SolidPart;
  readonly box: SceneBox;
}

/** The row of a solid, and the one in whose free space it stands. */
type Crossing = readonly [number, number];

/** A row in its place. */
export interface PlacedRow {
  /** Its place among the rows given; a flight that a landing supposes has its landing's. */
  readonly row: number;
  readonly joint: JointRow;
  /** Supposed, not measured: the long flight beside a landing. */
  readonly supposed: boolean;
  readonly entry: Frame;
  readonly exit: Frame;
  readonly entrySection: Section;
  readonly exitSection: Section | undefined;
  /** From the row's own coordinates (those of its stage's functions) to the scene's. */
  readonly placing: Placing;
  /** Its own coordinates run against the way. */
  readonly back: boolean;
}

/** One scene of all the rows of a route. */
export interface PlacedRoute {
  readonly rows: readonly PlacedRow[];
  readonly solids: readonly PlacedSolid[];
  /** A solid stands in the space of a row that is not beside its own: the way leads across itself. */
  readonly crosses: boolean;
  /** The rows of such solids with the rows in whose space they stand, by their numbers as a solid's row is told. */
  readonly crossings: readonly Crossing[];
}

/** What may be asked of the placing. */
export interface PlacingOptions {
  /** A flight that a landing supposes is at least so long in plan [mm]; 3 m beyond the longest piece when absent. */
  readonly flightLength?: number;
}

/** How far open ground reaches on each side [mm]. */
const GROUND = 8000;
/** How far the wall reaches to each side in which the first way in stands, and the last way out: farther than the rows of a house, so that no motion is led round it [mm]. */
const FACADE = 60000;
/** And how high [mm]. */
const FACADE_HEIGHT = 6000;
/** Length along the pitch of the flight that a landing without one beside it supposes [mm]: longer than any piece. */
const LONG_FLIGHT = 9000;
const OUTSIDE = openBox([0, -GROUND, 0], [GROUND, GROUND, GROUND]);
/** Where a piece stands before it comes in, or when it has come out. */
const FORECOURT = openBox([0, -1500, 0], [6000, 1500, 3000]);

/** Free space, with the place of its row among those listed; negative outdoors. */
interface OpenSpace {
  readonly box: SceneBox;
  readonly owner: number;
}

interface Draft {
  readonly solid: Solid;
  readonly placing: Placing;
  readonly row: number;
  readonly owner: number;
}

/**
 * Places the rows of a route after one another and builds the one scene that they describe together: the origin in
 * the middle of the first row's entry plane on the floor, x along the way, y to the left, z up. Every row has the
 * geometry that its function describes; in the plane between two rows stands what is open in one of them only. Before
 * the first row, and after a last row in which the way does not end, is open level ground.
 *
 * A landing without a flight beside it gets the long flight that it supposes. Where a solid would stand in the free
 * space of another row it is as thin as its face, so that a way that leads back beside itself stays open; a way that
 * crosses itself does not, see `sceneNear`.
 */
export function placeRoute(given: readonly JointRow[], options: PlacingOptions = {}): PlacedRoute {
  const rowsWithCeilings = given.map((row, i) => withLeastCeilings(row, given[i - 1], given[i + 1]));
  const listed = withFlights(rowsWithCeilings, options.flightLength ?? LONG_FLIGHT);
  const drafts: Draft[] = [];
  const open: OpenSpace[] = [];
  const atMost: OpenSpace[] = [];
  const outside: { readonly box: SceneBox; readonly row: number }[] = [];
  const rows: PlacedRow[] = [];
  let frame: Frame = START;
  let section: Section | undefined;
  listed.forEach(({ joint, row, supposed }, i) => {
    const before = listed[i - 1]?.joint;
    const after = listed[i + 1]?.joint;
    const { built, mirrored, back } = buildRow(joint, before, after, {
      walls: flightWalls(joint, before, after),
    });
    const shift = section ? across(section.width, built.entrySection.width, joint.place) : 0;
    const entry = movedFrame(frame, 0, shift);
    const placing = placingOf(built.entry, entry, mirrored ? 'mirrored' : 'seen');
    const exit = placedFrame(placing, built.exit);
    for (const solid of built.solids) drafts.push({ solid, placing, row, owner: i });
    for (const box of built.open) open.push({ box: placedBox(placing, box), owner: i });
    for (const box of built.openAtMost ?? built.open) atMost.push({ box: placedBox(placing, box), owner: i });
    const between = section
      ? planeSolids(section, built.entrySection, shift)
      : groundSolids(built.entrySection);
    const plane = placingOf(START, section ? frame : reversedAt(entry));
    for (const solid of between) drafts.push({ solid, placing: plane, row: section ? row : -1, owner: -1 });
    if (!section) {
      atMost.push({ box: placedBox(plane, OUTSIDE), owner: -2 });
      outside.push({ box: placedBox(plane, FORECOURT), row: -1 });
    }
    rows.push({
      row,
      joint,
      supposed,
      entry,
      exit,
      entrySection: built.entrySection,
      exitSection: built.exitSection,
      placing,
      back,
    });
    frame = exit;
    section = built.exitSection;
  });
  if (section && endsOpen(listed[listed.length - 1]?.joint)) {
    const plane = placingOf(START, frame);
    atMost.push({ box: placedBox(plane, OUTSIDE), owner: -2 });
    outside.push({ box: placedBox(plane, FORECOURT), row: given.length });
    for (const solid of groundSolids(section)) {
      drafts.push({ solid, placing: plane, row: given.length, owner: -1 });
    }
  }
  const solids = settled(drafts, atMost);
  const own = open.map(({ box, owner }) => ({ box, row: entryAt(listed, owner).row }));
  // A few rows that are solved as one space are placed often, and nobody asks it of them.
  const crossings = once(() => crossingsOf(solids, [...outside, ...own]));
  return {
    rows,
    solids,
    get crosses() {
      return crossings().length > 0;
    },
    get crossings() {
      return crossings();
    },
  };
}

/** Whether a box stands in what a checker holds. */
function standsIn(checker: SpaceChecker, { centre, size, turn }: SceneBox): boolean {
  checker.hold({ length: size[0], breadth: size[1], thickness: size[2] });
  return !checker.placeFree(Float64Array.of(...centre, ...turn), 0);
}

/** Whether open ground follows the last row: not where it is a flight whose space was measured there, to a wall. */
export function endsOpen(last: JointRow | undefined): boolean {
  if (last?.stage !== 'flight') return true;
  return (last.way === 'down' ? last.measures.footSpace : last.measures.headSpace) === undefined;
}

const reversedAt = (frame: Frame): Frame => ({ at: frame.at, heading: frame.heading + Math.PI });

/** How far left of the first section's middle the next one's stands [mm]. */
const across = (width: number, next: number, place = 0.5): number =>
  (Math.abs(width - next) / 2) * (1 - 2 * place) * (next <= width ? 1 : -1);

interface Listed {
  readonly joint: JointRow;
  readonly row: number;
  readonly supposed: boolean;
}

/** The rows with the long flights that landings suppose where none stands beside them. */
function withFlights(given: readonly JointRow[], length: number): Listed[] {
  const listed: Listed[] = [];
  given.forEach((joint, row) => {
    if (!isLanding(joint)) {
      listed.push({ joint, row, supposed: false });
      return;
    }
    const { rise = 1, going = 1, height } = joint.measures;
    const risers = Math.ceil(length / going) + 1;
    const up = joint.way !== 'down';
    const flight = (lower: boolean): Listed => ({
      joint: {
        stage: 'flight',
        way: joint.way,
        measures: {
          width: lower || joint.stage !== 'quarter landing' ? joint.measures.width : joint.measures.widthOut,
          height,
          rise,
          going,
          risers,
        } as JointRow['measures'],
      },
      row,
      supposed: true,
    });
    const beside = (other: JointRow | undefined): boolean => other?.stage === 'flight' || isLanding(other);
    if (!beside(given[row - 1])) listed.push(flight(up));
    listed.push({ joint, row, supposed: false });
    if (!beside(given[row + 1])) listed.push(flight(!up));
  });
  return listed;
}

/** The walls that a flight has of its own: beside a landing with a handrail the inner one is the landing's. */
function flightWalls(
  joint: JointRow,
  before: JointRow | undefined,
  after: JointRow | undefined,
): 'both' | 'left' | 'right' | 'none' {
  if (joint.stage !== 'flight') return 'both';
  const railed = [before, after].filter(
    (row) => isLanding(row) && row?.measures.overRail !== undefined && row.measures.overRail > 0,
  );
  const open = new Set(
    railed.map((row) => {
      const hand = row?.hand ?? 'left';
      // Seen upward.
      return joint.way === 'down' ? (hand === 'left' ? 'right' : 'left') : hand;
    }),
  );
  if (open.size === 2) return 'none';
  if (open.has('left')) return 'right';
  return open.has('right') ? 'left' : 'both';
}

/** What stands in the plane between two sections: x along the way, the origin in the middle of the first. */
function planeSolids(first: Section, next: Section, shift: number): Solid[] {
  const a = [-first.width / 2, first.width / 2] as const;
  const b = [shift - next.width / 2, shift + next.width / 2] as const;
  const solids: Solid[] = [];
  const jamb = (from: number, to: number, high: number, behind: '+x' | '-x'): void => {
    if (to - from > 1e-6) solids.push(...behindFace('wall', [0, from, 0], [0, to, high], behind));
  };
  jamb(b[1], a[1], first.height, '+x');
  jamb(a[0], b[0], first.height, '+x');
  jamb(a[1], b[1], next.height, '-x');
  jamb(b[0], a[0], next.height, '-x');
  const from = Math.max(a[0], b[0]);
  const to = Math.min(a[1], b[1]);
  const low = Math.min(first.height, next.height);
  const high = Math.max(first.height, next.height);
  if (high - low > 1e-6 && to > from) {
    const behind = first.height > next.height ? '+x' : '-x';
    solids.push(...behindFace('head', [0, from, low], [0, to, high], behind));
  }
  return solids;
}

/** Open level ground beyond a section, x outward from its plane: the wall in which it stands, and the ground. */
function groundSolids({ width, height }: Section): Solid[] {
  const half = width / 2;
  return [
    ...behindFace('wall', [0, half, 0], [0, half + FACADE, FACADE_HEIGHT], '-x'),
    ...behindFace('wall', [0, -half - FACADE, 0], [0, -half, FACADE_HEIGHT], '-x'),
    ...behindFace('head', [0, -half, height], [0, half, FACADE_HEIGHT], '-x'),
    ...behindFace('ground', [0, -GROUND, 0], [GROUND, GROUND, 0], '-z'),
  ];
}

/** Solids in their places, thin where they would stand in a row's free space. */
function settled(drafts: readonly Draft[], open: readonly OpenSpace[]): PlacedSolid[] {
  const others = new Map<number, SpaceChecker>();
  const checkerFor = (owner: number): SpaceChecker => {
    let checker = others.get(owner);
    if (!checker) {
      checker = new SpaceChecker(open.filter((o) => o.owner !== owner).map((o) => shrunk(o.box)));
      others.set(owner, checker);
    }
    return checker;
  };
  const place = new Float64Array(7);
  return drafts.map(({ solid, placing, row, owner }) => {
    const box = placedBox(placing, solid.box);
    if (solid.box.size.every((v, k) => v === solid.thin.size[k])) return { row, part: solid.part, box };
    const checker = checkerFor(owner);
    checker.hold({ length: box.size[0], breadth: box.size[1], thickness: box.size[2] });
    place.set(box.centre);
    place.set(box.turn, 3);
    const free = checker.placeFree(place, 0);
    return { row, part: solid.part, box: free ? box : placedBox(placing, solid.thin) };
  });
}

/** The rows of which a solid stands in the free space of a row that is not beside its own. */
function crossingsOf(
  solids: readonly PlacedSolid[],
  spaces: readonly { readonly box: SceneBox; readonly row: number }[],
): Crossing[] {
  return spaces.flatMap((space) => {
    const checker = new SpaceChecker([shrunk(space.box)]);
    const across = solids.filter(({ row, box }) => Math.abs(row - space.row) > 1 && standsIn(checker, box));
    return [...new Set(across.map(({ row }) => row))].map((row): Crossing => [row, space.row]);
  });
}

/** Faces that only touch are not in the way. */
const shrunk = (box: SceneBox): SceneBox => ({
  ...box,
  size: box.size.map((v) => Math.max(0, v - 4 * THIN)) as unknown as SceneBox['size'],
});

/** Rows on either side whose solids are looked at where the way leads across itself. */
const NEAR = 3;
/** What closes the way there reaches so far beyond its section on every side [mm]. */
const CLOSED_BEYOND = 200;

/**
 * The scene for what is done in some rows: all of it; where the way leads across itself, as rows whose lengths are not
 * exact may have it, the solids of these rows and of three on either side, or of fewer, up to one that crosses them, so
 * that nothing is blocked by what lies elsewhere along the way.
 * @param from the first row, by its number among the rows given
 * @param to the last row, likewise
 */
export function sceneNear(route: PlacedRoute, from: number, to: number): readonly PlacedSolid[] {
  if (!route.crosses) return route.solids;
  const [first, last] = rowsNear(route, from, to);
  return route.solids.filter(({ row }) => row >= first && row <= last);
}

/**
 * The first and the last of the rows whose solids are looked at. Those straight beside the ones asked for always are; a
 * stair that stands over or under a stair there is not.
 */
function rowsNear({ rows, crossings }: PlacedRoute, from: number, to: number): [number, number] {
  const ofStair = new Set(rows.flatMap(({ row, joint }) => (isStair(joint.stage) ? [row] : [])));
  const crosses = (row: number): boolean =>
    crossings.some(([a, b]) => {
      const other = a === row ? b : b === row ? a : undefined;
      if (other === undefined) return false;
      const beside = ofStair.has(row) && ofStair.has(other) ? 1 : 0;
      return other >= from - beside && other <= to + beside;
    });
  let [first, last] = [from - 1, to + 1];
  while (first > from - NEAR && !crosses(first - 1)) first--;
  while (last < to + NEAR && !crosses(last + 1)) last++;
  return [first, last];
}

/**
 * The same as `sceneNear`, with the way closed where the scene ends short of it: nothing leads on into what was left
 * out.
 * @param from the first row, by its number among the rows given
 * @param to the last row, likewise
 */
export function closedSceneNear(route: PlacedRoute, from: number, to: number): readonly PlacedSolid[] {
  const scene = sceneNear(route, from, to);
  if (!route.crosses) return scene;
  const closed: PlacedSolid[] = [];
  const close = (row: number, plane: Frame, { width, height }: Section, behind: '+x' | '-x'): void => {
    const half = width / 2 + CLOSED_BEYOND;
    const placing = placingOf(START, plane);
    const top = height + CLOSED_BEYOND;
    const solids = behindFace('wall', [0, -half, -CLOSED_BEYOND], [0, half, top], behind);
    for (const { part, thin } of solids) closed.push({ row, part, box: placedBox(placing, thin) });
  };
  const [first, last] = rowsNear(route, from, to);
  route.rows.forEach((placed, k) => {
    const { row, entry, exit, entrySection, exitSection } = placed;
    const [before, after] = [route.rows[k - 1], route.rows[k + 1]];
    if (row === first && before?.row !== row) close(row, entry, entrySection, '-x');
    if (row === last && after?.row !== row && exitSection) close(row, exit, exitSection, '+x');
  });
  return [...scene, ...closed];
}
