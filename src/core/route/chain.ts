import { ALL_HOLDS, poseOfHold } from '../motion/hold';
import { HOLD_COUNT, type BookPassage } from './stageBook';
import type { LimitCause } from './limitCause';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { max, min } = Math;

/** A place beside a part that leaves only so much clearance, by hold. */
export interface PlaceLimit {
  readonly by: readonly number[];
  readonly cause: LimitCause;
}

/**
 * One part of a route with all that can be done with one piece there, in one tape case: a row, or a piece of a row
 * (a flight is the floor at its first end, its first and second half, and the floor at its second end).
 */
export interface Part {
  /** Index of the row it belongs to. */
  readonly row: number;
  /** Undefined where the row is not measured: then every way is taken to be open. */
  readonly passages: readonly BookPassage[] | undefined;
  /** It only holds room to change the pose: nothing passes or stops there. */
  readonly floor?: boolean;
  /** Clearances of changing from each hold to each other, 6 x 6, before going on through it and after. */
  readonly changeBefore?: readonly number[] | undefined;
  readonly changeAfter?: readonly number[] | undefined;
  /** Room to lean and to tilt beside it, by hold; undefined: as much as it takes; null: none. */
  readonly leanBefore: RoomBeside;
  readonly leanAfter: RoomBeside;
  readonly limitsBefore: readonly PlaceLimit[];
  readonly limitsAfter: readonly PlaceLimit[];
  /** What passes this part and some that follow at once. */
  readonly joints?: readonly Joint[] | undefined;
}

/** Room to turn the piece out of level beside a passage: the clearance [mm a side] that leaning and tilting leave, for each hold. */
export type RoomBeside =
  { readonly lean: readonly number[]; readonly tilt: readonly number[] } | undefined | null;

/** Passages through several parts as one. */
export interface Joint {
  /** Number of parts. */
  readonly parts: number;
  readonly passages: readonly BookPassage[];
}

/** What a step of a chain does with the piece at one row. Holds are indices into ALL_HOLDS. */
export interface ChainStep {
  readonly enters: number;
  /** Held so through the stage: before and after it. */
  readonly from: number;
  readonly to: number;
  readonly leaves: number;
  /** Undefined where the step is not measured. */
  readonly passage: BookPassage | undefined;
  /** Clearance of the step [mm a side]: of the passage, the changes of pose and the straights beside it. */
  readonly clearance: number;
  readonly closest: 'passage' | 'change before' | 'change after' | 'leaning' | 'limit';
  /** Where `closest` is a limit: what it is. */
  readonly limit?: LimitCause | undefined;
  /** The rows that the passage goes through at once, where there are more than one. */
  readonly joint?: readonly [number, number] | undefined;
}

/** Clearance of a passage with the room it needs to lean or tilt. */
function passageClearance(passage: BookPassage, part: Part, last: Part): number {
  if (!passage.turningRoom) return passage.clearance;
  return min(
    passage.clearance,
    roomAt(part.leanBefore, passage, passage.from),
    roomAt(last.leanAfter, passage, passage.to),
  );
}

const roomAt = (room: RoomBeside, passage: BookPassage, hold: number): number =>
  room === undefined
    ? Infinity
    : room === null
      ? -Infinity
      : (passage.answer.pose === 'tilted' ? room.tilt : room.lean)[hold]!;

/** `free`: without the passages that are at best tight. */
export type Passable = 'free' | 'any';

/**
 * The greatest clearance [mm a side] with which some chain of poses passes every part: the widest path (a shortest path
 * with the least of its clearances in place of their sum). -Infinity where
 * no chain is shown.
 */
export function widestClearance(parts: readonly Part[], which: Passable): number {
  const reach: number[][] = parts.map(() => new Array<number>(HOLD_COUNT).fill(-Infinity));
  reach.unshift(new Array<number>(HOLD_COUNT).fill(Infinity));
  parts.forEach((part, k) => {
    let from = reach[k]!.slice();
    limited(from, part.limitsBefore);
    from = changed(from, part.changeBefore);
    const through = (passages: readonly BookPassage[] | undefined, count: number): void => {
      const last = parts[k + count - 1]!;
      let to = new Array<number>(HOLD_COUNT).fill(-Infinity);
      if (passages) {
        for (const passage of passages) {
          if (which === 'free' && passage.capped) continue;
          const value = min(from[passage.from]!, passageClearance(passage, part, last));
          if (value > to[passage.to]!) to[passage.to] = value;
        }
      } else to.fill(max(...from));
      to = changed(to, last.changeAfter);
      limited(to, last.limitsAfter);
      const next = reach[k + count]!;
      for (let hold = 0; hold < HOLD_COUNT; hold++) next[hold] = max(next[hold]!, to[hold]!);
    };
    if (part.floor) {
      const next = reach[k + 1]!;
      for (let hold = 0; hold < HOLD_COUNT; hold++) next[hold] = max(next[hold]!, from[hold]!);
    } else through(part.passages, 1);
    for (const { parts: count, passages } of part.joints ?? []) through(passages, count);
  });
  return max(...reach[parts.length]!);
}

