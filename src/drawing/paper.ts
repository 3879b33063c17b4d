import { escapeMarkup } from './escapeMarkup';
import type { Point, Points } from './plane';
import { shownGiven } from '../core/measures/shown';

/** Size of the letters, and what a letter takes across on average [px]. */
const LETTER = 11;
const LETTER_WIDTH = 6.1;
/** From one line of words to the next [px]. */
const LINE = 14;
/** How far a dimension line passes its end, and the half of the oblique stroke at its ends [px]. */
const OVERRUN = 4;
const TICK = 4;

type LineStyle = 'face' | 'edge' | 'thin' | 'dashed' | 'chain';

type Item =
  | { readonly kind: 'line'; readonly points: Points; readonly closed: boolean; readonly style: LineStyle }
  | { readonly kind: 'wall'; readonly points: Points }
  | { readonly kind: 'piece'; readonly points: Points }
  | { readonly kind: 'mark'; readonly at: Point }
  | { readonly kind: 'arrow'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'dimension';
      readonly from: Point;
      readonly to: Point;
      readonly offset: number;
      readonly text: string;
      readonly name: string;
      readonly marked?: true;
    }
  | {
      readonly kind: 'label';
      readonly at: Point;
      readonly dx: number;
      readonly dy: number;
      readonly text: string;
      /** What is counted or read there, where it is no length. */
      readonly name?: string;
    };

/** How a dimension is lettered. */
export interface Lettered {
  readonly letter: string;
  /** Drawn heavy, with a question mark. */
  readonly marked: boolean;
}

const LINES: Readonly<Record<LineStyle, string>> = {
  face: 'stroke-width="1.6"',
  edge: 'stroke-width="1"',
  thin: 'stroke-width="0.7"',
  dashed: 'stroke-width="0.9" stroke-dasharray="4 3"',
  chain: 'stroke-width="0.8" stroke-dasharray="9 3 2 3"',
};

type Pixel = readonly [number, number];

/** Length as it is written in a drawing. */
export const mmText = (mm: number): string => String(shownGiven(mm));

/**
 * A sheet to draw on, in mm at one scale for both axes. It remembers the name and value of every dimension,
 * so that the words beside the drawing say what is drawn. Only presentation attributes and classes: a page
 * may forbid inline styles. Black and white by line styles and hatching; colours come from the page
 * (`currentColor`, `Canvas`), so light, dark and forced colours all work.
 */
export class Paper {
  private items: Item[] = [];
  private readonly said: string[] = [];
  private readonly notes: string[] = [];

  /** Solid building, cut through: hatched. */
  wall(points: Points): void {
    this.items.push({ kind: 'wall', points });
  }

  line(points: Points, style: LineStyle): void {
    this.items.push({ kind: 'line', points, closed: false, style });
  }

  /** A line that comes back to where it began. */
  outline(points: Points, style: LineStyle): void {
    this.items.push({ kind: 'line', points, closed: true, style });
  }

  /** The piece: a heavy outline over everything behind it. */
  piece(points: Points): void {
    this.items.push({ kind: 'piece', points });
  }

  /** An arrow, its head of one size at any scale. */
  arrow(from: Point, to: Point): void {
    this.items.push({ kind: 'arrow', from, to });
  }

  /** A ring round a place where the piece is closest. */
  mark(at: Point): void {
    this.items.push({ kind: 'mark', at });
  }

  /**
   * A dimension from one point to another, `offset` px to the left as one looks along it.
   * @param name what is measured, for the words; '' when the words have it already
   */
  dimension(from: Point, to: Point, offset: number, name: string, mm: number): void {
    this.items.push({ kind: 'dimension', from, to, offset, text: mmText(mm), name });
    if (name) this.said.push(`${name} ${mmText(mm)}`);
  }

  /** A word beside a point, moved by dx, dy px (dy downwards). */
  label(at: Point, text: string, dx = 0, dy = 0): void {
    this.items.push({ kind: 'label', at, dx, dy, text });
  }

