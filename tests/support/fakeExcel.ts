/** A workbook for tests, as data. Cells: row by row from A1; '=…' is a formula, {code} an error value. */
export interface FakeBook {
  sheets: { name: string; cells: (string | number | boolean | null | { code: string })[][] }[];
  tables: { name: string; sheet: string; row: number; column: number; rows: number; columns: number }[];
  selection: { sheet: string; row: number; column: number; rows: number; columns: number };
  /** Of several areas selected how many; left out: one. */
  areas?: number;
  /** Sheets that are protected, all their cells locked; and whether the workbook's structure is. */
  protectedSheets?: string[];
  protectedStructure?: boolean;
  /** Rows of the first sheet that a filter hides, from 0. */
  hiddenRows?: number[];
}

/**
 * A stand-in for Excel under office.js, as text of a script: only what the pane asks for, after the Excel API's
 * documentation. As there, a property can be read only when it was loaded and synchronised; formulas are kept
 * and not computed. It is no test of Excel, only of what the pane says to it.
 */
export const fakeExcelScript = (book: FakeBook): string =>
  `window.__name = (f) => f; // tsx names functions so\nwindow.fakeFunctions = new Map();\nwindow.CustomFunctions = { associate: (id, call) => window.fakeFunctions.set(id, call), Error: class { constructor(code, message) { this.code = code; this.message = message; } } };\n(${install.toString()})(${JSON.stringify(book)});`;

