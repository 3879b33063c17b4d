import { shownDown } from '../../src/core/measures/shown';
import type { Points } from '../../src/drawing/plane';
import { area, drawnFigures, shared, textsThatOverlap } from '../support/drawnFigures';
import { drawnMonth as DRAWN } from '../support/drawnMonth';

/*
 * Steps of the month as they are drawn: what stands in what, the words, and the ring where it is closest. In one file,
 * because the month is drawn once for each file.
 */

test('every step of the month is drawn, or has a measure missing', () => {
  expect(DRAWN.length).toBeGreaterThan(20);
  expect(DRAWN.filter(({ drawn }) => drawn).length).toBeGreaterThan(0.8 * DRAWN.length);
});

test('a piece stands in nothing that is cut, and none is drawn heavy where none passes', () => {
  for (const { name, drawn, passes } of DRAWN) {
    for (const { svg } of drawn?.pictures ?? []) {
      const { walls, pieces } = drawnFigures(svg);
      if (!passes && drawn?.clearance !== undefined && drawn.clearance < 0)
        expect([name, pieces]).toEqual([name, []]);
      for (const piece of pieces) {
        for (const wall of walls.filter((one) => area(one) > 1)) {
          // A tenth of a pixel of rounding along the longest side.
          expect([name, shared(piece, wall) <= 0.15 * Math.hypot(296, 296)]).toEqual([name, true]);
        }
      }
    }
  }
});

/** Without what the verdict says of where it is closest. */
const ownWords = (text: string): string => text.replace(/Closest .*? a side/, '');

test('no two words overlap, and the unit is said once', () => {
  const overlaps: string[] = [];
  for (const { name, drawn } of DRAWN) {
    if (drawn?.clearance !== undefined)
      expect([name, ownWords(drawn.text).match(/\bmm\b/g)?.length]).toEqual([name, 1]);
    for (const { svg } of drawn?.pictures ?? []) {
      overlaps.push(...textsThatOverlap(svg).map((two) => `${name}: ${two}`));
    }
  }
  expect(overlaps).toEqual([]);
});

test('a carry on a flight is tilted no farther than a place in its picture', () => {
  let looked = 0;
  for (const { name, drawn, moves } of DRAWN) {
    for (const { kind, stage, pose, tilt } of moves) {
      const carried = kind === 'pass' && stage === 'flight' && (pose === 'on edge' || pose === 'tilted');
      if (!carried || tilt === undefined || tilt < 0.05 || drawn?.clearance === undefined) continue;
      const shown = [...drawn.text.matchAll(/tilted (\d+)°/g)].map(([, angle]) => Number(angle));
      if (shown.length === 0) continue;
      looked++;
      // Both are the slope of the long side; the picture gives whole degrees.
      expect([name, (tilt * 180) / Math.PI <= Math.max(...shown) + 0.6]).toEqual([name, true]);
    }
  }
  expect(looked).toBeGreaterThan(2);
});

/**
 * Where what a sentence names is to be seen, from the meaning of its words alone: in which picture, and on which side of
 * the piece as it is drawn there. The first that matches counts.
 */
const WHERE: readonly (readonly [words: RegExp, from: RegExp, side: 'over' | 'under' | 'beside' | 'any'])[] =
  [
    [/top nosing and the facing wall/, /side|above/, 'any'],
    [/top nosing/, /side/, 'under'],
    [/edge of the stairwell|under the head|under the ceiling|headroom|lowest above/, /side|front/, 'over'],
    [/leaning \d+ degrees in|leaning \d+ degrees on/, /front|side|above/, 'any'],
    [/facing wall/, /side|above/, 'any'],
    [
      /inner corner|jambs|jamb |sides of the|walls of the|turn on the landing|in the turn/,
      /above|front/,
      'beside',
    ],
  ];

const STEPS = DRAWN.flatMap(({ name, drawn, clearance }) => {
  const [, words] = /Closest (.*?): [\d.]+ a side/.exec(drawn?.text ?? '') ?? [];
  return drawn && words ? [{ name, drawn, words, clearance }] : [];
});

interface Ring {
  readonly at: readonly [number, number];
  readonly from: string;
  readonly svg: string;
}

