import { XMLValidator } from 'fast-xml-parser';
import { stepMotion } from '../../src/core/joint/walk/stepMotion';
import { degrees } from '../../src/core/measures/angle';
import { rotate } from '../../src/core/space/quaternion';
import { drawStep } from '../../src/drawing/drawStep';
import type { Point } from '../../src/drawing/plane';
import { area, drawnFigures, shared, textsThatOverlap } from '../support/drawnFigures';
import { randomRoute } from '../support/randomRoutes';
import { walked } from '../support/walkedRoute';

/** Seeds of random routes; `STAGES=500` draws some five hundred stages. */
const SEEDS = Number(process.env.STAGES ?? 24) / 2;
/** Was wrong once: a flight cut at a slant, its steps off their line. */
const ONCE_WRONG = [100];

const seeds = new Set([...Array.from({ length: SEEDS }, (_, seed) => seed + 1), ...ONCE_WRONG]);
const DRAWN = [...seeds].flatMap((seed) => {
  const { rows, piece } = randomRoute(seed);
  const walk = walked(rows, piece);
  if (!walk) return [];
  return rows.map((row, i) => {
    const step = stepMotion(walk, i, piece);
    const clearance = walk.padding + 1;
    const facts = {
      name: `step ${i + 1}`,
      stage: row.stage,
      pieceName: 'slate',
      size: piece,
      pose: 'on edge' as const,
      clearance,
      closest: 'between the walls',
      measures: 'Width 900',
      raise: 47.2,
      passes: true,
      supposed: [],
      stepsAt: (at: number) => {
        const { rise, going } = rows[at]?.measures ?? {};
        return rise !== undefined && going !== undefined ? { rise, going } : undefined;
      },
      wayAt: () => 'down' as const,
    };
    const drawing = drawStep(step, facts, { id: `s${seed}-${i}`, width: 296 });
    return {
      name: `route ${seed}, step ${i + 1}, ${row.stage}`,
      step,
      piece,
      clearance,
      drawing,
      stage: row.stage,
      pitches: rows.flatMap(({ measures: { rise, going } }) => (rise && going ? [rise / going] : [])),
    };
  });
});

const PICTURES = DRAWN.flatMap(({ name, drawing }) =>
  [drawing.together, ...drawing.sides].map((picture, k) => ({ name: `${name}, picture ${k}`, ...picture })),
);

/** Distance [px] of a point from a line between two others. */
const beside = ([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
  const [dx, dy] = [bx - ax, by - ay];
  const s = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - s * dx, y - ay - s * dy);
};

test('there is enough to look at', () => {
  expect(DRAWN.length).toBeGreaterThan(SEEDS);
  expect(DRAWN.filter(({ step }) => step.whole).length).toBeGreaterThan(DRAWN.length / 2);
});

test('pictures are well-formed, without a style, and say in words what they are', () => {
  for (const { svg, text } of PICTURES) {
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|\sstyle=|<script/);
    expect(text.length).toBeGreaterThan(15);
    expect(svg).toContain(text.replace(/&/g, '&amp;').slice(0, 15));
  }
});

test('taken back out of the picture, the piece overlaps no solid that is cut', () => {
  let looked = 0;
  for (const { name, svg } of PICTURES) {
    const { walls, pieces } = drawnFigures(svg);
    for (const piece of pieces) {
      // A wall that is only a line has no inside.
      for (const wall of walls.filter((one) => area(one) > 1)) {
        looked++;
        // A tenth of a pixel of rounding along the longest side.
        const rounding = 0.15 * Math.hypot(296, 296);
        if (shared(piece, wall) > rounding) throw new Error(`${name}: ${shared(piece, wall)} px2 overlap`);
      }
    }
  }
  expect(looked).toBeGreaterThan(100);
});

test('the piece is drawn in its own size: from the side its cut has the area of the face that is seen', () => {
  let looked = 0;
  for (const { drawing, piece, step, stage } of DRAWN) {
    if (!step.whole || stage === 'door' || stage === 'passage') continue;
    drawing.sides.forEach(({ svg, text }) => {
      const [outline] = drawnFigures(svg).pieces;
      const place = step.positions[Number(/place (\d)/.exec(text)?.[1]) - 1];
      if (!outline || outline.length !== 4 || !place || place.tilt > 1e-3) return;
      const [a, b, c] = outline as [
        readonly [number, number],
        readonly [number, number],
        readonly [number, number],
      ];
      const sides = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])].sort(
        (x, y) => y - x,
      );
      const ratio = sides[0]! / sides[1]!;
      const { length, breadth, thickness } = piece;
      const ratios = [length / breadth, length / thickness, breadth / thickness];
      looked++;
      expect(Math.min(...ratios.map((r) => Math.abs(Math.log(r / ratio))))).toBeLessThan(0.12);
      expect(area(outline)).toBeGreaterThan(0);
    });
  }
  expect(looked).toBeGreaterThan(5);
});

