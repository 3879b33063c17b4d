import type { PieceSize } from '../measures/piece';
import type { StagePassage } from '../motion/stagePassage';
import type { StageName } from '../stages/kinds';
import { routePassages, SEARCH_WORK, searchedPassages } from '../stages/landing/searchedStage';
import { solverOf, type PlacedMeasures } from '../stages/solvers';

/**
 * Every passage through a stage that can be shown for a piece, by how it is held before and after. The measures
 * that the stage needs must be there; the caller sees to that.
 *
 * @param search landings and winders: `full`, or as coarsely as within a route, no further than is enough there
 */
export function stagePassages(
  stage: StageName,
  measures: PlacedMeasures,
  piece: PieceSize,
  search: 'full' | 'as in a route' = 'full',
): StagePassage[] {
  const solver = solverOf(stage);
  if (solver.solvedBy === 'closed form') return solver.passages(measures, piece, 'with leaning');
  const searched = solver.searched(measures);
  return search === 'full'
    ? searchedPassages(searched, piece, SEARCH_WORK)
    : routePassages(searched, piece, SEARCH_WORK).map(({ passage }) => passage);
}
