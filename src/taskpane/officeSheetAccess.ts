import type { Cell } from '../core/measures/readQuantity';
import { paneSight } from './paneSight';
import type { CellArea, NewSheet, SheetAccess, WriteCell } from './sheetAccess';
import { firstOf } from '../core/lists/ends';
import { entryAt } from '../core/lists/entryAt';

/** Rows read in one go: a request may carry 5 MB. Office Add-ins documentation, "Resource limits". */
const ROWS_AT_ONCE = 2000;
/** Width of a column in points for one character, about, in the default font. */
const POINTS_A_CHARACTER = 5.6;

/** The workbook through Office.js. */
export function officeSheetAccess(): SheetAccess {
  const sight = paneSight();
  return {
    ...sight,
    selection: async () => {
      try {
        return await run(async (context) => areaOf(context, context.workbook.getSelectedRange()));
      } catch (fault) {
        // Several areas, or a chart; whatever else it is, the developer's console has it.
        const areas = await run(async (context) => {
          const selected = context.workbook.getSelectedRanges().load('areaCount');
          await context.sync();
          return selected.areaCount;
        }).catch(() => 0);
        if (areas > 1) return 'several areas';
        console.warn('The selection is not read as a range:', fault);
        return undefined;
      }
    },

    onChange: (listener) =>
      run(async (context) => {
        context.workbook.onSelectionChanged.add(async () => listener('selection'));
        const { worksheets } = context.workbook;
        const cells = async () => listener('cells');
        worksheets.onChanged.add(cells);
        worksheets.onAdded.add(cells);
        worksheets.onDeleted.add(cells);
        worksheets.onActivated.add(async () => listener('selection'));
        await context.sync();
      }),

    sheets: () =>
      run(async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load('items/name');
        await context.sync();
        return worksheets.items.map((sheet) => sheet.name);
      }),

    tables: () =>
      run(async (context) => {
        const { tables } = context.workbook;
        tables.load('items/name');
        await context.sync();
        const ranges = tables.items.map((table) => load(table.getRange()));
        await context.sync();
        return tables.items.map((table, i) => ({ name: table.name, area: loadedArea(entryAt(ranges, i)) }));
      }),

    block: (area) =>
      run((context) => areaOf(context, rangeOf(context, firstCell(area)).getSurroundingRegion())),

    used: (sheet) =>
      run(async (context) => {
        const range = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(true);
        load(range);
        await context.sync();
        return range.isNullObject ? undefined : loadedArea(range);
      }),

    read: (area) =>
      run(async (context) => {
        const rows: Cell[][] = [];
        for (const place of inParts(area)) {
          const part = rangeOf(context, place).load('values, valueTypes');
          await context.sync();
          part.values.forEach((values, i) =>
            rows.push(values.map((value, j) => readCell(value, entryAt(entryAt(part.valueTypes, i), j)))),
          );
        }
        return rows;
      }),

    hiddenRows: (area) =>
      run(async (context) => {
        const rows: boolean[] = [];
        for (const place of inParts(area)) {
          const found = rangeOf(context, place).getRowProperties({ rowHidden: true });
          await context.sync();
          rows.push(...found.value.map(({ rowHidden }) => rowHidden === true));
        }
        return rows;
      }),

    contents: (area) => run(async (context) => contentsOf(context, area)),

    write: (area, cells, holding) =>
      run(async (context) => {
        const now = await contentsOf(context, area);
        const same = now.every((row, i) => row.every((text, j) => text === holding[i]?.[j]));
        if (!same) return 'changed';
        const range = rangeOf(context, area);
        range.worksheet.protection.load('protected');
        range.format.protection.load('locked');
        await context.sync();
        // Of an area that is locked in parts it is null.
        if (range.worksheet.protection.protected && range.format.protection.locked !== false)
          return 'protected';
        range.formulas = cells.map((row) => row.map(entered));
        await context.sync();
        return 'written';
      }),

    select: (area) =>
      run(async (context) => {
        const range = rangeOf(context, area);
        range.worksheet.activate();
        range.select();
        await context.sync();
      }),

    addSheets: (sheets) =>
      run(async (context) => {
        const { protection } = context.workbook;
        protection.load('protected');
        await context.sync();
        if (protection.protected)
          throw new Error('its structure is protected, so no sheet can be added (Review > Protect Workbook)');
        for (const sheet of sheets) addSheet(context, sheet);
        await context.sync();
      }),
  };
}

type Context = Excel.RequestContext;

