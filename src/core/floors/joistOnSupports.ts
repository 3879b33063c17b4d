import type { Working, WorkingStep } from '../measures/working';
import type { JoistUsesInput } from './joistLoading';

/** What a joist is before any code is asked: its section, and the even loads that fall to it. */
export interface JoistOnSupports {
  /** Even loads on this one joist [kN/m, that is N/mm]. */
  readonly dead: number;
  /** [N/mm] */
  readonly imposed: number;
  /** Section modulus [mm3]. */
  readonly modulus: number;
  /** Second moment of area [mm4]. */
  readonly inertia: number;
  /** [mm2] */
  readonly area: number;
}

/** Writes one step of a working; undefined where none is kept. */
export type WriteStep = (
  what: string,
  formula: string,
  value: WorkingStep['value'],
  unit: string,
  source: string,
) => void;

/** How the checks of a joist write their steps; undefined where no working is asked for. */
export const stepsInto = (working: Working | undefined): WriteStep | undefined =>
  working && ((what, formula, value, unit, source) => working({ what, formula, value, unit, source }));

/**
 * The section of a joist and the even loads that fall to it, alike in every code.
 * @source statics of a rectangular section
 * @param input as `joistUses`
 */
export function joistOnSupports(input: JoistUsesInput, step?: WriteStep): JoistOnSupports {
  const { spacing, breadth, depth } = input;
  // kN/m2 times mm is N/mm once divided by 1000.
  const dead = (input.dead * spacing) / 1000;
  const imposed = (input.imposed * spacing) / 1000;
  const modulus = (breadth * depth ** 2) / 6;
  const inertia = (breadth * depth ** 3) / 12;
  step?.('Dead load on a joist', 'dead x spacing', dead, 'kN/m', 'statics');
  step?.('Imposed load on a joist', 'imposed x spacing', imposed, 'kN/m', 'statics');
  step?.('Section modulus', 'breadth depth^2 / 6', modulus, 'mm3', 'geometry');
  step?.('Second moment of area', 'breadth depth^3 / 12', inertia, 'mm4', 'geometry');
  return { dead, imposed, modulus, inertia, area: breadth * depth };
}
