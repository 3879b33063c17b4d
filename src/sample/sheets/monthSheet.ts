import { ADVISED } from '../../core/route/advisedInstead';
import type { Verdict } from '../../core/route/verdict';
import {
  CHECK_ASKS,
  LOOK_FIRST,
  TIGHT_WORDS,
  VERDICT_CLASSES,
  type VerdictClass,
} from '../../core/route/verdictClass';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { FIRM, INVENTED } from '../firm';
import type { Survey } from '../survey';
import { HEADING, headed, LINK, linkTo, showVerdicts, WRAPPED } from './look';
import { downTo } from '../../worksheet/roundedFormulas';
import { otherBuildColumn } from './otherBuildsSheet';
import { routeRowOf } from './routeSheet';
import { verdictColumn, VERDICTS_TOP } from './verdictsSheet';

const TOP = VERDICTS_TOP;
const FIRST = TOP + 1;

const HEADINGS = [
  'Survey',
  'Verdict',
  'Advise',
  'Next step',
  'Clearance, mm a side, rounded down',
  'At step',
  'Stage',
  'Customer',
  'Day',
  'Build asked for',
  'Reason',
] as const;

/** The verdicts on the month's rows, for counts. */
export const monthVerdicts = (surveys: readonly Survey[]): string =>
  `Month!$B$${FIRST}:$B$${TOP + surveys.length}`;

/** The month a line a survey: the verdict, what to advise and what to do next, then where and why. */
export function monthSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const last = TOP + surveys.length;
  const sheet = book.sheet('Month');
  headed(sheet, `${FIRM.name}: surveys of ${FIRM.month} ${FIRM.year}`, INVENTED, 'route');
  sheet.cell('A4', { formula: countsText(surveys) }, { bold: true });
  sheet.rows(`A${TOP}`, [HEADINGS], HEADING);
  for (let row = FIRST; row <= last; row++) {
    const told = (column: string) => ({
      formula: `IF(Verdicts!$${column}${row}="","",Verdicts!$${column}${row})`,
    });
    const survey = `Verdicts!$A${row}`;
    const order = (column: string) => ({
      formula: `IFERROR(INDEX(Orders[${column}],MATCH(${survey},Orders[Survey],0)),"")`,
    });
    sheet.cell(`A${row}`, linkTo('Route', routeRowOf(survey), survey), LINK);
    sheet.rows(`B${row}`, [
      [
        told('C'),
        { formula: advise(row, surveys) },
        { formula: nextStep(row) },
        { formula: wholeDown(`Verdicts!$D${row}`) },
        told('E'),
        told('F'),
        order('Customer'),
        order('Day'),
        told('B'),
        told('K'),
      ],
    ]);
  }
  showVerdicts(sheet, `B${FIRST}:B${last}`, `$B${FIRST}`);
  sheet.format(`I${FIRST}:I${last}`, { format: '0' });
  for (const column of ['C', 'D', 'K']) sheet.format(`${column}${FIRST}:${column}${last}`, WRAPPED);
  sheet.widths([9, 15, 32, 42, 12, 15, 15, 25, 6, 29, 74]);
  sheet.freeze(TOP, 2);
  sheet.print({ area: `A1:K${last}`, repeat: { from: TOP, to: TOP }, across: 'landscape' });
}

/** A clearance in whole millimetres, never more than it is; a billionth is no millimetre. */
const wholeDown = (cell: string): string => `IF(ISNUMBER(${cell}),${downTo(cell, 0)},"")`;

/**
 * A formula that holds back counts while there are no verdicts to count: beside a call that has no answer yet the cells
 * are empty, and a count of them would be 0.
 */
export const whenJudged = (count: string, otherwise: string): string =>
  `IF(IFERROR(Month!$B$${FIRST}="",TRUE),${otherwise},${count})`;

/** A formula of how many surveys of the month are of a class. */
export function surveysOfClass({ verdict, begins }: VerdictClass, surveys: readonly Survey[]): string {
  const cells = monthVerdicts(surveys);
  const begun = (words: string): string =>
    `COUNTIFS(${cells},"${verdict}",${verdictColumn('K', surveys)},"${words}: *")`;
  if (begins !== undefined) return begun(begins);
  const finer = VERDICT_CLASSES.flatMap((one) =>
    one.verdict === verdict && one.begins !== undefined ? [begun(one.begins)] : [],
  );
  return [`COUNTIF(${cells},"${verdict}")`, ...finer].join('-');
}

/** `49 surveys: 20 goes, …; allowance 25 mm a side, tape 5 mm (both on Start)` */
function countsText(surveys: readonly Survey[]): string {
  const counts = VERDICT_CLASSES.map((one) => `(${surveysOfClass(one, surveys)})&" ${one.name}"`);
  return whenJudged(
    `COUNTA(${monthVerdicts(surveys)})&" surveys: "&${counts.join('&"; "&')}` +
      `&"; allowance "&Allowance&" mm a side, tape "&Tape&" mm, both on Start"`,
    '"No verdicts: they are being computed, or the add-in is not loaded, or Verdicts P6 says what is wrong."',
  );
}

/**
 * What was asked for where it goes; else the first of the next builds with a better verdict, one that goes before one
 * that is tight. What is tight as asked is not advised to change for what is as tight.
 */
function advise(row: number, surveys: readonly Survey[]): string {
  const column = (letter: string): string => otherBuildColumn(letter, surveys);
  const first = (verdict: Verdict): string =>
    `INDEX(${column('B')},MATCH(1,INDEX((${column('A')}=Verdicts!$A${row})` +
    `*(${column('C')}="${verdict}"),0),0))`;
  return (
    `IF($B${row}="","",IF($B${row}="goes",IF(${startsWith(row, LOOK_FIRST)},"${ADVISED.ifRight}","${ADVISED.asAsked}"),IF($B${row}="not measured","${ADVISED.measureFirst}",` +
    `IFERROR(${first('goes')},IF($B${row}="tight","${ADVISED.ifTried}",` +
    `IFERROR("${ADVISED.tight}"&${first('tight')},"${ADVISED.none}"))))))`
  );
}

/** Whether the reason of a survey begins with the words of a class of verdicts. */
const startsWith = (row: number, words: string): string =>
  `LEFT(Verdicts!$K${row},${words.length + 1})="${words}:"`;

function nextStep(row: number): string {
  const why = `Verdicts!$K${row}`;
  return (
    `IF($B${row}="","",IF($B${row}="not measured","send back for the measure at step "&$F${row},` +
    `IF(ISNUMBER(SEARCH("${CHECK_ASKS}",${why})),"look at what Route marks, measure again, judge again",` +
    `IF($B${row}="goes","plan people, aids and floor",` +
    `IF($B${row}="tight",IF(${startsWith(row, TIGHT_WORDS.open)},"measure the rest of step ",IF(${startsWith(row, TIGHT_WORDS.trial)},"a trial with a frame first, step ","frame or template first, look again at step "))&$F${row},` +
    `IF($B${row}="no way found","re-measure step "&$F${row}&", then ","")&` +
    `IF($C${row}="${ADVISED.none}","try smaller builds in Job, or another way in","offer the other build"))))))`
  );
}
