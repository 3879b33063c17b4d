import { paddedPiece, type PieceSize } from '../../measures/piece';
import { placeOf, type KeyAttitude, type SceneBox } from '../../space/motion';
import { likeness, rotate, slerp, type Quaternion } from '../../space/quaternion';
import { SpaceChecker } from '../../space/spaceChecker';
import { placedBox, placedFrame, placedKey, placingOf, START, type Frame, type Vec3 } from '../place/frame';
import { sceneNear, type PlacedRow, type PlacedSolid } from '../place/placedRoute';
import { isLevel } from '../place/rowContext';
import type { SolidPart } from '../place/solid';
import type { WalkKey } from './carrier';
import { BACKED, decidingSolids, type DecidingSolid, type WhatDecides } from './decidingFaces';
import { nearestPoints, pointDistance } from './nearestPoints';
import { shortened } from './shortened';
import type { DecidingFace } from '../../motion/closest';
import type { RouteWalk } from './walkRoute';
import { firstOf, lastOf } from '../../lists/ends';
import { entryAt } from '../../lists/entryAt';
import { once } from '../../lists/once';
import { pairs } from '../../lists/pairs';
import { AXES, byAxis, partWay } from '../../space/vector';
import { letDown } from '../../space/letDown';

/** One place of a step's motion, with what can be said of it. */
export interface StepPlace extends KeyAttitude {
  /** How far along the step's motion it is, 0 to 1. */
  readonly part: number;
  /**
   * How far [rad] the piece is from standing on one of its faces: the least of the angles between its sides and the plumb
   * line. 0 in every pose that is level, never above the arccosine of 1 over the root of 3.
   */
  readonly tilt: number;
  /** The least plumb gap [mm] between the piece, padded as it is carried, and the floor, nosings or rail below it. */
  readonly raise: number;
  /**
   * Distance [mm] to what decides, and where; where that is not told, to the nearest solid that it does not stand on.
   * Undefined where all is far, or where what decides is not built.
   */
  readonly closest: StepContact | undefined;
}

/** What the piece is nearest to. */
export interface StepContact {
  /** Row of the solid, or of the deciding face; -1 before the first. */
  readonly row: number;
  readonly part: SolidPart;
  /** Which of the deciding faces it is, where those are told. */
  readonly face?: DecidingFace;
  /** [mm] */
  readonly distance: number;
  /** Where on the piece, and where on the solid [mm]. */
  readonly onPiece: Vec3;
  readonly onSolid: Vec3;
}

/**
 * A step's part of the one motion, seen from the row's entry: the origin midway across its entry plane on the floor
 * there, x along the way, y to the left, z up.
 */
export interface StepMotion {
  readonly row: number;
  /** From where the step before leaves the piece; empty where nothing of it could be drawn. */
  readonly keys: readonly WalkKey[];
  /** What stands in this row and in the three on either side of it. */
  readonly solids: readonly PlacedSolid[];
  /** Where the way leaves the row. */
  readonly exit: Frame;
  /** Where it has least room, with what it is closest to there; undefined where nothing is drawn. */
  readonly tightest: StepPlace | undefined;
  /** Three to five places to be numbered: its first, its last, its tightest, and what lies between. */
  readonly positions: readonly StepPlace[];
  /** The faces that decide, as far as they are built. */
  readonly deciding: readonly SceneBox[];
  /** The greatest raise along it [mm]. */
  readonly raise: number;
  /** It leads all the way through the row. */
  readonly whole: boolean;
  /** What decides is that of several rows that are passed together. */
  readonly jointly: boolean;
}

/** What stands in a row and in the three on either side of it: short rows reach no farther than the piece is long. */
const nearRows = (walk: RouteWalk, of: number): readonly PlacedSolid[] =>
  sceneNear(walk.route, of, of).filter(({ row }) => Math.abs(row - of) <= 3);

/** What a piece stands on, which is near all the way and decides nothing by itself. */
const SUPPORTS: ReadonlySet<SolidPart> = new Set(['floor', 'ground', 'nosings', 'tread']);
/** Places looked at are no farther apart than this, any point of the piece [mm]. */
const STEP = 60;
/** Beyond this nothing is near [mm]. */
const FAR = 1500;

/**
 * The part of a route's motion that belongs to one row, with its places for a drawing or for words.
 * @param row number of the row in the route
 * @param decides what decides at the step: its tightest place is then where the piece comes nearest to that, and of such
 * places the one with least room all round
 */