  /** A place where something is counted or read, to be lettered. */
  counted(at: Point, name: string, dx = 0, dy = 0): void {
    this.items.push({ kind: 'label', at, dx, dy, text: '', name });
  }

  /** A line of words under the drawing. */
  note(text: string): void {
    this.notes.push(text);
  }

  /**
   * Letters in place of figures, for a drawing that shows where the tape goes and not what it read.
   * @param letterOf the letter for a name, and whether it is drawn heavy, with a question mark; a line of dimension that has none is left out
   * @returns the names that were met, each once
   */
  letter(letterOf: (name: string) => Lettered | undefined): readonly string[] {
    const met = new Set<string>();
    this.items = this.items.flatMap((item): Item[] => {
      const { name } = item as { readonly name?: string };
      if (name === undefined) return [item];
      const lettered = name === '' ? undefined : letterOf(name);
      if (!lettered) return item.kind === 'dimension' ? [] : [{ ...item, text: '' } as Item];
      met.add(name);
      const text = lettered.marked ? `${lettered.letter} ?` : lettered.letter;
      if (item.kind === 'label') return [{ ...item, text }];
      return [
        {
          ...(item as Extract<Item, { kind: 'dimension' }>),
          text,
          ...(lettered.marked ? { marked: true } : {}),
        },
      ];
    });
    return [...met];
  }

  /** Leaves out what was noted so far. */
  clearNotes(): void {
    this.notes.length = 0;
  }

  /** The notes so far. */
  get noted(): readonly string[] {
    return this.notes;
  }

  /** What was dimensioned, in the order drawn. */
  get dimensions(): readonly string[] {
    return this.said;
  }

  /** The drawing, at most `width` x `height` px large. */
  svg(
    title: string,
    description: string,
    id: string,
    width: number,
    height: number,
    under: 'with notes' | 'without notes' = 'with notes',
  ): string {
    const points = this.items.flatMap(modelPoints);
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    const spanX = Math.max(1, Math.max(...xs) - Math.min(...xs));
    const spanY = Math.max(1, Math.max(...ys) - Math.min(...ys));
    let scale = Math.min(width / spanX, height / spanY);
    let drawn = this.drawAt(scale, id);
    // What stands round the drawing (dimensions, words) does not scale: shrink the rest until all fits.
    for (let i = 0; i < 4; i++) {
      const beyondX = drawn.right - drawn.left - spanX * scale;
      const beyondY = drawn.bottom - drawn.top - spanY * scale;
      const next = Math.min((width - beyondX) / spanX, (height - beyondY) / spanY);
      if (next >= scale || next <= 0) break;
      scale = next;
      drawn = this.drawAt(scale, id);
    }
    const w = Math.max(drawn.right - drawn.left, width);
    const left = (drawn.left + drawn.right - w) / 2;
    const notesShown = under === 'with notes' ? this.notes : [];
    const lines = notesShown.flatMap((note) => wrapped(note, Math.floor(w / LETTER_WIDTH)));
    const h = drawn.bottom - drawn.top + lines.length * LINE + (lines.length > 0 ? LINE / 2 : 0);
    const notes = lines.map(
      (line, i) =>
        `<text class="note" x="${n1(left)}" y="${n1(drawn.bottom + (i + 1.1) * LINE)}" fill="currentColor" ` +
        `stroke="none">${escapeMarkup(line)}</text>`,
    );
    const view = [left, drawn.top, w, h].map(n1).join(' ');
    return (
      `<svg xmlns="http://www.w3.org/2000/svg" class="stage-drawing" role="img" ` +
      `aria-labelledby="${id}-t" aria-describedby="${id}-d" viewBox="${view}" width="${n1(w)}" height="${n1(h)}" ` +
      `fill="none" stroke="currentColor" font-family="system-ui, sans-serif" font-size="${LETTER}">` +
      `<title id="${id}-t">${escapeMarkup(title)}</title><desc id="${id}-d">${escapeMarkup(description)}</desc>` +
      `<defs><pattern id="${id}-h" width="6" height="6" patternUnits="userSpaceOnUse" ` +
      `patternTransform="rotate(45)"><path d="M0 0V6" stroke="currentColor" stroke-width="0.9"/></pattern></defs>` +
      `${drawn.marks.join('')}${notes.join('')}</svg>`
    );
  }

