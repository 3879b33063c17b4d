import { element } from '../../taskpane/element';
import { cellAddress, columnLetters, SHEET_COLUMNS, SHEET_ROWS, within, type Block } from '../address';
import { shownText } from '../excelts/shownText';
import type { CellLook } from '../cellLook';
import { isBusy, isCellError, type CellValue } from '../hostValues';
import { ColumnWidths } from './columnWidths';
import { RowHeights, type TextWidth } from './rowHeights';
import type { WorkbookSession } from './workbookSession';

/** Sizes in px; the style sheet has the same. */
const HEAD_HEIGHT = 24;
const HEAD_WIDTH = 52;

/** Empty rows and columns that are offered round the filled ones, and the fewest of all. */
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 6;
const LEAST_ROWS = 60;
const LEAST_COLUMNS = 14;

/** Rows and columns drawn beyond what is seen. */
const MARGIN = 3;

/** How far a text may run over empty cells to its right. */
const RUN_OVER = 24;

interface Held {
  readonly row: number;
  readonly column: number;
}

/** What a person does on the grid. */
export interface GridActions {
  /** A click puts an address into what is typed: the keyboard stays there. */
  pointing(): boolean;
  selected(cell: Held, how: 'anew' | 'extend'): void;
  /** Pressed and let go on one cell. */
  clicked(cell: Held): void;
  edit(): void;
}

/** The cells of the sheet in front. Only rows and columns in sight are in the page. */
export class GridView {
  readonly grid = element('div', {
    role: 'grid',
    class: 'grid',
    tabindex: '0',
    'aria-multiselectable': 'true',
  });
  readonly scroller = element('div', { class: 'grid-scroll' });
  /** What is typed straight into a cell. */
  readonly editor = element('input', {
    class: 'cell-editor',
    type: 'text',
    autocomplete: 'off',
    spellcheck: 'false',
  });
  private readonly heads = element('div', { role: 'row', class: 'heads', 'aria-rowindex': '1' });
  private readonly body = element('div', { role: 'rowgroup', class: 'rows' });
  /** Rows that stay in sight, under the letters of the columns. */
  private readonly held = element('div', { role: 'presentation', class: 'held-rows' });
  private readonly headGroup = element(
    'div',
    { role: 'rowgroup', class: 'head-group' },
    this.heads,
    this.held,
  );
  private readonly widths = new Map<string, ColumnWidths>();
  /** Of the sheet in front, until something in it changes. */
  private heights: { readonly sheet: string; readonly heights: RowHeights } | undefined;
  private textWidth: TextWidth | undefined;
  private planned = false;

  constructor(
    private readonly session: WorkbookSession,
    actions: GridActions,
  ) {
    this.grid.append(this.headGroup, this.body);
    this.scroller.append(this.grid, this.editor);
    this.editor.hidden = true;
    this.scroller.addEventListener('scroll', () => this.plan());
    new ResizeObserver(() => this.plan()).observe(this.scroller);
    /** The cell that was pressed, and the last one that the pressed mouse was over. */
    let press: { readonly from: Held; readonly click: boolean; over: Held } | undefined;
    // The keyboard stays where it is put, and no text is picked.
    this.grid.addEventListener('mousedown', (event) => event.preventDefault());
    this.grid.addEventListener('pointerdown', (event) => {
      const cell = cellUnder(event.target);
      if (!cell || event.button !== 0) return;
      press = { from: cell, click: !event.shiftKey && !actions.pointing(), over: cell };
      // What is pressed is drawn anew at once, and a pointer whose element is gone may not be heard of again.
      this.grid.setPointerCapture(event.pointerId);
      actions.selected(cell, event.shiftKey ? 'extend' : 'anew');
    });
    this.grid.addEventListener('pointermove', (event) => {
      const cell = press && event.pointerType === 'mouse' ? cellAt(event) : undefined;
      if (!press || !cell || sameCell(cell, press.over)) return;
      press.over = cell;
      actions.selected(cell, 'extend');
    });
    this.grid.addEventListener('pointerup', (event) => {
      const cell = cellAt(event);
      if (press?.click && cell && sameCell(cell, press.from)) actions.clicked(cell);
      press = undefined;
    });
    this.grid.addEventListener('pointercancel', () => (press = undefined));
    // For the same reason no click and no double click comes of it; the count of presses does.
    this.grid.addEventListener('mouseup', (event) => {
      if (event.detail === 2 && cellAt(event)) actions.edit();
    });
  }