export function stepMotion(
  walk: RouteWalk,
  row: number,
  piece: PieceSize,
  decides?: StepDecides,
): StepMotion {
  const placed = walk.route.rows.filter((r) => r.row === row && !r.supposed)[0];
  const entry = placed?.entry ?? START;
  const view = placingOf(entry, START);
  const solids = nearRows(walk, row).map((solid) => ({
    ...solid,
    box: placedBox(view, solid.box),
  }));
  const deciding =
    decides &&
    decidingSolids(walk.route, decides).map((solid) => ({
      ...solid,
      box: placedBox(view, solid.box),
    }));
  const faces = (deciding ?? []).map(({ box }) => box);
  const exit = placedFrame(view, placed?.exit ?? START);
  const level = placed !== undefined && isLevel(placed.joint.stage);
  const ahead = (key: WalkKey): number => placedKey(view, key).at[0];
  const all = (level ? roughPart(walk.keys, row, ahead) : ownPart(walk.keys, row, decides)).map((key) => ({
    ...key,
    ...placedKey(view, key),
  }));
  const places = placesAlong(withoutDetours(all, solids, piece, walk.padding), piece);
  const within = level ? betweenPlanes(places, piece, exit) : places;
  const keys = keysOf(within);
  const failed = walk.notDrawn?.row;
  const jointly = decides !== undefined && decides.together[1] > decides.together[0];
  const whole = keys.length > 1 && (failed === undefined || failed > row);
  if (keys.length === 0) {
    return {
      row,
      keys,
      solids,
      exit,
      tightest: undefined,
      positions: [],
      deciding: faces,
      raise: 0,
      whole,
      jointly,
    };
  }
  const looker = new Looker(solids, piece, walk.padding, deciding);
  const [from, to] = [firstOf(within).gone, lastOf(within).gone];
  const raises = within.map((place) => looker.raise(place));
  const known = new Map<number, StepPlace>();
  const placeAt = (n: number): StepPlace => {
    const found = known.get(n);
    if (found) return found;
    const place = entryAt(within, n);
    const { at, turn, gone } = place;
    // What it is nearest to is asked of few places, and takes longest.
    const closest = once(() => looker.closest(place));
    const seen: StepPlace = {
      at,
      turn,
      part: (gone - from) / (to - from || 1),
      tilt: tiltOf(turn),
      raise: entryAt(raises, n),
      get closest() {
        return closest();
      },
    };
    known.set(n, seen);
    return seen;
  };
  const near = looker.nearDeciding(within);
  const at = looker.tightest(within, walk.padding, near) ?? nearestOf(within, near, looker, placeAt);
  const parts = within.map(({ gone }) => (gone - from) / (to - from || 1));
  const many = keys.length > 8 || to - from > LONG_WAY * piece.length;
  const count = many ? 5 : 3;
  const evenly = chosen(parts, at, count);
  const steepest = placed && steepestOn(placed, within);
  const shownTilt = Math.max(...evenly.map((n) => tiltOf(entryAt(within, n).turn)));
  const steeper = steepest !== undefined && tiltOf(entryAt(within, steepest).turn) > shownTilt + STEEPER_BY;
  const positions = (steeper ? chosen(parts, at, count, steepest) : evenly).map(placeAt);
  const tightest = placeAt(at);
  return {
    row,
    keys,
    solids,
    exit,
    tightest: tightest.closest || deciding ? tightest : undefined,
    positions,
    deciding: faces,
    raise: Math.max(...raises),
    whole,
    jointly,
  };
}

/** Steeper than the places shown by more than this [rad], half a degree, a place is shown as well. */
const STEEPER_BY = Math.PI / 360;
/** Steeper than the pitch by more than this [rad] a piece is stood up or laid down, not carried on. */
const BEYOND_PITCH = 0.02;

/** On a flight the number of the place where the piece is carried steepest: the crew is told that tilt. */
function steepestOn({ joint }: PlacedRow, within: readonly Place[]): number | undefined {
  const { rise, going } = joint.measures;
  if (joint.stage !== 'flight' || rise === undefined || going === undefined) return undefined;
  const most = Math.atan2(rise, going) + BEYOND_PITCH;
  const tilts = within.map(({ turn }) => {
    const tilt = tiltOf(turn);
    return tilt > most ? 0 : tilt;
  });
  return tilts.indexOf(Math.max(...tilts));
}

/** A way so many times as long as the piece is shown in five places, what turns on it counted; a shorter one in three. */
const LONG_WAY = 1.5;

