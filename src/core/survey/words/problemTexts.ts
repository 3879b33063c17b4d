import { problemText } from './problemWords';
import { HEADER_ROW, type SurveyProblem } from '../checks/surveyProblem';

/**
 * One text a row of a table, the header row first: its problems one after the other, '' where there is none.
 * @param rowCount rows of the table, header not counted
 */
export function problemTexts(problems: readonly SurveyProblem[], rowCount: number): string[] {
  const texts = new Array<string>(Math.max(0, rowCount) + 1).fill('');
  for (const problem of problems) {
    const at = problem.rowIndex - HEADER_ROW;
    texts[at] += (texts[at] ? ' ' : '') + problemText(problem);
  }
  return texts;
}
