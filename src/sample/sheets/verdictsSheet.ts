import { CHECK_ASKS, WITHIN_TAPE } from '../../core/route/verdictClass';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import type { Survey } from '../survey';
import { VERDICT_COLUMNS } from '../../worksheet/verdictTable';
import { HEADING, headed, showVerdicts, unitsOver, VERDICT_UNITS, WRAPPED } from './look';
import { shownSpill } from './shownSpill';

/** The row of the headings, counted from 1: the same as on Month, so that a survey stands in one row on both. */
export const VERDICTS_TOP = 6;

const URGENCY = 'N';
/** Where the function spills, right of what is shown of it. */
const SPILLED = 15;

/** The urgency of the survey in a row, and of all of them. */
export const urgencies = (surveys: readonly Survey[]): string =>
  `Verdicts!$${URGENCY}$${VERDICTS_TOP + 1}:$${URGENCY}$${VERDICTS_TOP + surveys.length}`;

/** A column of the verdicts on what was asked for, without its heading. */
export const verdictColumn = (column: string, surveys: readonly Survey[]): string =>
  `Verdicts!$${column}$${VERDICTS_TOP + 1}:$${column}$${VERDICTS_TOP + surveys.length}`;

/** All that is said of what was asked for; Month shows what a manager needs of it. */
export function verdictsSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const last = VERDICTS_TOP + surveys.length;
  const sheet = book.sheet('Verdicts');
  headed(
    sheet,
    'Verdicts on what was asked for, in full',
    'Computed from Route, Pieces and Orders; Month shows the same row by row with what to do next.',
    'route',
  );
  unitsOver(sheet, `A${VERDICTS_TOP - 1}`, VERDICT_UNITS);
  sheet.format(`K${VERDICTS_TOP + 1}:L${last}`, WRAPPED);
  shownSpill(sheet, {
    formula: 'CARRY.SURVEYS(RouteRows[#All],PieceRows[#All],Orders[[#All],[Survey]:[Build]],Allowance,Tape)',
    columns: ['Survey', ...VERDICT_COLUMNS],
    at: `A${VERDICTS_TOP}`,
    rows: surveys.length,
    beside: SPILLED,
  });
  showVerdicts(sheet, `C${VERDICTS_TOP + 1}:C${last}`, `$C${VERDICTS_TOP + 1}`);
  sheet.cell(`${URGENCY}${VERDICTS_TOP}`, 'Urgency', HEADING);
  for (let row = VERDICTS_TOP + 1; row <= last; row++)
    sheet.cell(`${URGENCY}${row}`, { formula: urgency(row) });
  sheet.format(`${URGENCY}${VERDICTS_TOP + 1}:${URGENCY}${last}`, { format: '0.000' });
  sheet.widths([9, 29, 14, 12, 8, 15, 24, 11, 11, 30, 70, 84, 2, 9]);
  sheet.freeze(VERDICTS_TOP, 1);
  sheet.print({
    area: `A1:L${last + 1}`,
    repeat: { from: VERDICTS_TOP - 1, to: VERDICTS_TOP },
    across: 'landscape',
  });
}

/** 1 not measured, 2 within the tape or marked by the check, 3 no way found, 4 otherwise tight; a fraction keeps the order of the surveys. */
const urgency = (row: number): string =>
  `IF($C${row}="not measured",1,IF(OR(ISNUMBER(SEARCH("${CHECK_ASKS}",$K${row})),ISNUMBER(SEARCH("${WITHIN_TAPE}",$K${row}))),2,` +
  `IF($C${row}="no way found",3,IF($C${row}="tight",4,9))))+(ROW()-${VERDICTS_TOP})/1000`;
