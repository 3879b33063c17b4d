import { CAUTIONS } from '../../core/measures/cautions';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { columnLetters } from '../../sheetHost/address';
import { headed, HEADING, unitsOver, WRAPPED } from './look';
import { downToIfNumber, upToIfNumber } from '../../worksheet/roundedFormulas';
import { heaviest, jobPiece, PIECES_LENGTH } from './jobSheet';

const PIECES_TOP = 12;
const MOVES_TOP = PIECES_TOP + PIECES_LENGTH + 4;
/** Moves that a long carry has. */
const MOVES_ROOM = 36;
const MOVE_UNITS = ['', '', '', '', 'degrees', 'mm', 'mm a side', '', '', 'kg', '', ''];

/** Where MOVES spills, beside the printed page; a format would round to the nearest, so what is printed is told from it. */
const SPILLED = MOVE_UNITS.length + 1;
/** Columns of MOVES of which no more may be shown than there is, and no less. */
const CLEARANCE = 6;
const [RAISE, LOWER_SHARE] = [5, 9];

/** What MOVES gives in a column, in whole figures to the careful side. */
function told(column: number, row: number): string {
  const cell = `${columnLetters(SPILLED + column)}${row}`;
  if (column === CLEARANCE) return downToIfNumber(cell, 0);
  if (column === RAISE || column === LOWER_SHARE) return upToIfNumber(cell, 0);
  return `IF(${cell}="","",${cell})`;
}

/** One page for the crew of the job chosen on Quote: where, which pieces, the carry move by move, the cautions. */
export function crewSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Crew');
  headed(
    sheet,
    'For the crew: the job chosen on Quote',
    'One job at a time: choose it on Quote, then print this page. The pictures of the tight steps of all jobs are on the sheets for the crew that belong to the month, and in the pane.',
    'stairs',
  );
  const order = (column: string): { readonly formula: string } => ({
    formula: `INDEX(Orders[${column}],MATCH(JobSurvey,Orders[Survey],0))`,
  });
  sheet.rows('A5', [
    ['Survey', { formula: 'JobSurvey' }],
    ['Customer', order('Customer')],
    ['Place', order('Place')],
    ['Build', { formula: 'JobBuild' }],
    [
      'Protect',
      'door frames, inner corners, treads, nosings, handrails, and the floor where the table is built up',
    ],
    [
      'Bring',
      'gloves, safety boots, blankets, straps, a tape, a frame of the piece for a trial, the written assessment',
    ],
  ]);
  sheet.rows(`A${PIECES_TOP}`, [['Piece', 'Number', 'Length', 'Breadth', 'Thickness', 'Mass']], HEADING);
  unitsOver(sheet, `A${PIECES_TOP - 1}`, ['', '', 'mm', 'mm', 'mm', 'kg each']);
  for (let n = 0; n < PIECES_LENGTH; n++) {
    const row = [1, 6, 2, 3, 4, 5].map((column) => ({ formula: jobPiece(n, column) }));
    sheet.rows(`A${PIECES_TOP + 1 + n}`, [row]);
  }
  sheet.cell(
    `A${MOVES_TOP - 2}`,
    { formula: `"The carry of the heaviest, "&${heaviest(1)}&", "&${heaviest(5)}&" kg, move by move"` },
    { bold: true },
  );
  unitsOver(sheet, `A${MOVES_TOP - 1}`, MOVE_UNITS);
  sheet.cell(`${columnLetters(SPILLED)}${MOVES_TOP - 1}`, 'As MOVES gives it, not rounded', { italic: true });
  sheet.spill(
    `${columnLetters(SPILLED)}${MOVES_TOP}`,
    `CARRY.MOVES(JobRoute,${heaviest(2)},${heaviest(3)},${heaviest(4)},Allowance,Tape,${heaviest(5)})`,
  );
  const last = MOVES_TOP + MOVES_ROOM;
  for (let row = MOVES_TOP; row <= last; row++)
    sheet.rows(`A${row}`, [MOVE_UNITS.map((_, n) => ({ formula: told(n, row) }))]);
  sheet.format(`A${MOVES_TOP}:L${MOVES_TOP}`, HEADING);
  sheet.format(`C${MOVES_TOP + 1}:C${last}`, WRAPPED).format(`H${MOVES_TOP + 1}:I${last}`, WRAPPED);
  sheet.format(`K${MOVES_TOP + 1}:L${last}`, WRAPPED);
  sheet
    .format(`E${MOVES_TOP + 1}:G${last}`, { format: '0' })
    .format(`J${MOVES_TOP + 1}:J${last}`, { format: '0' });
  sheet.cell(`A${last + 1}`, CAUTIONS.route, { bold: true });
  sheet.widths([22, 8, 52, 10, 10, 8, 10, 40, 30, 12, 34, 60]);
  sheet.print({ area: `A1:L${last + 1}`, across: 'landscape' });
}
