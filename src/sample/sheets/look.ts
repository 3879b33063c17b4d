import { CAUTIONS, type CautionTopic } from '../../core/measures/cautions';
import type { Verdict } from '../../core/route/verdict';
import type { CellStyle, ConditionStyle, SheetWriter } from '../../sheetHost/workbookWriter';

/** What the estimator may change. */
export const INPUT: CellStyle = { fill: 'FFF4B8' };
export const HEADING: CellStyle = { bold: true, fill: 'E3DBCB', color: '2A2620', wrap: true };
/** Above a heading: the unit of what stands below it. */
const UNIT: CellStyle = { italic: true, color: '5D564B', align: 'center' };
/** A cell that leads to another sheet. */
export const LINK: CellStyle = { color: '7A3E00', underline: true };
export const WRAPPED: CellStyle = { wrap: true };
/** What a formula has rounded to a tenth: a format alone would round to the nearest (`worksheet/roundedFormulas`). */
export const TENTHS = '0.0';

const TITLE: CellStyle = { bold: true, size: 14 };
const REMARK: CellStyle = { italic: true, color: '444444' };
const CAUTION: CellStyle = { bold: true, color: '7A0000' };

/** Colours of the verdicts. The cell holds the word, so that nothing hangs on the colour. */
const VERDICT_STYLES: Readonly<Record<Verdict, ConditionStyle>> = {
  goes: { fill: 'CBE2E4', color: '0F3B45' },
  tight: { fill: 'E9D2A0', color: '4A3300', bold: true },
  'no way found': { fill: 'D8D2EA', color: '36265E', bold: true },
  'not measured': { fill: 'DEDDD6', color: '3A3A34', italic: true },
  'cannot go': { fill: 'E5C3D0', color: '5C0F33', bold: true },
};

/** A row of a survey that the check refuses, and one that it only asks to look at. */
export const REFUSED_ROW: ConditionStyle = { fill: 'E5C3D0', color: '5C0F33', bold: true };
export const DOUBTED_ROW: ConditionStyle = { fill: 'E9D2A0', color: '4A3300' };

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

/** Writes the units over a row of headings; '' where there is none. */
export function unitsOver(sheet: SheetWriter, address: string, units: readonly string[]): void {
  sheet.rows(address, [units.map((unit) => (unit === '' ? null : unit))], UNIT);
}

/** A link to a cell of another sheet, as a formula; `row` and `shown` are formulas too. */
export const linkTo = (sheet: string, row: string, shown: string): { readonly formula: string } => ({
  formula: `HYPERLINK("#'${sheet}'!A"&${row},${shown})`,
});

/** The columns of a verdict, with the unit of each. */
export const VERDICT_UNITS: readonly string[] = [
  '',
  '',
  '',
  'mm a side, rounded down',
  '',
  '',
  '',
  '',
  'kg',
  '',
  '',
  '',
];