/** The same way without what leads round or back where the padded piece can be moved straight on. */
function withoutDetours(
  keys: readonly WalkKey[],
  solids: readonly PlacedSolid[],
  piece: PieceSize,
  padding: number,
): readonly WalkKey[] {
  const checker = new SpaceChecker(solids.map(({ box }) => box));
  checker.hold(paddedPiece(piece, Math.max(0, padding)));
  const reach = Math.hypot(piece.length, piece.breadth, piece.thickness) / 2;
  return shortened(keys, reach, (from, to) => checker.moveFree(placeOf(from), 0, placeOf(to), 0));
}

/** Of the places with the least gaps so many are looked at for their distance. */
const LOOKED_AT = 5;

/** Where nothing wedges it: where it comes nearest to what it does not stand on. */
function nearestOf(
  within: readonly Place[],
  among: readonly number[],
  looker: Looker,
  placeAt: (n: number) => StepPlace,
): number {
  // The gap along an axis is never more than the distance: the nearest is among those with the least gaps.
  const gaps = within.map((place) => looker.gap(place));
  const likely = [...among]
    .sort((one, other) => entryAt(gaps, one) - entryAt(gaps, other) || one - other)
    .slice(0, LOOKED_AT);
  const distance = (n: number): number => placeAt(n).closest?.distance ?? Infinity;
  return likely.reduce((best, n) => (distance(n) < distance(best) - 0.05 ? n : best), likely[0] ?? 0);
}

/** Padding beyond the motion's own [mm] from which on, and up to which, a place is looked for that has no more. */
const MORE_PADDING = { least: 1, most: 600 } as const;
/** How often that padding is narrowed down. */
const NARROWED = 4;
/** How often a piece is pushed off what it meets. */
const PUSHED = 24;

/**
 * The keys of a row, from the last of the row before; a ride in a lift is left out. Of a flight that is passed together
 * with the turn at the end where it is closest, those of that turn too.
 */
function ownPart(keys: readonly WalkKey[], row: number, decides: StepDecides | undefined): WalkKey[] {
  const own = (key: WalkKey): boolean =>
    key.row === row ||
    (decides?.atEnd !== undefined && key.row >= decides.together[0] && key.row <= decides.together[1]);
  const from = keys.findIndex(own);
  const first = keys[from];
  if (!first) return [];
  const part: WalkKey[] = [];
  const before = keys[from - 1];
  if (before && !first.rides) part.push(before);
  for (const key of keys.slice(from)) {
    if (!own(key) || key.rides) break;
    part.push(key);
  }
  return part;
}

/**
 * The keys among which a level row is passed: those of the first row that is passed with it or after it, and the next; and
 * those before, where the piece is moved on into the row from the one before.
 * @param ahead how far a key is beyond the row's entry [mm]
 */
function roughPart(keys: readonly WalkKey[], row: number, ahead: (key: WalkKey) => number): WalkKey[] {
  const from = keys.findIndex((key) => key.row >= row);
  const first = keys[from];
  if (!first) return [];
  const next = keys.find((key) => key.row > first.row)?.row ?? first.row;
  const part: WalkKey[] = [];
  let rides = first.rides;
  for (let n = from - 1; n >= 0 && !rides; n--) {
    const key = entryAt(keys, n);
    part.unshift(key);
    if (ahead(key) < 0) break;
    rides = key.rides;
  }
  for (const key of keys.slice(from)) {
    if (key.row > next || (part.length > 0 && key.rides)) break;
    part.push(key);
  }
  return part;
}

/** A place on a motion: a key, or between two. */
interface Place extends WalkKey {
  /** How far the farthest point of the piece has moved so far [mm]. */
  readonly gone: number;
  readonly isKey: boolean;
}

/** Places along a motion, evenly by what the farthest point of the piece moves. */
function placesAlong(keys: readonly WalkKey[], piece: PieceSize): Place[] {
  const [first] = keys;
  if (!first) return [];
  const reach = Math.hypot(piece.length, piece.breadth, piece.thickness) / 2;
  const places: Place[] = [{ ...first, gone: 0, isKey: true }];
  let gone = 0;
  for (const [a, b] of pairs(keys)) {
    const dot = Math.min(1, Math.abs(likeness(a.turn, b.turn)));
    const length =
      Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], a.at[2] - b.at[2]) + 2 * Math.acos(dot) * reach;
    const count = Math.max(1, Math.min(100, Math.ceil(length / STEP)));
    for (let n = 1; n <= count; n++) {
      const s = n / count;
      places.push({
        at: partWay(a.at, b.at, s),
        turn: slerp(a.turn, b.turn, s),
        row: b.row,
        gone: gone + s * length,
        isKey: n === count,
      });
    }
    gone += length;
  }
  return places;
}