  /** Another workbook is there. */
  forget(): void {
    this.heights = undefined;
    this.widths.clear();
  }

  /** Widens the columns for what has come into a block. */
  widen(block: Block): void {
    this.heights = undefined;
    this.widthsHere().widen(this.session.host, this.session.sheet, block);
  }

  /** Results have come into cells anywhere. */
  widenForAnswers(): void {
    this.heights = undefined;
    for (const [sheet, widths] of this.widths) {
      const used = this.session.host.used(sheet);
      if (used) widths.widen(this.session.host, sheet, used);
    }
  }

  private widthsHere(): ColumnWidths {
    const { sheet, host } = this.session;
    let widths = this.widths.get(sheet);
    if (!widths) {
      this.widths.set(sheet, (widths = new ColumnWidths()));
      widths.measure(host, sheet);
    }
    return widths;
  }

  private heightsHere(): RowHeights {
    const { sheet, host } = this.session;
    if (this.heights?.sheet !== sheet) {
      this.textWidth ??= measuredBy(getComputedStyle(this.scroller));
      this.heights = { sheet, heights: new RowHeights(host, sheet, this.widthsHere(), this.textWidth) };
    }
    return this.heights.heights;
  }

  private plan(): void {
    if (this.planned) return;
    this.planned = true;
    requestAnimationFrame(() => {
      this.planned = false;
      this.render();
    });
  }

  /** Rows that are seen at once. */
  get page(): number {
    const { scrollTop, clientHeight } = this.scroller;
    const heights = this.heightsHere();
    return Math.max(1, heights.at(scrollTop + clientHeight - HEAD_HEIGHT) - heights.at(scrollTop) - 1);
  }

  /** Scrolls as far as the active cell asks for, and draws. */
  reveal(): void {
    const { row, column } = this.session.selected.cell;
    const widths = this.widthsHere();
    const heights = this.heightsHere();
    const { scroller } = this;
    this.size();
    const frozen = this.frozen();
    const [above, before] = [heights.top(frozen.rows), widths.left(frozen.columns)];
    const [top, left] = [heights.top(row), widths.left(column)];
    const bottom = Math.min(heights.top(row + 1), top + scroller.clientHeight - HEAD_HEIGHT - above);
    const height = scroller.clientHeight - HEAD_HEIGHT;
    const width = scroller.clientWidth - HEAD_WIDTH;
    if (row < frozen.rows) {
      // Held in sight.
    } else if (top < scroller.scrollTop + above) scroller.scrollTop = top - above;
    else if (bottom > scroller.scrollTop + height) scroller.scrollTop = bottom - height;
    const wide = Math.min(widths.of(column), width);
    if (column < frozen.columns) {
      // Held in sight.
    } else if (left < scroller.scrollLeft + before) scroller.scrollLeft = left - before;
    else if (left + wide > scroller.scrollLeft + width) scroller.scrollLeft = left + wide - width;
    this.render();
  }

