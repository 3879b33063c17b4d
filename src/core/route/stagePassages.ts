import type { PieceSize } from '../measures/piece';
import type { StagePassage } from '../motion/stagePassage';
import type { StageName } from '../stages/kinds';
import { routePassages, SEARCH_WORK } from '../stages/landing/landingPassages';
import { solverOf, type PlacedMeasures } from '../stages/solvers';

/**
 * Every passage through a stage that can be shown for a piece, by how it is held before and after. The measures
 * that the stage needs must be there; the caller sees to that.
 *
 * @param search landings and winders: without chance, or with what a search may find besides, as within a route
 */
export function stagePassages(
  stage: StageName,
  measures: PlacedMeasures,
  piece: PieceSize,
  search: 'without chance' | 'as in a route' = 'without chance',
): StagePassage[] {
  const solver = solverOf(stage);
  if (solver.solvedBy === 'closed form') return solver.passages(measures, piece, 'with leaning');
  const searched = solver.searched(measures);
  const passages = routePassages(searched, piece, SEARCH_WORK).map(({ passage }) => passage);
  return search === 'as in a route' ? passages : passages.filter(({ answer }) => answer.byChance !== true);
}
