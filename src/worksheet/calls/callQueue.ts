import type { Share } from '../../core/measures/parts';
import type { FunctionDescription } from '../description';
import { CallRunner } from './callRunner';
import type { CallAnswer, CallToRun, FromWorker, PlainCells } from './messages';
import { withPlainErrors } from './plainErrors';
import type { WorkerLike } from './workers';

/** What the queue needs of the page. */
export interface QueuePlace {
  /** [ms] */
  readonly now: () => number;
  /** Runs something after all else that waits has had its turn. */
  readonly later: (run: () => void) => void;
  /** Runs something after a time [ms]. */
  readonly after: (time: number, run: () => void) => void;
  readonly makeWorker: () => WorkerLike | undefined;
  /** The most workers at a time; at least 1. */
  readonly workers: number;
}

/** Why a call has no answer. */
export type NoAnswer = 'given up' | 'stopped' | 'failed';

/** Is told the answer, once. */
export type Told = (cells: PlainCells | undefined, why?: NoAnswer) => void;

/** How much is being computed. */
export interface CallsState {
  /** Calls that are not answered yet. */
  readonly waiting: number;
  /** Calls answered since none was waiting. */
  readonly done: number;
  /** How far the longest of them is, where it has parts. */
  readonly share: Share | undefined;
}

interface Job {
  readonly number: number;
  readonly id: string;
  readonly values: readonly unknown[] | string;
  /** Under this the answer is kept, and the same call is not made twice; undefined for short calls. */
  readonly key: string | undefined;
  readonly wantedBy: Set<Told>;
  /** The call that it is a part of. */
  readonly whole: Whole | undefined;
  /** Times that a worker broke down while it had this call. */
  breakdowns: number;
  share?: Share;
}

/** A call that is asked for as several. */
interface Whole {
  readonly of: number;
  done: number;
}

interface Place {
  readonly worker: WorkerLike;
  readonly jobs: Map<number, Job>;
  ready: boolean;
}

/** A short call that was asked for, as little as can be kept of it: thousands come in one turn of the page. */
interface ShortAsk {
  readonly id: string;
  readonly values: readonly unknown[];
  readonly told: Told;
}

/** Calls that one worker has at a time: it gives each a part in turn, so a long one does not keep the others waiting. */
const AT_ONCE = 6;
/** Short calls go to a worker many at a time, since each message costs as much as one of them. */
const SHORT_AT_ONCE = 500;
/** Short calls that a worker may have waiting: the page is not always there at once to hand on more. */
const SHORT_WAITING = 2000;
/** Short calls that the page makes itself in one turn, where the workers have theirs. */
const SHORT_BESIDE = 100;
/** Short calls are handed on for so long without a pause [ms]. */
const HAND_ON = 8;
/** A worker that has not spoken by then is none [ms]. */
const LONGEST_START = 20_000;
/** Work beside the pane, where no worker is to be had, pauses after so much [ms]. */
const SLICE = 25;
/** Cells and characters of answers kept, so that what is asked again is there at once; some megabytes. */
const KEPT_SIZE = 1_000_000;

/**
 * Runs calls aside of the page, in workers where it may have some, else in slices between which the page goes on.
 * A call that is asked for again while it runs, or soon after, is made once; one that nobody wants any more is given
 * up.
 */
export class CallQueue {
  private readonly places: Place[] = [];
  /** Parts of one call wait together, all other calls together: each has its turn. */
  private readonly waitingJobs = new Map<Whole | undefined, Job[]>();
  private readonly wholes = new Set<Whole>();
  private shortAsked: ShortAsk[] = [];
  private readonly jobs = new Map<number, Job>();
  private readonly byKey = new Map<string, Job>();
  private readonly kept = new Map<string, PlainCells>();
  private keptSize = 0;
  private count = 0;
  private done = 0;
  private handingOn = false;
  private workersFail = false;
  private beside: CallRunner | undefined;
  private readonly listeners = new Set<() => void>();

  constructor(
    private readonly functions: readonly FunctionDescription[],
    private readonly place: QueuePlace,
  ) {}

  /**
   * Asks for a call that takes long.
   * @param json its arguments as JSON; errors among them as `{code, message}`
   * @returns gives the call up for this asker, who is told nothing any more
   */
  ask(id: string, json: string, told: Told): () => void {
    return this.askPart(id, json, told, undefined);
  }

