import { CAUTIONS } from '../../core/measures/cautions';
import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { headed, HEADING, unitsOver, WRAPPED } from './look';
import { upTo } from '../../worksheet/roundedFormulas';
import { MOVES_COLUMNS } from '../../worksheet/functions/moves';
import { shownSpill } from './shownSpill';
import { heaviest, jobPiece, PIECES_LENGTH } from './jobSheet';

const PIECES_TOP = 12;
const MOVES_TOP = PIECES_TOP + PIECES_LENGTH + 4;
/** Moves that a long carry has. */
const MOVES_ROOM = 36;
const MOVE_UNITS = ['', '', '', '', 'degrees', 'mm', 'mm a side', '', '', 'kg', '', ''];

/** Where MOVES spills, beside the printed page. */
const SPILLED = MOVE_UNITS.length + 1;

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
    {
      formula: `"The carry of the heaviest, "&${heaviest(1)}&", "&${upTo(heaviest(5), 1)}&" kg, move by move"`,
    },
    { bold: true },
  );
  unitsOver(sheet, `A${MOVES_TOP - 1}`, MOVE_UNITS);
  shownSpill(sheet, {
    formula: `CARRY.MOVES(JobRoute,${heaviest(2)},${heaviest(3)},${heaviest(4)},Allowance,Tape,${heaviest(5)})`,
    columns: MOVES_COLUMNS,
    at: `A${MOVES_TOP}`,
    rows: MOVES_ROOM,
    beside: SPILLED,
    places: 0,
  });
  const last = MOVES_TOP + MOVES_ROOM;
  sheet.format(`C${MOVES_TOP + 1}:C${last}`, WRAPPED).format(`H${MOVES_TOP + 1}:I${last}`, WRAPPED);
  sheet.format(`K${MOVES_TOP + 1}:L${last}`, WRAPPED);
  sheet.format(`E${MOVES_TOP + 1}:E${last}`, { format: '0' });
  const cautions = [CAUTIONS.route, CAUTIONS.stairs, CAUTIONS.lifting];
  sheet.rows(
    `A${last + 2}`,
    cautions.map((caution) => [caution]),
    { bold: true },
  );
  // What is printed keeps letters of 7 points; the cautions of the single moves stand once below them.
  sheet.widths([22, 8, 46, 9, 11, 8, 11, 36, 26, 11, 28, 60]);
  sheet.print({ area: `A1:K${last + 1 + cautions.length}`, across: 'landscape' });
}
