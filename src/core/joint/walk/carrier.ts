import { paddedPiece, type PieceSize } from '../../measures/piece';
import { findMotion } from '../../space/findMotion';
import { keyOf, placeOf, turnOf, type KeyAttitude } from '../../space/motion';
import { carryTo, turnTo } from '../../space/motionByMiddle';
import { alikeTurns, goingOn, likeness, rotate, slerp, type Quaternion } from '../../space/quaternion';
import { SpaceChecker } from '../../space/spaceChecker';
import type { Vec3 } from '../place/frame';
import { closedSceneNear, type PlacedRoute, type PlacedSolid } from '../place/placedRoute';
import { lastOf } from '../../lists/ends';

/** A place on the way, with the row in which it belongs. */
export interface WalkKey extends KeyAttitude {
  /** Number of the row among those given. */
  readonly row: number;
  /** The piece stands still in a lift car that carries it here from the last place. */
  readonly rides?: true;
}

/** Rows before the one walked in and after it whose solids are looked at. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Places that a search may look at where the drawn moves do not meet. */
const SEARCH_WORK = 40000;
/** Steps of a turn on the floor: far below 1 mm of straying between them. */
const TURN_STEPS = 36;
/** Kept off the floor while it is turned [mm]: what a straight move strays in between, and more. */
const OFF_FLOOR = 1;
/** How far beyond its ends a search may go [mm]. */
const SEARCH_MARGIN = 1500;

/**
 * Carries the padded piece through the scene: every move is shown free on its whole way before it is kept, so that what
 * is kept is one motion without a jump.
 */
export class Carrier {
  readonly keys: WalkKey[] = [];
  /** Rows in which a search had to join what is drawn. */
  readonly searched = new Set<number>();
  private readonly checkers = new Map<string, SpaceChecker>();
  private readonly padded: PieceSize;

  constructor(
    readonly route: PlacedRoute,
    readonly piece: PieceSize,
    readonly padding: number,
  ) {
    this.padded = paddedPiece(piece, padding);
  }

  get last(): WalkKey {
    const key = this.keys[this.keys.length - 1];
    if (!key) throw new RangeError('the piece stands nowhere yet');
    return key;
  }

  solids({ from, to }: Stretch): readonly PlacedSolid[] {
    return closedSceneNear(this.route, from, to);
  }

  checker(stretch: Stretch): SpaceChecker {
    const name = this.route.crosses ? `${stretch.from} ${stretch.to}` : 'all';
    let checker = this.checkers.get(name);
    if (!checker) {
      checker = new SpaceChecker(this.solids(stretch).map(({ box }) => box));
      checker.hold(this.padded);
      this.checkers.set(name, checker);
    }
    return checker;
  }

  /** Puts the piece down where the motion begins, or where a lift has carried it. */
  stand(key: WalkKey, stretch: Stretch): boolean {
    if (!this.checker(stretch).placeFree(placeOf(key), 0)) return false;
    this.keys.push(key);
    return true;
  }

  /** Follows drawn keys; what does not join is joined as `go` can. False, with nothing kept, where it cannot. */
  follow(keys: readonly KeyAttitude[], row: number, stretch: Stretch): boolean {
    const mark = this.keys.length;
    for (const key of keys) {
      if (!this.go(key, row, stretch, 'without search')) {
        this.keys.length = mark;
        return false;
      }
    }
    return true;
  }

  /** Brings the piece from where it is to a place: straight, or carried and turned, or by a search. */
  go(
    target: KeyAttitude,
    row: number,
    stretch: Stretch,
    how: 'with search' | 'without search' = 'with search',
  ): boolean {
    const checker = this.checker(stretch);
    const from = placeOf(this.last);
    const to = placeOf(target);
    to.set(alike(target.turn, this.last.turn), 3);
    if (checker.moveFree(from, 0, to, 0)) return this.keep([to], row);
    const turn = turnOf(to);
    // Carried as it is and turned there; or turned here and carried.
    const aim = Float64Array.from(to);
    aim.set(this.last.turn, 3);
    const carried = [from];
    if (carryTo(checker, carried, aim)) {
      const turned = turnTo(checker, lastOf(carried), turn);
      if (turned && carryTo(checker, turned, to)) {
        return this.keep([...carried.slice(1), ...turned.slice(1)], row);
      }
    }
    const turned = turnTo(checker, from, turn);
    if (turned && carryTo(checker, turned, to)) return this.keep(turned.slice(1), row);
    if (how === 'without search') return false;
    return this.search(target, row, stretch);
  }

