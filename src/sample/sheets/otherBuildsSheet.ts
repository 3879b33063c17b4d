import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { BUILD_NAMES } from '../pieces';
import type { Survey } from '../survey';
import { VERDICT_COLUMNS } from '../../worksheet/verdictTable';
import { headed, HEADING, showVerdicts, unitsOver, VERDICT_UNITS, WRAPPED } from './look';
import { shownSpill } from './shownSpill';

const TOP = 5;
/** How many builds after the one asked for are looked at: each is as much work as the one asked for. */
const NEXT_BUILDS = 3;
/** Rows that may be added to the table of what is looked at, and are shown. */
const SPARE = 20;
/** Where the function spills, right of the table of what is looked at. */
const SPILLED = 16;

/** Survey and build: what could be offered in place of what was asked for, in the order of preference. */
export const nextBuilds = (surveys: readonly Survey[]): [survey: string, build: string][] =>
  surveys.flatMap(({ id, build }) => {
    const after = BUILD_NAMES.indexOf(build) + 1;
    return BUILD_NAMES.slice(after, after + NEXT_BUILDS).map((next): [string, string] => [id, next]);
  });

/** A column of the verdicts on the next builds, without its header. */
export const otherBuildColumn = (column: string, surveys: readonly Survey[]): string =>
  `'Other builds'!$${column}$${TOP + 1}:$${column}$${TOP + nextBuilds(surveys).length}`;

/** The next builds after the one asked for, which the advice is read from. */
export function otherBuildsSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Other builds');
  headed(
    sheet,
    'The next builds, to advise instead',
    'The table on the right says which are looked at: add rows to it, or see Job for every build of one survey.',
    'route',
  );
  const orders = nextBuilds(surveys);
  const last = TOP + orders.length + SPARE;
  unitsOver(sheet, `A${TOP - 1}`, VERDICT_UNITS);
  sheet.format(`N${TOP}:O${TOP}`, HEADING);
  sheet.format(`K${TOP + 1}:L${last}`, WRAPPED);
  shownSpill(sheet, {
    formula: 'CARRY.SURVEYS(RouteRows[#All],PieceRows[#All],NextBuilds[#All],Allowance,Tape)',
    columns: ['Survey', ...VERDICT_COLUMNS],
    at: `A${TOP}`,
    rows: orders.length + SPARE,
    beside: SPILLED,
  });
  sheet.table({
    name: 'NextBuilds',
    at: `N${TOP}`,
    columns: [{ name: 'Survey' }, { name: 'Build' }],
    rows: orders,
  });
  showVerdicts(sheet, `C${TOP + 1}:C${last}`, `$C${TOP + 1}`);
  sheet.widths([9, 29, 14, 12, 7, 15, 24, 11, 11, 30, 70, 84, 2, 9, 30]);
  sheet.freeze(TOP, 2);
  sheet.print({ area: `A1:L${last + 1}`, repeat: { from: TOP - 1, to: TOP }, across: 'landscape' });
}