  /** Shows the editor over the active cell. */
  showEditor(text: string): void {
    const { row, column } = this.session.selected.cell;
    const widths = this.widthsHere();
    const frozen = this.frozen();
    // A cell that is held in sight has not moved with the others.
    const down = row < frozen.rows ? this.scroller.scrollTop : 0;
    const along = column < frozen.columns ? this.scroller.scrollLeft : 0;
    this.editor.style.top = `${HEAD_HEIGHT + this.heightsHere().top(row) + down}px`;
    this.editor.style.left = `${HEAD_WIDTH + widths.left(column) + along}px`;
    this.editor.setAttribute('aria-label', `${cellAddress(row, column)}, typing`);
    this.editor.hidden = false;
    this.sizeEditor(text);
  }

  /** Gives the editor room for what is typed. */
  sizeEditor(text: string): void {
    const { column } = this.session.selected.cell;
    const wanted = Math.max(this.widthsHere().of(column), text.length * 7.4 + 28);
    this.editor.style.width = `${Math.min(wanted, Math.max(120, this.scroller.clientWidth - HEAD_WIDTH - 24))}px`;
  }

  /** What the workbook freezes, as far as it leaves half of the room for the rest. */
  private frozen(): { readonly rows: number; readonly columns: number } {
    const { frozen } = this.session.host.look(this.session.sheet);
    const room = this.scroller.clientHeight - HEAD_HEIGHT;
    const across = this.scroller.clientWidth - HEAD_WIDTH;
    return {
      rows: this.heightsHere().top(frozen.rows) <= room / 2 ? frozen.rows : 0,
      columns: this.widthsHere().left(frozen.columns) <= across / 2 ? frozen.columns : 0,
    };
  }

  private extent(): { readonly rows: number; readonly columns: number } {
    const { host, sheet, selected } = this.session;
    const used = host.used(sheet);
    const rows = Math.max(LEAST_ROWS, (used ? used.row + used.rows : 0) + SPARE_ROWS, selected.cell.row + 2);
    const columns = Math.max(
      LEAST_COLUMNS,
      (used ? used.column + used.columns : 0) + SPARE_COLUMNS,
      selected.cell.column + 2,
    );
    return { rows: Math.min(rows, SHEET_ROWS), columns: Math.min(columns, SHEET_COLUMNS) };
  }

  private size(): { readonly rows: number; readonly columns: number } {
    const extent = this.extent();
    const widths = this.widthsHere();
    this.grid.style.width = `${HEAD_WIDTH + widths.left(extent.columns)}px`;
    this.grid.style.height = `${HEAD_HEIGHT + this.heightsHere().top(extent.rows)}px`;
    this.grid.setAttribute('aria-rowcount', String(extent.rows + 1));
    this.grid.setAttribute('aria-colcount', String(extent.columns + 1));
    this.grid.setAttribute('aria-label', `Cells of ${this.session.sheet}`);
    return extent;
  }