  /**
   * Asks for a call as several that workers share.
   * @param jsons the arguments of each as JSON
   * @param join makes the answer of theirs
   * @returns gives all of it up for this asker
   */
  askTogether(
    id: string,
    jsons: readonly string[],
    join: (answers: readonly PlainCells[]) => PlainCells,
    told: Told,
  ): () => void {
    this.countAnew();
    const whole: Whole = { of: jsons.length, done: 0 };
    this.wholes.add(whole);
    const answers: PlainCells[] = [];
    const parts: (() => void)[] = [];
    const end = (): void => {
      this.wholes.delete(whole);
      for (const giveUp of parts) giveUp();
    };
    for (const [i, json] of jsons.entries()) {
      const heard: Told = (cells, why) => {
        if (!this.wholes.has(whole)) return;
        if (!cells) {
          end();
          told(undefined, why);
          return;
        }
        answers[i] = cells;
        if (++whole.done < whole.of) return;
        this.wholes.delete(whole);
        this.done++;
        told(join(answers));
      };
      parts.push(this.askPart(id, json, heard, whole));
    }
    return end;
  }

  private askPart(id: string, json: string, told: Told, whole: Whole | undefined): () => void {
    const key = `${id} ${json}`;
    const known = this.kept.get(key);
    if (known) {
      // Kept longest is what was asked for last.
      this.kept.delete(key);
      this.kept.set(key, known);
      told(known);
      return () => {};
    }
    let job = this.byKey.get(key);
    if (!job) {
      this.countAnew();
      job = this.newJob(id, json, key, whole);
      this.byKey.set(key, job);
      this.letWait(job);
    }
    job.wantedBy.add(told);
    const asked = job;
    this.handOnLater();
    this.changed();
    return () => this.giveUp(asked, told);
  }

  /**
   * Asks for a call that is short in itself, when there are too many of them to be made at once.
   * @param values its arguments as the host gave them
   */
  askShort(id: string, values: readonly unknown[], told: Told): void {
    this.countAnew();
    this.shortAsked.push({ id, values, told });
    this.handOnLater();
  }

  /** Starts a first worker before there is a call for it: reading its script takes longer than most calls. */
  warm(): void {
    if (!this.workersFail && this.places.length === 0) this.start();
  }

  /** Gives up all that is being computed. */
  stop(): void {
    const short = this.shortAsked;
    this.shortAsked = [];
    for (const { told } of short) told(undefined, 'stopped');
    for (const job of [...this.jobs.values()]) {
      this.remove(job);
      for (const told of job.wantedBy) told(undefined, 'stopped');
    }
    this.changed();
  }

  state(): CallsState {
    let share: Share | undefined;
    for (const { of, done } of this.wholes) if (of > (share?.of ?? 0)) share = { done, of };
    let waiting = this.wholes.size + this.shortAsked.length;
    for (const job of this.jobs.values()) {
      if (job.whole) continue;
      waiting++;
      if (job.share && job.share.of > (share?.of ?? 0)) share = job.share;
    }
    return { waiting, done: this.done, share };
  }

  /** Workers that there are now. */
  get workers(): number {
    return this.places.length;
  }

  /** Calls back after the state has changed, not more often than a page needs. */
  onChange(listener: () => void): void {
    this.listeners.add(listener);
  }

  private newJob(id: string, values: readonly unknown[] | string, key?: string, whole?: Whole): Job {
    const job: Job = { number: this.count++, id, values, key, wantedBy: new Set(), whole, breakdowns: 0 };
    this.jobs.set(job.number, job);
    return job;
  }

  private letWait(job: Job): void {
    const waiting = this.waitingJobs.get(job.whole);
    if (waiting) waiting.push(job);
    else this.waitingJobs.set(job.whole, [job]);
  }

  /** The next of the jobs that wait: none of a call of many parts keeps the others waiting. */
  private nextJob(): Job | undefined {
    for (const [whole, waiting] of this.waitingJobs) {
      const job = waiting.shift();
      // Whose turn it was comes last.
      this.waitingJobs.delete(whole);
      if (waiting.length > 0) this.waitingJobs.set(whole, waiting);
      if (job && this.jobs.has(job.number)) return job;
    }
    return undefined;
  }

  /** Calls are counted as done since none was waiting. */
  private countAnew(): void {
    if (this.jobs.size === 0 && this.shortAsked.length === 0 && this.wholes.size === 0) this.done = 0;
  }

  private giveUp(job: Job, told: Told): void {
    job.wantedBy.delete(told);
    if (job.wantedBy.size > 0 || !this.jobs.has(job.number)) return;
    this.remove(job);
    this.handOnLater();
    this.changed();
  }

  private remove(job: Job): void {
    this.jobs.delete(job.number);
    if (job.key !== undefined) this.byKey.delete(job.key);
    for (const place of this.places) {
      if (place.jobs.delete(job.number)) place.worker.postMessage({ kind: 'give up', number: job.number });
    }
    this.beside?.giveUp(job.number);
  }

  private handOnLater(): void {
    if (this.handingOn) return;
    this.handingOn = true;
    this.place.later(() => {
      this.handingOn = false;
      this.handOn();
    });
  }

