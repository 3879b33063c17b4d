import type { Block } from '../address';
import type { Bundle } from '../bundle';
import { isCellError, type CellValue } from '../hostValues';
import type { Refusal, SheetHost } from '../sheetHost';
import type { WriterValue } from '../workbookWriter';
import { FUNCTIONS } from '../../worksheet/functions';
import { makeWorkersOf } from '../../worksheet/calls/workers';
import { BackgroundCalls, workersFor, type CallsProgress } from './backgroundCalls';
import { enteredValue, entryText } from './enteredValue';
import { firstOf } from '../../core/lists/ends';

const SHARED = new Map(
  FUNCTIONS.map((one) => [one.id, one.kind === 'table' ? one.inSmallerCalls : undefined]),
);

/** A computation that took longer than this [ms] lets the page paint what was typed before the next one. */
const SLOW = 250;

/** How many steps can be taken back. */
const MOST_STEPS = 200;

interface Change {
  readonly row: number;
  readonly column: number;
  readonly before: WriterValue;
  readonly after: WriterValue;
}

interface Step {
  readonly sheet: string;
  readonly changes: readonly Change[];
}

/**
 * What has happened: `computing` comes before a slow computation, `cells` after it, `further` when a call that runs
 * aside has got further, `answered` when such calls have come in.
 */
export type SessionEvent = 'opened' | 'selection' | 'computing' | 'cells' | 'further' | 'answered';

type Done = { readonly ok: true } | Refusal;

/** The workbook that the page shows, what is selected in it, and what was done to it. */
export class WorkbookSession {
  private current: SheetHost | undefined;
  private sheetName = '';
  private area: Block = { row: 0, column: 0, rows: 1, columns: 1 };
  private cell = { row: 0, column: 0 };
  private readonly selections = new Map<string, { area: Block; cell: { row: number; column: number } }>();
  private readonly listeners: ((event: SessionEvent) => void)[] = [];
  private steps: Step[] = [];
  private waiting: Promise<void> | undefined;
  /** How long the last computation took [ms], and what it could not compute. */
  computed = { ms: 0, circular: 0, unreadable: 0 };

  private readonly calls = new BackgroundCalls(
    {
      makeWorker: makeWorkersOf('callWorker.js'),
      workers: workersFor(navigator.hardwareConcurrency || 1),
      inSmallerCalls: (id, values) => SHARED.get(id)?.(values),
    },
    () => this.answered(),
    () => this.tell('further'),
  );
  private readonly bundle: Bundle;
  private coming = false;

  constructor(bundle: Bundle) {
    this.bundle = this.calls.wrap(bundle);
  }

  /** Calls that are still being computed aside. */
  get waitingFor(): number {
    return this.calls.waiting;
  }

  /** How far they are. */
  get progress(): CallsProgress {
    return this.calls.progress();
  }

  /** Takes in the answers of calls that ran aside. */
  private answered(): void {
    if (this.coming) return;
    this.coming = true;
    void painted().then(() => {
      this.coming = false;
      this.compute();
      this.tell('answered');
    });
  }

  get host(): SheetHost {
    if (!this.current) throw new Error('no workbook is open');
    return this.current;
  }

  get sheet(): string {
    return this.sheetName;
  }

  /** The selected block of the sheet in front, and the cell of it that typing goes to. */
  get selected(): { readonly area: Block; readonly cell: { readonly row: number; readonly column: number } } {
    return { area: this.area, cell: this.cell };
  }

  listen(listener: (event: SessionEvent) => void): void {
    this.listeners.push(listener);
  }

  private tell(event: SessionEvent): void {
    for (const listener of this.listeners) listener(event);
  }

  /**
   * Shows another workbook in place of this one: first what stands in its cells and what its formulas gave when it was
   * saved, then what they give.
   */
  async open(host: SheetHost): Promise<void> {
    this.current = host;
    host.register(this.bundle);
    this.calls.open(host.stored());
    this.steps = [];
    this.selections.clear();
    this.sheetName = firstOf(host.sheets());
    this.area = { row: 0, column: 0, rows: 1, columns: 1 };
    this.cell = { row: 0, column: 0 };
    this.tell('opened');
    this.tell('computing');
    await painted();
    if (this.current !== host) return;
    this.compute();
    this.tell('answered');
  }

