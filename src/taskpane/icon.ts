import { PNG } from 'pngjs';
import { entryAt } from '../core/lists/entryAt';
import { sides } from '../core/lists/pairs';

export const ICON_SIZES = [16, 20, 32, 64, 80] as const;

type Point = readonly [number, number];

// The drawing, on a square of side 1: three steps going up, and a slab tilted with the pitch above them.
const STEPS: readonly Point[] = [
  [0.06, 0.94],
  [0.06, 0.76],
  [0.34, 0.76],
  [0.34, 0.58],
  [0.62, 0.58],
  [0.62, 0.4],
  [0.94, 0.4],
  [0.94, 0.94],
];
const SLAB: readonly Point[] = [
  [0.05, 0.5],
  [0.68, 0.09],
  [0.77, 0.23],
  [0.14, 0.64],
];
const STEP_COLOUR = [96, 74, 52] as const;
const SLAB_COLOUR = [22, 110, 92] as const;

// Samples a pixel side, for smooth edges at 16 px.
const SAMPLES = 6;

/** The add-in's icon as a PNG of `size` pixels. */
export function iconPng(size: number): Buffer {
  const png = new PNG({ width: size, height: size });
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      let steps = 0;
      let slab = 0;
      for (let i = 0; i < SAMPLES * SAMPLES; i++) {
        const at: Point = [
          (x + ((i % SAMPLES) + 0.5) / SAMPLES) / size,
          (y + (Math.floor(i / SAMPLES) + 0.5) / SAMPLES) / size,
        ];
        if (inside(SLAB, at)) slab++;
        else if (inside(STEPS, at)) steps++;
      }
      const covered = slab + steps;
      const offset = (y * size + x) * 4;
      for (let channel = 0; channel < 3; channel++) {
        png.data[offset + channel] =
          covered === 0
            ? 0
            : Math.round(
                (slab * entryAt(SLAB_COLOUR, channel) + steps * entryAt(STEP_COLOUR, channel)) / covered,
              );
      }
      png.data[offset + 3] = Math.round((255 * covered) / (SAMPLES * SAMPLES));
    }
  }
  return PNG.sync.write(png);
}

function inside(polygon: readonly Point[], [x, y]: Point): boolean {
  let odd = false;
  for (const [[xj, yj], [xi, yi]] of sides(polygon)) {
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd;
  }
  return odd;
}
