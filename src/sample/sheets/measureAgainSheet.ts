import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import type { Survey } from '../survey';
import { HEADING, headed, LINK, linkTo, showVerdicts, WRAPPED } from './look';
import { routeRowOf } from './routeSheet';
import { urgencies, verdictColumn } from './verdictsSheet';

const TOP = 5;
const FIRST = TOP + 1;
/** How many surveys the list names: as many as a day of telephoning takes. */
const ROWS = 30;

/** What to measure again first: each survey once, with its customer, the step and why. */
export function measureAgainSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Measure again');
  headed(
    sheet,
    'What to measure again first',
    'Not measured comes first, then what hangs on the tape or is marked by the check, then no way found, then tight.',
    'route',
  );
  sheet.rows(`A${TOP}`, [['No.', 'Re-measure', 'Now', 'At step', 'Where', 'Customer', 'Why']], HEADING);
  const urgency = urgencies(surveys);
  for (let n = 1; n <= ROWS; n++) {
    const row = TOP + n;
    // Fewer surveys than rows: the rest stays empty.
    const least = `IFERROR(SMALL(${urgency},$A${row}),9)`;
    const place = `MATCH(${least},${urgency},0)`;
    // A step whose stage is misspelt has none.
    const when = (cell: string): { readonly formula: string } => ({
      formula: `IF(${least}>=9,"",IF(${cell}="","-",${cell}))`,
    });
    const column = (letter: string) => when(`INDEX(${verdictColumn(letter, surveys)},${place})`);
    const survey = `INDEX(${verdictColumn('A', surveys)},${place})`;
    sheet.cell(`A${row}`, n);
    const link = linkTo('Route', routeRowOf(survey), survey).formula;
    sheet.cell(`B${row}`, { formula: `IF(${least}>=9,"",${link})` }, LINK);
    sheet.rows(`C${row}`, [
      [
        column('C'),
        column('E'),
        column('F'),
        when(`INDEX(Orders[Customer],MATCH(${survey},Orders[Survey],0))`),
        column('K'),
      ],
    ]);
  }
  const last = TOP + ROWS;
  showVerdicts(sheet, `C${FIRST}:C${last}`, `$C${FIRST}`);
  sheet.format(`A${FIRST}:A${last}`, { format: '0' }).format(`G${FIRST}:G${last}`, WRAPPED);
  sheet.widths([5, 12, 15, 16, 16, 26, 90]);
  sheet.freeze(TOP, 2);
  sheet.print({ area: `A1:G${last}`, repeat: { from: TOP, to: TOP }, across: 'landscape' });
}
