import type { PlanEdge } from './centreOnCut';

/**
 * The two sides of an opening -half..half in the wall y -thickness..0, as solids in plan: each runs away from the
 * opening, so that what is clear of it is parted from it by a line through one of its two edges.
 * @param half half the opening's width [mm]
 * @param thickness of the wall [mm]; Infinity: what is before the opening is as wide as it
 */
export function jambs(half: number, thickness: number): PlanEdge[][] {
  return ([-1, 1] as const).map((side) => {
    const away = [side, 0] as const;
    const near: PlanEdge = { edge: [side * half, 0], from: [0, -1], to: away };
    if (thickness === Infinity) return [near];
    return [near, { edge: [side * half, -thickness], from: away, to: [0, 1] }];
  });
}
