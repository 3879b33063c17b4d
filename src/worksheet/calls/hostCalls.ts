import type { Cell } from '../../core/measures/readQuantity';
import { callInParts, type HostArgument, type HostCell, type MakeError } from '../callFunction';
import { runToEnd } from '../../core/measures/parts';
import type { FunctionDescription } from '../description';
import { CALL_MESSAGES } from '../messages';
import { isCellError } from '../readArgument';
import { cutToUsed } from '../usedRows';
import type { CallQueue, NoAnswer } from './callQueue';
import { cellCost } from './cellCost';
import type { PlainCells } from './messages';
import { withPlainErrors } from './plainErrors';
import type { Refusals } from './refusals';

/** What the host hands over after the arguments. */
export interface Invocation {
  readonly address?: string;
  /** Set by us: called when the result is no longer wanted. */
  onCanceled?: (() => void) | undefined;
}

export type HostCells = HostCell[][];

/** A call longer than this is made aside [ms]. */
const LONG = 5;
/**
 * Calls are made at once for so long, until the page has had its turn again [ms]. Only the calls themselves count: the
 * host takes many times as long over each of thousands, and what is not answered when it hands answers over waits half a
 * second for the next time.
 */
const AT_ONCE = 35;

/**
 * Turns descriptions into the functions that the host of the add-in calls: a short call is answered at once, a long
 * one, or one of very many, by a promise.
 */
export class HostCalls {
  /** Of this turn of the page, in calls [ms]. */
  private spent = 0;
  private inTurn = false;
  private called = false;

  constructor(
    private readonly queue: CallQueue,
    private readonly makeError: MakeError,
    private readonly refusals: Refusals,
    private readonly now: () => number,
    private readonly later: (run: () => void) => void,
  ) {}

  /** The function to associate with a description's id. */
  functionOf(description: FunctionDescription): (...given: unknown[]) => HostCells | Promise<HostCells> {
    const { id, arguments: described } = description;
    const call = callInParts(description, this.makeError);
    const cost = cellCost(description);
    return (...given) => {
      this.warmOnce();
      const invocation = invocationIn(given, described.length);
      const values = shortened(description, given.slice(0, described.length) as HostArgument[]);
      const time = cost === Infinity ? Infinity : cost * mostCells(values);
      if (time <= LONG && this.hasTurn()) {
        const begun = this.now();
        const cells = runToEnd(call(values));
        this.spent += this.now() - begun;
        return this.shown(cells, invocation?.address);
      }
      return new Promise((answer, refuse) => {
        let isAnswered = false;
        const told = (cells: PlainCells | undefined, why?: NoAnswer): void => {
          isAnswered = true;
          // The host keeps what it hands over with a call that may be taken back: nothing is to hang on it.
          if (invocation?.onCanceled) invocation.onCanceled = undefined;
          try {
            answer(
              this.shown(cells ? this.withErrors(cells) : this.unanswered(id, why), invocation?.address),
            );
          } catch (error) {
            refuse(error);
          }
        };
        if (time <= LONG) return this.queue.askShort(id, values, told);
        const smaller = description.kind === 'table' ? description.inSmallerCalls?.(values) : undefined;
        const giveUp = smaller
          ? this.queue.askTogether(id, smaller.calls.map(asJson), smaller.join, told)
          : this.queue.ask(id, asJson(values), told);
        // What is known already was told at once.
        if (invocation && !isAnswered) invocation.onCanceled = giveUp;
      });
    };
  }

  /** A workbook that calls one function mostly calls more: the first worker starts while the host goes on. */
  private warmOnce(): void {
    if (this.called) return;
    this.called = true;
    this.later(() => this.queue.warm());
  }

  /** Whether there is time to make a call at once: a little in each turn of the page. */
  private hasTurn(): boolean {
    if (!this.inTurn) {
      this.inTurn = true;
      this.spent = 0;
      this.later(() => (this.inTurn = false));
    }
    return this.spent < AT_ONCE;
  }

  /** As the host wants it: a single cell's error is thrown. Refusals are remembered for the pane. */
  private shown(cells: HostCells, address: string | undefined): HostCells {
    if (address !== undefined) this.refusals.note(address, cells);
    const [first] = cells;
    if (cells.length === 1 && first?.length === 1 && isCellError(first[0])) throw first[0];
    return cells;
  }

  // Only the host's own class of errors keeps its code and message, and no class outlives the way from a worker.
  private withErrors(cells: PlainCells): HostCells {
    return cells.map((row) =>
      row.map((cell) => (typeof cell === 'object' ? this.makeError(cell.code, cell.message) : cell)),
    );
  }

  private unanswered(id: string, why: NoAnswer | undefined): HostCells {
    const { code, text } = why === 'stopped' ? CALL_MESSAGES.stopped : CALL_MESSAGES.unforeseen(id);
    return [[this.makeError(code, text)]];
  }
}

const asJson = (values: readonly unknown[]): string => JSON.stringify(withPlainErrors(values));

/** The last of what the host hands over, where it is more than the arguments. */
function invocationIn(given: readonly unknown[], count: number): Invocation | undefined {
  const last = given[given.length - 1];
  const is = given.length > count && typeof last === 'object' && last !== null && !Array.isArray(last);
  return is ? last : undefined;
}

/** Whole columns are long to hand on, so they are cut before. */
function shortened({ kind }: FunctionDescription, values: readonly HostArgument[]): readonly HostArgument[] {
  if (!values.some((value) => Array.isArray(value) && value.length > 1)) return values;
  if (kind === 'table') {
    return values.map((value) => (isRange(value) ? (cutToUsed([value])[0] ?? value) : value));
  }
  const cut = cutToUsed(values.map((value) => (isRange(value) ? value : [[value]])));
  return values.map((value, i) => (isRange(value) ? (cut[i] ?? value) : value));
}

const isRange = (value: HostArgument): value is readonly (readonly Cell[])[] =>
  Array.isArray(value) && Array.isArray((value as readonly unknown[])[0]);

/** The most cells that the ranges can make together. */
function mostCells(values: readonly HostArgument[]): number {
  let rows = 1;
  let columns = 1;
  for (const value of values) {
    if (!isRange(value)) continue;
    rows = Math.max(rows, value.length);
    columns = Math.max(columns, value[0]?.length ?? 1);
  }
  return rows * columns;
}