  show(sheet: string): void {
    if (sheet === this.sheetName) return;
    this.selections.set(this.sheetName, { area: this.area, cell: this.cell });
    this.sheetName = sheet;
    const kept = this.selections.get(sheet);
    this.area = kept?.area ?? { row: 0, column: 0, rows: 1, columns: 1 };
    this.cell = kept?.cell ?? { row: 0, column: 0 };
    this.calls.prefer(this.host.neededBy(sheet));
    this.tell('selection');
  }

  select(area: Block, cell: { readonly row: number; readonly column: number } = area): void {
    this.area = area;
    this.cell = { row: cell.row, column: cell.column };
    this.tell('selection');
  }

  /** What the formula line shows of a cell. */
  entry(row: number, column: number): string {
    const formula = this.host.formula(this.sheetName, row, column);
    if (formula === undefined && this.isSpilledInto(row, column)) return '';
    return entryText(formula, this.host.value(this.sheetName, row, column));
  }

  /** The cell shows what a formula elsewhere spills. */
  isSpilledInto(row: number, column: number, sheet = this.sheetName): boolean {
    const spill = this.host.spill(sheet, row, column);
    return spill !== undefined && (spill.row !== row || spill.column !== column);
  }

  /** Enters typed texts as one step, from the active cell on. */
  enter(
    texts: readonly (readonly string[])[],
    at: { readonly row: number; readonly column: number } = this.cell,
  ): Done {
    return this.write(
      this.sheetName,
      texts.flatMap((row, r) =>
        row.map((text, c) => ({ row: at.row + r, column: at.column + c, value: enteredValue(text) })),
      ),
    );
  }

  /** Writes cells as one step; where one is refused none is written. */
  write(
    sheet: string,
    cells: readonly { readonly row: number; readonly column: number; readonly value: WriterValue }[],
  ): Done {
    const changes: Change[] = [];
    for (const { row, column, value } of cells) {
      const before = this.held(sheet, row, column);
      if (before === null && value === null) continue;
      const done = this.host.write(sheet, row, column, value);
      if (!done.ok) {
        for (const change of changes.reverse())
          this.host.write(sheet, change.row, change.column, change.before);
        return done;
      }
      changes.push({ row, column, before, after: value });
    }
    if (changes.length === 0) return { ok: true };
    this.steps.push({ sheet, changes });
    if (this.steps.length > MOST_STEPS) this.steps.shift();
    this.changed();
    return { ok: true };
  }

  /** Takes the last step back; says false when there is none. */
  undo(): boolean {
    const step = this.steps.pop();
    if (!step) return false;
    for (const { row, column, before } of [...step.changes].reverse()) {
      this.host.write(step.sheet, row, column, before);
    }
    const { row, column } = firstOf(step.changes);
    if (step.sheet !== this.sheetName) this.show(step.sheet);
    this.select({ row, column, rows: 1, columns: 1 });
    this.changed();
    return true;
  }

  private held(sheet: string, row: number, column: number): WriterValue {
    const formula = this.host.formula(sheet, row, column);
    if (formula !== undefined) return { formula: formula.slice(1) };
    if (this.isSpilledInto(row, column, sheet)) return null;
    const value: CellValue = this.host.value(sheet, row, column);
    // An error that was typed in as a value cannot be written again.
    return isCellError(value) ? value.code : value;
  }

  /** Computes after a change: at once, or, when that was slow, after what was typed is seen. */
  changed(): void {
    if (this.waiting) return;
    if (this.computed.ms <= SLOW) {
      this.compute();
      this.tell('cells');
      return;
    }
    this.tell('computing');
    this.waiting = painted().then(() => {
      this.waiting = undefined;
      this.compute();
      this.tell('cells');
    });
  }

  private compute(): void {
    const start = performance.now();
    this.calls.begin();
    const { circular, unreadable } = this.host.recalculate();
    this.calls.settle(this.host.neededBy(this.sheetName));
    this.computed = {
      ms: performance.now() - start,
      circular: circular.length,
      unreadable: unreadable.length,
    };
  }
}

/** After the page has been painted as it stands. */
export const painted = (): Promise<void> =>
  new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
