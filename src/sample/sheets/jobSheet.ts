import { cellAddress, columnLetters } from '../../sheetHost/address';
import type { SheetWriter, WorkbookWriter } from '../../sheetHost/workbookWriter';
import { ROUTE_HEADINGS } from '../../core/survey/table/readHeaders';
import { STAGES_COLUMNS } from '../../worksheet/functions/stages';
import { VERDICT_COLUMNS } from '../../worksheet/verdictTable';
import { HEADING, headed, showVerdicts, unitsOver, VERDICT_UNITS, WRAPPED } from './look';
import { shownSpill } from './shownSpill';
import { upTo } from '../../worksheet/roundedFormulas';
import { unitOfColumn } from './routeSheet';
import { PIECE_HEADINGS } from '../../core/survey/table/readPieces';

/** Header row of the blocks taken from Route and Pieces, counted from 1. */
const TOP = 8;
/** The longest route and the most pieces that a job can have here. */
const ROUTE_LENGTH = 16;
export const PIECES_LENGTH = 12;
const ADVICE_TOP = TOP + ROUTE_LENGTH + 3;
/** Builds that the advice has room for. */
const ADVICE_ROWS = 12;
const DETAIL_TOP = ADVICE_TOP + ADVICE_ROWS + 4;

const ROUTE_COLUMN = 1;
const PIECE_COLUMN = ROUTE_COLUMN + ROUTE_HEADINGS.length + 2;
/** Where the functions spill whose figures are shown on the left, each in columns of its own. */
const ADVICE_SPILLED = PIECE_COLUMN + PIECE_HEADINGS.length + 1;
const STAGES_SPILLED = ADVICE_SPILLED + VERDICT_COLUMNS.length + 1;

const at = (row: number, column: number): string => cellAddress(row - 1, column);
const absolute = (row: number, column: number): string =>
  at(row, column).replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2');
const block = (columns: number, rows: number, column: number): string =>
  `Job!${absolute(TOP, column)}:${absolute(TOP + rows, column + columns - 1)}`;

/** Cells of the verdicts on the job, for the quote: its builds are in column A. */
export const jobVerdict = (column: string): string =>
  `Job!$${column}$${ADVICE_TOP + 1}:$${column}$${ADVICE_TOP + ADVICE_ROWS}`;

const TIME_HEADINGS = ['Build', 'Carry, min', 'Set-up, min', 'Person-hours', 'For this crew'] as const;

/** Cells of the job's times in the order of the advice, for the quote: its builds are in column M. */
export const jobTimes = jobVerdict;

/** One job: its route and pieces taken out of the month by plain formulas, and all that the functions say of it. */
export function jobSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Job');
  headed(
    sheet,
    'The job chosen on Quote',
    'Route and pieces are read from their sheets; change them there.',
    'route',
  );
  sheet.rows('A5', [['Survey', { formula: 'JobSurvey' }, '', 'Build', { formula: 'JobBuild' }]], {
    bold: true,
  });
  sheet.rows('A6', [
    [
      'First row',
      { formula: 'MATCH(JobSurvey,RouteRows[Survey],0)' },
      '',
      'Rows',
      { formula: 'COUNTIF(RouteRows[Survey],JobSurvey)' },
    ],
  ]);
  sheet.cell(at(TOP, 0), 'Row', HEADING);
  unitsOver(sheet, at(TOP - 1, ROUTE_COLUMN), ROUTE_HEADINGS.map(unitOfColumn));
  unitsOver(sheet, at(TOP - 1, PIECE_COLUMN), ['', '', 'mm', 'mm', 'mm', 'kg each', 'number']);
  taken(sheet, ROUTE_HEADINGS, ROUTE_COLUMN, ROUTE_LENGTH, 'RouteRows', '$B$6', '$E$6');
  const firstPiece = at(6, PIECE_COLUMN + 1);
  const pieces = at(6, PIECE_COLUMN + 3);
  sheet.rows(at(6, PIECE_COLUMN), [
    [
      'First row',
      { formula: 'MATCH(JobBuild,PieceRows[Build],0)' },
      'Rows',
      { formula: 'COUNTIF(PieceRows[Build],JobBuild)' },
    ],
  ]);
  taken(sheet, PIECE_HEADINGS, PIECE_COLUMN, PIECES_LENGTH, 'PieceRows', pin(firstPiece), pin(pieces));
  book.name('JobRoute', block(ROUTE_HEADINGS.length, ROUTE_LENGTH, ROUTE_COLUMN));
  book.name('JobPieces', block(PIECE_HEADINGS.length, PIECES_LENGTH, PIECE_COLUMN));

  sheet.cell(`A${ADVICE_TOP - 1}`, 'What to advise', { bold: true });
  shownSpill(sheet, {
    formula: 'CARRY.ADVISE(JobRoute,PieceRows[#All],Allowance,Tape)',
    columns: VERDICT_COLUMNS,
    at: `A${ADVICE_TOP}`,
    rows: ADVICE_ROWS,
    beside: ADVICE_SPILLED,
  });
  unitsOver(
    sheet,
    `A${ADVICE_TOP - 1}`,
    ['', ...VERDICT_UNITS.slice(2)].map((u, i) => (i === 0 ? '' : u)),
  );
  sheet.format(`J${ADVICE_TOP + 1}:K${ADVICE_TOP + ADVICE_ROWS}`, WRAPPED);
  showVerdicts(sheet, `B${ADVICE_TOP + 1}:B${ADVICE_TOP + ADVICE_ROWS}`, `$B${ADVICE_TOP + 1}`);
  times(sheet);

  sheet.cell(`A${DETAIL_TOP - 1}`, 'What to measure again, for the build quoted', { bold: true });
  sheet.format(`A${DETAIL_TOP}:F${DETAIL_TOP}`, HEADING);
  sheet.spill(`A${DETAIL_TOP}`, 'CARRY.REMEASURE(JobRoute,JobPieces,Allowance,Tape)');
  sheet.cell(
    `H${DETAIL_TOP - 1}`,
    { formula: '"Step by step for the heaviest piece: "&H' + `${DETAIL_TOP - 2}` },
    { bold: true },
  );
  sheet.cell(`H${DETAIL_TOP - 2}`, { formula: heaviest(1) });
  shownSpill(sheet, {
    formula: `CARRY.STAGES(JobRoute,${heaviest(2)},${heaviest(3)},${heaviest(4)},Allowance,Tape)`,
    columns: STAGES_COLUMNS,
    at: `H${DETAIL_TOP}`,
    rows: ROUTE_LENGTH + 1,
    beside: STAGES_SPILLED,
  });
  const lastStage = DETAIL_TOP + ROUTE_LENGTH + 1;
  showVerdicts(sheet, `J${DETAIL_TOP + 1}:J${lastStage}`, `$J${DETAIL_TOP + 1}`);
  const restOfRoute = Array<number>(ROUTE_HEADINGS.length - 16).fill(8);
  sheet.widths([30, 15, 11, 14, 18, 15, 12, 12, 12, 25, 44, 26, 30, 10, 10, 11, 28, ...restOfRoute]);
  const end = columnLetters(ROUTE_COLUMN + ROUTE_HEADINGS.length - 1);
  sheet.print({ area: `A1:${end}${DETAIL_TOP + ROUTE_LENGTH + 2}`, across: 'landscape', paper: 'A3' });
}

