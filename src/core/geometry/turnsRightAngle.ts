import { leastBetween } from './goldenSection';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, cbrt, cos, max, min, pow, sin } = Math;

const HALF_PI = PI / 2;
// Angles first looked at, ends included; every dip between them is then narrowed down.
const SAMPLES = 33;
const STEP = HALF_PI / (SAMPLES - 1);
const SIN = Array.from({ length: SAMPLES }, (_, i) => sin(i * STEP));
const COS = Array.from({ length: SAMPLES }, (_, i) => cos(i * STEP));
// How often a dip is narrowed down.
const NARROWINGS = 36;

/**
 * The greatest padding with which a rectangle p x q can be turned through the right angle between the arms of
 * a corner, from lying along the one to lying along the other, apart from fitting in the arms at the ends. At
 * each angle it stands across the first arm, across the second, or with its long side on the inner corner,
 * whichever leaves most; the angle that leaves least decides.
 *
 * With `rectangleRoundCornerInHold`, which does this for any turn and any ends, it shares the formula and not the
 * search: this one is for the many.
 * @source Moretti, College Math. J. 33(3), 2002, 196-200, solved for the padding; the ladder where the padding
 *   would take the short side away
 * @param p long side [mm]
 * @param q short side [mm]
 * @param b1 width of the first arm [mm]
 * @param b2 width of the second arm [mm]
 * @returns padding [mm a side]
 * @example turnsRightAngle(1830, 25, 900, 900) // 110.93
 */
export function turnsRightAngle(p: number, q: number, b1: number, b2: number): number {
  let least = Infinity;
  let before = Infinity;
  let here = at(p, q, b1, b2, SIN[0]!, COS[0]!);
  for (let i = 0; i < SAMPLES; i++) {
    const after = i + 1 < SAMPLES ? at(p, q, b1, b2, SIN[i + 1]!, COS[i + 1]!) : Infinity;
    if (here <= before && here <= after) {
      const dip = leastBetween(
        (f) => at(p, q, b1, b2, sin(f), cos(f)),
        max(0, i - 1) * STEP,
        min(SAMPLES - 1, i + 1) * STEP,
        NARROWINGS,
      );
      least = min(least, dip.value, here);
    }
    before = here;
    here = after;
  }
  if (least >= -q / 2) return least;
  const ladder = pow(cbrt(b1) ** 2 + cbrt(b2) ** 2, 1.5);
  return max(-p / 2, min((ladder - p) / 2, -q / 2));
}

function at(p: number, q: number, b1: number, b2: number, s: number, c: number): number {
  const both = 2 * (s + c);
  const first = (b1 - p * s - q * c) / both;
  const second = (b2 - p * c - q * s) / both;
  const corner = (b1 * c + b2 * s - p * s * c - q) / (2 * (s * c + 1));
  return max(first, second, corner);
}
