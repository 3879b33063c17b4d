import type { WorkbookWriter } from '../../sheetHost/workbookWriter';
import { BUILT_TABLES, SAMPLE_PIECES } from '../pieces';
import { headed } from './look';

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
        format: '0" kg"',
        formula: 'SUMPRODUCT((PieceRows[Build]=[@Build])*PieceRows[Mass]*PieceRows[Count])',
      },
      {
        name: 'Heaviest piece',
        width: 14,
        format: '0" kg"',
        formula: 'SUMPRODUCT(MAX((PieceRows[Build]=[@Build])*PieceRows[Mass]))',
      },
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
  sheet.freeze(TOP);
}
