import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { FIRM, INVENTED } from '../firm';
import type { Survey } from '../survey';
import { headed, HEADING } from './look';
import { BUILD_LIST } from './piecesSheet';

const TOP = 5;

/** Cells that name the surveys, for lists of words. */
export const surveyList = (surveys: readonly Survey[]): string =>
  `Orders!$A$${TOP + 1}:$A$${TOP + surveys.length}`;

/** Who asked for what: one row a survey. */
export function ordersSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Orders');
  headed(sheet, `Orders of ${FIRM.month} ${FIRM.year}`, `${FIRM.name}, ${FIRM.place}. ${INVENTED}`, 'route');
  sheet.table({
    name: 'Orders',
    at: `A${TOP}`,
    columns: [
      { name: 'Survey', width: 9 },
      { name: 'Build', width: 30 },
      { name: 'Day', width: 6 },
      { name: 'Customer', width: 26 },
      { name: 'Place', width: 44 },
      { name: 'Kind', width: 15 },
    ],
    rows: surveys.map((s) => [s.id, s.build, s.day, s.customer, s.place, s.kind]),
  });
  sheet.list(`B${TOP + 1}:B${TOP + surveys.length}`, { from: BUILD_LIST });
  sheet.format(`A${TOP}:F${TOP}`, HEADING);
  sheet.format(`C${TOP + 1}:C${TOP + surveys.length}`, { format: '0' });
  sheet.freeze(TOP, 1);
  sheet.print({
    area: `A1:F${TOP + surveys.length}`,
    repeat: { from: TOP, to: TOP },
    across: 'landscape',
  });
}
