import { CAUTIONS, type CautionTopic } from '../../core/measures/cautions';
import type { Verdict } from '../../core/route/verdict';
import type { CellStyle, ConditionStyle, SheetWriter } from '../../sheetHost/workbookWriter';

/** What the estimator may change. */
export const INPUT: CellStyle = { fill: 'FFF9DB' };
export const HEADING: CellStyle = { bold: true, fill: 'DDE6E8' };
const TITLE: CellStyle = { bold: true, size: 14 };
const REMARK: CellStyle = { italic: true, color: '444444' };
const CAUTION: CellStyle = { bold: true, color: '7A0000' };

/** Colours of the verdicts. The cell holds the word, so that nothing hangs on the colour. */
const VERDICT_STYLES: Readonly<Record<Verdict, ConditionStyle>> = {
  goes: { fill: 'DDF0DA', color: '1E4620' },
  tight: { fill: 'FFF0C2', color: '5A4500', bold: true },
  'no way found': { fill: 'FBE0CF', color: '6E3300', bold: true },
  'not measured': { fill: 'E4E4EC', color: '33334D', italic: true },
  'cannot go': { fill: 'F6CCCC', color: '6E0000', bold: true },
};

/** Title in A1, what the sheet is for in A2, a caution in A3. */
export function headed(sheet: SheetWriter, title: string, remark: string, caution: CautionTopic): void {
  sheet.cell('A1', title, TITLE).cell('A2', remark, REMARK).cell('A3', CAUTIONS[caution], CAUTION);
}

/** Shows verdicts in `range` by word and colour; `cell` is the verdict's cell in the first row, e.g. `$C6`. */
export function showVerdicts(sheet: SheetWriter, range: string, cell: string): void {
  for (const [verdict, style] of Object.entries(VERDICT_STYLES)) {
    sheet.condition(range, `${cell}="${verdict}"`, style);
  }
}

/** Shows words that begin with `within` or `right` and those that begin with `over` or `not` apart, by colour too. */
export function showWithin(sheet: SheetWriter, range: string, cell: string): void {
  sheet.condition(range, `OR(LEFT(${cell},6)="within",${cell}="right")`, VERDICT_STYLES.goes);
  sheet.condition(range, `OR(LEFT(${cell},4)="over",LEFT(${cell},4)="not ")`, VERDICT_STYLES['cannot go']);
}
