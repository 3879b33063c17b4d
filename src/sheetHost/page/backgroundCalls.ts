import type { CallAnswer, CallToRun } from '../../worksheet/calls/messages';
import type { WorkerLike } from '../../worksheet/calls/workers';
import type { Share } from '../../core/measures/parts';
import type { Bundle, BundleFunction } from '../bundle';
import { BUSY, isCellError, type CellValue } from '../hostValues';

interface Call extends CallToRun {
  readonly key: string;
  /** Addresses of the cells that wait for it. */
  readonly cells: Set<string>;
  share?: Share;
}

/** How far the calls are that are computed aside. */
export interface CallsProgress {
  /** Calls that have no answer yet. */
  readonly waiting: number;
  /** Of these, calls that the sheet in front needs. */
  readonly inFront: number;
  /** Of those waiting, calls for which what the workbook had stored is shown meanwhile. */
  readonly stored: number;
  /** Calls answered since none was waiting. */
  readonly done: number;
  /** How far the longest is of those that the sheet in front needs, else of all, where it has parts. */
  readonly share: Share | undefined;
}

interface Place {
  readonly worker: WorkerLike;
  readonly calls: Map<number, Call>;
}

/** As many as a small machine has processors to spare. */
const WORKERS = 2;

/** Calls that one worker has at a time; it gives each a part in turn. */
const AT_ONCE = 3;

/** Answers kept that no formula asks for at the moment, so that a change taken back is there at once. */
const KEPT = 40;

/** Calls that judge whole routes, or look for a motion on a landing: they can take seconds. */
const takesLong = ({ name, parameters }: BundleFunction): boolean =>
  /LANDING$/.test(name) ||
  (!/^CHECK/.test(name) && parameters.some((p) => /^(?:routes?|rows|function)$/.test(p.name)));

/**
 * Lets long calls of a bundle run in the add-in's own workers, as Excel runs custom functions aside of the sheet:
 * their cells show an error that says so until the answer is there. What the sheet in front needs goes before all
 * else. The same call is not asked again.
 */
export class BackgroundCalls {
  private readonly answers = new Map<string, CallAnswer | 'failed'>();
  private readonly wanted = new Set<string>();
  private readonly calls = new Map<string, Call>();
  private readonly places: Place[] = [];
  private front: ReadonlySet<string> = new Set();
  /** What the cells of a workbook just opened had stored, until they have all been asked once. */
  private stored: ReadonlyMap<string, CellValue[][]> = new Map();
  /** By call: what is shown until it is answered. */
  private readonly standIns = new Map<string, CellValue[][]>();
  private count = 0;
  private done = 0;

  /**
   * @param answered an answer has come: formulas should be computed again
   * @param further a call has got further
   */
  constructor(
    private readonly makeWorker: () => WorkerLike | undefined,
    private readonly answered: () => void,
    private readonly further: () => void,
  ) {}

  /** Calls that have no answer yet. */
  get waiting(): number {
    return this.calls.size;
  }

  progress(): CallsProgress {
    const all = [...this.calls.values()];
    const front = all.filter((call) => this.isInFront(call));
    const longest = (calls: readonly Call[]) =>
      calls.reduce<Share | undefined>((most, { share }) => {
        const longer = share !== undefined && share.of > (most?.of ?? 0);
        return longer ? share : most;
      }, undefined);
    return {
      waiting: all.length,
      inFront: front.length,
      stored: all.filter(({ key }) => this.standIns.has(key)).length,
      done: this.done,
      share: longest(front.length > 0 ? front : all),
    };
  }

  /**
   * Another workbook: what it had stored stands for its long calls until they are answered, as long as their arguments
   * stay the same.
   */
  open(stored: ReadonlyMap<string, CellValue[][]>): void {
    this.standIns.clear();
    this.stored = stored;
  }

  /** The bundle with its long calls put aside. */
  wrap(bundle: Bundle): Bundle {
    const functions = new Map(
      [...bundle.functions].map(([name, described]) => {
        if (!takesLong(described)) return [name, described] as const;
        const call = (...values: unknown[]) => this.ask(described, values, bundle);
        return [name, { ...described, call }] as const;
      }),
    );
    return { ...bundle, functions };
  }

