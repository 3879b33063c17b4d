import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { BUILT_TABLES, SAMPLE_PIECES } from '../pieces';
import { headed, HEADING, unitsOver, WRAPPED } from './look';

const TOP = 5;

/** Cells that name the builds, for lists of words: the names have commas in them. */
export const BUILD_LIST = `Pieces!$K$${TOP + 1}:$K$${TOP + BUILT_TABLES.length}`;

/** The pieces of each build, what the check says of them, and each build as a whole table. */
export function piecesSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Pieces');
  headed(
    sheet,
    'Builds and their pieces',
    'Example values, common practice, no source: weigh and measure your own. Builds stand in the order of preference.',
    'lifting',
  );
  sheet.table({
    name: 'PieceRows',
    at: `A${TOP}`,
    columns: [
      { name: 'Build', width: 30 },
      { name: 'Piece', width: 28 },
      { name: 'Length', width: 9 },
      { name: 'Breadth', width: 9 },
      { name: 'Thickness', width: 10 },
      { name: 'Mass', width: 8 },
      { name: 'Count', width: 8 },
    ],
    rows: SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
  });
  unitsOver(sheet, `A${TOP - 1}`, ['', '', 'mm', 'mm', 'mm', 'kg each', 'number']);
  unitsOver(sheet, `K${TOP - 1}`, ['', 'mm', 'mm', 'mm', 'mm', 'number', '', '']);
  const last = TOP + SAMPLE_PIECES.length;
  sheet.format(`A${TOP}:G${TOP}`, HEADING).format(`I${TOP}`, HEADING).format(`K${TOP}:R${TOP}`, HEADING);
  // What is given is shown as it is: a format would round it to the nearest.
  sheet.format(`I${TOP + 1}:I${last}`, WRAPPED).format(`G${TOP + 1}:G${last}`, { format: '0' });
  sheet.spill(`I${TOP}`, 'CARRY.CHECKPIECES(PieceRows[#All])');
  sheet.table({
    name: 'Builds',
    at: `K${TOP}`,
    columns: [
      { name: 'Build', width: 30 },
      { name: 'Outside length', width: 14 },
      { name: 'Outside width', width: 14 },
      { name: 'Play length', width: 12 },
      { name: 'Play width', width: 12 },
      { name: 'Feet', width: 7 },
      {
        name: 'Table mass',
        width: 12,
        format: '0.0##" kg"',
        formula: 'SUMPRODUCT((PieceRows[Build]=[@Build])*PieceRows[Mass]*PieceRows[Count])',
      },
      {
        name: 'Heaviest piece',
        width: 14,
        format: '0.0##" kg"',
        formula: 'SUMPRODUCT(MAX((PieceRows[Build]=[@Build])*PieceRows[Mass]))',
      },
      ...(['Length', 'Breadth', 'Thickness'] as const).map((size) => ({
        name: `Heaviest ${size.toLowerCase()}`,
        width: 14,
        formula: `SUMPRODUCT(MAX((PieceRows[Build]=[@Build])*(PieceRows[Mass]=[@[Heaviest piece]])*PieceRows[${size}]))`,
      })),
    ],
    rows: BUILT_TABLES.map((t) => [
      t.build,
      t.outsideLength,
      t.outsideWidth,
      t.playLength,
      t.playWidth,
      t.feet,
    ]),
  });
  sheet.widths([30, 28, 9, 9, 10, 8, 8, 2, 40, 2, 30, 14, 14, 12, 12, 7, 12, 14]);
  sheet.freeze(TOP);
  sheet.print({ area: `A1:R${last}`, repeat: { from: TOP - 1, to: TOP }, across: 'landscape' });
}
