import { sortedPiece } from '../core/measures/piece';
import { readLength } from '../core/measures/readLength';
import type { Cell } from '../core/measures/readQuantity';
import { mmText } from '../drawing/paper';
import { PIECE_LENGTH_RANGE } from '../worksheet/arguments';
import { cellText, type ChosenPiece } from './paneModel';
import type { CellArea, SheetAccess, SheetTable } from './sheetAccess';

/** A piece that a person can choose. */
export interface FoundPiece extends ChosenPiece {
  /** Tells it from the others, the same at the next look as long as it stays where it is. */
  readonly key: string;
  readonly label: string;
}

/** Sheets looked through, rows in which a header row is looked for, and rows of pieces read. */
const MOST_SHEETS = 40;
const HEADER_WITHIN = 20;
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
    const used = await access.used(sheet);
    if (!used) continue;
    const top = await access.read({ ...used, rows: Math.min(used.rows, HEADER_WITHIN) });
    const at = top.findIndex(isPiecesHeader);
    if (at < 0) continue;
    const area = { ...used, row: used.row + at, rows: used.rows - at };
    found.push(...(await piecesBelow(access, area, top[at]!)));
  }
  return found;
}

const columnOf = (headers: readonly Cell[], name: string): number =>
  headers.findIndex((cell) => typeof cell === 'string' && cell.trim().toLowerCase() === name);

/** A route has a Length too, but no Breadth and no Thickness. */
const isPiecesHeader = (headers: readonly Cell[]): boolean =>
  ['length', 'breadth', 'thickness'].every((name) => columnOf(headers, name) >= 0);

async function piecesBelow(
  access: SheetAccess,
  area: CellArea,
  headers: readonly Cell[],
): Promise<FoundPiece[]> {
  const rows = Math.min(area.rows - 1, MOST_PIECES);
  if (rows < 1) return [];
  const cells = await access.read({ ...area, row: area.row + 1, rows });
  return cells.flatMap((row, i) => {
    const piece = pieceOf(row, headers);
    return piece ? [{ ...piece, key: `${area.sheet}!${area.row + 2 + i}` }] : [];
  });
}

/** The piece of a row; undefined when a size cannot be taken. */
export function pieceOf(row: readonly Cell[], headers: readonly Cell[]): Omit<FoundPiece, 'key'> | undefined {
  const sizes = ['length', 'breadth', 'thickness'].map((name) => readLength(row[columnOf(headers, name)]));
  const [a, b, c] = sizes.map((size) => (size.ok && size.value > 0 ? size.value : undefined));
  if (a === undefined || b === undefined || c === undefined) return undefined;
  const size = sortedPiece(a, b, c);
  if (size.length < PIECE_LENGTH_RANGE.least || size.length > PIECE_LENGTH_RANGE.most) return undefined;
  const text = (name: string): string => cellText(row[columnOf(headers, name)]).trim();
  const name = text('piece') || 'Piece';
  const build = text('build');
  const sized = [size.length, size.breadth, size.thickness].map(mmText).join(' x ');
  return { name, size, label: `${build ? `${build}: ` : ''}${name}, ${sized}` };
}
