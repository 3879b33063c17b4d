import type { FunctionDescription } from '../description';
import { corner } from './corner';
import { cornerLength } from './cornerLength';
import { diagonal } from './diagonal';
import { diagonalAngle } from './diagonalAngle';
import { flight } from './flight';
import { opening } from './opening';
import { pitch } from './pitch';
import { toKg } from './toKg';
import { toMm } from './toMm';
import { upend } from './upend';

/** Every function of the add-in, in the order of the reference. A new function is a file and a line here. */
export const FUNCTIONS: readonly FunctionDescription[] = [
  // Measures and pieces
  toMm,
  toKg,
  // Clearance
  opening,
  diagonal,
  diagonalAngle,
  corner,
  cornerLength,
  upend,
  pitch,
  flight,
  // Carrying
  // Floors
  // Room
  // Routes and surveys
];
