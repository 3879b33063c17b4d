import { element } from '../../taskpane/element';
import { entryAt } from '../../core/lists/entryAt';
import { blockAddress, cellAddress, readAddress, type Block } from '../address';
import { shownText } from '../excelts/shownText';
import type { CellChoices } from '../cellLook';
import { isCellError } from '../hostValues';
import { openBook, saveBook } from './bookFile';
import { CellSelection } from './cellSelection';
import { CallsUnderWay, progressWords } from './callsUnderWay';
import { CellTyping } from './cellTyping';
import { copiedCells, pastedCells, type Copied } from './copiedCells';
import { FAULTS, GridView } from './gridView';
import type { DescribedFunction } from './typingHelp';
import type { WorkbookSession } from './workbookSession';

/** A text of more characters is told apart from the line that holds it, which it may be too long for. */
const LONG = 40;

/** Lists are not strict about capitals, as in Excel where they name a range. */
const same = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase();

/** The workbook on the page: sheets, the line with what a cell holds, the cells, what can be done with the file. */
export class BookView {
  private readonly grid: GridView;
  private readonly tabs = element('div', { role: 'tablist', class: 'tabs', 'aria-label': 'Sheets' });
  private readonly panel = element('div', { role: 'tabpanel', id: 'sheet-panel', class: 'panel' });
  private readonly address = element('input', {
    id: 'cell-address',
    type: 'text',
    autocomplete: 'off',
    spellcheck: 'false',
  });
  private readonly line = element('input', {
    id: 'cell-line',
    type: 'text',
    autocomplete: 'off',
    spellcheck: 'false',
  });
  /** The drop-down of the cell, where the workbook gives it one. */
  private readonly choices = element('select', { id: 'cell-choices' });
  private readonly choicesLabel = element('label', { for: 'cell-choices' }, 'or one of');
  private readonly message = element('div', {
    class: 'message',
    role: 'group',
    tabindex: '0',
    'aria-label': 'About the cell',
    id: 'cell-message',
    'aria-live': 'polite',
  });
  private readonly status = element('p', { class: 'status', role: 'status' });
  private readonly underWay = new CallsUnderWay();
  private readonly alert = element('p', { class: 'refused', role: 'alert' });
  private readonly file = element('input', {
    id: 'book-file',
    type: 'file',
    accept: '.xlsx',
    class: 'unseen',
    tabindex: '-1',
  });
  private readonly open = button('Open a workbook…');
  private readonly save = button('Save a copy');
  private readonly undo = button('Take back the last change');
  private readonly selection: CellSelection;
  private readonly typing: CellTyping;
  /** What was copied here last: with its text in the clipboard, formulas go along, and not their results. */
  private copied: Copied | undefined;
  /** Escape was pressed on the cells: the next Tab leaves them. */
  private leaving = false;
  /** The column that Tab went on from; Enter comes back to it. */
  private tabbedFrom: number | undefined;

