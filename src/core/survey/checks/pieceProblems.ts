import { densitySlips } from './densitySlips';
import type { PieceRow } from '../table/readPieces';
import type { PieceMeasure, PieceProblem } from './surveyProblem';

/** What is wrong with one row of the pieces by itself. */
export function pieceProblems(row: PieceRow): PieceProblem[] {
  const { rowIndex, sizes } = row;
  const problems: PieceProblem[] = [];
  if (row.build === '') problems.push({ kind: 'no build', severity: 'error', rowIndex });
  if (row.piece === '') problems.push({ kind: 'no piece name', severity: 'warning', rowIndex });
  const refused = new Set<PieceMeasure>();
  for (const { measure, got, why } of row.refused) {
    refused.add(measure);
    problems.push({ kind: 'size refused', severity: 'error', rowIndex, measure, got, why });
  }
  for (const measure of ['length', 'breadth', 'thickness', 'mass'] as const) {
    const value = measure === 'mass' ? row.mass : sizes[measure];
    if (value !== undefined || refused.has(measure)) continue;
    problems.push({ kind: 'size not given', severity: 'error', rowIndex, measure });
  }
  if (!row.countGiven) problems.push({ kind: 'count taken as one', severity: 'warning', rowIndex });
  const { length, breadth, thickness } = sizes;
  if (length !== undefined && breadth !== undefined && thickness !== undefined) {
    if (length < breadth || breadth < thickness) {
      problems.push({
        kind: 'sizes out of order',
        severity: 'warning',
        rowIndex,
        sizes: [length, breadth, thickness],
      });
    }
  }
  problems.push(...densitySlips(row));
  return problems;
}