  private ask({ id, parameters }: BundleFunction, given: readonly unknown[], { runtime }: Bundle): unknown {
    const values = given.slice(0, parameters.length).map(plain);
    const key = JSON.stringify([id, values]);
    this.wanted.add(key);
    const answer = this.answers.get(key);
    if (answer === 'failed') throw new Error('the call failed');
    if (answer) {
      const only =
        answer.cells.length === 1 && answer.cells[0]?.length === 1 ? answer.cells[0][0] : undefined;
      if (isCellError(only)) throw new runtime.global.Error(only.code, only.message) as unknown as Error;
      return answer.cells;
    }
    let call = this.calls.get(key);
    if (!call) {
      if (this.calls.size === 0) this.done = 0;
      call = { key, id, values, number: this.count++, cells: new Set() };
      this.calls.set(key, call);
    }
    const { address } = given[parameters.length] as { readonly address?: string };
    if (address !== undefined) {
      call.cells.add(address);
      const stored = this.stored.get(address);
      if (stored) this.standIns.set(key, stored);
    }
    return this.standIns.get(key) ?? [[new runtime.global.Error('#N/A', BUSY)]];
  }

  /** All formulas are about to be computed. */
  begin(): void {
    this.wanted.clear();
    for (const call of this.calls.values()) call.cells.clear();
  }

  /**
   * All formulas have been computed: what none of them asks for any more is given up.
   * @param front as in `prefer`
   */
  settle(front: ReadonlySet<string>): void {
    this.stored = new Map();
    for (const call of this.calls.values()) {
      if (this.wanted.has(call.key)) continue;
      this.calls.delete(call.key);
      this.standIns.delete(call.key);
      for (const { worker, calls } of this.places) {
        if (calls.delete(call.number)) worker.postMessage({ kind: 'give up', number: call.number });
      }
    }
    let spare = this.answers.size - KEPT;
    for (const key of this.answers.keys()) {
      if (spare-- <= 0) break;
      if (!this.wanted.has(key)) this.answers.delete(key);
    }
    this.prefer(front);
  }

  /**
   * Lets what some cells wait for go first.
   * @param front addresses of the cells with formulas that the sheet in front needs
   */
  prefer(front: ReadonlySet<string>): void {
    this.front = front;
    this.goOn();
  }

  private isInFront({ cells }: Call): boolean {
    for (const address of cells) if (this.front.has(address)) return true;
    return false;
  }

  /** Hands calls to workers, those in front first; tells each worker which of its calls these are. */
  private goOn(): void {
    const at = new Set(this.places.flatMap(({ calls }) => [...calls.keys()]));
    const toRun = [...this.calls.values()].filter(({ number }) => !at.has(number));
    const front = toRun.filter((call) => this.isInFront(call));
    for (const call of front) this.give(call, true);
    for (const call of toRun) if (!front.includes(call)) this.give(call, false);
    for (const { worker, calls } of this.places) {
      if (calls.size === 0) continue;
      const first = [...calls.values()].filter((call) => this.isInFront(call)).map(({ number }) => number);
      worker.postMessage({ kind: 'first', numbers: first });
    }
  }

  /** To the worker that will come to it first; what is not in front waits where all have enough. */
  private give(call: Call, inFront: boolean): void {
    const before = ({ calls }: Place): number =>
      inFront ? [...calls.values()].filter((one) => this.isInFront(one)).length : calls.size;
    let [place] = [...this.places].sort((a, b) => before(a) - before(b));
    if (this.places.length < WORKERS && (!place || place.calls.size > 0)) place = this.start() ?? place;
    if (!place || (!inFront && place.calls.size >= AT_ONCE)) return;
    place.calls.set(call.number, call);
    const { number, id, values } = call;
    place.worker.postMessage({ kind: 'run', calls: [{ number, id, values }] });
  }

  private start(): Place | undefined {
    const worker = this.makeWorker();
    if (!worker) return undefined;
    const place: Place = { worker, calls: new Map() };
    this.places.push(place);
    worker.onmessage = ({ data }) => {
      if (data.kind === 'share') {
        const call = place.calls.get(data.number);
        if (call) call.share = data.share;
        this.further();
      } else if (data.kind === 'answers') this.take(place, data.answers);
    };
    worker.onerror = () => {
      worker.terminate();
      this.places.splice(this.places.indexOf(place), 1);
      const broken = [...place.calls.values()];
      for (const call of broken) this.settled(call, 'failed');
      if (broken.length > 0) this.answered();
      this.goOn();
    };
    return place;
  }

  private take(place: Place, answers: readonly CallAnswer[]): void {
    let came = false;
    for (const answer of answers) {
      const call = place.calls.get(answer.number);
      if (!call) continue;
      place.calls.delete(call.number);
      this.settled(call, answer);
      came = true;
    }
    if (!came) return;
    this.goOn();
    this.answered();
  }

  private settled(call: Call, answer: CallAnswer | 'failed'): void {
    this.calls.delete(call.key);
    this.standIns.delete(call.key);
    this.answers.set(call.key, answer);
    this.done++;
  }
}

/** Without the classes that do not outlive the way to a worker. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (!isCellError(value)) return value;
  return value.message === undefined ? { code: value.code } : { code: value.code, message: value.message };
}
