import { firstOf } from '../../core/lists/ends';
import { blockAddress, type Block } from '../address';
import type { GridView } from './gridView';
import { helpLines } from './helpLines';
import { typingHelp, type DescribedFunction, type TypingHelp } from './typingHelp';
import type { WorkbookSession } from './workbookSession';

/** Where typing goes on: in the cell itself, or in the line above the cells. */
interface Typing {
  readonly place: 'cell' | 'line';
  readonly begun: 'typed' | 'opened';
  readonly before: string;
}

/** What the page does while something is typed. */
export interface TypingListener {
  /** Help for what is typed. */
  help(lines: readonly HTMLElement[]): void;
  /** Why a text may not stand in the selected cell; undefined where it may. */
  refusal(text: string): string | undefined;
  /** Why it was not entered; undefined when it was, or was given up. */
  refused(reason: string | undefined): void;
  stopped(): void;
}

/** What is being typed, in a cell or in the line above the cells, which show the same. */
export class CellTyping {
  private typing: Typing | undefined;
  private help: TypingHelp | undefined;
  /** Where the address last pointed at stands in what is typed, and the cell that it began with. */
  private pointed: { readonly start: number; readonly end: number; readonly from: Block } | undefined;

  constructor(
    private readonly session: WorkbookSession,
    private readonly grid: GridView,
    private readonly line: HTMLInputElement,
    private readonly functions: readonly DescribedFunction[],
    private readonly listener: TypingListener,
  ) {}

  /** Where typing goes on; undefined where nothing is typed. */
  get place(): Typing['place'] | undefined {
    return this.typing?.place;
  }

  /** Whether it began with a key that stands for itself, so that an arrow enters it. */
  get begunByTyping(): boolean {
    return this.typing?.begun === 'typed';
  }

  private get field(): HTMLInputElement {
    return this.typing?.place === 'line' ? this.line : this.grid.editor;
  }

  private get otherField(): HTMLInputElement {
    return this.typing?.place === 'line' ? this.grid.editor : this.line;
  }

  /** A formula is typed, and an address can stand where the caret is. */
  get pointing(): boolean {
    if (!this.typing) return false;
    const { value, selectionStart } = this.field;
    if (!value.startsWith('=')) return false;
    const caret = selectionStart ?? value.length;
    return this.pointed?.end === caret || /[-+*/^&=<>(,;:]\s*$/.test(value.slice(0, caret));
  }

  /** Puts the address of a cell, or of the block dragged over, where the caret is. */
  point({ row, column }: { readonly row: number; readonly column: number }, how: 'cell' | 'dragged'): void {
    const { field } = this;
    const caret = field.selectionStart ?? field.value.length;
    const old = this.pointed?.end === caret ? this.pointed : undefined;
    const from = how === 'dragged' && old ? old.from : { row, column, rows: 1, columns: 1 };
    const block: Block = {
      row: Math.min(from.row, row),
      column: Math.min(from.column, column),
      rows: Math.abs(from.row - row) + 1,
      columns: Math.abs(from.column - column) + 1,
    };
    const start = old?.start ?? caret;
    const address = blockAddress(block);
    field.value = field.value.slice(0, start) + address + field.value.slice(old?.end ?? caret);
    const end = start + address.length;
    field.setSelectionRange(end, end);
    this.pointed = { start, end, from };
    this.typed();
  }

  /** Begins to type in the selected cell, over what it holds where a text is given. */
  begin(place: Typing['place'], begun: Typing['begun'], text?: string): void {
    const { row, column } = this.session.selected.cell;
    const before = this.session.entry(row, column);
    this.typing = { place, begun, before };
    const { field } = this;
    if (place === 'cell') {
      this.grid.reveal();
      field.value = text ?? before;
      this.grid.showEditor(field.value);
      field.focus({ preventScroll: true });
      field.setSelectionRange(field.value.length, field.value.length);
    }
    this.typed();
  }

  /** Keeps both fields alike and the help up to date. */
  typed(): void {
    if (!this.typing) return;
    const { field } = this;
    this.otherField.value = field.value;
    if (this.typing.place === 'cell') this.grid.sizeEditor(field.value);
    this.help = typingHelp(field.value, field.selectionStart ?? field.value.length, this.functions);
    this.listener.help(helpLines(this.help));
  }

  /** Completes the name of a function that was begun; says whether there was one. */
  complete(): boolean {
    if (this.help?.kind !== 'names' || !this.typing) return false;
    const { field } = this;
    const caret = field.selectionStart ?? field.value.length;
    const head = `${field.value.slice(0, this.help.start)}${firstOf(this.help.matches).name}(`;
    field.value = head + field.value.slice(caret);
    field.setSelectionRange(head.length, head.length);
    this.typed();
    return true;
  }

  /** Enters what was typed; says false, and goes on typing, where it is refused. */
  commit(): boolean {
    const { typing } = this;
    if (!typing) return true;
    const text = this.field.value;
    if (text !== typing.before) {
      const refusal = this.listener.refusal(text);
      if (refusal !== undefined) {
        this.listener.refused(`Not entered: ${refusal}.`);
        return false;
      }
      this.typing = undefined;
      const done = this.session.enter([[text]]);
      if (!done.ok) {
        this.typing = typing;
        this.listener.refused(`Not entered: ${done.reason}.`);
        return false;
      }
    }
    this.stop();
    return true;
  }

  /** Leaves what was typed. */
  stop(): void {
    this.listener.refused(undefined);
    this.typing = undefined;
    this.pointed = undefined;
    this.help = undefined;
    this.grid.editor.hidden = true;
    this.grid.editor.value = '';
    this.listener.stopped();
  }
}