/** From where the piece reaches the entry plane to where it has left the exit plane behind. */
function betweenPlanes(places: readonly Place[], piece: PieceSize, exit: Frame): readonly Place[] {
  const size: Vec3 = [piece.length, piece.breadth, piece.thickness];
  const extent = (place: Place, heading: number): number =>
    AXES.reduce<number>((sum, k) => {
      const axis = rotate(
        place.turn,
        byAxis((j) => Number(j === k)),
      );
      const d = axis[0] * Math.cos(heading) + axis[1] * Math.sin(heading);
      return sum + (Math.abs(d) * size[k]) / 2;
    }, 0);
  const reached = (place: Place): boolean => place.at[0] + extent(place, 0) > 0;
  const left = (place: Place): boolean =>
    (place.at[0] - exit.at[0]) * Math.cos(exit.heading) +
      (place.at[1] - exit.at[1]) * Math.sin(exit.heading) -
      extent(place, exit.heading) >
    0;
  const begins = Math.max(0, places.findIndex(reached) - 1);
  const rest = places.slice(begins);
  const ends = rest.findIndex((place, n) => n > 0 && left(place) && rest.slice(0, n).some((p) => !left(p)));
  return ends < 0 ? rest : rest.slice(0, ends + 1);
}

/** The ends of a row of places, and the keys between. */
const keysOf = (places: readonly Place[]): WalkKey[] =>
  places
    .filter(({ isKey }, n) => isKey || n === 0 || n === places.length - 1)
    .map(({ at, turn, row }) => ({ at, turn, row }));

/** What decides at a step, and how the step is passed. */
interface StepDecides extends WhatDecides {
  /** The first and the last of the rows that are passed together. */
  readonly together: readonly [number, number];
}

/**
 * Places that come as near to what decides as the nearest, and so much of that distance, but no more than this [mm], are
 * looked at for their room: along a wall that it keeps to the piece is nearer than in the turn for which it keeps to it.
 */
const AS_NEAR = { share: 0.75, least: 6, most: 40 } as const;

class Looker {
  private readonly toDeciding: SpaceChecker | undefined;
  private readonly below: SpaceChecker;
  private readonly beside: SpaceChecker;
  private readonly all: SpaceChecker;
  private readonly others: readonly PlacedSolid[];

  constructor(
    private readonly solids: readonly PlacedSolid[],
    private readonly piece: PieceSize,
    padding: number,
    private readonly deciding: readonly DecidingSolid[] | undefined,
  ) {
    if (deciding && deciding.length > 0) {
      this.toDeciding = new SpaceChecker(deciding.map(({ box }) => box));
      this.toDeciding.hold(piece);
    }
    this.others = solids.filter(({ part }) => !SUPPORTS.has(part));
    this.below = new SpaceChecker(solids.map(({ box }) => box));
    this.below.hold(paddedPiece(piece, padding));
    this.beside = new SpaceChecker(this.others.map(({ box }) => box));
    this.beside.hold(piece);
    this.all = new SpaceChecker(solids.map(({ box }) => box));
  }

  /** A lower bound of the distance [mm] to what it does not stand on. */
  gap(key: KeyAttitude): number {
    return this.others.length === 0 ? FAR : this.beside.placeGap(placeOf(key), 0, FAR);
  }

  /**
   * The place where the piece, turned as it is and pushed about, has room for least padding: the middle of those that are
   * first to have no more.
   * @param padding for which all of them are free [mm a side]
   */
  tightest(places: readonly KeyAttitude[], padding: number, every: readonly number[]): number | undefined {
    const wedged = (more: number, among: readonly number[]): number[] => {
      this.all.hold(paddedPiece(this.piece, padding + more));
      return among.filter((n) => !this.all.pushOut(placeOf(entryAt(places, n)), 0, PUSHED, 0.2));
    };
    let free = 0;
    let more: number = MORE_PADDING.least;
    let found = wedged(more, every);
    while (found.length === 0 && more < MORE_PADDING.most) {
      free = more;
      more *= 2;
      found = wedged(more, every);
    }
    for (let time = 0; time < NARROWED && found.length > 1; time++) {
      const middle = (free + more) / 2;
      const fewer = wedged(middle, found);
      if (fewer.length > 0) [found, more] = [fewer, middle];
      else free = middle;
    }
    return found[Math.floor((found.length - 1) / 2)];
  }

