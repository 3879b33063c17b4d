import type { Survey } from '../survey/groupSurveys';
import { judgeBuild, type Build, type BuildVerdict } from './buildVerdict';
import { prepareRoute, type PreparedRoute } from './preparedRoute';
import { stageBook } from './stageBook';

/** A build that is wanted for a survey, both as written. */
export interface Order {
  readonly survey: string;
  readonly build: string;
}

export interface SurveyVerdict {
  readonly survey: string;
  readonly verdict: BuildVerdict;
}

const nameKey = (name: string): string => name.trim().toLowerCase();

/**
 * Judges many surveys with one book, so that equal stages are answered once for equal pieces.
 * @param orders which build for which survey; undefined: every build for every survey
 * @param tape how far off a measure may be [mm]
 */
export function judgeSurveys(
  surveys: readonly Survey[],
  builds: readonly Build[],
  orders: readonly Order[] | undefined,
  allowance: number,
  tape: number,
): SurveyVerdict[] {
  const book = stageBook(tape);
  if (!orders) {
    // All are looked up first, so that the book knows which stages come again and forgets the others in time.
    const prepared = surveys.map((survey) => prepareRoute(survey.rows, book));
    return surveys.flatMap((survey, i) => {
      const route = prepared[i]!;
      const verdicts = builds.map((build) => ({
        survey: survey.name,
        verdict: judgeBuild(route, build, book, allowance),
      }));
      for (const { stage } of route.steps) if (stage) book.doneWith(stage);
      return verdicts;
    });
  }
  const routes = new Map<string, PreparedRoute>();
  const bySurvey = new Map(surveys.map((survey) => [nameKey(survey.name), survey]));
  const byBuild = new Map(builds.map((build) => [nameKey(build.name), build]));
  return orders.map((order) => {
    const key = nameKey(order.survey);
    const survey = bySurvey.get(key);
    const build = byBuild.get(nameKey(order.build));
    if (!survey) return unknown(order, `there is no survey "${order.survey}"`);
    if (!build) return unknown(order, `there is no build "${order.build}"`);
    let route = routes.get(key);
    if (!route) routes.set(key, (route = prepareRoute(survey.rows, book)));
    return { survey: survey.name, verdict: judgeBuild(route, build, book, allowance) };
  });
}

const unknown = ({ survey, build }: Order, reason: string): SurveyVerdict => ({
  survey,
  verdict: {
    build,
    verdict: 'not measured',
    clearance: undefined,
    step: undefined,
    stage: undefined,
    piece: '',
    pose: undefined,
    heaviest: undefined,
    carry: '',
    reason,
    caution: '',
  },
});
