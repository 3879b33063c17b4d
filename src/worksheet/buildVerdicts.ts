import { found, type Outcome } from '../core/measures/problem';
import { judgeBuild, type BuildVerdict } from '../core/route/buildVerdict';
import { prepareRoute } from '../core/route/preparedRoute';
import { routeCases } from '../core/route/routeCases';
import { stageBook } from '../core/route/stageBook';
import { tapeOf } from '../core/survey/table/stageRow';
import type { Table } from './description';
import { checkFirst } from './checkFirst';
import { buildsOf, readOneRoute } from './routeInputs';

/** Judges every build of a table of pieces on one route, in the order of the table. */
export function buildVerdicts(asked: {
  readonly route: Table;
  readonly pieces: Table;
  /** [mm] */
  readonly allowance: number;
  /** [mm] */
  readonly tape: number;
}): Outcome<readonly BuildVerdict[]> {
  const read = readOneRoute(asked.route);
  if (!read.ok) return read;
  const builds = buildsOf(asked.pieces);
  if (!builds.ok) return builds;
  const book = stageBook(tapeOf(read.value.rows, asked.tape));
  const route = prepareRoute(read.value.rows, book);
  const caseOf = routeCases(route, book, asked.allowance);
  const first = checkFirst(read.value.read);
  return found(builds.value.map((build) => first(route.survey, judgeBuild(route, build, caseOf))));
}
