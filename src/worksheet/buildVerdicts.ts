import { found, type Outcome } from '../core/measures/problem';
import { judgeBuild, type BuildVerdict } from '../core/route/buildVerdict';
import { prepareRoute } from '../core/route/preparedRoute';
import { routeCases } from '../core/route/routeCases';
import { stageBook } from '../core/route/stageBook';
import { tapeOf } from '../core/survey/table/stageRow';
import { checkFirst } from './checkFirst';
import { buildsOf, readOneRoute, type Table } from './routeInputs';

/** Judges every build of a table of pieces on one route, in the order of the table. */
export function buildVerdicts(
  routeTable: Table,
  piecesTable: Table,
  allowance: number,
  tape: number,
): Outcome<readonly BuildVerdict[]> {
  const read = readOneRoute(routeTable);
  if (!read.ok) return read;
  const builds = buildsOf(piecesTable);
  if (!builds.ok) return builds;
  const book = stageBook(tapeOf(read.value.rows, tape));
  const route = prepareRoute(read.value.rows, book);
  const caseOf = routeCases(route, book, allowance);
  const first = checkFirst(read.value.read);
  return found(builds.value.map((build) => first(route.survey, judgeBuild(route, build, caseOf))));
}
