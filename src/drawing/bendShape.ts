import type { Point } from './plane';

/**
 * The shape of a bend in its own coordinates: the way in runs up along y between x = 0 (outer wall) and
 * x = widthIn (inner wall); the inner corner is at (widthIn, 0); the way out turns right by `turn` [rad].
 */
export function bendShape(widthIn: number, widthOut: number, turn: number) {
  const inner: Point = [widthIn, 0];
  /** Direction of the way out, and the normal from its inner to its outer wall. */
  const out: Point = [Math.sin(turn), Math.cos(turn)];
  const normal: Point = [-Math.cos(turn), Math.sin(turn)];
  /** The point `s` along the way out, `across` from its inner wall. */
  const alongOut = (s: number, across: number): Point => [
    inner[0] + s * out[0] + across * normal[0],
    inner[1] + s * out[1] + across * normal[1],
  ];
  /** How far along the way out the line x = `x` meets the line `across` from the inner wall. */
  const meets = (x: number, across: number): number => (x - inner[0] - across * normal[0]) / out[0];
  return { inner, out, normal, alongOut, meets, outer: alongOut(meets(0, widthOut), widthOut) };
}