  private drawAt(scale: number, id: string) {
    const extent = new Extent();
    const at = ([x, y]: Point): Pixel => [x * scale, -y * scale];
    const marks: string[] = [];
    const order = ['wall', 'line', 'arrow', 'piece', 'mark', 'dimension', 'label'] as const;
    for (const kind of order) {
      for (const item of this.items) {
        if (item.kind === kind) marks.push(drawItem(item, at, id, extent));
      }
    }
    return { marks, ...extent.padded(2) };
  }
}

function modelPoints(item: Item): Points {
  switch (item.kind) {
    case 'arrow':
    case 'dimension':
      return [item.from, item.to];
    case 'label':
    case 'mark':
      return [item.at];
    default:
      return item.points;
  }
}

class Extent {
  private left = Infinity;
  private right = -Infinity;
  private top = Infinity;
  private bottom = -Infinity;

  take(x: number, y: number): void {
    this.left = Math.min(this.left, x);
    this.right = Math.max(this.right, x);
    this.top = Math.min(this.top, y);
    this.bottom = Math.max(this.bottom, y);
  }

  padded(by: number) {
    return {
      left: this.left - by,
      right: this.right + by,
      top: this.top - by,
      bottom: this.bottom + by,
    };
  }
}

/** Words in lines of at most `most` letters. */
function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

const n1 = (n: number): string => String(Math.round(n * 10) / 10);
const pair = ([x, y]: Pixel): string => `${n1(x)} ${n1(y)}`;

function drawItem(item: Item, at: (p: Point) => Pixel, id: string, extent: Extent): string {
  switch (item.kind) {
    case 'wall':
      return `<path class="wall" d="${path(item.points, at, extent, true)}" fill="url(#${id}-h)" stroke="none"/>`;
    case 'line':
      return `<path class="${item.style}" d="${path(item.points, at, extent, item.closed)}" ${LINES[item.style]}/>`;
    case 'piece':
      return (
        `<path class="piece" d="${path(item.points, at, extent, true)}" fill="Canvas" fill-opacity="0.8" ` +
        `stroke-width="2.4" stroke-linejoin="round"/>`
      );
    case 'arrow':
      return drawArrow(at(item.from), at(item.to), extent);
    case 'mark': {
      const [x, y] = at(item.at);
      extent.take(x - 6, y - 6);
      extent.take(x + 6, y + 6);
      return `<circle class="mark" cx="${n1(x)}" cy="${n1(y)}" r="5.5" stroke-width="1.5"/>`;
    }
    case 'label': {
      const [x, y] = at(item.at);
      return words(item.text, x + item.dx, y + item.dy, 0, extent);
    }
    case 'dimension':
      return drawDimension(item, at, extent);
  }
}

/** Length of an arrow's head, and half its breadth [px]. */
const HEAD = 7;
const HEAD_HALF = 3;

function drawArrow([ax, ay]: Pixel, [bx, by]: Pixel, extent: Extent): string {
  const length = Math.hypot(bx - ax, by - ay);
  if (length < 1e-6) return '';
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  const back: Pixel = [bx - ux * HEAD, by - uy * HEAD];
  const one: Pixel = [back[0] - uy * HEAD_HALF, back[1] + ux * HEAD_HALF];
  const other: Pixel = [back[0] + uy * HEAD_HALF, back[1] - ux * HEAD_HALF];
  for (const [x, y] of [[ax, ay], [bx, by], one, other] as const) extent.take(x, y);
  return (
    `<path class="arrow" d="M${pair([ax, ay])}L${pair(back)}" stroke-width="1"/>` +
    `<path class="arrow-head" d="M${pair([bx, by])}L${pair(one)}L${pair(other)}Z" fill="currentColor" stroke="none"/>`
  );
}

