import type { Cell } from '../core/measures/readQuantity';
import type { CellArea, SheetAccess, SheetTable } from './sheetAccess';

/** The row that is selected, with the header row of the table or range that it belongs to. */
export interface FoundRow {
  /** The cells of the header row. */
  readonly header: CellArea;
  /** The cells of the row. */
  readonly row: CellArea;
  readonly headers: readonly Cell[];
  readonly cells: readonly Cell[];
  /** All rows selected that are not hidden, this one first, as far as the table or range goes. */
  readonly selected: readonly SheetRow[];
  /** The last row of the table or range. */
  readonly lastRow: number;
}

/** The cells of a row, and which of the sheet's rows it is, from 0. */
export interface SheetRow {
  readonly row: number;
  readonly cells: readonly Cell[];
}

/** A row of a table of verdicts, as a function has spilled it. */
export interface ResultRow {
  /** The cells of its header row. */
  readonly header: CellArea;
  readonly headers: readonly Cell[];
  readonly cells: readonly Cell[];
}

/** Rows of a selection that are looked at. */
export const MOST_SELECTED = 200;

export type RowSearch =
  | { readonly found: FoundRow }
  | { readonly found: undefined; readonly why: string }
  | { readonly found: undefined; readonly result: ResultRow };

/** How many rows below the top of a plain range a header row is looked for. */
const HEADER_WITHIN = 20;

/** Which column has this heading; -1: none. */
export const columnOf = (headers: readonly Cell[], name: string): number =>
  headers.findIndex((cell) => typeof cell === 'string' && cell.trim().toLowerCase() === name);

/** What makes a header row that of a route. */
export const isRouteHeader = (cells: readonly Cell[]): boolean =>
  columnOf(cells, 'stage') >= 0 && !isResultHeader(cells);

/** The column of the step that a row of results speaks of: a month's list calls it that at which it is decided. */
export const stepColumn = (headers: readonly Cell[]): number =>
  Math.max(columnOf(headers, 'step'), columnOf(headers, 'at step'));

/** What ADVISE, VERDICT, STAGES and SURVEYS spill, and a month's list: verdicts with their reasons, and no measures. */
const isResultHeader = (cells: readonly Cell[]): boolean =>
  ['stage', 'verdict', 'reason'].every((name) => columnOf(cells, name) >= 0) &&
  stepColumn(cells) >= 0 &&
  columnOf(cells, 'width') < 0;

/**
 * Finds the header row for the first row of the selection: that of the table it lies in, else the last row
 * at or above it in its block of filled cells that has a Stage column.
 */
export async function findRow(
  access: SheetAccess,
  tables: readonly SheetTable[],
  selected: CellArea | 'several areas' | undefined,
): Promise<RowSearch> {
  if (selected === 'several areas')
    return no('Several areas are selected. Select rows of one route that stand together.');
  if (!selected) return no('Select a cell of a route.');
  const table = tables.find(({ area }) => touches(area, selected));
  return table ? inTable(access, table, selected) : inBlock(access, selected);
}

const no = (why: string): RowSearch => ({ found: undefined, why });

const touches = (area: CellArea, cell: CellArea): boolean =>
  area.sheet === cell.sheet &&
  cell.row >= area.row &&
  cell.row < area.row + area.rows &&
  cell.column < area.column + area.columns &&
  cell.column + cell.columns > area.column;

async function inTable(access: SheetAccess, table: SheetTable, selected: CellArea): Promise<RowSearch> {
  const header = { ...table.area, rows: 1 };
  const headers = (await access.read(header))[0] ?? [];
  if (isResultHeader(headers)) return resultRow(access, header, headers, selected);
  if (!isRouteHeader(headers)) return no(`The table ${table.name} has no Stage column, so it is no route.`);
  if (selected.row === table.area.row) return no('This is the header row. Select a row below it.');
  return rowOf(access, header, headers, selected, table.area.row + table.area.rows - 1);
}

async function inBlock(access: SheetAccess, selected: CellArea): Promise<RowSearch> {
  const block = await access.block(selected);
  const depth = Math.min(selected.row - block.row + 1, HEADER_WITHIN);
  if (depth < 1) return no('Select a cell of a route.');
  const top = await access.read({ ...block, rows: depth });
  for (const [i, headers] of [...top.entries()].reverse()) {
    const result = isResultHeader(headers);
    if (!result && !isRouteHeader(headers)) continue;
    const header = { ...block, row: block.row + i, rows: 1 };
    if (header.row === selected.row) return no('This is the header row. Select a row below it.');
    return result
      ? resultRow(access, header, headers, selected)
      : rowOf(access, header, headers, selected, block.row + block.rows - 1);
  }
  return no('No header row with a Stage column was found above this cell. Select a row of a route.');
}

async function rowOf(
  access: SheetAccess,
  header: CellArea,
  headers: readonly Cell[],
  { row, rows }: CellArea,
  lastRow: number,
): Promise<RowSearch> {
  const area = { ...header, row };
  const count = Math.max(1, Math.min(rows, lastRow - row + 1, MOST_SELECTED));
  const all = await access.read({ ...area, rows: count });
  const hidden = count > 1 ? await access.hiddenRows({ ...area, rows: count }) : [];
  const selected = all.map((cells, i) => ({ row: row + i, cells })).filter((_, i) => i === 0 || !hidden[i]);
  return { found: { header, row: area, headers, cells: all[0] ?? [], selected, lastRow } };
}

async function resultRow(
  access: SheetAccess,
  header: CellArea,
  headers: readonly Cell[],
  { row }: CellArea,
): Promise<RowSearch> {
  if (row === header.row) return no('This is the header row. Select a row below it.');
  const [cells = []] = await access.read({ ...header, row });
  return { found: undefined, result: { header, headers, cells } };
}