  /** Turns the piece where it stands, pushed off what it meets. */
  turn(turn: Quaternion, row: number, stretch: Stretch): boolean {
    const checker = this.checker(stretch);
    const places = turnTo(checker, placeOf(this.last), alike(turn, this.last.turn));
    return places !== null && this.keep(places.slice(1), row);
  }

  /**
   * Turns the piece standing on a floor, raised and let down as it turns, pushed off what it meets.
   * @param kept its front or its back along a direction in plan [rad] stays where it is; else its middle does
   */
  turnOnFloor(
    turn: Quaternion,
    floor: number,
    row: number,
    stretch: Stretch,
    kept?: { readonly heading: number; readonly end: 'front' | 'back' },
  ): boolean {
    const checker = this.checker(stretch);
    const from = this.last;
    const to = alike(turn, from.turn);
    const mark = this.keys.length;
    for (let n = 0; n <= TURN_STEPS; n++) {
      const x = placeOf(this.last);
      x.set(slerp(from.turn, to, n / TURN_STEPS), 3);
      x[2] = floor + halfExtent(turnOf(x), [0, 0, 1], this.padded) + OFF_FLOOR;
      if (kept) {
        const way: Vec3 = [Math.cos(kept.heading), Math.sin(kept.heading), 0];
        const shorter = halfExtent(from.turn, way, this.padded) - halfExtent(turnOf(x), way, this.padded);
        const by = kept.end === 'front' ? shorter : -shorter;
        x[0] = from.at[0] + way[0] * by;
        x[1] = from.at[1] + way[1] * by;
      }
      const free = (): boolean => checker.moveFree(placeOf(this.last), 0, x, 0);
      if (!free() && !(checker.pushOut(x, 0, 12, 0.5) && free())) {
        this.keys.length = mark;
        return false;
      }
      this.keep([x], row);
    }
    return true;
  }

  /** Moves it off what it is nearer to than a larger padding leaves [mm a side], where it can; as it is held. */
  standOff(padding: number, row: number, stretch: Stretch): void {
    const checker = this.checker(stretch);
    const x = placeOf(this.last);
    checker.hold(paddedPiece(this.piece, padding));
    const off = !checker.placeFree(x, 0) && checker.pushOut(x, 0, 12, 0.1);
    checker.hold(this.padded);
    if (off && checker.moveFree(placeOf(this.last), 0, x, 0)) this.keep([x], row);
  }

  private search(target: KeyAttitude, row: number, stretch: Stretch): boolean {
    const a = this.last.at;
    const b = target.at;
    const bound = (pick: (x: number, y: number) => number, by: number): [number, number, number] => [
      pick(a[0], b[0]) + by,
      pick(a[1], b[1]) + by,
      pick(a[2], b[2]) + by,
    ];
    const { motion } = findMotion(
      {
        piece: this.piece,
        scene: this.solids(stretch).map(({ box }) => box),
        least: bound(Math.min, -SEARCH_MARGIN),
        most: bound(Math.max, SEARCH_MARGIN),
        start: this.last,
        goal: target,
      },
      { seed: 7, work: SEARCH_WORK, padding: this.padding },
    );
    if (!motion) return false;
    this.searched.add(row);
    for (const key of motion.slice(1)) this.keys.push({ ...key, row });
    return true;
  }

  private keep(places: readonly Float64Array[], row: number): true {
    for (const x of places) {
      this.keys.push({ ...keyOf(x), row });
    }
    return true;
  }
}

/** How far the piece reaches to either side of its middle in a direction [mm]. */
function halfExtent(turn: Quaternion, way: Vec3, { length, breadth, thickness }: PieceSize): number {
  const share = (axis: Vec3): number => {
    const v = rotate(turn, axis);
    return Math.abs(v[0] * way[0] + v[1] * way[1] + v[2] * way[2]);
  };
  return (length * share([1, 0, 0]) + breadth * share([0, 1, 0]) + thickness * share([0, 0, 1])) / 2;
}

/** Of the attitudes in which a box looks the same, the one nearest to another. */
export function alike(turn: Quaternion, near: Quaternion): Quaternion {
  const like = (t: Quaternion): number => Math.abs(likeness(t, near));
  // Of two that are as near, but for rounding, the first: the piece is not turned over without need.
  const best = alikeTurns(turn).reduce((s, t) => (like(t) > like(s) + 1e-12 ? t : s));
  return goingOn(best, near);
}