function path(points: Points, at: (p: Point) => Pixel, extent: Extent, closed: boolean): string {
  const pixels = points.map(at);
  for (const [x, y] of pixels) extent.take(x, y);
  return `M${pixels.map(pair).join('L')}${closed ? 'Z' : ''}`;
}

/** Words centred on a point, turned by `degrees`; the halo keeps them legible over hatching. */
function words(text: string, x: number, y: number, degrees: number, extent: Extent): string {
  const half = (text.length * LETTER_WIDTH) / 2;
  const c = Math.abs(Math.cos((degrees * Math.PI) / 180));
  const s = Math.abs(Math.sin((degrees * Math.PI) / 180));
  const reachX = half * c + (LETTER / 2) * s;
  const reachY = half * s + (LETTER / 2) * c;
  extent.take(x - reachX, y - reachY);
  extent.take(x + reachX, y + reachY);
  const turn = degrees === 0 ? '' : ` transform="rotate(${n1(degrees)} ${n1(x)} ${n1(y)})"`;
  return (
    `<text x="${n1(x)}" y="${n1(y)}" dy="0.35em" text-anchor="middle" fill="currentColor" stroke="Canvas" ` +
    `stroke-width="3" stroke-linejoin="round" paint-order="stroke"${turn}>${escapeMarkup(text)}</text>`
  );
}

function drawDimension(
  item: Extract<Item, { kind: 'dimension' }>,
  at: (p: Point) => Pixel,
  extent: Extent,
): string {
  const [ax, ay] = at(item.from);
  const [bx, by] = at(item.to);
  const length = Math.hypot(bx - ax, by - ay);
  if (length < 1e-6) return '';
  const ux = (bx - ax) / length;
  const uy = (by - ay) / length;
  // To the left as one looks along it, on a page whose y points down.
  const nx = uy;
  const ny = -ux;
  const side = Math.sign(item.offset) || 1;
  const a: Pixel = [ax + nx * item.offset, ay + ny * item.offset];
  const b: Pixel = [bx + nx * item.offset, by + ny * item.offset];
  const strokes: string[] = [];
  const stroke = (p: Pixel, q: Pixel): void => {
    strokes.push(`M${pair(p)}L${pair(q)}`);
    extent.take(...p);
    extent.take(...q);
  };
  const reach = side * OVERRUN;
  if (Math.abs(item.offset) > 3) {
    for (const [from, to] of [
      [[ax, ay], a],
      [[bx, by], b],
    ] as const) {
      stroke([from[0] + nx * side * 2, from[1] + ny * side * 2], [to[0] + nx * reach, to[1] + ny * reach]);
    }
  }
  const wide = item.text.length * LETTER_WIDTH + 4;
  const outside = wide > length - 4;
  const tail = outside ? wide + OVERRUN : OVERRUN;
  stroke([a[0] - ux * OVERRUN, a[1] - uy * OVERRUN], [b[0] + ux * tail, b[1] + uy * tail]);
  const tick = (p: Pixel): void =>
    stroke(
      [p[0] - (ux - nx) * TICK * 0.7, p[1] - (uy - ny) * TICK * 0.7],
      [p[0] + (ux - nx) * TICK * 0.7, p[1] + (uy - ny) * TICK * 0.7],
    );
  tick(a);
  tick(b);
  // Read from below or from the right.
  let degrees = (Math.atan2(uy, ux) * 180) / Math.PI;
  if (degrees > 90.01) degrees -= 180;
  else if (degrees <= -90.01) degrees += 180;
  else if (degrees > 89.99) degrees = -90;
  const along = outside ? length + OVERRUN + wide / 2 : length / 2;
  const above = LETTER / 2 + 2;
  const up: Pixel = [Math.sin((degrees * Math.PI) / 180), -Math.cos((degrees * Math.PI) / 180)];
  const text = words(
    item.text,
    a[0] + ux * along + up[0] * above,
    a[1] + uy * along + up[1] * above,
    degrees,
    extent,
  );
  const [name, wideness] = item.marked ? ['dimension missing', 2] : ['dimension', 0.8];
  return `<path class="${name}" d="${strokes.join('')}" stroke-width="${wideness}"/>${text}`;
}
