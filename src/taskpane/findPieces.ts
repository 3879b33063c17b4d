import type { Cell } from '../core/measures/readQuantity';
import { readPieces, type PieceRow } from '../core/survey/table/readPieces';
import { mmText } from '../drawing/paper';
import type { ChosenPiece } from './chosenPiece';
import type { CellArea, SheetAccess, SheetTable } from './sheetAccess';
import { entryAt } from '../core/lists/entryAt';

/** A piece that a person can choose. */
export interface FoundPiece extends ChosenPiece {
  /** Tells it from the others, the same at the next look as long as it stays where it is. */
  readonly key: string;
  readonly label: string;
  /** The build that it is a piece of; '' where none is named. */
  readonly build: string;
}

/** Sheets looked through, rows and columns in which a header row is looked for, and rows of pieces read. */
const MOST_SHEETS = 40;
const HEADER_WITHIN = 20;
const MOST_COLUMNS = 60;
const MOST_PIECES = 400;

/** The pieces of every table or range in the workbook whose header has Length, Breadth and Thickness. */
export async function findPieces(
  access: SheetAccess,
  tables: readonly SheetTable[],
): Promise<readonly FoundPiece[]> {
  const found: FoundPiece[] = [];
  for (const { area } of tables) {
    const headers = (await access.read({ ...area, rows: 1 }))[0] ?? [];
    if (isPiecesHeader(headers)) found.push(...(await piecesBelow(access, area, headers)));
  }
  if (found.length > 0) return found;
  for (const sheet of (await access.sheets()).slice(0, MOST_SHEETS)) {
    const whole = await access.used(sheet);
    if (!whole) continue;
    const used = { ...whole, columns: Math.min(whole.columns, MOST_COLUMNS) };
    const top = await access.read({ ...used, rows: Math.min(used.rows, HEADER_WITHIN) });
    const at = top.findIndex(isPiecesHeader);
    if (at < 0) continue;
    const area = { ...used, row: used.row + at, rows: used.rows - at };
    found.push(...(await piecesBelow(access, area, entryAt(top, at))));
  }
  return found;
}

/** A route has a Length too, but no Breadth and no Thickness. */
const isPiecesHeader = (headers: readonly Cell[]): boolean =>
  ['length', 'breadth', 'thickness'].every((name) =>
    headers.some((cell) => typeof cell === 'string' && cell.trim().toLowerCase() === name),
  );

async function piecesBelow(
  access: SheetAccess,
  area: CellArea,
  headers: readonly Cell[],
): Promise<FoundPiece[]> {
  const rows = Math.min(area.rows - 1, MOST_PIECES);
  if (rows < 1) return [];
  const cells = await access.read({ ...area, row: area.row + 1, rows });
  return readPieces([headers, ...cells]).pieces.flatMap((row) => {
    const piece = choiceOf(row);
    return piece ? [{ ...piece, key: `${area.sheet}!${area.row + 2 + row.rowIndex}` }] : [];
  });
}

/** What is offered of a row of pieces; undefined when a size cannot be taken. */
function choiceOf({ build, piece, size }: PieceRow): Omit<FoundPiece, 'key'> | undefined {
  if (!size) return undefined;
  const name = piece || 'Piece';
  const sized = [size.length, size.breadth, size.thickness].map(mmText).join(' x ');
  return { name, size, build, label: `${build ? `${build}: ` : ''}${name}, ${sized}` };
}
