import { runToEnd, type Parts } from '../measures/parts';
import type { Survey } from '../survey/table/groupSurveys';
import { judgeBuild, outermost, type Build, type BuildVerdict } from './buildVerdict';
import { prepareRoute } from './preparedRoute';
import { routeCases } from './routeCases';
import { stageBook, type StageBook } from './stageBook';
import { tapeOf } from '../survey/table/stageRow';
import { entryAt } from '../lists/entryAt';

/** A build that is wanted for a survey, both as written. */
export interface Order {
  readonly survey: string;
  readonly build: string;
}

/** What is said of one build on one survey. */
export interface SurveyVerdict {
  readonly survey: string;
  readonly verdict: BuildVerdict;
}

const nameKey = (name: string): string => name.trim().toLowerCase();

/** A survey with the builds wanted for it, each with its place in the answer. */
interface Wanted {
  readonly survey: Survey;
  readonly builds: { readonly build: Build; readonly at: number }[];
}

/**
 * Judges many surveys with one book, so that equal stages are answered once for equal pieces.
 * @param orders which build for which survey; undefined: every build for every survey
 * @param tape how far off a measure may be [mm]
 * @internal the function on the sheet takes the parts, so that it can pause; the tests take the whole
 */
export const judgeSurveys = (
  surveys: readonly Survey[],
  builds: readonly Build[],
  orders: readonly Order[] | undefined,
  allowance: number,
  tape: number,
): SurveyVerdict[] => runToEnd(judgeSurveysInParts(surveys, builds, orders, allowance, tape));

/**
 * The same as `judgeSurveys`, with a pause after each piece of each build of each survey.
 * @param allowance [mm a side]
 * @param tape how far off a measure may be [mm]
 */
export function* judgeSurveysInParts(
  surveys: readonly Survey[],
  builds: readonly Build[],
  orders: readonly Order[] | undefined,
  allowance: number,
  tape: number,
): Parts<SurveyVerdict[]> {
  // A survey may have a tape of its own.
  const books = new Map<number, StageBook>();
  const bookOf = ({ rows }: Survey): StageBook => {
    const own = tapeOf(rows, tape);
    const known = books.get(own) ?? stageBook(own);
    books.set(own, known);
    return known;
  };
  const verdicts: SurveyVerdict[] = [];
  const wanted = orders
    ? ordered(surveys, builds, orders, verdicts)
    : surveys.map((survey, i): Wanted => ({
        survey,
        builds: builds.map((build, j) => ({ build, at: i * builds.length + j })),
      }));
  // All are looked up first, so that the book knows which stages come again and forgets the others in time.
  const routes = wanted.map(({ survey }) => prepareRoute(survey.rows, bookOf(survey)));
  const of = wanted.reduce((sum, { builds: asked }) => sum + asked.length, 0);
  let done = 0;
  for (const [i, { survey, builds: asked }] of wanted.entries()) {
    const route = entryAt(routes, i);
    const book = bookOf(survey);
    const caseOf = routeCases(route, book, allowance);
    for (const { build, at } of asked) {
      // A piece may take seconds by itself, so a pause comes after each: the build's verdict then finds them judged.
      for (const { size } of outermost(build.pieces)) {
        if (size) caseOf(size);
        yield { done, of };
      }
      verdicts[at] = { survey: survey.name, verdict: judgeBuild(route, build, caseOf) };
      yield { done: ++done, of };
    }
    for (const stage of route.stages) book.doneWith(stage);
  }
  return verdicts;
}

/** The surveys that were ordered; what is not known is answered at once, in its place among the verdicts. */
function ordered(
  surveys: readonly Survey[],
  builds: readonly Build[],
  orders: readonly Order[],
  verdicts: SurveyVerdict[],
): Wanted[] {
  const bySurvey = new Map(surveys.map((survey) => [nameKey(survey.name), survey]));
  const byBuild = new Map(builds.map((build) => [nameKey(build.name), build]));
  const wanted = new Map<Survey, Wanted>();
  orders.forEach((order, at) => {
    const survey = bySurvey.get(nameKey(order.survey));
    const build = byBuild.get(nameKey(order.build));
    if (!survey) verdicts[at] = unknown(order, `there is no survey "${order.survey}"`);
    else if (!build) verdicts[at] = unknown(order, `there is no build "${order.build}"`);
    else {
      const known = wanted.get(survey);
      if (known) known.builds.push({ build, at });
      else wanted.set(survey, { survey, builds: [{ build, at }] });
    }
  });
  return [...wanted.values()];
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
