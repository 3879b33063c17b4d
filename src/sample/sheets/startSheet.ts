import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { CAUTIONS } from '../../core/measures/cautions';
import { CLASS_MEANING, VERDICT_CLASSES } from '../../core/route/verdictClass';
import { ALLOWANCE, FIRM, INVENTED, TAPE } from '../firm';
import type { Survey } from '../survey';
import { headed, HEADING, INPUT, LINK, showVerdicts, WRAPPED } from './look';
import { surveysOfClass, whenJudged } from './monthSheet';

const SHEETS: readonly (readonly [sheet: string, holds: string])[] = [
  ['Month', 'a line a survey: the verdict on what was asked for, what to advise, what to do next'],
  ['Measure again', 'what to measure again first, and why'],
  ['Orders', 'who asked for what'],
  ['Route', 'the routes, one row a step, and what the check says of each row'],
  ['Pieces', 'the builds, piece by piece, in the order of preference'],
  ['Verdicts', 'all that is said of what was asked for'],
  ['Other builds', 'the next builds in the order of preference, to advise instead'],
  ['Quote', 'choose a survey and price it'],
  ['Job', 'all that is known of the survey chosen on Quote'],
  ['Crew', 'one page for the crew of the job chosen on Quote: pieces, the carry move by move'],
  ['Floors', 'floor, feet, joists and stairs under one table'],
  ['Worked examples', 'questions to practise on, with the working'],
];

const GIVEN_TOP = 5;
const COUNTS_TOP = 9;
const SHEETS_TOP = COUNTS_TOP + VERDICT_CLASSES.length + 3;
const CAUTIONS_TOP = SHEETS_TOP + SHEETS.length + 2;

/** The month's counts, what is where, what holds for all of it, and the cautions. */
export function startSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Start');
  headed(
    sheet,
    `${FIRM.name}: a month of surveys`,
    `${INVENTED} #NAME? in a cell means that the CARRY add-in is not loaded.`,
    'route',
  );
  sheet.rows(
    `A${GIVEN_TOP}`,
    [['Holds for all surveys', 'Value', 'Unit; the yellow cells are yours']],
    HEADING,
  );
  sheet.rows(`A${GIVEN_TOP + 1}`, [
    ['Allowance', ALLOWANCE, 'mm a side'],
    ['Tape', TAPE, 'mm'],
  ]);
  sheet.format(`B${GIVEN_TOP + 1}:B${GIVEN_TOP + 2}`, INPUT);
  book.name('Allowance', `Start!$B$${GIVEN_TOP + 1}`).name('Tape', `Start!$B$${GIVEN_TOP + 2}`);

  sheet.rows(`A${COUNTS_TOP}`, [['Verdict', 'Surveys', 'What it means']], HEADING);
  VERDICT_CLASSES.forEach((one, i) => {
    const count = { formula: whenJudged(surveysOfClass(one, surveys), '"…"') };
    sheet.rows(`A${COUNTS_TOP + 1 + i}`, [[one.name, count, CLASS_MEANING[one.name]]]);
  });
  const first = COUNTS_TOP + 1;
  const last = COUNTS_TOP + VERDICT_CLASSES.length;
  sheet.rows(`A${last + 1}`, [['all', { formula: whenJudged(`SUM(B${first}:B${last})`, '"…"') }]]);
  sheet.format(`B${first}:B${last + 1}`, { format: '0', align: 'right' });
  // A class has the colour of its verdict.
  const verdict = `IF(LEFT($A${first},4)="goes","goes",IF(LEFT($A${first},5)="tight","tight",$A${first}))`;
  showVerdicts(sheet, `A${first}:A${last}`, verdict);

  sheet.rows(`A${SHEETS_TOP}`, [['Sheet', '', 'What it holds']], HEADING);
  SHEETS.forEach(([name, holds], i) => {
    const row = SHEETS_TOP + 1 + i;
    sheet.cell(`A${row}`, { formula: `HYPERLINK("#'${name}'!A1","${name}")` }, LINK).cell(`C${row}`, holds);
  });
  sheet.cell(`A${CAUTIONS_TOP}`, 'Cautions', HEADING);
  const cautions = Object.values(CAUTIONS);
  cautions.forEach((caution, i) => {
    const row = CAUTIONS_TOP + 1 + i;
    sheet.cell(`A${row}`, caution, WRAPPED).merge(`A${row}:C${row}`);
  });
  sheet.widths([30, 10, 92]);
  sheet.print({ area: `A1:C${CAUTIONS_TOP + cautions.length}`, across: 'landscape' });
}
