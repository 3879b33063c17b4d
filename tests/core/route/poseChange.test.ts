import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { ALL_HOLDS, type Hold } from '../../../src/core/motion/hold';
import type { TurningSpace } from '../../../src/core/motion/turningSpace';
import { changeWords, leaningRoom, poseChanges, tiltingRoom } from '../../../src/core/route/poseChange';
import { seededStream } from '../../../src/core/space/seededStream';

/**
 * Room to turn a piece over, against quarter turns worked out here: of a hold the first letter lies along the way, the second
 * stands upright, the third lies across; two holds that share one of the three are a quarter turn apart, in which the two
 * others sweep their diagonal, found here by halving.
 */
type Side = 'L' | 'B' | 'T';
interface Roles<T> {
  readonly along: T;
  readonly across: T;
  readonly upright: T;
}

const ROLES = ['along', 'across', 'upright'] as const;

function held(hold: Hold): Roles<Side> {
  const [along, upright] = [hold.charAt(0), hold.charAt(1)] as [Side, Side];
  const across = (['L', 'B', 'T'] as const).find((side) => side !== along && side !== upright) ?? 'L';
  return { along, across, upright };
}
const sizeOf = (piece: PieceSize): Roles3 => ({ L: piece.length, B: piece.breadth, T: piece.thickness });
type Roles3 = Readonly<Record<Side, number>>;

/** The greatest padding with which two sides sweep no more than a space is wide, and a third stands in its own. */
function turned(p: number, q: number, space: number, stays: number, own: number): number {
  const fits = (c: number): boolean =>
    Math.hypot(Math.max(0, p + 2 * c), Math.max(0, q + 2 * c)) <= space && stays + 2 * c <= own;
  let [low, high] = [-20000, 20000];
  for (let n = 0; n < 80; n++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** One quarter turn; -Infinity where it takes more than one. */
function quarter(from: Hold, to: Hold, space: Roles<number>, sizes: Roles3): number {
  const [a, b] = [held(from), held(to)];
  const same = ROLES.filter((role) => a[role] === b[role]);
  const [stays] = same;
  if (same.length !== 1 || !stays) return -Infinity;
  const [one, other] = ROLES.filter((role) => role !== stays) as [keyof typeof a, keyof typeof a];
  return turned(
    sizes[a[one]],
    sizes[a[other]],
    Math.min(space[one], space[other]),
    sizes[a[stays]],
    space[stays],
  );
}

/** The widest way by any number of quarter turns, by trying them one after the other. */
function widest(from: Hold, to: Hold, space: Roles<number>, sizes: Roles3): number {
  let best = -Infinity;
  const go = (at: Hold, least: number, been: readonly Hold[]): void => {
    if (least <= best) return;
    if (at === to) {
      best = least;
      return;
    }
    for (const next of ALL_HOLDS)
      if (!been.includes(next)) go(next, Math.min(least, quarter(at, next, space, sizes)), [...been, next]);
  };
  go(from, Infinity, [from]);
  return best;
}

const asSeen = ({ along, across, height }: TurningSpace): Roles<number> => ({
  along,
  across,
  upright: height,
});
const fromTheSide = ({ along, across, height }: TurningSpace): Roles<number> => ({
  along: across,
  across: along,
  upright: height,
});

const scenes = Array.from({ length: 60 }, (_, n) => {
  const next = seededStream(n + 1);
  const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
  const space: TurningSpace = {
    along: b(600, 4000),
    across: b(600, 4000),
    height: b(1900, 3000),
    eitherWay: n % 2 === 0,
  };
  return { n, space, piece: sortedPiece(b(900, 2600), b(250, 1400), b(15, 600)) };
});
/** As seen along the way; where it may run along either side the worse of the two. */
const worse = (space: TurningSpace, of: (roles: Roles<number>) => number): number =>
  space.eitherWay ? Math.min(of(asSeen(space)), of(fromTheSide(space))) : of(asSeen(space));

test('changes of pose in 60 random spaces', () => {
  let positive = 0;
  for (const { n, space, piece } of scenes) {
    const table = poseChanges(space, piece);
    ALL_HOLDS.forEach((from, i) => {
      ALL_HOLDS.forEach((to, j) => {
        const got = table[ALL_HOLDS.length * i + j] ?? NaN;
        const wanted =
          from === to ? Infinity : worse(space, (roles) => widest(from, to, roles, sizeOf(piece)));
        if (wanted === Infinity) expect([n, from, to, got]).toEqual([n, from, to, Infinity]);
        else expect([n, from, to, Math.abs(got - wanted) < 1e-6]).toEqual([n, from, to, true]);
        if (wanted > 0 && wanted < Infinity) positive++;
      });
    });
    expect(table).toHaveLength(36);
  }
  expect(positive).toBeGreaterThan(300);
});

test('leaning is a turn about the way, tilting one about the line across it, and back', () => {
  for (const { n, space, piece } of scenes) {
    const sizes = sizeOf(piece);
    const [lean, tilt] = [leaningRoom(space, piece), tiltingRoom(space, piece)];
    ALL_HOLDS.forEach((hold, i) => {
      const { along, across, upright } = held(hold);
      const leaned = worse(space, (r) =>
        turned(sizes[across], sizes[upright], Math.min(r.across, r.upright), sizes[along], r.along),
      );
      const tilted = worse(space, (r) =>
        turned(sizes[along], sizes[upright], Math.min(r.along, r.upright), sizes[across], r.across),
      );
      expect([n, hold, lean[i], tilt[i]]).toEqual([
        n,
        hold,
        expect.closeTo(leaned, 6),
        expect.closeTo(tilted, 6),
      ]);
    });
  }
});

// The trade's words for a change: common practice, no source.
test.each<[Hold, Hold, string]>([
  ['LT', 'LB', 'stood on edge'],
  ['BT', 'LB', 'stood on edge'],
  ['LB', 'LT', 'laid flat'],
  ['LT', 'BT', 'turned crosswise'],
  ['BT', 'LT', 'turned lengthwise'],
  ['LB', 'TB', 'turned crosswise'],
  ['TB', 'LB', 'turned lengthwise'],
  ['LT', 'TL', 'stood on end'],
  ['LB', 'BL', 'stood on end'],
  ['BL', 'TL', 'turned about'],
  ['TL', 'LT', 'laid flat'],
  ['BL', 'LB', 'laid down on edge'],
])('from %s to %s it is %s', (from, to, words) => {
  expect(changeWords(from, to)).toBe(words);
});