/** Of the columns of times: what is above the guideline, in words. */
const HANDLING = 4;

/**
 * Times stand beside the advice, in its order, rounded up to a tenth as they are billed; farther right as they are
 * computed, in the order of Pieces: a format would round them to the nearest.
 */
function times(sheet: SheetWriter): void {
  const first = ADVICE_TOP + 1;
  sheet.cell(`M${ADVICE_TOP - 1}`, 'Time, by the rates on Quote', { bold: true });
  sheet.rows(`M${ADVICE_TOP}`, [TIME_HEADINGS], HEADING);
  const source = PIECE_COLUMN;
  const column = (n: number): string =>
    `${absolute(first, source + n)}:${absolute(ADVICE_TOP + 40, source + n)}`;
  for (let n = 0; n < ADVICE_ROWS; n++) {
    const row = first + n;
    const timed = (c: number): string => `INDEX(${column(c)},MATCH($A${row},${column(0)},0))`;
    const time = (c: number): { readonly formula: string } => ({
      formula: `IF($A${row}="","",IFERROR(${c === HANDLING ? timed(c) : upTo(timed(c), 1)},""))`,
    });
    sheet.rows(`M${row}`, [
      [{ formula: `IF($A${row}="","",$A${row})` }, time(1), time(2), time(3), time(HANDLING)],
    ]);
  }
  sheet.format(`N${first}:P${ADVICE_TOP + ADVICE_ROWS}`, { format: '0.0' });
  sheet.cell(at(ADVICE_TOP - 1, source), 'In the order of Pieces, as JOBTIME gives them, not rounded', {
    bold: true,
  });
  sheet.spill(
    at(ADVICE_TOP, source),
    'CARRY.JOBTIME(JobRoute,PieceRows[#All],JobCrew,Rates[#All],JobFitters)',
  );
}

const pin = (address: string): string => address.replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2');

/** Copies rows of a table that stand together; an empty cell stays empty, since INDEX would make it 0. */
function taken(
  sheet: SheetWriter,
  headers: readonly string[],
  column: number,
  length: number,
  table: string,
  first: string,
  count: string,
): void {
  sheet.rows(at(TOP, column), [headers], HEADING);
  for (let n = 1; n <= length; n++) {
    if (column === ROUTE_COLUMN) sheet.cell(at(TOP + n, 0), n);
    const row = headers.map((header) => {
      const cell = `INDEX(${table}[${header}],${first}+$A${TOP + n}-1)`;
      return { formula: `IF($A${TOP + n}>${count},"",IF(${cell}="","",${cell}))` };
    });
    sheet.rows(at(TOP + n, column), [row]);
  }
}

/** The value in a column of the heaviest piece of the job, as a formula for any sheet. */
export function heaviest(column: number): string {
  const cells = (c: number): string =>
    `Job!${absolute(TOP + 1, PIECE_COLUMN + c)}:${absolute(TOP + PIECES_LENGTH, PIECE_COLUMN + c)}`;
  return `INDEX(${cells(column)},MATCH(MAX(${cells(5)}),${cells(5)},0))`;
}

/** A cell of the job's pieces, by its row from 0 and its column. */
export const jobPiece = (row: number, column: number): string =>
  `Job!${absolute(TOP + 1 + row, PIECE_COLUMN + column)}`;
