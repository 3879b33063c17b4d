import type { CallAnswer, CallToRun, PlainCells } from '../../worksheet/calls/messages';
import type { WorkerLike } from '../../worksheet/calls/workers';
import type { SmallerCalls } from '../../worksheet/calls/smallerCalls';
import type { Share } from '../../core/measures/parts';
import { firstOf } from '../../core/lists/ends';
import type { Bundle, BundleFunction } from '../bundle';
import { BUSY, isCellError, type CellValue } from '../hostValues';

interface Call {
  readonly key: string;
  /** What it is made of: itself alone, or smaller calls of which `join` makes its answer. */
  parts: readonly Part[];
  join: SmallerCalls['join'] | undefined;
  /** Addresses of the cells that wait for it. */
  readonly cells: Set<string>;
}

/** What one worker makes at a time. */
interface Part extends CallToRun {
  readonly key: string;
  readonly call: Call;
  /** Whichever worker has had a call about this goes on with the next: it remembers much. */
  readonly about: string | undefined;
  share?: Share;
  answer?: PlainCells;
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
  readonly parts: Map<number, Part>;
  /** What its calls were about. */
  readonly knows: Set<string>;
}

/** As many as a small machine has processors. */
const FEWEST_WORKERS = 2;
/** Each reads the add-in's script and remembers for itself what it has worked out. */
const MOST_WORKERS = 8;

/** Who makes the calls. */
export interface WorkersAtHand {
  readonly makeWorker: () => WorkerLike | undefined;
  /** The most at a time. */
  readonly workers: number;
  /** A call as smaller ones, where several workers can share it. */
  readonly inSmallerCalls: (id: string, values: readonly unknown[]) => SmallerCalls | undefined;
}

/** One processor is for the page, where there are some. */
export const workersFor = (processors: number): number =>
  Math.min(MOST_WORKERS, Math.max(FEWEST_WORKERS, processors - 1));

/** Calls, or parts of one, that one worker has at a time; it gives each a turn. */
const AT_ONCE = 3;

/** Answers kept that no formula asks for at the moment, so that a change taken back is there at once. */
const KEPT = 40;

/** Answers kept of smaller calls: after a change only those are made that it is about. */
const KEPT_PARTS = 500;

/** Calls that look for a motion on a landing: they can take a second. */
const SEARCHES = /LANDING$/;

/** Those, and calls that judge whole routes; the working of a function may take as long as it does. */
const mayTakeLong = ({ name, parameters }: BundleFunction): boolean =>
  SEARCHES.test(name) ||
  (!/^CHECK/.test(name) && parameters.some((p) => /^(?:routes?|rows|function)$/.test(p.name)));

/** The working of what is short is as short. */
function isWorkingOfAShortOne({ parameters }: BundleFunction, [named]: readonly unknown[]): boolean {
  if (parameters[0]?.name !== 'function') return false;
  const name: unknown = Array.isArray(named) && Array.isArray(named[0]) ? named[0][0] : named;
  return typeof name === 'string' && !SEARCHES.test(name.trim().toUpperCase());
}

/**
 * Lets long calls of a bundle run in the add-in's own workers, as Excel runs custom functions aside of the sheet:
 * their cells show an error that says so until the answer is there. What the sheet in front needs goes before all
 * else, and of that what has no stored value to show meanwhile. The same call is not asked again.
 */
export class BackgroundCalls {
  private readonly answers = new Map<string, PlainCells | 'failed'>();
  private readonly partAnswers = new Map<string, PlainCells>();
  private readonly wanted = new Set<string>();
  private readonly calls = new Map<string, Call>();
  private readonly places: Place[] = [];
  private front: ReadonlySet<string> = new Set();
  /** What the cells of a workbook just opened had stored, until they have all been asked once. */
  private stored: ReadonlyMap<string, CellValue[][]> = new Map();
  /** By call: what is shown until it is answered. */
  private readonly standIns = new Map<string, CellValue[][]>();
  /** What was shown for a call that has no answer yet: the host must ask for it again. */
  private readonly provisional = new WeakSet<CellValue[][]>();
  private count = 0;
  private done = 0;

