import { kindOf } from '../../stages/kinds';
import { tapeOf, type StageRow } from '../table/stageRow';
import { inStepOrder, type Survey } from '../table/groupSurveys';
import { routeFaults } from './routeFaults';
import { routeQuestions } from './routeQuestions';
import { storeySlips } from './storeySlips';
import type { RouteProblem } from './surveyProblem';
import { entryAt } from '../../lists/entryAt';

/** What is wrong between the rows of a survey: its name, the numbers of its steps, its end, its storeys. */
export function betweenRows(surveys: readonly Survey[]): RouteProblem[] {
  const named = surveys.some((survey) => survey.name !== '');
  return surveys.flatMap((survey) => [
    ...(named && survey.name === '' ? survey.rows.map(noName) : []),
    ...stepNumbers(survey),
    ...endsBefore(survey),
    ...routeFaults(survey.rows, tapeOf(survey.rows, USUAL_TAPE)).map(({ at, fault }): RouteProblem => ({
      kind: 'route fault',
      severity: 'error',
      rowIndex: entryAt(survey.rows, at).rowIndex,
      fault,
    })),
    ...routeQuestions(survey.rows, tapeOf(survey.rows, USUAL_TAPE)),
    ...storeySlips(survey.rows),
  ]);
}

/** The usual tape [mm], where a survey does not give its own. */
const USUAL_TAPE = 5;

const noName = ({ rowIndex }: StageRow): RouteProblem => ({
  kind: 'no survey name',
  severity: 'warning',
  rowIndex,
});

function stepNumbers({ name, rows }: Survey): RouteProblem[] {
  const problems: RouteProblem[] = [];
  const numbered = rows.filter((row) => !Number.isNaN(row.step));
  let last = 0;
  for (const { step, rowIndex } of inStepOrder(numbered)) {
    const at = { severity: 'warning', rowIndex, survey: name } as const;
    if (step === last) problems.push({ kind: 'step doubled', ...at, step });
    else if (step > last + 1) {
      problems.push({ kind: 'step missing', ...at, from: Math.floor(last) + 1, to: Math.ceil(step) - 1 });
    }
    last = step;
  }
  return problems;
}

/** A route goes from the kerb to the room. */
function endsBefore({ name, rows }: Survey): RouteProblem[] {
  const last = rows[rows.length - 1];
  // A last stage that is not known may be the room.
  if (!last?.stage || kindOf(last.stage).role === 'room') return [];
  return [
    {
      kind: 'ends before the room',
      severity: 'warning',
      rowIndex: last.rowIndex,
      stage: last.stage,
      survey: name,
    },
  ];
}