  constructor(
    root: HTMLElement,
    private readonly session: WorkbookSession,
    functions: readonly DescribedFunction[],
  ) {
    this.selection = new CellSelection(session);
    this.grid = new GridView(session, {
      pointing: () => this.typing.pointing,
      selected: (cell, how) => {
        if (this.typing.pointing) {
          this.typing.point(cell, how === 'extend' ? 'dragged' : 'cell');
          return;
        }
        if (!this.typing.commit()) return;
        if (how === 'extend') this.selection.extendTo(cell);
        else this.selection.goTo(cell.row, cell.column);
        this.focus();
      },
      clicked: () => this.follow(),
      edit: () => this.typing.begin('cell', 'opened'),
    });
    this.typing = new CellTyping(session, this.grid, this.line, functions, {
      help: (lines) => this.message.replaceChildren(...lines),
      refusal: (text) => this.notAmongChoices(text),
      refused: (reason) => this.refuse(reason),
      stopped: () => this.showCell(),
    });
    this.alert.hidden = true;
    this.panel.append(this.grid.scroller);
    root.replaceChildren(
      element(
        'div',
        { class: 'tools' },
        this.open,
        element('label', { for: 'book-file', class: 'unseen' }, 'Workbook to open'),
        this.file,
        this.save,
        this.undo,
        this.status,
        this.underWay.bar,
      ),
      this.alert,
      this.tabs,
      element(
        'div',
        { class: 'cell-line' },
        element('label', { for: 'cell-address' }, 'Cell'),
        this.address,
        element('label', { for: 'cell-line' }, 'holds'),
        this.line,
        this.choicesLabel,
        this.choices,
      ),
      this.message,
      this.panel,
      element(
        'p',
        { class: 'keys' },
        'Keys: arrows move, Enter or F2 types, Escape leaves what was typed, Tab goes right, Delete empties, ' +
          'Ctrl+Z takes back, Ctrl+Enter follows a link. While a formula is typed a click puts in the address of a cell. ' +
          'Out of the cells: F6 and Shift+F6 to the next and the last part of the page, or Escape and then Tab.',
      ),
    );
    this.listen();
    session.listen((event) => {
      this.underWay.show(session.progress);
      if (event === 'further') return;
      if (event === 'opened') this.grid.forget();
      if (event === 'computing') this.say('Computing…');
      else if (event !== 'selection' || session.progress.waiting > 0) this.showComputed();
      if (event === 'answered') this.grid.widenForAnswers();
      this.show(event === 'computing' || event === 'answered' ? 'cells' : event);
    });
  }

  /** Puts the keyboard on the cells. */
  focus(): void {
    this.grid.grid.focus({ preventScroll: true });
  }

  // What is shown

  private show(event: 'opened' | 'selection' | 'cells'): void {
    const { cell } = this.session.selected;
    if (event !== 'selection' || !this.hasTab()) this.showTabs();
    if (event === 'cells') {
      const { host, sheet } = this.session;
      this.grid.widen(host.spill(sheet, cell.row, cell.column) ?? { ...cell, rows: 1, columns: 1 });
      this.grid.render();
    } else this.grid.reveal();
    this.showCell();
  }

  private hasTab(): boolean {
    return this.tabs.querySelector('[aria-selected="true"]')?.textContent === this.session.sheet;
  }

