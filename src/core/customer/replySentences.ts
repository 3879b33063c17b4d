import { CAUTIONS } from '../measures/cautions';
import { judgeBuild, type Build, type BuildVerdict } from '../route/buildVerdict';
import { prepareRoute, type PreparedRoute } from '../route/preparedRoute';
import { remeasure, type Remeasure } from '../route/remeasure';
import { routeCases } from '../route/routeCases';
import type { StageBook } from '../route/stageBook';
import { verdictRank, type Verdict } from '../route/verdict';
import type { RouteRead } from '../survey/table/readRoute';
import type { StageRow } from '../survey/table/stageRow';
import { customerQuestions } from './customerQuestions';
import { measurePhrase } from './measurePhrase';
import { placeWords } from './placeWords';
import { mm, mmNeededFrom } from '../route/reason';

/** A sentence for the customer, and what it is about. */
export interface ReplySentence {
  readonly about: string;
  readonly sentence: string;
}

/** What a reply is made from. */
export interface ReplyAsked {
  readonly read: RouteRead;
  /** The one survey's rows, in the order of the steps. */
  readonly rows: readonly StageRow[];
  readonly builds: readonly Build[];
  readonly book: StageBook;
  /** The clearance the firm insists on [mm a side]. */
  readonly allowance: number;
}

const ABOUT: Readonly<Record<Verdict, string>> = {
  goes: 'Fits',
  tight: 'Fits narrowly',
  'no way found': 'Not sure',
  'not measured': 'Not known yet',
  'cannot go': 'Does not fit',
};

/** Verdicts that a change of one measure may better. */
const CHANGEABLE: ReadonlySet<Verdict> = new Set(['tight', 'no way found', 'cannot go']);

/** Of what is still open so many questions are put into a reply; the rest is in QUESTIONS. */
const ASKED_IN_REPLY = 3;

/**
 * Sentences for the customer: each build, the best verdict first; for the first in the firm's order that does not simply fit
 * the one thing that would change it, where there is one; then what is still asked, and the caution. Plain words, no promise, no price, nothing about how it is carried.
 *
 * @returns in the order in which they can be sent; never empty
 */
export function replySentences(asked: ReplyAsked): ReplySentence[] {
  const { read, rows, builds, book, allowance } = asked;
  const route = prepareRoute(rows, book);
  const caseOf = routeCases(route, book, allowance);
  const judged = builds.map((build) => ({ build, verdict: judgeBuild(route, build, caseOf) }));
  const sorted = [...judged].sort(
    ({ verdict: a }, { verdict: b }) =>
      verdictRank(a.verdict) - verdictRank(b.verdict) || Number(a.noAid === true) - Number(b.noAid === true),
  );
  // What would change one is looked for once, for the build that the firm would rather sell first.
  const wanted = judged.find(({ verdict }) => CHANGEABLE.has(verdict.verdict))?.build;
  const sentences = sorted.flatMap(({ build, verdict }): ReplySentence[] => {
    const said = { about: ABOUT[verdict.verdict], sentence: buildSentence(verdict, route) };
    const changes = build === wanted ? remeasure(rows, [build], book, allowance) : [];
    const changed = changeSentence(changes, build.name, route);
    return changed === undefined ? [said] : [said, { about: 'What would change it', sentence: changed }];
  });
  const open = customerQuestions(read);
  return [
    ...sentences,
    { about: 'Rests on', sentence: 'All of this rests on the measures that we were given; each counts.' },
    ...open
      .slice(0, ASKED_IN_REPLY)
      .map(({ question }): ReplySentence => ({ about: 'Please tell us', sentence: question })),
    { about: 'Please note', sentence: CAUTIONS.customer },
  ];
}

/** Index of a step by what it is called. */
const stepAt = (route: PreparedRoute, name: number | string | undefined): number =>
  route.steps.findIndex((step) => step.name === name);

function placeOf(route: PreparedRoute, name: number | string | undefined): string | undefined {
  const at = stepAt(route, name);
  return at < 0
    ? undefined
    : placeWords(
        route.steps.map(({ row }) => row),
        at,
      );
}

function buildSentence(verdict: BuildVerdict, route: PreparedRoute): string {
  const { build, piece } = verdict;
  const place = placeOf(route, verdict.step);
  const at = place === undefined ? '' : ` at ${place}`;
  switch (verdict.verdict) {
    case 'goes':
      return `${build}: by these measures all its pieces have room on the whole way${place === undefined ? '' : `, least of all${at}`}.`;
    case 'tight':
      return `${build}: it can pass, but with less room than we want to see, least of all${at} with the ${piece}. We would try it with a frame first.`;
    case 'no way found':
      return `${build}: we have found no way for the ${piece}${place === undefined ? '' : ` past ${place}`}. That does not prove that there is none; we would look at it on the spot.`;
    case 'not measured':
      return `${build}: before something is known of all places on the way, nothing can be said${place === undefined ? '' : `; it is missing${at}`}.`;
    case 'cannot go':
      return `${build}: the ${piece} cannot pass ${place ?? 'the way'} as it was measured, whichever way it is turned.`;
  }
}

/** `the clear width of the second door would have to be 790 mm; 762 mm was noted`; only where one place decides. */
function changeSentence(
  changes: readonly Remeasure[],
  build: string,
  route: PreparedRoute,
): string | undefined {
  const [change] = changes;
  if (!change || changes.some(({ step }) => step !== change.step)) return undefined;
  const { step, name, asMeasured, needed } = change;
  const stage = route.steps[stepAt(route, step)]?.row.stage;
  const place = placeOf(route, step);
  if (name === undefined || needed === undefined || asMeasured === undefined || !place) return undefined;
  return (
    `${build}: it would fit if the ${measurePhrase(name, stage, place)} were ${mmNeededFrom(asMeasured, needed)}; ` +
    `${mm(asMeasured)} was noted. Please measure that once more.`
  );
}
