import { advisedInstead } from '../core/route/advisedInstead';
import { CHECK_ASKS } from '../core/route/verdictClass';
import { adviceWords, byUrgency, type Month, type MonthSurvey } from './month';
import { firstToMeasure } from './remeasureWords';

/** Something to do today, with the surveys that ask for it, the most urgent first. */
export interface Task {
  readonly title: string;
  /** Why, in a sentence for whoever does it. */
  readonly about: string;
  readonly surveys: readonly { readonly survey: MonthSurvey; readonly what: string }[];
}

type Kind = 'look' | 'measure' | 'advise' | 'call' | 'trial';

const TASKS: Readonly<Record<Kind, Pick<Task, 'title' | 'about'>>> = {
  look: {
    title: 'Look at the survey first',
    about:
      'It goes as typed, but something in it looks mistyped or left out. Put it right, then judge again.',
  },
  measure: {
    title: 'Measure again',
    about: 'One measure stands between this survey and a verdict that holds.',
  },
  advise: {
    title: 'Advise another build',
    about: 'What was asked for does not go; this goes, or is worth a trial.',
  },
  call: {
    title: 'Call the customer',
    about:
      'What was asked for does not go, and none of the next builds does: a smaller one, or another way in.',
  },
  trial: { title: 'Try with a frame or template', about: 'It passes, with less than the allowance.' },
};

const ORDER: readonly Kind[] = ['look', 'measure', 'advise', 'call', 'trial'];

/** What to do today: every survey that does not simply go stands in exactly one task. */
export function tasksOf(month: Month): Task[] {
  const sorted = byUrgency(month).flatMap((survey) => {
    const task = taskFor(survey);
    return task ? [{ survey, ...task }] : [];
  });
  return ORDER.flatMap((kind) => {
    const surveys = sorted.filter((one) => one.kind === kind);
    return surveys.length === 0 ? [] : [{ ...TASKS[kind], surveys }];
  });
}

function taskFor(survey: MonthSurvey): { readonly kind: Kind; readonly what: string } | undefined {
  const { verdict, verdictClass, asksToLook, reason, toCheck = [], explanation, advise } = survey;
  const measure = explanation && firstToMeasure(explanation.remeasure);
  const [look] = toCheck;
  // What goes only as typed is judged again once the doubt is gone; of the rest the verdict says what to do.
  if (verdict === 'goes') {
    if (look === undefined) return undefined;
    const more = toCheck.length > 1 ? ` (and ${toCheck.length - 1} more)` : '';
    return { kind: 'look', what: look + more };
  }
  const doubt = look === undefined ? '' : `; ${CHECK_ASKS} to look at the survey first`;
  const told = (what: string): string => what + doubt;
  const toldReason = asksToLook ? reason : told(reason);
  const first = measure === undefined ? toldReason : told(measure);
  if (verdict === 'not measured' || verdictClass?.name === 'tight, not measured enough')
    return { kind: 'measure', what: first };
  if (advisedInstead(advise).kind === 'build') return { kind: 'advise', what: told(adviceWords(advise)) };
  if (verdict === 'tight') return { kind: 'trial', what: first };
  if (verdict === 'no way found' && measure !== undefined) return { kind: 'measure', what: told(measure) };
  return { kind: 'call', what: toldReason };
}