function limited(reach: number[], limits: readonly PlaceLimit[]): void {
  for (const { by } of limits) {
    for (let hold = 0; hold < HOLD_COUNT; hold++) reach[hold] = min(reach[hold]!, by[hold]!);
  }
}

function changed(reach: number[], changes: readonly number[] | undefined): number[] {
  if (!changes) return reach;
  const next = reach.slice();
  for (let from = 0; from < HOLD_COUNT; from++) {
    for (let to = 0; to < HOLD_COUNT; to++) {
      const value = min(reach[from]!, changes[from * HOLD_COUNT + to]!);
      if (value > next[to]!) next[to] = value;
    }
  }
  return next;
}

// What a chain costs besides: a high raise or a rail, a change of pose, leaning; each counts as so many mm short.
// A piece is not carried on end farther than it has to be.
const COST = { capped: 0.1, change: 0.01, leaning: 0.005, onEnd: 0.011 } as const;
// Among equals the roomier: far too little to outweigh any of the above over a hundred steps.
const ROOMIER = 1e-8;

const ON_END = ALL_HOLDS.map((hold) => poseOfHold(hold) === 'on end');

/** A step of a chain through one part, or through several at once. */
interface PartStep extends ChainStep {
  readonly from: number;
  readonly part: number;
  readonly count: number;
}

interface Trace {
  cost: number;
  before: Trace | undefined;
  step: PartStep | undefined;
}

/**
 * Among the chains with the widest clearance, the one a person would choose: least short of the allowance at
 * all its steps together, then the fewest high raises and pose changes, then the roomiest.
 * @param allowance [mm a side]
 * @param widest the widest clearance [mm a side], as `widestClearance` gave it with the same `which`
 * @returns its steps, one a row; undefined when no chain is shown
 */
export function bestChain(
  parts: readonly Part[],
  which: Passable,
  widest: number,
  allowance: number,
): ChainStep[] | undefined {
  if (widest === -Infinity) return undefined;
  const reach: (Trace | undefined)[][] = parts.map(() =>
    new Array<Trace | undefined>(HOLD_COUNT).fill(undefined),
  );
  reach.unshift(ALL_HOLDS.map(() => ({ cost: 0, before: undefined, step: undefined })));
  const goOn = new Steps(parts, reach, widest, allowance);
  parts.forEach((part, k) => {
    if (part.floor) {
      for (let hold = 0; hold < HOLD_COUNT; hold++) goOn.through(k, 1, hold, hold, undefined, Infinity);
    } else if (part.passages) {
      for (const passage of part.passages) {
        if (which === 'free' && passage.capped) continue;
        const clearance = passageClearance(passage, part, part);
        if (clearance >= widest) goOn.through(k, 1, passage.from, passage.to, passage, clearance);
      }
    } else {
      for (let from = 0; from < HOLD_COUNT; from++) {
        for (let to = 0; to < HOLD_COUNT; to++) goOn.through(k, 1, from, to, undefined, Infinity);
      }
    }
    for (const { parts: count, passages } of part.joints ?? []) {
      for (const passage of passages) {
        if (which === 'free' && passage.capped) continue;
        const clearance = passageClearance(passage, part, parts[k + count - 1]!);
        if (clearance >= widest) goOn.through(k, count, passage.from, passage.to, passage, clearance);
      }
    }
  });
  let end: Trace | undefined;
  for (const trace of reach[parts.length]!) if (trace && (!end || trace.cost < end.cost)) end = trace;
  const steps: PartStep[] = [];
  for (let trace = end; trace?.step; trace = trace.before) steps.unshift(trace.step);
  return perRow(parts, steps);
}

class Steps {
  constructor(
    private readonly parts: readonly Part[],
    private readonly reach: (Trace | undefined)[][],
    private readonly widest: number,
    private readonly allowance: number,
  ) {}