  private showTabs(): void {
    const focused = this.tabs.contains(document.activeElement);
    this.tabs.replaceChildren(
      ...this.session.host.sheets().map((name, i) => {
        const here = name === this.session.sheet;
        const tab = element(
          'button',
          {
            type: 'button',
            role: 'tab',
            id: `sheet-tab-${i}`,
            'aria-selected': String(here),
            'aria-controls': 'sheet-panel',
            tabindex: here ? '0' : '-1',
          },
          name,
        );
        tab.addEventListener('click', () => this.toSheet(name));
        if (here) this.panel.setAttribute('aria-labelledby', tab.id);
        return tab;
      }),
    );
    const here = this.tabs.querySelector<HTMLElement>('[aria-selected="true"]');
    if (focused) here?.focus();
    here?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private showCell(): void {
    const { area, cell } = this.session.selected;
    const { host, sheet } = this.session;
    const { row, column } = cell;
    if (document.activeElement !== this.address) this.address.value = blockAddress(area);
    if (this.typing.place !== undefined) return;
    this.line.value = this.session.entry(row, column);
    this.showChoices();
    const value = host.value(sheet, row, column);
    const spill = host.spill(sheet, row, column);
    const told: Node[] = [];
    if (isCellError(value)) {
      const why = value.message ?? FAULTS[value.code] ?? '';
      told.push(
        element('p', { class: 'fault' }, `${cellAddress(row, column)} is ${value.code}${why && `: ${why}`}`),
      );
    } else if (typeof value === 'string' && (value.length > LONG || this.line.value === '')) {
      // Whole, for it may be cut in its column: what is spilled into a cell stands in no other place.
      told.push(element('p', {}, value));
    } else if (value !== null && this.line.value.startsWith('=')) {
      told.push(element('p', {}, `Result: ${shownText(value, host.format(sheet, row, column))}`));
    }
    if (typeof value === 'string' && /^\s*CARRY\.\w+\s*\(/i.test(this.line.value))
      told.push(element('p', { class: 'soft' }, 'A text: a formula begins with =.'));
    if (spill && spill.rows * spill.columns > 1) {
      const first = cellAddress(spill.row, spill.column);
      const from =
        spill.row === row && spill.column === column
          ? `The result fills ${blockAddress(spill)}.`
          : `Filled from ${first}: ${host.formula(sheet, spill.row, spill.column) ?? ''}`;
      told.push(element('p', { class: 'soft' }, from));
    }
    const leads = host.link(sheet, row, column);
    if (leads) {
      const to = `${leads.sheet}, ${blockAddress(leads.block)}`;
      told.push(element('p', { class: 'soft' }, `A link to ${to}: a click or Ctrl+Enter goes there.`));
    }
    this.message.replaceChildren(...told);
  }

  private notAmongChoices(text: string): string | undefined {
    if (text === '' || text.startsWith('=')) return undefined;
    const choices = this.choicesHere();
    if (choices?.others !== 'refused' || choices.words.some((word) => same(word, text))) return undefined;
    return `"${text}" is none of the words of this cell's list`;
  }

  private choicesHere(): CellChoices | undefined {
    const { cell } = this.session.selected;
    return this.session.host.look(this.session.sheet).choices(cell.row, cell.column);
  }

  private showChoices(): void {
    const words = this.choicesHere()?.words ?? [];
    const none = words.length === 0;
    this.choices.hidden = this.choicesLabel.hidden = none;
    if (none) return;
    const now = this.line.value;
    this.choices.replaceChildren(
      ...['', ...words].map((word) => element('option', { value: word }, word === '' ? 'empty' : word)),
    );
    this.choices.value = words.includes(now) ? now : '';
  }

  private showComputed(): void {
    const { ms, circular, unreadable } = this.session.computed;
    const faults = [
      circular > 0 ? `cells that depend on themselves: ${circular}` : '',
      unreadable > 0 ? `formulas that cannot be read: ${unreadable}` : '',
    ].filter((t) => t !== '');
    const { progress } = this.session;
    if (progress.waiting > 0) return this.say(progressWords(progress));
    this.say([`All formulas computed in ${Math.max(1, Math.round(ms))} ms`, ...faults].join('; '));
  }

  private say(text: string): void {
    if (this.status.textContent !== text) this.status.textContent = text;
  }

  private refuse(reason: string | undefined): void {
    this.alert.hidden = reason === undefined;
    this.alert.textContent = reason ?? '';
  }

  // Moving

  private toSheet(name: string): void {
    if (!this.typing.commit()) return;
    this.session.show(name);
    this.selection.beginAt(this.session.selected.cell);
  }

  /** Goes where the cell's link leads; says whether it has one. */
  private follow(): boolean {
    const { row, column } = this.session.selected.cell;
    const to = this.session.host.link(this.session.sheet, row, column);
    if (!to) return false;
    this.toSheet(to.sheet);
    this.selection.take(to.block);
    return true;
  }

  // Keys

  private typingKey(event: KeyboardEvent): void {
    if (this.typing.place === undefined || event.isComposing) return;
    const { key, shiftKey } = event;
    if (key === 'Escape') {
      this.typing.stop();
      this.focus();
    } else if (key === 'Tab' && !shiftKey && this.typing.complete()) {
      // The name is completed; typing goes on.
    } else if (key === 'Enter' || key === 'Tab') {
      if (this.typing.commit()) {
        if (key === 'Tab') this.tab(shiftKey);
        else this.enter(shiftKey);
        this.focus();
      }
    } else if (this.typing.begunByTyping && (key === 'ArrowUp' || key === 'ArrowDown')) {
      if (this.typing.commit()) {
        this.selection.move(key === 'ArrowUp' ? -1 : 1, 0);
        this.focus();
      }
    } else if (key === 'F6') {
      if (this.typing.commit()) this.nextPart(shiftKey);
    } else return;
    event.preventDefault();
  }

  private tab(back: boolean): void {
    this.tabbedFrom ??= this.session.selected.cell.column;
    this.selection.move(0, back ? -1 : 1);
  }

  private enter(back: boolean): void {
    const { row, column } = this.session.selected.cell;
    this.selection.goTo(row + (back ? -1 : 1), this.tabbedFrom ?? column);
    this.tabbedFrom = undefined;
  }

  private gridKey(event: KeyboardEvent): void {
    const { key, shiftKey } = event;
    const ctrl = event.ctrlKey || event.metaKey;
    const arrows: Readonly<Record<string, readonly [number, number]>> = {
      ArrowUp: [-1, 0],
      ArrowDown: [1, 0],
      ArrowLeft: [0, -1],
      ArrowRight: [0, 1],
      PageUp: [-this.grid.page, 0],
      PageDown: [this.grid.page, 0],
    };
    const arrow = arrows[key];
    if (event.altKey || event.isComposing) return;
    // What was refused still waits: the page's own handler ends it.
    if (key === 'Escape' && this.typing.place !== undefined) return;
    if (key !== 'Tab' && key !== 'Enter') this.tabbedFrom = undefined;
    if (key !== 'Tab' && key !== 'Shift') this.leaving = false;
    if (arrow && !ctrl) this.selection.move(arrow[0], arrow[1], shiftKey ? 'extend' : 'move');
    else if (key === 'Escape') this.leaving = true;
    else if (key === 'Tab' && this.leaving) {
      this.leaving = false;
      return;
    } else if (key === 'Tab') this.tab(shiftKey);
    else if (key === 'Enter' && ctrl) this.follow();
    else if (key === 'Enter') {
      if (shiftKey || this.tabbedFrom !== undefined) this.enter(shiftKey);
      else this.typing.begin('cell', 'opened');
    } else if (key === 'F2') this.typing.begin('cell', 'opened');
    else if (key === 'Home') this.selection.goTo(ctrl ? 0 : this.session.selected.cell.row, 0);
    else if (key === 'End' && ctrl) {
      const used = this.session.host.used(this.session.sheet);
      if (used) this.selection.goTo(used.row + used.rows - 1, used.column + used.columns - 1);
    } else if (key === 'Delete' || key === 'Backspace') this.empty();
    else if (ctrl && key.toLowerCase() === 'z') this.takeBack();
    else if (key.length === 1 && !ctrl) this.typing.begin('cell', 'typed', key);
    else return;
    event.preventDefault();
  }

  private empty(): void {
    const { area } = this.session.selected;
    const used = this.session.host.used(this.session.sheet);
    if (!used) return;
    const rows = Math.min(area.rows, used.row + used.rows - area.row);
    const columns = Math.min(area.columns, used.column + used.columns - area.column);
    if (rows > 0 && columns > 0)
      this.fill(
        area,
        Array.from({ length: rows }, () => Array<string>(columns).fill('')),
      );
  }

  private fill(at: Block, texts: readonly (readonly string[])[]): void {
    const done = this.session.enter(texts, at);
    this.refuse(done.ok ? undefined : `Nothing was changed: ${done.reason}.`);
  }

  private takeBack(): void {
    if (!this.session.undo()) this.say('There is no change to take back.');
  }

  // The file

  private async openFile(): Promise<void> {
    const file = this.file.files?.[0];
    this.file.value = '';
    if (!file) return;
    const opened = await openBook(file);
    this.refuse(opened.ok ? undefined : opened.why);
    if (!opened.ok) return;
    this.selection.beginAt();
    await this.session.open(opened.host);
    this.focus();
  }

  private async saveFile(): Promise<void> {
    if (!this.typing.commit()) return;
    if (this.session.waitingFor > 0) {
      this.refuse('Not saved yet: some results are still being computed.');
      return;
    }
    this.refuse(undefined);
    const lost = await saveBook(this.session.host);
    this.say(
      lost.length === 0 ? 'Saved a copy with all results.' : `Saved a copy, without ${lost.join(', ')}.`,
    );
  }

  // What a person does

  private listen(): void {
    const { grid } = this.grid;
    grid.addEventListener('keydown', (event) => this.gridKey(event));
    grid.addEventListener('copy', (event) => {
      this.copied = copiedCells(this.session);
      event.clipboardData?.setData('text/plain', this.copied.text);
      event.preventDefault();
    });
    grid.addEventListener('paste', (event) => {
      const { area } = this.session.selected;
      const text = event.clipboardData?.getData('text/plain') ?? '';
      const cells = pastedCells(text, area, this.copied);
      if (cells) this.fill(area, cells);
      event.preventDefault();
    });
    this.choices.addEventListener('change', () => {
      const done = this.session.enter([[this.choices.value]]);
      this.refuse(done.ok ? undefined : `Not entered: ${done.reason}.`);
    });
    for (const field of [this.grid.editor, this.line]) {
      field.addEventListener('input', () => this.typing.typed());
      field.addEventListener('keyup', (event) => {
        if (/^(?:Arrow|Home|End)/.test(event.key)) this.typing.typed();
      });
      field.addEventListener('click', () => this.typing.typed());
      field.addEventListener('keydown', (event) => this.typingKey(event));
    }
    this.grid.editor.addEventListener('blur', () => {
      if (this.typing.place === 'cell') this.typing.commit();
    });
    this.line.addEventListener('focus', () => {
      if (this.typing.place !== 'line') this.typing.begin('line', 'opened');
    });
    this.line.addEventListener('blur', () => {
      if (this.typing.place === 'line') this.typing.commit();
    });
    this.address.addEventListener('focus', () => this.address.select());
    this.address.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      const block =
        event.key === 'Enter' ? readAddress(this.address.value.trim()) : this.session.selected.area;
      if (!block) {
        this.refuse(`"${this.address.value}" is no cell of a sheet, such as B4 or B4:D9.`);
        return;
      }
      this.refuse(undefined);
      if (!this.typing.commit()) return;
      this.focus();
      this.selection.take(block);
    });
    this.tabs.addEventListener('keydown', (event) => {
      const steps: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };
      const names = this.session.host.sheets();
      const step = steps[event.key];
      if (step === undefined) return;
      const at = names.indexOf(this.session.sheet) + step;
      this.toSheet(entryAt(names, (at + names.length) % names.length));
      event.preventDefault();
    });
    document.addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && this.typing.place !== undefined && !event.defaultPrevented) {
        // Also where a click has taken the keyboard away from what was refused.
        this.typing.stop();
        this.focus();
        event.preventDefault();
        return;
      }
      if (event.key !== 'F6' || event.defaultPrevented) return;
      event.preventDefault();
      this.nextPart(event.shiftKey);
    });
    this.open.addEventListener('click', () => this.file.click());
    this.file.addEventListener('change', () => void this.openFile());
    this.save.addEventListener('click', () => void this.saveFile());
    this.undo.addEventListener('click', () => this.takeBack());
  }

  /** The keyboard goes on to the cells, the pane, the file, the sheets, the line. */
  private nextPart(back: boolean): void {
    const pane = document.getElementById('pane');
    const parts: readonly (readonly [Element | null, () => HTMLElement | null | undefined])[] = [
      [this.grid.scroller, () => this.grid.grid],
      [
        pane,
        () =>
          [...(pane?.querySelectorAll<HTMLElement>('button, input') ?? [])].find(
            (one) => one.offsetParent !== null,
          ),
      ],
      [this.open.parentElement, () => this.open],
      [this.tabs, () => this.tabs.querySelector<HTMLElement>('[aria-selected="true"]')],
      [this.address.parentElement, () => this.line],
    ];
    const at = parts.findIndex(([root]) => root?.contains(document.activeElement));
    const next = (at + (back ? -1 : 1) + parts.length) % parts.length;
    entryAt(parts, next)[1]()?.focus();
  }
}

const button = (text: string): HTMLButtonElement => element('button', { type: 'button' }, text);
