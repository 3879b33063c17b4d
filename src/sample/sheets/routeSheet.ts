import { STAGE_NAMES } from '../../core/stages/kinds';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { INVENTED } from '../firm';
import { ROUTE_COLUMNS, routeRows } from '../routeRows';
import type { Survey } from '../survey';
import { headed } from './look';

/** Rows below the month that the lists of words already cover. */
const SPARE_ROWS = 200;
const TOP = 5;

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
    columns: ROUTE_COLUMNS.map(([name, key]) => ({
      name,
      width: key === 'note' ? 44 : key === 'stage' ? 16 : 9,
    })),
    rows,
  });
  sheet.list(`C${TOP + 1}:C${TOP + rows.length + SPARE_ROWS}`, STAGE_NAMES);
  sheet.spill(`Y${TOP}`, 'CARRY.CHECKROUTE(RouteRows[#All])');
  // The check's texts begin with "Check:" where a row is only to be looked at.
  const whole = `A${TOP + 1}:W${TOP + rows.length}`;
  sheet.condition(whole, `LEFT($Y${TOP + 1},6)="Check:"`, { fill: 'FFF0C2' });
  sheet.condition(whole, `$Y${TOP + 1}<>""`, { fill: 'F6CCCC', bold: true });
  sheet.freeze(TOP, 3);
}
