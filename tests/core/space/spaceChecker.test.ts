import { SpaceChecker } from '../../../src/core/space/spaceChecker';
import { seededStream } from '../../../src/core/space/seededStream';
import type { Motion, SceneBox } from '../../../src/core/space/motion';
import { replay } from '../../support/replayMotion';

type Q = [number, number, number, number];

function randomTurn(next: () => number): Q {
  for (;;) {
    const q = [next() - 0.5, next() - 0.5, next() - 0.5, next() - 0.5] as Q;
    const n = Math.hypot(...q);
    if (n > 0.1 && n < 0.5) return q.map((x) => x / n) as Q;
  }
}

const piece = { length: 1830, breadth: 930, thickness: 25 };

function randomScene(next: () => number, boxes: number, apart: number): SceneBox[] {
  return Array.from({ length: boxes }, (_, i) => ({
    centre: [(next() - 0.5) * apart, (next() - 0.5) * apart, (next() - 0.5) * apart] as const,
    size: [100 + next() * 900, 100 + next() * 900, 20 + next() * 900] as const,
    turn: i % 2 ? ([1, 0, 0, 0] as const) : randomTurn(next),
  }));
}

describe('the piece in one place', () => {
  test('is free exactly when the corner sets of the boxes are apart (GJK), 2,000 random places', () => {
    const next = seededStream(11);
    let free = 0;
    for (let n = 0; n < 2000; n++) {
      const scene = randomScene(next, 1, 1800);
      const checker = new SpaceChecker(scene);
      checker.hold(piece);
      const place = new Float64Array([0, 0, 0, ...randomTurn(next)]);
      const motion: Motion = [{ at: [0, 0, 0], turn: [...place.slice(3)] as Q }];
      const seen = replay({ motion, scene }, piece);
      const gap = checker.placeGap(place, 0, 1e9);
      if (Math.abs(gap) < 1e-3) continue;
      expect(checker.placeFree(place, 0)).toBe(!seen.collides);
      // A gap along an axis is never more than the distance.
      if (gap > 0 && seen.leastDistance < 1e9) expect(gap).toBeLessThan(seen.leastDistance + 1e-3);
      if (gap > 0) free++;
    }
    expect(free).toBeGreaterThan(400);
    expect(free).toBeLessThan(1600);
  });
});

describe('a move', () => {
  test('called free is replayed without contact, and one called not free touches or nearly touches', () => {
    const next = seededStream(12);
    let free = 0;
    let blocked = 0;
    for (let n = 0; n < 200; n++) {
      const scene = randomScene(next, 3, 3800);
      const checker = new SpaceChecker(scene);
      checker.hold(piece);
      const a = randomTurn(next);
      const b = randomTurn(next).map((x, i) => a[i]! + 0.5 * x) as Q;
      const size = Math.hypot(...b);
      const moves = new Float64Array([
        0,
        0,
        0,
        ...a,
        300 * next(),
        300 * next(),
        300 * next(),
        ...b.map((x) => x / size),
      ]);
      const motion: Motion = [
        { at: [0, 0, 0], turn: a },
        { at: [moves[7]!, moves[8]!, moves[9]!], turn: [...moves.slice(10)] as Q },
      ];
      const seen = replay({ motion, scene }, piece, { step: 3 });
      if (checker.moveFree(moves, 0, moves, 7)) {
        free++;
        expect(seen.collides).toBe(false);
      } else {
        blocked++;
        expect(seen.leastDistance).toBeLessThan(1);
      }
    }
    expect(free).toBeGreaterThan(25);
    expect(blocked).toBeGreaterThan(25);
  });

  test('that grazes an edge between its ends is caught, however short the contact', () => {
    // A quarter turn about the upright: the end reaches 915 mm only half way. A 1 mm post stands at 914.9 mm.
    const scene: SceneBox[] = [{ centre: [915.4, 0, 0], size: [1, 1, 500], turn: [1, 0, 0, 0] }];
    const checker = new SpaceChecker(scene);
    checker.hold({ length: 1830, breadth: 25, thickness: 25 });
    const c = Math.cos(Math.PI / 8);
    const s = Math.sin(Math.PI / 8);
    const away = new Float64Array([0, 0, 0, c, 0, 0, -s, 0, 0, 0, c, 0, 0, s]);
    expect(checker.moveFree(away, 0, away, 7)).toBe(false);
    const farther = new SpaceChecker([{ ...scene[0]!, centre: [916.2, 0, 0] }]);
    farther.hold({ length: 1830, breadth: 25, thickness: 25 });
    expect(farther.moveFree(away, 0, away, 7)).toBe(true);
  });

  test('to or from an attitude that is no unit quaternion shows nothing', () => {
    // Read as it stands, one of length 1.78 would pass for no turn at all, one below 1 for a smaller piece.
    const checker = new SpaceChecker([]);
    checker.hold(piece);
    const c = Math.SQRT1_2;
    const move = (size: number): Float64Array =>
      new Float64Array([0, 0, 0, 1, 0, 0, 0, 100, 0, 0, size * c, 0, 0, size * c]);
    expect(checker.moveFree(move(1), 0, move(1), 7)).toBe(true);
    for (const size of [1.78, 1.000001, 0.999999, 0.5, 0, NaN]) {
      expect([size, checker.moveFree(move(size), 0, move(size), 7)]).toEqual([size, false]);
      expect([size, checker.moveFree(move(size), 7, move(size), 0)]).toEqual([size, false]);
    }
  });
});
