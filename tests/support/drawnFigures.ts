import type { Point, Points } from '../../src/drawing/plane';
import { clipped } from '../../src/drawing/section';

/** Polygons and texts of a drawing, taken back out of its markup [px]. */
export interface DrawnFigures {
  readonly walls: readonly Points[];
  readonly pieces: readonly Points[];
  readonly edges: readonly Points[];
  /** A nosing, the back of its tread, and the next nosing. */
  readonly steps: readonly Points[];
  readonly texts: readonly {
    readonly text: string;
    readonly box: readonly [number, number, number, number];
  }[];
}

const points = (d: string): Points =>
  d
    .replace(/[MZ]/g, '')
    .split('L')
    .map((pair) => pair.split(' ').map(Number) as unknown as Point);

const paths = (svg: string, name: string): Points[] =>
  [...svg.matchAll(new RegExp(`<path class="${name}" d="([^"]+)"`, 'g'))].map((m) => points(m[1]!));

/** Letters are 11 px high and some 6.1 px wide; a word of many wide letters may take more. */
const LETTER = 11;
const WIDE = 6.1;

export function drawnFigures(svg: string): DrawnFigures {
  const texts = [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, text]) => {
    const number = (name: string): number =>
      Number(new RegExp(` ${name}="([-\\d.]+)"`).exec(attributes!)?.[1]);
    const [x, y] = [number('x'), number('y')];
    const wide = text!.length * WIDE;
    const left = attributes!.includes('text-anchor="middle"') ? x - wide / 2 : x;
    return { text: text!, box: [left, y - LETTER / 2, left + wide, y + LETTER / 2] as const };
  });
  const steps = paths(svg, 'thin').filter(({ length }) => length === 3);
  return { walls: paths(svg, 'wall'), pieces: paths(svg, 'piece'), edges: paths(svg, 'edge'), steps, texts };
}

export const area = (polygon: Points): number =>
  Math.abs(
    polygon.reduce((sum, [x, y], i) => {
      const [u, v] = polygon[(i + 1) % polygon.length]!;
      return sum + x * v - u * y;
    }, 0),
  ) / 2;

/** Drawings run downwards: a polygon is turned round to be a window. */
const anticlockwise = (polygon: Points): Points => {
  const signed = polygon.reduce((sum, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length]!;
    return sum + x * v - u * y;
  }, 0);
  return signed < 0 ? [...polygon].reverse() : polygon;
};

/** How much of one convex polygon lies in another. */
export function shared(one: Points, other: Points): number {
  const cut = clipped(one, anticlockwise(other));
  return cut.length < 3 ? 0 : area(cut);
}

/** Texts of a drawing that run over one another. */
export function textsThatOverlap(svg: string): string[] {
  const { texts } = drawnFigures(svg);
  return texts.flatMap(({ text, box: a }, i) =>
    texts.slice(i + 1).flatMap(({ text: other, box: b }) => {
      const across = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
      const down = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
      return across > 0.5 && down > 0.5 ? [`${text} | ${other}`] : [];
    }),
  );
}
