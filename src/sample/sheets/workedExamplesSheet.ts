import type { SheetWriter, WorkbookWriter } from '../../sheetHost/workbookWriter';
import {
  answerFormula,
  questionFormula,
  shownWhenAsked,
  WORKED_EXAMPLES,
  WORKING_ROWS,
  type WorkedExample,
} from '../../worksheet/workedExamples';
import { ROUTE_EXAMPLE } from '../routeExample';
import { headed, HEADING, INPUT, showWithin } from './look';

const TOP = 5;
/** Rows for title, question and headers above a working, with a gap below. */
const ROWS_AROUND = 4;

const NO_ANSWER = 'write your answer above';

/** Examples for training: question, givens, an answer to be filled in and marked, and the working beside. */
export function workedExamplesSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Worked examples');
  headed(
    sheet,
    'Worked examples',
    'Work it out and write your answer in the yellow cell, a number or one with its unit; then write yes to see the working. The pane shows the place of the example that is selected, and with its working the piece on its way. Values of our own making.',
    'lifting',
  );
  let top = TOP;
  WORKED_EXAMPLES.forEach((example, i) => {
    written(sheet, example, i + 1, top);
    top += (example.workingRows ?? WORKING_ROWS) + ROWS_AROUND;
  });
  wholeRoute(sheet, WORKED_EXAMPLES.length + 1, top);
  sheet.widths([30, 14, 14, 4, 44, 60, 12, 12, 60]);
  sheet.freeze(3);
  sheet.print({ area: `A1:I${top + ROUTE_EXAMPLE.rows.length * 2 + 10}`, across: 'landscape' });
}

function written(sheet: SheetWriter, example: WorkedExample, number: number, top: number): void {
  const { title, given, id, unit, tolerance } = example;
  const first = top + 3;
  const cells = given.map((_, i) => `B${first + i}`);
  sheet
    .cell(`A${top}`, `${number}. ${title}`, { bold: true, size: 12 })
    .cell(`A${top + 1}`, { formula: questionFormula(example, cells) });
  sheet.rows(`A${top + 2}`, [['Given', 'Value', 'Unit']], HEADING);
  sheet.rows(`A${top + 3}`, given);
  const inputs = cells.join(',');
  const asked = answered(sheet, first + given.length, unit, tolerance, `CARRY.${id}(${inputs})`);
  sheet.spill(`E${top + 2}`, shownWhenAsked(asked, `CARRY.WORKING("${id}",${inputs})`));
}

/**
 * The rows for an answer, the tolerance, whether the answer is right, and whether the working is wanted.
 * @returns the cell in which the working is asked for
 */
function answered(sheet: SheetWriter, row: number, unit: string, tolerance: number, result: string): string {
  const answer = `B${row}`;
  const far = `B${row + 1}`;
  sheet.rows(`A${row}`, [
    ['Your answer', null, unit],
    ['Right within', tolerance, unit],
    [
      'Marked',
      {
        formula:
          `IF(${answer}="","${NO_ANSWER}",IF(ISERROR(${answerFormula(answer, unit)}),"not a number, and none with its unit",` +
          `IF(ABS(${answerFormula(answer, unit)}-${result})<=${far},"right","not within "&${far}&" ${unit}")))`,
      },
    ],
    ['Show the working', null, 'yes, or empty'],
  ]);
  sheet.format(answer, INPUT).format(`B${row + 3}`, INPUT);
  showWithin(sheet, `B${row + 2}`, `$B$${row + 2}`);
  return `B${row + 3}`;
}

function wholeRoute(sheet: SheetWriter, number: number, top: number): void {
  const { title, question, headers, rows, piece, tolerance } = ROUTE_EXAMPLE;
  sheet.cell(`A${top}`, `${number}. ${title}`, { bold: true, size: 12 }).cell(`A${top + 1}`, question);
  const last = top + 2 + rows.length;
  sheet.rows(`E${top + 2}`, [headers], HEADING).rows(`E${top + 3}`, rows);
  sheet.rows(`A${top + 2}`, [['Given', 'Value', 'Unit']], HEADING);
  sheet.rows(`A${top + 3}`, [
    ['length', piece[0], 'mm'],
    ['breadth', piece[1], 'mm'],
    ['thickness', piece[2], 'mm'],
  ]);
  const stages = `CARRY.STAGES(E${top + 2}:P${last},B${top + 3},B${top + 4},B${top + 5})`;
  const asked = answered(sheet, top + 6, 'mm a side', tolerance, `INDEX(${stages},${rows.length + 2},4)`);
  sheet.spill(`E${last + 2}`, shownWhenAsked(asked, stages));
}