const ringsOf = (pictures: readonly { readonly svg: string }[]): Ring[] =>
  pictures.flatMap(({ svg }) => {
    const mark = /<circle class="mark"[^>]* cx="([-\d.]+)" cy="([-\d.]+)"/.exec(svg);
    const [, title = ''] = /<title[^>]*>([^<]*)/.exec(svg) ?? [];
    return mark ? [{ at: [Number(mark[1]), Number(mark[2])] as const, from: title, svg }] : [];
  });

const toSegment = ([x, y]: readonly [number, number], a: readonly number[], b: readonly number[]): number => {
  const [dx, dy] = [b[0]! - a[0]!, b[1]! - a[1]!];
  const s = Math.min(1, Math.max(0, ((x - a[0]!) * dx + (y - a[1]!) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - a[0]! - s * dx, y - a[1]! - s * dy);
};

const toOutline = (at: readonly [number, number], outline: Points): number =>
  Math.min(...outline.map((a, i) => toSegment(at, a, outline[(i + 1) % outline.length]!)));

/** Where an upright line enters a convex outline and where it leaves it; nothing where it passes beside it. */
function heightsAt(outline: Points, x: number): readonly number[] {
  const met = outline.flatMap(([ax, ay], i): number[] => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    if (Math.min(ax, bx) > x || Math.max(ax, bx) < x) return [];
    return ax === bx ? [ay, by] : [ay + ((by - ay) * (x - ax)) / (bx - ax)];
  });
  return met.length === 0 ? [] : [Math.min(...met), Math.max(...met)];
}

test('most steps that a piece passes are ringed', () => {
  expect(STEPS.length).toBeGreaterThan(10);
  const ringed = STEPS.filter(({ drawn }) => ringsOf(drawn.pictures).length > 0);
  expect(ringed.length / STEPS.length).toBeGreaterThan(0.75);
});

test('the ring stands on a line of the building, where the words say that it is closest', () => {
  let [looked, aboveOrBelow] = [0, 0];
  for (const { name, drawn, words } of STEPS) {
    const [, from, side] = WHERE.find(([known]) => known.test(words)) ?? [];
    for (const ring of ringsOf(drawn.pictures)) {
      const { walls, pieces } = drawnFigures(ring.svg);
      expect([name, words, Math.min(...walls.map((wall) => toOutline(ring.at, wall))) < 2]).toEqual([
        name,
        words,
        true,
      ]);
      if (!from) continue;
      looked++;
      expect([name, words, ring.from]).toEqual([name, words, expect.stringMatching(from)]);
      const [piece] = pieces;
      if (!piece || side === 'any') continue;
      // Drawings run downwards.
      if (side === 'over' || side === 'under') {
        const [top, bottom] = heightsAt(piece, ring.at[0]);
        if (top === undefined || bottom === undefined) continue;
        aboveOrBelow++;
        const middle = (top + bottom) / 2;
        expect([name, words, side === 'over' ? ring.at[1] < middle : ring.at[1] > middle]).toEqual([
          name,
          words,
          true,
        ]);
      } else if (ring.from.includes('front')) {
        const [x, y] = ring.at;
        const xs = piece.map(([u]) => u);
        const ys = piece.map(([, v]) => v);
        expect([name, words, x <= Math.min(...xs) + 1 || x >= Math.max(...xs) - 1]).toEqual([
          name,
          words,
          true,
        ]);
        expect([name, words, y > Math.min(...ys) - 1]).toEqual([name, words, true]);
      }
    }
  }
  expect(looked).toBeGreaterThan(8);
  expect(aboveOrBelow).toBeGreaterThan(3);
});

test('a ring is spoken of under the picture that has it, and under no other', () => {
  for (const { name, drawn } of STEPS) {
    for (const { svg } of drawn.pictures) {
      const said = drawnFigures(svg)
        .texts.map(({ text }) => text)
        .join(' ')
        .includes('Ring');
      expect([name, said]).toEqual([name, svg.includes('class="mark"')]);
    }
  }
});

test('what is said to be left is what the table of the route says', () => {
  for (const { name, drawn, clearance } of STEPS) {
    const [, figure] = /Closest .*?: ([\d.]+) a side to spare/.exec(drawn.text) ?? [];
    if (figure !== undefined && clearance !== undefined)
      expect([name, figure]).toEqual([name, String(shownDown(clearance))]);
  }
  expect(STEPS.some(({ clearance }) => clearance !== undefined)).toBe(true);
});