  /** Draws what is in sight. */
  render(): void {
    const { session, scroller } = this;
    const { host, sheet } = session;
    const extent = this.size();
    const widths = this.widthsHere();
    const heights = this.heightsHere();
    const frozen = this.frozen();
    const look = host.look(sheet);
    const firstRow = Math.max(frozen.rows, heights.at(scroller.scrollTop) - MARGIN);
    const lastRow = Math.min(
      extent.rows - 1,
      heights.at(scroller.scrollTop + scroller.clientHeight) + 1 + MARGIN,
    );
    const firstColumn = Math.max(frozen.columns, widths.at(scroller.scrollLeft) - MARGIN);
    const lastColumn = Math.min(
      extent.columns - 1,
      widths.at(scroller.scrollLeft + scroller.clientWidth) + MARGIN,
    );
    const columns = [...range(0, frozen.columns), ...range(firstColumn, lastColumn + 1)];
    const { area, cell: active } = session.selected;
    const spill = host.spill(sheet, active.row, active.column);
    const headers = host.tables().filter((t) => t.sheet === sheet);

    const corner = element(
      'div',
      { role: 'columnheader', class: 'head corner', 'aria-colindex': '1' },
      element('span', { class: 'unseen' }, 'Row'),
    );
    const letters = columns.map((column) => {
      const lit = column >= area.column && column < area.column + area.columns;
      const head = element(
        'div',
        { role: 'columnheader', class: lit ? 'head lit' : 'head', 'aria-colindex': String(column + 2) },
        columnLetters(column),
      );
      place(head, HEAD_WIDTH + widths.left(column), widths.of(column));
      return head;
    });
    const heldLetters = element('div', { role: 'presentation', class: 'held' });
    letters
      .slice(0, frozen.columns)
      .forEach((head, column) => place(head, widths.left(column), widths.of(column)));
    heldLetters.append(...letters.slice(0, frozen.columns));
    this.heads.replaceChildren(corner, heldLetters, ...letters.slice(frozen.columns));

    const lineOf = (row: number): HTMLElement => {
      const lit = row >= area.row && row < area.row + area.rows;
      const head = element(
        'div',
        { role: 'rowheader', class: lit ? 'head lit' : 'head', 'aria-colindex': '1' },
        String(row + 1),
      );
      const line = element('div', { role: 'row', class: 'row', 'aria-rowindex': String(row + 2) }, head);
      line.style.top = `${heights.top(row)}px`;
      line.style.height = `${heights.of(row)}px`;
      const block = { row, column: 0, rows: 1, columns: lastColumn + 1 + RUN_OVER };
      const [values = []] = host.read(sheet, block);
      const cells = columns.map((column) => {
        const value = values[column] ?? null;
        const isActive = row === active.row && column === active.column;
        const names = ['cell', kindOf(value)];
        const isSelected = lit && column >= area.column && column < area.column + area.columns;
        if (isSelected && !isActive) names.push('sel');
        if (isActive) names.push('active');
        if (spill && within(spill, row, column)) names.push('spill');
        if (
          headers.some(
            ({ block: titled }) =>
              titled.row === row && column >= titled.column && column < titled.column + titled.columns,
          )
        )
          names.push('title');
        const cell = element('div', {
          role: 'gridcell',
          class: names.join(' '),
          'aria-colindex': String(column + 2),
          'aria-selected': String(isSelected),
          'data-at': `${row},${column}`,
          id: cellId(row, column),
        });
        const left = widths.left(column) + (column < frozen.columns ? 0 : HEAD_WIDTH);
        place(cell, left, widths.of(column));
        const wraps = typeof value === 'string' && look.wraps(row, column);
        if (isBusy(value)) cell.append(element('span', {}, 'computing…'));
        else if (value !== null) {
          const text = shownText(value, host.format(sheet, row, column));
          fill(cell, value, wraps ? text : text.replace(/\s*\n\s*/g, ' / '));
        }
        dress(cell, look.cell(row, column));
        if (host.link(sheet, row, column)) cell.classList.add('link');
        if (wraps) {
          cell.classList.add('wraps');
          cell.style.setProperty('--lines', String(heights.lines(row)));
        } else if (typeof value === 'string') {
          let room = 0;
          for (let k = column + 1; k <= column + RUN_OVER && (values[k] ?? null) === null; k++)
            room += widths.of(k);
          if (room > 0 && value.length * 6 > widths.of(column)) {
            cell.classList.add('over');
            (cell.firstElementChild as HTMLElement).style.maxWidth = `${widths.of(column) + room - 14}px`;
          }
        }
        return cell;
      });
      const held = element('div', { role: 'presentation', class: 'held' });
      held.append(...cells.slice(0, frozen.columns));
      line.append(held, ...cells.slice(frozen.columns));
      return line;
    };
    // With its line below.
    this.held.style.height = `${heights.top(frozen.rows) + 2}px`;
    this.held.replaceChildren(...range(0, frozen.rows).map(lineOf));
    this.body.replaceChildren(...range(firstRow, lastRow + 1).map(lineOf));
    const seen =
      (active.row < frozen.rows || (active.row >= firstRow && active.row <= lastRow)) &&
      (active.column < frozen.columns || (active.column >= firstColumn && active.column <= lastColumn));
    if (seen) this.grid.setAttribute('aria-activedescendant', cellId(active.row, active.column));
    else this.grid.removeAttribute('aria-activedescendant');
  }
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);

