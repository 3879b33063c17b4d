import { handlers } from './handlers';
import { GUIDELINE_EACH } from './teamLimit';

/** What is advised for the heaviest piece. */
export type CarryAdvice =
  | 'within the guideline for 2 on the level'
  | 'within the guideline for 3 on the level'
  | 'mechanical aid and a written assessment';

/**
 * How the heaviest piece may be handled, in words. A table's piece is never a one-man lift, so 2 is the least named.
 *
 * @source HSE L23 team factors on 25 kg each, see `teamLimit`; no guidance covers stairs.
 * @param massKg mass of the heaviest piece [kg]
 * @example carryAdvice(120) // 'mechanical aid and a written assessment'
 */
export function carryAdvice(massKg: number): CarryAdvice {
  const fewest = handlers({ mass: massKg, limitEach: GUIDELINE_EACH });
  if (!fewest.ok) return 'mechanical aid and a written assessment';
  return fewest.value <= 2
    ? 'within the guideline for 2 on the level'
    : 'within the guideline for 3 on the level';
}