/* eslint-disable @typescript-eslint/no-explicit-any -- it runs in the page and imitates loosely typed objects */
function install(book: FakeBook): void {
  const page = window as any;
  page.fakeBook = book;
  page.fakeWrites = [];
  /** The rows repeated on paper, by sheet. */
  page.fakeTitles = {};
  const listeners: Record<string, (() => unknown)[]> = {};
  const event = (name: string) => ({ add: (f: () => unknown) => (listeners[name] ??= []).push(f) });
  const fire = (name: string): void => (listeners[name] ?? []).forEach((f) => void f());
  page.fakeSelect = (selection: FakeBook['selection']) => {
    book.selection = selection;
    fire('selection');
  };
  page.fakeType = (sheet: string, row: number, column: number, value: never) => {
    put(sheetOf(sheet), row, column, value);
    fire('changed');
  };
  const sheetOf = (name: string) => {
    const sheet = book.sheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
    if (!sheet) throw new Error('ItemNotFound');
    return sheet;
  };
  const get = (sheet: FakeBook['sheets'][0], row: number, column: number) =>
    sheet.cells[row]?.[column] ?? null;
  const put = (sheet: FakeBook['sheets'][0], row: number, column: number, value: any): void => {
    while (sheet.cells.length <= row) sheet.cells.push([]);
    const line = sheet.cells[row]!;
    while (line.length <= column) line.push(null);
    line[column] = value === '' ? null : value;
  };

  let pending: (() => void)[] = [];
  /** Rows whose cells the next sync answers with: the most of them tells how large an answer gets. */
  let rowsAsked = 0;
  const sync = async (): Promise<void> => {
    const work = pending;
    pending = [];
    page.fakeMostRows = Math.max(page.fakeMostRows, rowsAsked);
    rowsAsked = 0;
    await new Promise((later) => setTimeout(later, 0));
    for (const step of work) step();
  };
  /** Properties that can be read after load and sync only. */
  const loadable = (target: any, properties: Record<string, () => unknown>): any => {
    const loaded: Record<string, unknown> = {};
    for (const name of Object.keys(properties)) {
      Object.defineProperty(target, name, {
        configurable: true,
        get: () => {
          if (!(name in loaded)) throw new Error(`PropertyNotLoaded: ${name}`);
          return loaded[name];
        },
        set: (value) => target.setters[name](value),
      });
    }
    target.load = (names: string) => {
      if (/values|formulas/.test(names)) rowsAsked += target.rowsOfRange ?? 0;
      pending.push(() => {
        for (const name of names.split(',').map((n) => n.trim().split('/')[0]!.trim())) {
          if (name in properties) loaded[name] = properties[name]!();
        }
      });
      return target;
    };
    return target;
  };

  const range = (sheetName: string, row: number, column: number, rows: number, columns: number): any => {
    const grid = <T>(f: (value: any) => T): T[][] =>
      Array.from({ length: rows }, (_, i) =>
        Array.from({ length: columns }, (_, j) => f(get(sheetOf(sheetName), row + i, column + j))),
      );
    const type = (v: any): string =>
      v === null
        ? 'Empty'
        : typeof v === 'object'
          ? 'Error'
          : typeof v === 'number'
            ? 'Double'
            : typeof v === 'boolean'
              ? 'Boolean'
              : 'String';
    const plain = (v: any): any => (v === null ? '' : typeof v === 'object' ? v.code : v);
    const isFormula = (v: any): boolean => typeof v === 'string' && v.startsWith('=');
    const target: any = {
      isNullObject: rows === 0,
      rowsOfRange: rows,
      worksheet: {
        name: sheetName,
        protection: loadable(
          { setters: {} },
          { protected: () => (book.protectedSheets ?? []).includes(sheetName) },
        ),
        activate: () => (book.selection = { ...book.selection, sheet: sheetName }),
      },
      format: {
        font: {},
        protection: loadable({ setters: {} }, { locked: () => true }),
      },
      // "Range.getRowProperties": its value is there after a sync.
      getRowProperties: () => {
        const result: any = {};
        pending.push(() => {
          result.value = Array.from({ length: rows }, (_, i) => ({
            rowHidden: sheetName === book.sheets[0]?.name && (book.hiddenRows ?? []).includes(row + i),
          }));
        });
        return result;
      },
      dataValidation: {},
      setters: {
        formulas: (lines: any[][]) =>
          pending.push(() => {
            if (lines.length !== rows || lines[0]!.length !== columns) throw new Error('InvalidArgument');
            if ((book.protectedSheets ?? []).includes(sheetName)) throw new Error('AccessDenied');
            page.fakeWrites.push({ sheet: sheetName, row, column, rows, columns });
            lines.forEach((line, i) =>
              line.forEach((value, j) =>
                put(
                  sheetOf(sheetName),
                  row + i,
                  column + j,
                  typeof value === 'string' && value.startsWith("'") ? value.slice(1) : value,
                ),
              ),
            );
            fire('changed');
          }),
      },
      getSurroundingRegion: () => {
        const sheet = sheetOf(sheetName);
        const filled = (r: number, c: number): boolean => r >= 0 && c >= 0 && get(sheet, r, c) !== null;
        let [top, left, bottom, right] = [row, column, row, column];
        const any = (r1: number, r2: number, c1: number, c2: number): boolean => {
          for (let r = r1; r <= r2; r++) for (let c = c1; c <= c2; c++) if (filled(r, c)) return true;
          return false;
        };
        for (;;) {
          const up = any(top - 1, top - 1, left - 1, right + 1) ? 1 : 0;
          const down = any(bottom + 1, bottom + 1, left - 1, right + 1) ? 1 : 0;
          const before = any(top, bottom, left - 1, left - 1) ? 1 : 0;
          const after = any(top, bottom, right + 1, right + 1) ? 1 : 0;
          if (up + down + before + after === 0) break;
          [top, bottom, left, right] = [top - up, bottom + down, left - before, right + after];
        }
        return range(sheetName, top, left, bottom - top + 1, right - left + 1);
      },
      select: () => pending.push(() => page.fakeSelect({ sheet: sheetName, row, column, rows, columns })),
    };
    return loadable(target, {
      rowIndex: () => row,
      columnIndex: () => column,
      rowCount: () => rows,
      columnCount: () => columns,
      values: () => grid((v) => (isFormula(v) ? 0 : plain(v))),
      valueTypes: () => grid((v) => (isFormula(v) ? 'Double' : type(v))),
      formulas: () => grid(plain),
    });
  };

  const worksheet = (name: string): any => ({
    name,
    getRangeByIndexes: (r: number, c: number, rows: number, columns: number) =>
      range(name, r, c, rows, columns),
    getUsedRangeOrNullObject: () => {
      const { cells } = sheetOf(name);
      const columns = Math.max(0, ...cells.map((line) => line.length));
      return range(name, 0, 0, columns === 0 ? 0 : cells.length, columns);
    },
    pageLayout: {
      setPrintTitleRows: (rows: string) => {
        page.fakeTitles[name] = rows;
      },
    },
    freezePanes: { freezeRows: () => undefined },
    tables: {
      add: (area: any) => {
        area.load('rowIndex, columnIndex, rowCount, columnCount');
        const table = { name: `Table${book.tables.length + 1}` };
        pending.push(() =>
          book.tables.push({
            name: table.name,
            sheet: name,
            row: area.rowIndex,
            column: area.columnIndex,
            rows: area.rowCount,
            columns: area.columnCount,
          }),
        );
        return table;
      },
    },
  });
  const workbook = {
    protection: loadable({ setters: {} }, { protected: () => book.protectedStructure === true }),
    // "This method will throw an error if there are multiple ranges selected."
    getSelectedRanges: () => loadable({ setters: {} }, { areaCount: () => book.areas ?? 1 }),
    getSelectedRange: () => {
      if ((book.areas ?? 1) > 1)
        pending.push(() => {
          throw new Error('InvalidSelection');
        });
      const { sheet, row, column, rows, columns } = book.selection;
      return range(sheet, row, column, rows, columns);
    },
    onSelectionChanged: event('selection'),
    worksheets: {
      ...loadable({}, {}),
      load: () => undefined,
      get items() {
        return book.sheets.map((s) => worksheet(s.name));
      },
      onChanged: event('changed'),
      onAdded: event('changed'),
      onDeleted: event('changed'),
      onActivated: event('selection'),
      getItem: (name: string) => worksheet(sheetOf(name).name),
      add: (name: string) => {
        if (book.sheets.some((s) => s.name.toLowerCase() === name.toLowerCase()))
          throw new Error('ItemAlreadyExists');
        book.sheets.push({ name, cells: [] });
        return worksheet(name);
      },
    },
    tables: {
      load: () => undefined,
      get items() {
        return book.tables.map((t) => ({
          name: t.name,
          getRange: () => range(t.sheet, t.row, t.column, t.rows, t.columns),
        }));
      },
    },
  };
  // "Excel.RunOptions": while a cell is edited a batch fails, or waits where it says so.
  let editing = false;
  let waiting: (() => void)[] = [];
  page.fakeEdit = (on: boolean) => {
    editing = on;
    if (on) return;
    const go = waiting;
    waiting = [];
    for (const next of go) next();
  };
  page.fakeRuns = 0;
  page.fakeMostRows = 0;
  page.Excel = {
    run: async (first: any, second?: any) => {
      const [options, work] = second ? [first, second] : [{}, first];
      page.fakeRuns++;
      if (editing && !options.delayForCellEdit) throw new Error('InvalidOperationInCellEditMode');
      if (editing) await new Promise<void>((go) => waiting.push(go));
      pending = [];
      const result = await work({ workbook, sync });
      await sync();
      return result;
    },
  };
  page.Office = {
    HostType: { Excel: 'Excel' },
    VisibilityMode: { hidden: 'Hidden', taskpane: 'Taskpane' },
    addin: {
      onVisibilityModeChanged: (f: any) => {
        page.fakeVisibility = (visibilityMode: string) => f({ visibilityMode });
        return Promise.resolve(() => Promise.resolve());
      },
    },
    onReady: (f: any) => Promise.resolve().then(() => f({ host: 'Excel', platform: 'test' })),
  };
}
