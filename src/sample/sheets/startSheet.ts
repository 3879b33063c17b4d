import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { CAUTIONS } from '../../core/measures/cautions';
import { FIRM, INVENTED } from '../firm';
import { headed, HEADING } from './look';

const SHEETS: readonly (readonly [sheet: string, holds: string])[] = [
  ['Month', 'verdicts on what was asked for, counts, what to measure again first, what to advise instead'],
  ['Orders', 'who asked for what'],
  ['Route', 'the routes, one row a step, and what the check says of each row'],
  ['Pieces', 'the builds, piece by piece, in the order of preference'],
  ['Other builds', 'the next builds in the order of preference, to advise instead'],
  ['Quote', 'choose a survey and price it'],
  ['Job', 'all that is known of the survey chosen on Quote'],
  ['Floors', 'floor, feet, joists and stairs under one table'],
  ['Worked examples', 'questions to practise on, with the working'],
];

/** What is where, and the cautions. */
export function startSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Start');
  headed(
    sheet,
    `${FIRM.name}: a month of surveys`,
    `${INVENTED} #NAME? in a cell means that the CARRY add-in is not loaded.`,
    'route',
  );
  sheet.rows('A5', [['Sheet', 'What it holds']], HEADING).rows('A6', SHEETS);
  sheet.cell('A17', 'Cautions', HEADING);
  sheet.rows(
    'A18',
    Object.values(CAUTIONS).map((caution) => [caution]),
  );
  sheet.widths([20, 90]);
}
