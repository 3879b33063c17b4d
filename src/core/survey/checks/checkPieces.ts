import type { Cell } from '../../measures/readQuantity';
import { buildProblems } from './buildProblems';
import { errorsFirst } from './errorsFirst';
import { pieceProblems } from './pieceProblems';
import { readPieces } from '../table/readPieces';
import type { SurveyProblem } from './surveyProblem';

/**
 * Checks the pieces of all builds: each row by itself, mass against sizes, then each build as a whole.
 * @param table rows of cells, the header row first
 * @returns the problems by row, those of the header row first (rowIndex -1), errors before warnings
 */
export function checkPieces(table: readonly (readonly Cell[])[]): SurveyProblem[] {
  const { pieces, builds, problems } = readPieces(table);
  return errorsFirst<SurveyProblem>([
    ...problems,
    ...pieces.flatMap(pieceProblems),
    ...buildProblems(builds),
  ]);
}
