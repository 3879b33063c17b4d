import { STAGE_NAMES } from '../../core/stages/kinds';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { columnLetters } from '../../sheetHost/address';
import { INVENTED } from '../firm';
import { ROUTE_COLUMNS, routeRows } from '../routeRows';
import type { Survey } from '../survey';
import { MEASURE_NAMES, MEASURES } from '../../core/stages/measures';
import { DOUBTED_ROW, headed, HEADING, REFUSED_ROW, unitsOver, WRAPPED } from './look';

/** Rows below the month that the lists of words already cover. */
const SPARE_ROWS = 200;
const TOP = 5;

const UNITS = { length: 'mm', angle: 'degrees', mass: 'kg', count: 'number' } as const;

/** The unit of a route's column; '' where it holds words. */
function unitOf(key: string): string {
  if (key === 'tape') return 'mm';
  const measure = MEASURE_NAMES.find((name) => name === key);
  return measure === undefined ? '' : UNITS[MEASURES[measure].quantity];
}

/** The same by the column's heading. */
export const unitOfColumn = (heading: string): string =>
  unitOf(ROUTE_COLUMNS.find(([name]) => name === heading)?.[1] ?? '');

/** The row in which a survey begins, as a formula; `survey` is one too. */
export const routeRowOf = (survey: string): string => `(MATCH(${survey},RouteRows[Survey],0)+${TOP})`;

/** Where the texts of the check stand: one column beside the table. */
const CHECKED = columnLetters(ROUTE_COLUMNS.length + 1);

/** The month's routes, one row a step, and what the check says of each row. */
export function routeSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Route');
  headed(
    sheet,
    'Routes of the month',
    `Lengths in mm, or text with a unit: 76 cm, 2' 6". ${INVENTED}`,
    'route',
  );
  const rows = routeRows(surveys);
  sheet.table({
    name: 'RouteRows',
    at: `A${TOP}`,
    columns: ROUTE_COLUMNS.map(([name]) => ({ name })),
    rows,
  });
  const last = TOP + rows.length;
  unitsOver(
    sheet,
    `A${TOP - 1}`,
    ROUTE_COLUMNS.map(([, key]) => unitOf(key)),
  );
  const end = columnLetters(ROUTE_COLUMNS.length - 1);
  sheet.format(`A${TOP}:${end}${TOP}`, HEADING).format(`${end}${TOP + 1}:${end}${last}`, WRAPPED);
  sheet.list(`C${TOP + 1}:C${last + SPARE_ROWS}`, STAGE_NAMES);
  sheet.spill(`${CHECKED}${TOP}`, 'CARRY.CHECKROUTE(RouteRows[#All])');
  sheet.format(`${CHECKED}${TOP}`, HEADING).format(`${CHECKED}${TOP + 1}:${CHECKED}${last}`, WRAPPED);
  // The check's texts begin with "Check:" where a row is only to be looked at.
  const whole = `A${TOP + 1}:${end}${last}`;
  sheet.condition(whole, `LEFT($${CHECKED}${TOP + 1},6)="Check:"`, DOUBTED_ROW);
  sheet.condition(whole, `$${CHECKED}${TOP + 1}<>""`, REFUSED_ROW);
  sheet.widths([
    ...ROUTE_COLUMNS.map(([, key]) => (key === 'note' ? 28 : key === 'stage' ? 15 : key === 'step' ? 6 : 9)),
    2,
    46,
  ]);
  sheet.freeze(TOP, 3);
  sheet.print({
    area: `A1:${CHECKED}${last}`,
    repeat: { from: TOP - 1, to: TOP },
    across: 'landscape',
    paper: 'A3',
  });
}