test('a place that is told to be tilted is looked at so that its slope can be seen', () => {
  let looked = 0;
  for (const { name, drawing } of DRAWN) {
    for (const { svg, text } of drawing.sides) {
      const [, told] = /: tilted (\d+)°/.exec(text) ?? [];
      const [outline] = drawnFigures(svg).pieces;
      if (told === undefined || !outline) continue;
      const slopes = outline.map(([x, y], i) => {
        const [u, v] = outline[(i + 1) % outline.length]!;
        return {
          long: Math.hypot(u - x, v - y),
          slope: degrees(Math.atan2(Math.abs(v - y), Math.abs(u - x))),
        };
      });
      looked++;
      // Told in whole degrees, drawn to a tenth of a pixel.
      const near = slopes.some(
        ({ long, slope }) => long > 8 && Math.abs(slope - Number(told)) < 0.6 + 10 / long,
      );
      expect([name, text, slopes, near]).toEqual([name, text, slopes, true]);
    }
  }
  expect(looked).toBeGreaterThan(5);
});

test('a flight that is cut along shows its steps: level treads and plumb risers, as high and as deep as measured', () => {
  let looked = 0;
  for (const { name, drawing, pitches } of DRAWN) {
    for (const { svg } of [drawing.together, ...drawing.sides]) {
      const { walls, steps } = drawnFigures(svg);
      for (const [nosing, corner, next] of steps) {
        looked++;
        // Drawn to a tenth of a pixel.
        expect([
          name,
          Math.abs(corner![1] - nosing![1]) < 0.15,
          Math.abs(next![0] - corner![0]) < 0.15,
        ]).toEqual([name, true, true]);
        const [rise, going] = [corner![1] - next![1], Math.abs(corner![0] - nosing![0])];
        const off = Math.min(...pitches.map((pitch) => Math.abs(rise - pitch * going)));
        expect([name, off < 0.3]).toEqual([name, true]);
        // A tread lies in what is solid, its nosing on the face of it.
        const onFace = walls.some((wall) =>
          wall.some((a, i) => beside(nosing!, a, wall[(i + 1) % wall.length]!) < 0.6),
        );
        expect([name, onFace]).toEqual([name, true]);
      }
    }
  }
  expect(looked).toBeGreaterThan(40);
});

/** What is said of heights: `low end 40, high end 830 above the landing`. */
const HEIGHTS =
  /(?:low end (\d+)( below)?, high end (\d+)(?: (?:below|above))?|\d+ (?:below|above)|\d+ above) (?:above )?the (?:landing|floor at the foot|floor)/g;

test('the heights of the two ends differ by what the slope of the long side makes of its length', () => {
  let looked = 0;
  for (const { name, drawing, piece } of DRAWN) {
    for (const [, slope, low, below, high, sign] of drawing.text.matchAll(
      /tilted (\d+)°, low end (\d+)( below)?, high end (\d+)(?: (below|above))?/g,
    )) {
      const apart = Number(high) * (sign === 'below' ? -1 : 1) - Number(low) * (below ? -1 : 1);
      const angle = (Number(slope) * Math.PI) / 180;
      // By hand: L sin t, the slope printed to half a degree and both heights to half a millimetre.
      const off = piece.length * Math.cos(angle) * ((0.5 * Math.PI) / 180) + 2;
      looked++;
      expect([name, Math.abs(apart - piece.length * Math.sin(angle)) <= off]).toEqual([name, true]);
    }
  }
  expect(looked).toBeGreaterThan(5);
});

test('every number that is printed is one of the answer', () => {
  for (const { name, drawing, step, clearance } of DRAWN) {
    const known = new Set([
      '900',
      // The raise of 47.2 rounded up.
      '48',
      // Rounded down, with a tenth where it is small.
      String(
        Math.abs(clearance) < 10 ? Math.floor(clearance * 10 + 1e-9) / 10 : Math.floor(clearance + 1e-9),
      ),
      ...step.positions.map((_, k) => String(k + 1)),
      // The slope of its long side, or how far it leans.
      ...step.positions.map(({ turn }) =>
        String(Math.round(degrees(Math.asin(Math.abs(rotate(turn, [1, 0, 0])[2]))))),
      ),
      ...step.positions.map(({ tilt }) => String(Math.round(degrees(tilt)))),
    ]);
    // A straight row is shown where its middle is in the middle of the row.
    const through = ['door', 'passage'].includes(name.split(', ')[2]!);
    for (const { svg } of [drawing.together, ...drawing.sides]) {
      const words = drawnFigures(svg)
        .texts.map(({ text }) => text)
        .join(' ')
        .replace(HEIGHTS, '')
        .replace(/Its ends above the floor at the foot: .*/, '');
      for (const [number] of words.matchAll(/\d+/g)) {
        if (through && new RegExp(`(?:tilted|leaning) ${number}°`).test(words)) continue;
        expect({ name, number, known: known.has(number) }).toEqual({ name, number, known: true });
      }
    }
  }
});

test('no two words overlap', () => {
  const overlaps = PICTURES.flatMap(({ name, svg }) => textsThatOverlap(svg).map((two) => `${name}: ${two}`));
  expect(overlaps).toEqual([]);
});

test('a step whose motion is missing shows the place alone and says so', () => {
  const { step, piece } = DRAWN.find(({ step: one }) => one.whole)!;
  const facts = {
    name: 'step 1',
    stage: 'corner' as const,
    pieceName: 'slate',
    size: piece,
    pose: undefined,
    clearance: undefined,
    closest: '',
    measures: '',
    raise: 0,
    passes: false,
    supposed: [],
    stepsAt: () => undefined,
    wayAt: () => undefined,
  };
  const drawing = drawStep({ ...step, whole: false, positions: [] }, facts, { id: 'none' });
  expect(drawing.sides).toEqual([]);
  expect(drawing.together.svg).not.toContain('class="piece"');
  expect(drawing.text).toContain('No way shown');
});
