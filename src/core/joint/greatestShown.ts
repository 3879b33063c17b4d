import type { JointAsk } from './jointRow';

/** What a decision at one padding shows. */
export interface Shown<T> {
  /** Padding [mm a side] at which it is shown. */
  readonly clearance: number;
  readonly by: T;
}

/** How near the greatest padding has to be where nothing else is asked [mm]. */
const TOLERANCE = 2;
/** Paddings looked at upward from the least asked for, before halving [mm]. */
const FIRST_STRIDE = 16;

/**
 * The greatest padding on a fixed grid for which something can be shown: first the least that is asked for, and nothing
 * where that fails; then what is enough, or by growing strides and halving. Tried on a grid of its own, so that the answer does
 * not depend on what is asked.
 *
 * @param most padding known to be impossible to beat [mm a side]
 * @param least padding from which on it is of interest, where the ask says nothing [mm a side]
 */
export function greatestShown<T>(
  ask: JointAsk,
  least: number,
  most: number,
  decide: (padding: number) => T | undefined,
): Shown<T> | undefined {
  const tolerance = ask.tolerance ?? TOLERANCE;
  const wanted = Math.max(least, ask.atLeast ?? least);
  const top = Math.min(most, ask.enough ?? most);
  if (!(top >= wanted)) return undefined;
  const first = decide(wanted);
  if (first === undefined) return undefined;
  let best: Shown<T> = { clearance: wanted, by: first };
  if (top - wanted < tolerance / 2) return best;
  const atTop = decide(top);
  if (atTop !== undefined) return { clearance: top, by: atTop };
  // Grid points strictly between the two.
  let low = Math.floor(wanted / tolerance);
  let high = Math.ceil(top / tolerance);
  let stride = Math.max(1, Math.round(FIRST_STRIDE / tolerance));
  let growing = true;
  while (high - low > 1) {
    const middle = growing && low + stride < high ? low + stride : Math.floor((low + high) / 2);
    const padding = middle * tolerance;
    const shown = padding > wanted ? decide(padding) : best.by;
    if (shown === undefined) {
      high = middle;
      growing = false;
    } else {
      low = middle;
      if (padding > best.clearance) best = { clearance: padding, by: shown };
      stride *= 2;
    }
  }
  return best;
}