  /**
   * @param answered an answer has come: formulas should be computed again
   * @param further a call has got further
   */
  constructor(
    private readonly by: WorkersAtHand,
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
      calls.reduce<Share | undefined>((most, call) => {
        const share = shareOf(call);
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
        if (!mayTakeLong(described)) return [name, described] as const;
        const call = (...values: unknown[]) =>
          isWorkingOfAShortOne(described, values)
            ? described.call(...values)
            : this.ask(described, values, bundle);
        return [name, { ...described, call }] as const;
      }),
    );
    const isProvisional = (result: unknown): boolean => this.provisional.has(result as CellValue[][]);
    return { ...bundle, functions, isProvisional };
  }

  private ask(described: BundleFunction, given: readonly unknown[], bundle: Bundle): unknown {
    const { id, parameters } = described;
    const { runtime } = bundle;
    const values = given.slice(0, parameters.length).map(plain);
    const key = JSON.stringify([id, values]);
    this.wanted.add(key);
    const answer = this.answers.get(key);
    if (answer === 'failed') throw new Error('the call failed');
    if (answer) {
      const only = answer.length === 1 && answer[0]?.length === 1 ? answer[0][0] : undefined;
      if (isCellError(only)) throw new runtime.global.Error(only.code, only.message) as unknown as Error;
      return answer;
    }
    let call = this.calls.get(key);
    if (!call) {
      if (this.calls.size === 0) this.done = 0;
      call = this.newCall(key, id, values);
      if (this.answerOf(call)) return this.ask(described, given, bundle);
    }
    const { address } = given[parameters.length] as { readonly address?: string };
    if (address !== undefined) {
      call.cells.add(address);
      const stored = this.stored.get(address);
      if (stored) this.standIns.set(key, stored);
    }
    const standIn = this.standIns.get(key);
    if (standIn) this.provisional.add(standIn);
    return standIn ?? [[new runtime.global.Error('#N/A', BUSY)]];
  }

  private newCall(key: string, id: string, values: readonly unknown[]): Call {
    const smaller = this.by.inSmallerCalls(id, values);
    const call: Call = { key, parts: [], join: smaller?.join, cells: new Set() };
    call.parts = smaller
      ? smaller.calls.map((one) =>
          this.newPart(call, JSON.stringify([id, one]), id, one, JSON.stringify(one[0])),
        )
      : [this.newPart(call, key, id, values, undefined)];
    this.calls.set(key, call);
    return call;
  }

  private newPart(
    call: Call,
    key: string,
    id: string,
    values: readonly unknown[],
    about: string | undefined,
  ): Part {
    const answer = this.partAnswers.get(key);
    return { key, call, about, id, values, number: this.count++, ...(answer ? { answer } : {}) };
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
      this.giveUp(call);
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

  private giveUp({ parts }: Call): void {
    for (const { number } of parts) {
      for (const place of this.places) {
        if (place.parts.delete(number)) place.worker.postMessage({ kind: 'give up', number });
      }
    }
  }

  /** How soon a call is wanted, from 0: first where the sheet in front shows nothing yet, last where stored values stand. */
  private turnOf(call: Call): number {
    return (this.isInFront(call) ? 0 : 2) + (this.standIns.has(call.key) ? 1 : 0);
  }

  /** Hands calls to workers, the most wanted first; tells each worker which of its calls these are. */
  private goOn(): void {
    const at = new Set(this.places.flatMap(({ parts }) => [...parts.keys()]));
    const byTurn = new Map<number, Part[]>();
    for (const call of this.calls.values()) {
      const turn = this.turnOf(call);
      const toRun = call.parts.filter(({ number, answer }) => !answer && !at.has(number));
      byTurn.set(turn, [...(byTurn.get(turn) ?? []), ...toRun]);
    }
    for (const turn of [...byTurn.keys()].sort()) this.handOut(byTurn.get(turn) ?? [], turn);
    for (const { worker, parts } of this.places) {
      if (parts.size === 0) continue;
      const turns = [...parts.values()].map(({ number, call }) => ({ number, turn: this.turnOf(call) }));
      const next = Math.min(...turns.map(({ turn }) => turn));
      const first = turns.filter(({ turn }) => turn === next).map(({ number }) => number);
      worker.postMessage({ kind: 'first', numbers: first });
    }
  }

  /**
   * Gives each worker what it knows about, then what nobody knows about, then what another one knows, while it has room
   * beside what is wanted no later.
   */
  private handOut(parts: readonly Part[], turn: number): void {
    const before = (place: Place): number =>
      [...place.parts.values()].filter(({ call }) => this.turnOf(call) <= turn).length;
    const left = [...parts];
    while (left.length > 0) {
      let [place] = [...this.places].sort((a, b) => before(a) - before(b));
      if (this.places.length < this.by.workers && (!place || place.parts.size > 0))
        place = this.start() ?? place;
      if (!place || before(place) >= AT_ONCE) return;
      const { knows } = place;
      const known = ({ about }: Part): boolean => about !== undefined && knows.has(about);
      const knownToNone = ({ about }: Part): boolean =>
        about === undefined || !this.places.some((other) => other.knows.has(about));
      const next = left.find(known) ?? left.find(knownToNone) ?? firstOf(left);
      left.splice(left.indexOf(next), 1);
      this.give(place, next);
    }
  }

  private give(place: Place, part: Part): void {
    place.parts.set(part.number, part);
    if (part.about !== undefined) place.knows.add(part.about);
    const { number, id, values } = part;
    place.worker.postMessage({ kind: 'run', calls: [{ number, id, values }] });
  }

  private start(): Place | undefined {
    const worker = this.by.makeWorker();
    if (!worker) return undefined;
    const place: Place = { worker, parts: new Map(), knows: new Set() };
    this.places.push(place);
    worker.onmessage = ({ data }) => {
      if (data.kind === 'share') {
        const part = place.parts.get(data.number);
        if (part) part.share = data.share;
        this.further();
      } else if (data.kind === 'answers') this.take(place, data.answers);
    };
    worker.onerror = () => {
      worker.terminate();
      this.places.splice(this.places.indexOf(place), 1);
      const broken = new Set([...place.parts.values()].map(({ call }) => call));
      for (const call of broken) {
        this.giveUp(call);
        this.settled(call, 'failed');
      }
      if (broken.size > 0) this.answered();
      this.goOn();
    };
    return place;
  }

  private take(place: Place, answers: readonly CallAnswer[]): void {
    let came = false;
    for (const { number, cells } of answers) {
      const part = place.parts.get(number);
      if (!part) continue;
      place.parts.delete(number);
      part.answer = cells;
      if (part.call.join) this.keepPart(part.key, cells);
      if (this.answerOf(part.call)) came = true;
    }
    this.goOn();
    if (came) this.answered();
    else this.further();
  }

  private keepPart(key: string, cells: PlainCells): void {
    this.partAnswers.set(key, cells);
    for (const oldest of this.partAnswers.keys()) {
      if (this.partAnswers.size <= KEPT_PARTS) break;
      this.partAnswers.delete(oldest);
    }
  }

  /** Puts a call together once all of its parts are answered; says whether they are. */
  private answerOf(call: Call): boolean {
    const answers = call.parts.flatMap(({ answer }) => (answer ? [answer] : []));
    if (answers.length < call.parts.length) return false;
    this.settled(call, call.join ? call.join(answers) : firstOf(answers));
    return true;
  }

  private settled(call: Call, answer: PlainCells | 'failed'): void {
    this.calls.delete(call.key);
    this.standIns.delete(call.key);
    this.answers.set(call.key, answer);
    this.done++;
  }
}

/** How far a call is: in the calls that it is made of, where these are some. */
function shareOf({ parts, join }: Call): Share | undefined {
  if (!join) return parts[0]?.share;
  return { done: parts.filter(({ answer }) => answer).length, of: parts.length };
}

/** Without the classes that do not outlive the way to a worker. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (!isCellError(value)) return value;
  return value.message === undefined ? { code: value.code } : { code: value.code, message: value.message };
}
