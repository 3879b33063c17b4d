import type { Bundle, BundleFunction } from '../bundle';
import { isCellError, type CellError, type CellValue } from '../hostValues';

export interface CallQuestion {
  readonly number: number;
  readonly id: string;
  readonly values: readonly unknown[];
}

export interface CallAnswer {
  readonly number: number;
  readonly cells?: unknown;
  readonly thrown?: CellError | undefined;
}

interface Call extends CallQuestion {
  readonly key: string;
}

/** What a cell shows beside #N/A until its call is answered. */
const BUSY = 'still being computed';

export const isBusy = (value: CellValue): boolean => isCellError(value) && value.message === BUSY;

/** As many as a small machine has processors to spare. */
const WORKERS = 2;

/** Answers kept that no formula asks for at the moment, so that a change taken back is there at once. */
const KEPT = 40;

/** Calls that judge whole routes, or look for a motion on a landing: they can take seconds. */
const takesLong = ({ name, parameters }: BundleFunction): boolean =>
  /LANDING$/.test(name) ||
  (!/^CHECK/.test(name) && parameters.some((p) => /^(?:routes?|rows|function)$/.test(p.name)));

/**
 * Lets long calls of a bundle run in workers, as Excel runs custom functions aside of the sheet: their cells show an
 * error that says so until the answer is there. The same call is not asked again.
 */
export class BackgroundCalls {
  private readonly answers = new Map<string, CallAnswer>();
  private readonly wanted = new Set<string>();
  private queue: Call[] = [];
  private readonly running = new Map<Worker, Call>();
  private readonly idle: Worker[] = [];
  private count = 0;

  /** @param answered an answer has come: formulas should be computed again */
  constructor(private readonly answered: () => void) {}

  /** Calls that have no answer yet. */
  get waiting(): number {
    return this.queue.length + this.running.size;
  }

  /** The bundle with its long calls put aside. */
  wrap(bundle: Bundle): Bundle {
    const functions = new Map(
      [...bundle.functions].map(([name, described]) => {
        if (!takesLong(described)) return [name, described] as const;
        const call = (...values: unknown[]) => this.ask(described.id, values, bundle);
        return [name, { ...described, call }] as const;
      }),
    );
    return { ...bundle, functions };
  }

  private ask(id: string, values: readonly unknown[], { runtime }: Bundle): unknown {
    const key = JSON.stringify([id, values]);
    this.wanted.add(key);
    const answer = this.answers.get(key);
    if (answer) {
      if (!('thrown' in answer)) return answer.cells;
      const fault: unknown = answer.thrown ?? new Error('the call failed');
      throw fault;
    }
    const asked = [...this.queue, ...this.running.values()].some((call) => call.key === key);
    if (!asked) this.queue.push({ key, id, values, number: this.count++ });
    return [[new runtime.global.Error('#N/A', BUSY)]];
  }

  /** All formulas are about to be computed. */
  begin(): void {
    this.wanted.clear();
  }

  /** All formulas have been computed: what none of them asks for any more is given up. */
  settle(): void {
    this.queue = this.queue.filter(({ key }) => this.wanted.has(key));
    for (const [worker, call] of this.running) {
      if (this.wanted.has(call.key)) continue;
      worker.terminate();
      this.running.delete(worker);
    }
    let spare = this.answers.size - KEPT;
    for (const key of this.answers.keys()) {
      if (spare-- <= 0) break;
      if (!this.wanted.has(key)) this.answers.delete(key);
    }
    this.goOn();
  }

  private goOn(): void {
    while (this.running.size < WORKERS) {
      // The latest first: a person waits for what was typed last.
      const call = this.queue.pop();
      if (!call) return;
      const worker = this.idle.pop() ?? new Worker('sheetCalls.js');
      this.running.set(worker, call);
      const done = (answer: CallAnswer, broken: boolean) => {
        if (this.running.get(worker) !== call) return;
        this.running.delete(worker);
        if (broken) worker.terminate();
        else this.idle.push(worker);
        this.answers.set(call.key, answer);
        this.goOn();
        this.answered();
      };
      worker.onmessage = ({ data }: MessageEvent<CallAnswer>) => done(data, false);
      worker.onerror = () => done({ number: call.number, thrown: undefined }, true);
      worker.postMessage({ number: call.number, id: call.id, values: call.values.filter(isSendable) });
    }
  }
}

const isSendable = (value: unknown): boolean => typeof value !== 'function';
