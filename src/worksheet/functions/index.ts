import type { FunctionDescription } from '../description';
import { toKg } from './toKg';
import { toMm } from './toMm';

/** Every function of the add-in, in the order of the reference. A new function is a file and a line here. */
export const FUNCTIONS: readonly FunctionDescription[] = [
  // Measures and pieces
  toMm,
  toKg,
  // Clearance
  // Carrying
  // Floors
  // Room
  // Routes and surveys
];
