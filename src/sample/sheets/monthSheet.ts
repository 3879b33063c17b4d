import { VERDICTS, type Verdict } from '../../core/route/verdict';
import type { SheetWriter, WorkbookWriter } from '../../sheetHost/workbookWriter';
import { ALLOWANCE, FIRM, INVENTED, TAPE } from '../firm';
import type { Survey } from '../survey';
import { HEADING, headed, INPUT, showVerdicts } from './look';
import { otherBuildColumn } from './otherBuildsSheet';

const TOP = 15;
const FIRST = TOP + 1;
/** How many surveys the list of what to re-measure first names. */
const REMEASURE_ROWS = 30;

const MEANING: Readonly<Record<Verdict, string>> = {
  goes: 'clear by the allowance, the tape counted against it; space alone',
  tight: 'passes as measured, with less than the allowance: a frame or template first',
  'no way found': 'nothing proves it impossible, and no motion is shown',
  'not measured': 'a measure is missing or cannot be taken',
  'cannot go': 'proved, with the reason named',
};

/** The month at a glance: verdicts on what was asked for, counts, what to re-measure first, what to advise instead. */
export function monthSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const last = TOP + surveys.length;
  const sheet = book.sheet('Month');
  headed(
    sheet,
    `${FIRM.name}: surveys of ${FIRM.month} ${FIRM.year}`,
    `${INVENTED} Allowance and tape are yours to change.`,
    'route',
  );
  sheet.rows('A5', [
    ['Allowance', ALLOWANCE, 'mm a side'],
    ['Tape', TAPE, 'mm'],
  ]);
  sheet.format('B5:B6', INPUT);
  book.name('Allowance', 'Month!$B$5').name('Tape', 'Month!$B$6');

  sheet.rows('E5', [['Verdict', 'Surveys', 'What it means']], HEADING);
  VERDICTS.forEach((verdict, i) => {
    const row = 6 + i;
    const count = `COUNTIF($C$${FIRST}:$C$${last},E${row})`;
    sheet.rows(`E${row}`, [[verdict, { formula: count }, MEANING[verdict]]]);
  });
  sheet.rows('E11', [['all', { formula: 'SUM(F6:F10)' }]]);
  showVerdicts(sheet, 'E6:E10', '$E6');

  sheet.cell(`A${TOP - 1}`, 'What was asked for', { bold: true });
  sheet.spill(
    `A${TOP}`,
    'CARRY.SURVEYS(RouteRows[#All],PieceRows[#All],Orders[[#All],[Survey]:[Build]],Allowance,Tape)',
  );
  showVerdicts(sheet, `C${FIRST}:C${last}`, `$C${FIRST}`);
  sheet.format(`D${FIRST}:D${last}`, { format: '0' });

  sheet.rows(`N${TOP}`, [['Advise', 'Next step', 'Urgency']], HEADING);
  for (let row = FIRST; row <= last; row++) {
    sheet.rows(`N${row}`, [
      [{ formula: advise(row, surveys) }, { formula: nextStep(row) }, { formula: urgency(row) }],
    ]);
  }
  remeasureFirst(sheet, last);
  sheet.widths([
    ...[11, 30, 14, 10, 14, 15, 24, 11, 11, 36, 80, 60, 2],
    ...[38, 52, 9, 2, 6, 10, 14, 8, 15, 80],
  ]);
  sheet.freeze(TOP, 1);
}

/**
 * What was asked for where it goes; else the first of the next builds with a better verdict, one that goes before one
 * that is tight. What is tight as asked is not advised to change for what is as tight.
 */
function advise(row: number, surveys: readonly Survey[]): string {
  const column = (letter: string): string => otherBuildColumn(letter, surveys);
  const first = (verdict: Verdict): string =>
    `INDEX(${column('B')},MATCH(1,INDEX((${column('A')}=$A${row})` + `*(${column('C')}="${verdict}"),0),0))`;
  return (
    `IF($A${row}="","",IF($C${row}="goes","as asked",IF($C${row}="not measured","measure first",` +
    `IFERROR(${first('goes')},IF($C${row}="tight","as asked, if it passes the trial",` +
    `IFERROR("tight: "&${first('tight')},"none of the next builds"))))))`
  );
}

function nextStep(row: number): string {
  return (
    `IF($A${row}="","",IF($C${row}="not measured","send back for the measure at step "&$E${row},` +
    `IF(ISNUMBER(SEARCH("CHECKROUTE asks",$K${row})),"look at what Route marks, measure again, judge again",` +
    `IF($C${row}="goes","plan people, aids and floor",` +
    `IF($C${row}="tight",IF(ISNUMBER(SEARCH("not measured",$K${row})),"measure the rest of step ","frame or template first, look again at step ")&$E${row},` +
    `IF($C${row}="no way found","re-measure step "&$E${row}&", then ","")&` +
    `IF($N${row}="none of the next builds","try smaller builds in Job, or another way in","offer the other build"))))))`
  );
}

/** 1 not measured, 2 within the tape or marked by the check, 3 no way found, 4 otherwise tight; a fraction keeps the order of the surveys. */
function urgency(row: number): string {
  return (
    `IF($C${row}="not measured",1,IF(OR(ISNUMBER(SEARCH("CHECKROUTE asks",$K${row})),ISNUMBER(SEARCH("within the tape",$K${row}))),2,` +
    `IF($C${row}="no way found",3,IF($C${row}="tight",4,9))))+(ROW()-${TOP})/1000`
  );
}

function remeasureFirst(sheet: SheetWriter, last: number): void {
  sheet.rows(`R${TOP}`, [['No.', 'Re-measure', 'Now', 'At step', 'Where', 'Why']], HEADING);
  for (let n = 1; n <= REMEASURE_ROWS; n++) {
    const row = TOP + n;
    const place = `MATCH(SMALL($P$${FIRST}:$P$${last},$R${row}),$P$${FIRST}:$P$${last},0)`;
    // A step whose stage is misspelt has none.
    const when = (value: string): { formula: string } => ({
      formula: `IF(SMALL($P$${FIRST}:$P$${last},$R${row})>=9,"",IF(INDEX(${value},${place})="","-",INDEX(${value},${place})))`,
    });
    const column = (letter: string) => when(`$${letter}$${FIRST}:$${letter}$${last}`);
    sheet.rows(`R${row}`, [[n, column('A'), column('C'), column('E'), column('F'), column('K')]]);
  }
  showVerdicts(sheet, `T${FIRST}:T${TOP + REMEASURE_ROWS}`, `$T${FIRST}`);
}
