import type { Parts } from '../../core/measures/parts';
import type { CellError } from '../../core/measures/readQuantity';
import { callInParts, type HostArgument, type HostCell } from '../callFunction';
import type { FunctionDescription } from '../description';
import type { CallAnswer, CallToRun, FromWorker } from './messages';
import { entryAt } from '../../core/lists/entryAt';

/** What a runner needs of the place it runs in. */
export interface RunnerPlace {
  /** [ms] */
  readonly now: () => number;
  /** Runs something after all else that waits has had its turn. */
  readonly later: (run: () => void) => void;
  readonly tell: (message: FromWorker) => void;
}

interface Running {
  readonly number: number;
  readonly parts: Parts<HostCell[][]>;
}

/** Time between two words on how far a call is [ms]. */
const TOLD_EVERY = 200;

const plainError = (code: string, message?: string): CellError => ({
  code,
  ...(message === undefined ? {} : { message }),
});

/**
 * Runs calls side by side, a part of each in turn, so that no long one keeps the others waiting; pauses after each
 * slice of time, so that whoever has something to say is heard. Runs in a worker, or beside the pane where no worker
 * is to be had.
 */
export class CallRunner {
  private readonly running: Running[] = [];
  private readonly functions: ReadonlyMap<string, (values: readonly HostArgument[]) => Parts<HostCell[][]>>;
  private first: ReadonlySet<number> = new Set();
  private scheduled = false;
  private toldAt = -Infinity;

  /** @param slice the time that is worked without a pause, where no part takes longer [ms] */
  constructor(
    functions: readonly FunctionDescription[],
    private readonly slice: number,
    private readonly place: RunnerPlace,
  ) {
    this.functions = new Map(functions.map((f) => [f.id, callInParts(f, plainError)]));
  }

  run(calls: readonly CallToRun[]): void {
    for (const { number, id, values } of calls) {
      const call = this.functions.get(id);
      if (!call) throw new RangeError(`no function ${id}`);
      const given = typeof values === 'string' ? (JSON.parse(values) as unknown[]) : values;
      this.running.push({ number, parts: call(given as HostArgument[]) });
    }
    this.goOn();
  }

  /** It has calls that are not answered yet. */
  get isRunning(): boolean {
    return this.running.length > 0;
  }

  giveUp(number: number): void {
    const at = this.running.findIndex((call) => call.number === number);
    if (at >= 0) this.running.splice(at, 1);
  }

  /** Lets these calls go before all others until they are answered. */
  prefer(numbers: readonly number[]): void {
    this.first = new Set(numbers);
  }

  private goOn(): void {
    if (this.scheduled || this.running.length === 0) return;
    this.scheduled = true;
    this.place.later(() => {
      this.scheduled = false;
      this.workASlice();
      this.goOn();
    });
  }

  private workASlice(): void {
    const { now, tell } = this.place;
    const until = now() + this.slice;
    const answers: CallAnswer[] = [];
    let at = 0;
    while (this.running.length > 0) {
      if (at >= this.running.length) at = 0;
      const somePreferred = this.running.some((call) => this.first.has(call.number));
      while (somePreferred && !this.first.has(entryAt(this.running, at).number)) {
        at = (at + 1) % this.running.length;
      }
      const { number, parts } = entryAt(this.running, at);
      const { done, value } = parts.next();
      if (done) {
        answers.push({ number, cells: value });
        this.running.splice(at, 1);
      } else {
        at++;
        if (value.of > 1 && now() - this.toldAt > TOLD_EVERY) {
          this.toldAt = now();
          tell({ kind: 'share', number, share: value });
        }
      }
      if (now() >= until) break;
    }
    // Whose turn is next goes first.
    this.running.push(...this.running.splice(0, at));
    if (answers.length > 0) tell({ kind: 'answers', answers });
  }
}