  /** Hands waiting calls to workers that have room for them. */
  private handOn(): void {
    const until = this.place.now() + HAND_ON;
    while (this.waitingJobs.size > 0 || this.shortAsked.length > 0) {
      if (this.place.now() >= until) return this.handOnLater();
      const short = this.shortAsked.length > 0;
      const place = this.withRoom(short);
      if (place === 'all busy') {
        // To hand short calls on takes about as long as to make them, so the page makes some too.
        if (short && !this.beside?.isRunning) this.runBeside(this.takeShort(SHORT_BESIDE));
        return;
      }
      const next = short ? undefined : this.nextJob();
      if (!short && !next) return;
      const jobs = next ? [next] : this.takeShort(SHORT_AT_ONCE);
      if (place === 'no worker') this.runBeside(jobs);
      else {
        for (const job of jobs) place.jobs.set(job.number, job);
        place.worker.postMessage({ kind: 'run', calls: jobs.map(toRun) });
      }
    }
  }

  /** The first of the short calls, as many as are handed on together. */
  private takeShort(most: number): Job[] {
    const taken = this.shortAsked.splice(0, most);
    return taken.map(({ id, values, told }) => {
      const job = this.newJob(id, withPlainErrors(values));
      job.wantedBy.add(told);
      return job;
    });
  }

  /** The worker with the fewest calls; a new one where all have some and there may be more. */
  private withRoom(short: boolean): Place | 'all busy' | 'no worker' {
    if (this.workersFail) return 'no worker';
    const least = this.places.reduce<Place | undefined>(
      (best, place) => (best && best.jobs.size <= place.jobs.size ? best : place),
      undefined,
    );
    if ((!least || least.jobs.size > 0) && this.places.length < this.place.workers) {
      const started = this.start();
      if (started) return started;
      if (!least) return 'no worker';
    }
    if (!least) return 'no worker';
    return least.jobs.size < (short ? SHORT_WAITING : AT_ONCE) ? least : 'all busy';
  }

  private start(): Place | undefined {
    const worker = this.place.makeWorker();
    if (!worker) {
      this.workersFail = this.places.length === 0;
      return undefined;
    }
    const place: Place = { worker, jobs: new Map(), ready: false };
    this.places.push(place);
    worker.onmessage = ({ data }) => this.heard(place, data);
    worker.onerror = () => this.brokeDown(place);
    this.place.after(LONGEST_START, () => {
      if (!place.ready) this.brokeDown(place);
    });
    return place;
  }

  /** A worker that broke down, or never began: its calls are made elsewhere, but none that broke two of them. */
  private brokeDown(place: Place): void {
    const at = this.places.indexOf(place);
    if (at < 0) return;
    this.places.splice(at, 1);
    place.worker.terminate();
    // One that never ran a call is not allowed to, or cannot be loaded.
    if (!place.ready) this.workersFail = true;
    for (const job of place.jobs.values()) {
      if (++job.breakdowns < 2 || !place.ready) this.letWait(job);
      else {
        this.remove(job);
        for (const told of job.wantedBy) told(undefined, 'failed');
      }
    }
    this.handOnLater();
  }

  private runBeside(jobs: readonly Job[]): void {
    this.beside ??= new CallRunner(this.functions, SLICE, {
      now: this.place.now,
      later: this.place.later,
      tell: (message) => this.heard(undefined, message),
    });
    this.beside.run(jobs.map(toRun));
  }

  private heard(place: Place | undefined, message: FromWorker): void {
    if (message.kind === 'ready') {
      if (place) place.ready = true;
      return;
    }
    if (message.kind === 'share') {
      const job = this.jobs.get(message.number);
      if (job) job.share = message.share;
    } else {
      for (const answer of message.answers) this.answered(place, answer);
      this.handOnLater();
    }
    this.changed();
  }

  private answered(place: Place | undefined, { number, cells }: CallAnswer): void {
    place?.jobs.delete(number);
    const job = this.jobs.get(number);
    if (!job) return;
    this.jobs.delete(number);
    if (!job.whole) this.done++;
    if (job.key !== undefined) {
      this.byKey.delete(job.key);
      this.keep(job.key, cells);
    }
    for (const told of job.wantedBy) told(cells);
  }

  private keep(key: string, cells: PlainCells): void {
    this.keptSize += sizeOf(key, cells);
    this.kept.set(key, cells);
    for (const [oldest, answer] of this.kept) {
      if (this.keptSize <= KEPT_SIZE) break;
      this.keptSize -= sizeOf(oldest, answer);
      this.kept.delete(oldest);
    }
  }

  private changed(): void {
    for (const listener of this.listeners) listener();
  }
}

const toRun = ({ number, id, values }: Job): CallToRun => ({ number, id, values });

/** A cell weighs as much as some characters. */
const sizeOf = (key: string, cells: PlainCells): number =>
  key.length + 20 * cells.length * (cells[0]?.length ?? 1);