  /** The places that come nearest to what decides; all where that is not told. */
  nearDeciding(places: readonly KeyAttitude[]): number[] {
    const every = places.map((_, n) => n);
    const { toDeciding } = this;
    if (!toDeciding) return every;
    const gaps = places.map((place) => toDeciding.placeGap(placeOf(place), 0, FAR));
    const least = Math.min(...gaps);
    const beyond = Math.min(AS_NEAR.most, Math.max(AS_NEAR.least, AS_NEAR.share * least));
    return every.filter((n) => entryAt(gaps, n) <= least + beyond);
  }

  /** How far it can be let straight down. */
  raise(key: KeyAttitude): number {
    const free = letDown(this.below, placeOf(key), 1);
    return free < 1 ? 0 : free;
  }

  closest(key: KeyAttitude): StepContact | undefined {
    const place = placeOf(key);
    const box: SceneBox = {
      centre: key.at,
      size: [this.piece.length, this.piece.breadth, this.piece.thickness],
      turn: key.turn,
    };
    if (this.deciding) return this.closestDeciding(box, this.deciding);
    if (this.others.length === 0 || this.beside.placeGap(place, 0, FAR) >= FAR) return undefined;
    const reach = Math.hypot(...box.size) / 2;
    let best: StepContact | undefined;
    // The one that the axes name is near, if not always the nearest.
    const likely = this.others[this.beside.nearest(place, 0)];
    for (const solid of likely ? [likely, ...this.others] : this.others) {
      if (best && pointDistance(solid.box, key.at) - reach > best.distance) continue;
      const { first, second, distance } = nearestPoints(box, solid.box);
      if (best && distance >= best.distance) continue;
      best = { row: solid.row, part: solid.part, distance, onPiece: first, onSolid: second };
    }
    return best;
  }

  /** Nearest of what decides, with the part of the scene that stands there. */
  private closestDeciding(box: SceneBox, deciding: readonly DecidingSolid[]): StepContact | undefined {
    let best: StepContact | undefined;
    const reach = Math.hypot(...box.size) / 2;
    const atLeast = (face: DecidingSolid): number => pointDistance(face.box, box.centre) - reach;
    // The likely ones first, so that most of the others need not be looked at.
    for (const face of [...deciding].sort((one, other) => atLeast(one) - atLeast(other))) {
      if (best && atLeast(face) >= best.distance) break;
      const { first, second, distance } = nearestPoints(box, face.box);
      if (best && distance >= best.distance) continue;
      const backing = this.solids
        .filter(({ row }) => Math.abs(row - face.row) <= 1)
        .map((solid) => ({ solid, off: pointDistance(solid.box, second) }))
        .reduce<{ solid: PlacedSolid; off: number } | undefined>(
          (least, one) => (least === undefined || one.off < least.off ? one : least),
          undefined,
        );
      if (!backing || backing.off > BACKED) continue;
      const { part } = backing.solid;
      best = { row: face.row, part, face: face.face, distance, onPiece: first, onSolid: second };
    }
    return best;
  }
}

/** The least turn [rad] that would set one of the piece's sides upright. */
export function tiltOf(turn: Quaternion): number {
  const steep = Math.max(
    ...(
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const
    ).map((axis) => Math.abs(rotate(turn, axis)[2])),
  );
  const angle = Math.acos(Math.min(1, steep));
  return angle < 1e-6 ? 0 : angle;
}

/** The tightest place nearer to an end of the way than this share of it stands for that end. */
const AT_THE_END = 0.06;

/** Numbers of the first place, the last, the tightest, one more where it is told, and as many between as are asked for, evenly along the way. */
function chosen(parts: readonly number[], tightest: number, count: number, more?: number): number[] {
  const told = more === undefined ? [tightest] : [tightest, more];
  const ends = [0, parts.length - 1].filter((n) =>
    told.every((one) => Math.abs(entryAt(parts, n) - entryAt(parts, one)) > AT_THE_END),
  );
  const picked = new Set<number>([...told, ...ends]);
  for (let n = 1; n + 1 < count && picked.size < count; n++) {
    const wanted = n / (count - 1);
    const off = parts.map((part) => Math.abs(part - wanted));
    const near = off.indexOf(Math.min(...off));
    // Two numbers on one place would say nothing.
    if ([...picked].every((k) => Math.abs(entryAt(parts, k) - entryAt(parts, near)) > 0.5 / count))
      picked.add(near);
  }
  return [...picked].sort((a, b) => a - b);
}
