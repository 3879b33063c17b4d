import { problemTexts } from '../core/survey/words/problemTexts';
import type { SurveyProblem } from '../core/survey/checks/surveyProblem';

/** Over the texts of a checked table; what is wrong with its header row follows it. */
export const PROBLEMS_HEADER = 'Problems';

/** What the three checks give. */
export const CHECK_RESULT_MEANING =
  'one text a row, aligned with the table, its header row first; empty where nothing is wrong; what begins with "Check:" is to be looked at, the rest keeps the row from being used';

/** What is true of all checks of what was typed. */
export const CHECK_VALIDITY =
  'it finds what looks wrong on paper, and changes nothing; a wrong measure that looks ordinary goes through';

/** One text a row, aligned with the table. */
export function checkedTable(problems: readonly SurveyProblem[], rowCount: number): string[][] {
  return problemTexts(problems, rowCount).map((text, i) => {
    if (i > 0) return [text];
    return [text ? `${PROBLEMS_HEADER}: ${text}` : PROBLEMS_HEADER];
  });
}