  /** Goes on from where the chains stand by one passage, with the changes of pose beside it. */
  through(
    k: number,
    count: number,
    from: number,
    to: number,
    passage: BookPassage | undefined,
    clearance: number,
  ): void {
    const { widest, allowance } = this;
    const part = this.parts[k]!;
    const last = this.parts[k + count - 1]!;
    const next = this.reach[k + count]!;
    // What begins on a floor and passes more than it is turned over behind its last part as anything else.
    const onFloor = part.floor === true && count === 1;
    for (let enters = 0; enters < HOLD_COUNT; enters++) {
      const trace = this.reach[k]![enters];
      if (!trace) continue;
      const changeIn = changeClearance(part.changeBefore, enters, from);
      const limitIn = leastLimit(part.limitsBefore, enters);
      if (changeIn < widest || limitIn.value < widest) continue;
      for (let leaves = 0; leaves < HOLD_COUNT; leaves++) {
        const changeOut = changeClearance(onFloor ? undefined : last.changeAfter, to, leaves);
        const limitOut = leastLimit(last.limitsAfter, leaves);
        if (changeOut < widest || limitOut.value < widest) continue;
        const least = min(clearance, changeIn, changeOut, limitIn.value, limitOut.value);
        const cost =
          trace.cost +
          (passage === undefined ? 0 : price(least, allowance)) +
          (enters === from ? 0 : COST.change) +
          (leaves === to ? 0 : COST.change) +
          (passage?.capped ? COST.capped : 0) +
          (passage?.turningRoom ? COST.leaning : 0) +
          (passage && ON_END[from] ? COST.onEnd : 0);
        const known = next[leaves];
        if (known && known.cost <= cost) continue;
        const closest: ChainStep['closest'] =
          least === clearance
            ? passage && clearance < passage.clearance
              ? 'leaning'
              : passage?.limit
                ? 'limit'
                : 'passage'
            : least === changeIn
              ? 'change before'
              : least === changeOut
                ? 'change after'
                : 'limit';
        const limit =
          closest !== 'limit'
            ? undefined
            : least === clearance
              ? passage?.limit
              : least === limitOut.value
                ? limitOut.cause
                : limitIn.cause;
        const step = { part: k, count, enters, from, to, leaves, passage, clearance: least, closest, limit };
        next[leaves] = { cost, before: trace, step };
      }
    }
  }
}

interface LeastLimit {
  readonly value: number;
  readonly cause: LimitCause | undefined;
}

const NO_LIMIT: LeastLimit = { value: Infinity, cause: undefined };

/** Of limits beside a part the least for each hold: asked of every passage with every way of entering and leaving it. */
const LEAST = new WeakMap<readonly PlaceLimit[], readonly LeastLimit[]>();

function leastLimit(limits: readonly PlaceLimit[], hold: number): LeastLimit {
  if (limits.length === 0) return NO_LIMIT;
  let least = LEAST.get(limits);
  if (!least) LEAST.set(limits, (least = ALL_HOLDS.map((_, at) => leastOf(limits, at))));
  return least[hold]!;
}

function leastOf(limits: readonly PlaceLimit[], hold: number): LeastLimit {
  let value = Infinity;
  let cause: LimitCause | undefined;
  for (const limit of limits) {
    if (limit.by[hold]! < value) {
      value = limit.by[hold]!;
      ({ cause } = limit);
    }
  }
  return { value, cause };
}

/** What a step costs that leaves a clearance: what is short of the allowance, the roomier a hair less. */
const price = (clearance: number, allowance: number): number =>
  max(0, allowance - clearance) - ROOMIER * min(clearance, 1000);

const changeClearance = (table: readonly number[] | undefined, from: number, to: number): number =>
  from === to ? Infinity : table ? table[from * HOLD_COUNT + to]! : -Infinity;

/** The steps of the parts put together row by row: a row is as close as its closest part. */
function perRow(parts: readonly Part[], steps: readonly PartStep[]): ChainStep[] {
  const rows: ChainStep[] = [];
  for (const { part, count, ...step } of steps) {
    const first = parts[part]!.row;
    const last = parts[part + count - 1]!.row;
    for (let row = first; row <= last; row++) {
      const own: ChainStep =
        first === last
          ? step
          : {
              ...step,
              // Before and after a joint the pose is changed at its first row and its last.
              enters: row === first ? step.enters : row === last ? step.to : step.from,
              from: row === last && row !== first ? step.to : step.from,
              to: row === last ? step.to : step.from,
              leaves: row === last ? step.leaves : step.from,
              joint: [first, last],
            };
      const known = rows[row];
      rows[row] = known ? joined(known, own) : own;
    }
  }
  return rows;
}

/** Two steps at one row, one after the other. */
function joined(one: ChainStep, other: ChainStep): ChainStep {
  const closer =
    one.clearance < other.clearance
      ? one
      : // On the floor behind a flight the pose is changed after it.
        one.passage && !other.passage && other.closest === 'change before'
        ? { ...other, closest: 'change after' as const }
        : other;
  const passage = closer.passage ?? one.passage ?? other.passage;
  const inner = one.passage ?? other.passage;
  return {
    ...closer,
    passage,
    enters: one.enters,
    from: one.passage ? one.from : other.from,
    to: inner && other.passage ? other.to : one.to,
    leaves: other.leaves,
    // What it is closest in stands first.
    joint: closer.joint ?? one.joint ?? other.joint,
  };
}
