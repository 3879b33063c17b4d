import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { BUILD_NAMES } from '../pieces';
import { SAMPLE_SURVEYS } from '../sampleSurveys';
import { headed, showVerdicts } from './look';

const TOP = 5;
const LAST = TOP + SAMPLE_SURVEYS.length * BUILD_NAMES.length;

/** A column of the verdicts on every build for every survey, without its header. */
export const everyBuildColumn = (column: string): string =>
  `'Every build'!$${column}$${TOP + 1}:$${column}$${LAST}`;

/** Every build for every survey, which the advice is read from. */
export function everyBuildSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Every build');
  headed(
    sheet,
    'Every build for every survey',
    'Builds stand in the order of preference within a survey.',
    'route',
  );
  sheet.spill(`A${TOP}`, 'CARRY.SURVEYS(RouteRows[#All],PieceRows[#All],,Allowance,Tape)');
  showVerdicts(sheet, `C${TOP + 1}:C${LAST}`, `$C${TOP + 1}`);
  sheet.format(`D${TOP + 1}:D${LAST}`, { format: '0' });
  sheet.widths([9, 30, 14, 10, 7, 15, 24, 11, 11, 36, 80, 60]);
  sheet.freeze(TOP, 2);
}