/** While a cell is edited the host answers nothing: what is asked of it waits until the edit has ended. */
const run = <T>(work: (context: Context) => Promise<T>): Promise<T> =>
  Excel.run({ delayForCellEdit: true }, work);

const PLACE = 'rowIndex, columnIndex, rowCount, columnCount, worksheet/name';

const load = (range: Excel.Range): Excel.Range => range.load(PLACE);

const loadedArea = (range: Excel.Range): CellArea => ({
  sheet: range.worksheet.name,
  row: range.rowIndex,
  column: range.columnIndex,
  rows: range.rowCount,
  columns: range.columnCount,
});

async function areaOf(context: Context, range: Excel.Range): Promise<CellArea> {
  load(range);
  await context.sync();
  return loadedArea(range);
}

const rangeOf = (context: Context, { sheet, row, column, rows, columns }: CellArea): Excel.Range =>
  context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, rows, columns);

const firstCell = (area: CellArea): CellArea => ({ ...area, rows: 1, columns: 1 });

function inParts(area: CellArea): CellArea[] {
  const parts: CellArea[] = [];
  for (let done = 0; done < area.rows; done += ROWS_AT_ONCE) {
    parts.push({ ...area, row: area.row + done, rows: Math.min(ROWS_AT_ONCE, area.rows - done) });
  }
  return parts;
}

function readCell(value: unknown, type: Excel.RangeValueType | string): Cell {
  if (type === 'Empty') return null;
  if (type === 'Error') return { code: String(value) };
  return typeof value === 'number' || typeof value === 'boolean' ? value : String(value);
}

async function contentsOf(context: Context, area: CellArea): Promise<string[][]> {
  const rows: string[][] = [];
  for (const place of inParts(area)) {
    const range = rangeOf(context, place).load('formulas, valueTypes');
    await context.sync();
    range.formulas.forEach((row: unknown[], i) =>
      rows.push(
        row.map((formula, j) => {
          const text = String(formula);
          // A lone apostrophe or a spilled "" looks empty and is not.
          return text === '' && String(range.valueTypes[i]?.[j]) !== 'Empty' ? "'" : text;
        }),
      ),
    );
  }
  return rows;
}

/** What Excel would take for a formula, a number or a date although it is meant as text. */
const TAKEN_FOR_MORE = /^\s*(?:[=+\-@'.(\d]|true$|false$)/i;

function entered(cell: WriteCell): string | number | boolean {
  if (cell === null) return '';
  if (typeof cell === 'object') return cell.formula;
  return typeof cell === 'string' && TAKEN_FOR_MORE.test(cell) ? `'${cell}` : cell;
}

function addSheet(context: Context, sheet: NewSheet): void {
  const made = context.workbook.worksheets.add(sheet.name);
  const at = (row: number, column: number, rows: number, columns: number): Excel.Range =>
    made.getRangeByIndexes(row, column, rows, columns);
  for (const { row, column, value, bold } of sheet.cells) {
    const range = at(row, column, 1, 1);
    range.formulas = [[entered(value)]];
    if (bold) range.format.font.bold = true;
  }
  for (const { name, row, column, cells } of sheet.tables) {
    const range = at(row, column, cells.length, firstOf(cells).length);
    range.formulas = cells.map((line) => line.map(entered));
    made.tables.add(range, true).name = name;
  }
  for (const { row, column, rows, columns, words } of sheet.lists) {
    const { dataValidation } = at(row, column, rows, columns);
    dataValidation.rule = { list: { inCellDropDown: true, source: words.join(',') } };
    dataValidation.errorAlert = {
      showAlert: true,
      style: 'Warning',
      title: 'Not in the list',
      message: `Usual here: ${words.join(', ')}`,
    };
  }
  for (const { row, column, rows, columns, format } of sheet.formats ?? []) {
    made.getRangeByIndexes(row, column, rows, columns).numberFormat = Array.from({ length: rows }, () =>
      Array<string>(columns).fill(format),
    );
  }
  sheet.widths.forEach((width, column) => {
    at(0, column, 1, 1).format.columnWidth = width * POINTS_A_CHARACTER;
  });
  // On paper across and one page wide, the headings of its table on every page and, on the screen, always in sight.
  made.pageLayout.orientation = 'Landscape';
  made.pageLayout.zoom = { horizontalFitToPages: 1 };
  const [table] = sheet.tables;
  if (table) {
    made.pageLayout.setPrintTitleRows(`$${table.row + 1}:$${table.row + 1}`);
    made.freezePanes.freezeRows(table.row + 1);
  }
}