/**
 * Gives a cell the look that the workbook has for it. A colour of letters counts only on a fill, since the sheet's own
 * paper may be dark; on a fill without one the letters are black or white, whichever is seen better.
 */
function dress(cell: HTMLElement, { fill: paper, color, bold, italic, underline, align }: CellLook): void {
  if (paper !== undefined) {
    cell.classList.add('filled');
    cell.style.setProperty('--fill', `#${paper}`);
    cell.style.setProperty(
      '--letters',
      color === undefined ? (isLight(paper) ? '#1d1a15' : '#ffffff') : `#${color}`,
    );
  }
  if (bold) cell.style.fontWeight = '600';
  if (italic) cell.style.fontStyle = 'italic';
  if (underline) cell.style.textDecoration = 'underline';
  if (align !== undefined) cell.style.textAlign = align;
}

/** By the relative luminance at which black and white letters are seen equally well: WCAG 2, 1.4.3. */
function isLight(color: string): boolean {
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const part = parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue > 0.179;
}

const cellId = (row: number, column: number): string => `cell-${row}-${column}`;

/** Widths of words as a style draws them, in the weight of headings: never less than they are. */
function measuredBy({ fontSize, fontFamily }: CSSStyleDeclaration): TextWidth {
  const context = element('canvas', {}).getContext('2d');
  const known = new Map<string, number>();
  if (context) context.font = `600 ${fontSize} ${fontFamily}`;
  return (text) => {
    let width = known.get(text);
    if (width === undefined) {
      width = context ? context.measureText(text).width : text.length * parseFloat(fontSize) * 0.6;
      known.set(text, width);
    }
    return width;
  };
}

function place(made: HTMLElement, left: number, width: number): void {
  made.style.left = `${left}px`;
  made.style.width = `${width}px`;
}

function kindOf(value: CellValue): string {
  if (value === null) return 'blank';
  if (isBusy(value)) return 'busy';
  if (isCellError(value)) return 'fault';
  return typeof value === 'number' ? 'number' : typeof value === 'boolean' ? 'truth' : 'words';
}

function fill(cell: HTMLElement, value: CellValue, shown: string): void {
  cell.append(element('span', {}, shown));
  if (!isCellError(value)) return;
  const message = value.message ?? FAULTS[value.code];
  if (message === undefined) return;
  cell.title = message;
  cell.append(element('span', { class: 'unseen' }, `: ${message}`));
}

/** What an error means that no function has given a message to. */
export const FAULTS: Readonly<Record<string, string>> = {
  '#SPILL!': 'the cells that the result needs are not all empty',
  '#NAME?': 'a cell that the formula reads has a name in it that nothing is called by',
  '#REF!': 'the formula asks for a cell that is not there',
  '#DIV/0!': 'a number is divided by 0 or by an empty cell',
  '#NUM!': 'a number is out of the range of the function',
  '#N/A': 'a value is not available',
  '#VALUE!': 'a value is not of the kind that is needed here',
};

const sameCell = (one: Held, other: Held): boolean => one.row === other.row && one.column === other.column;

/** The cell where the pointer is, whichever element hears of it. */
const cellAt = ({ clientX, clientY }: MouseEvent): Held | undefined =>
  cellUnder(document.elementFromPoint(clientX, clientY));

function cellUnder(target: EventTarget | null): Held | undefined {
  const at = target instanceof Element ? target.closest<HTMLElement>('[data-at]')?.dataset['at'] : undefined;
  const [row, column] = at?.split(',').map(Number) ?? [];
  return row === undefined || column === undefined ? undefined : { row, column };
}
