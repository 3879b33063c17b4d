import type { CellArea, NewSheet, SheetAccess, WriteCell } from '../../taskpane/sheetAccess';
import { cellAddress, blockAddress, type Block } from '../address';
import { createWorkbook, type SheetDescription } from '../workbookWriter';
import { painted, type WorkbookSession } from './workbookSession';

/** The workbook of a session as the pane asks for it. */
export function hostSheetAccess(session: WorkbookSession): SheetAccess {
  const contents = (area: CellArea): string[][] =>
    eachCell(area, (row, column) => {
      const { host } = session;
      const formula = host.formula(area.sheet, row, column);
      if (formula !== undefined) return formula;
      const value = host.value(area.sheet, row, column);
      if (value === null) return '';
      return typeof value === 'object' ? value.code : String(value);
    });
  return {
    selection: async () => ({ sheet: session.sheet, ...session.selected.area }),
    inSight: () => true,
    onSight: () => {},
    onChange: async (listener) => {
      let wanted: 'selection' | 'cells' | undefined;
      session.listen((event) => {
        if (event === 'computing' || event === 'further') return;
        const what = event === 'selection' ? 'selection' : 'cells';
        // The sheet is painted first: what the pane has to work out must not hold up the typing.
        if (wanted === undefined) {
          void painted().then(() => {
            const now = wanted;
            wanted = undefined;
            if (now !== undefined) listener(now);
          });
        }
        if (wanted !== 'cells') wanted = what;
      });
    },
    sheets: async () => session.host.sheets(),
    tables: async () =>
      session.host.tables().map(({ name, sheet, block }) => ({ name, area: { sheet, ...block } })),
    block: async (area) => surroundings(session, area),
    used: async (sheet) => {
      const block = session.host.used(sheet);
      return block && { sheet, ...block };
    },
    read: async (area) => session.host.read(area.sheet, area),
    // Nothing hides rows here.
    hiddenRows: async ({ rows }) => Array<boolean>(rows).fill(false),
    contents: async (area) => contents(area),
    write: async (area, cells, holding) => {
      const same = contents(area).every((row, r) => row.every((text, c) => text === holding[r]?.[c]));
      if (!same) return 'changed';
      const done = session.write(
        area.sheet,
        cells.flatMap((row, r) =>
          row.map((value, c) => ({ row: area.row + r, column: area.column + c, value })),
        ),
      );
      if (!done.ok) throw new Error(done.reason);
      return 'written';
    },
    select: async ({ sheet, ...area }) => {
      session.show(sheet);
      session.select(area);
    },
    addSheets: async (sheets) => {
      for (const sheet of sheets) {
        const done = session.host.addSheet(describe(sheet));
        if (!done.ok) throw new Error(done.reason);
      }
      session.changed();
    },
  };
}

const eachCell = <T>(area: Block, cell: (row: number, column: number) => T): T[][] =>
  Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (__, c) => cell(area.row + r, area.column + c)),
  );

/** The filled cells round a cell, as far as an empty row and an empty column on every side. */
function surroundings(session: WorkbookSession, area: CellArea): CellArea {
  const { sheet } = area;
  const { host } = session;
  const used = host.used(sheet);
  let [top, left, bottom, right] = [area.row, area.column, area.row, area.column];
  if (!used) return { sheet, row: top, column: left, rows: 1, columns: 1 };
  const [lastRow, lastColumn] = [used.row + used.rows - 1, used.column + used.columns - 1];
  const filled = (r0: number, c0: number, r1: number, c1: number): boolean => {
    const [row, column] = [Math.max(r0, used.row), Math.max(c0, used.column)];
    const [rows, columns] = [Math.min(r1, lastRow) - row + 1, Math.min(c1, lastColumn) - column + 1];
    if (rows < 1 || columns < 1) return false;
    return host.read(sheet, { row, column, rows, columns }).some((line) => line.some((v) => v !== null));
  };
  for (;;) {
    if (filled(top - 1, left - 1, top - 1, right + 1)) top--;
    else if (filled(bottom + 1, left - 1, bottom + 1, right + 1)) bottom++;
    else if (filled(top - 1, left - 1, bottom + 1, left - 1)) left--;
    else if (filled(top - 1, right + 1, bottom + 1, right + 1)) right++;
    else return { sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
  }
}

function describe(sheet: NewSheet): SheetDescription {
  const made = createWorkbook().sheet(sheet.name);
  for (const { row, column, value, spills, bold } of sheet.cells) {
    const style = bold ? { bold: true } : undefined;
    const address = cellAddress(row, column);
    if (spills && isFormula(value)) made.spill(address, value.formula, style);
    else made.cell(address, value, style);
  }
  for (const { name, row, column, cells } of sheet.tables) {
    const [headers, ...rows] = cells;
    made.table({
      name,
      at: cellAddress(row, column),
      columns: (headers ?? []).map((header) => ({
        name: typeof header === 'string' ? header : JSON.stringify(header),
      })),
      rows,
    });
  }
  for (const { format, ...block } of sheet.formats ?? []) made.format(blockAddress(block), { format });
  for (const { words, ...block } of sheet.lists) made.list(blockAddress(block), words);
  const [table] = sheet.tables;
  if (table) made.freeze(table.row + 1, 0);
  const area = blockAddress(printed(sheet));
  made.print({
    area,
    across: 'landscape',
    ...(table ? { repeat: { from: table.row + 1, to: table.row + 1 } } : {}),
  });
  return made.widths(sheet.widths).description;
}

/** Rows that a result may fill and that are printed with it. */
const SPILL_ROOM = 40;

/** From the first cell to the last one that is written or may be filled. */
function printed({ cells, tables, widths }: NewSheet): Block {
  const last = Math.max(
    ...cells.map(({ row, spills }) => (spills ? row + SPILL_ROOM : row)),
    ...tables.map(({ row, cells: lines }) => row + lines.length - 1),
  );
  return { row: 0, column: 0, rows: last + 1, columns: Math.max(1, widths.length) };
}

const isFormula = (value: WriteCell): value is { readonly formula: string } =>
  typeof value === 'object' && value !== null;
