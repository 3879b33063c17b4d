import type { PieceSize } from '../measures/piece';
import { ALL_HOLDS, sizesOfHold } from '../motion/hold';
import type { PreparedRoute } from './preparedRoute';
import { HOLD_COUNT, type BookPiece, type StageBook, type TurningCase, type BookPassage } from './stageBook';
import type { TapeCase } from './tapeCase';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { max, min } = Math;

/** One step of a route with all that can be done with one piece there, in one tape case. */
export interface Layer {
  /** Undefined where the step is not measured: then every way is taken to be open. */
  readonly passages: readonly BookPassage[] | undefined;
  readonly turning: TurningCase | null;
  /** Room to lean before and after, by way of being held; undefined: as much as it takes; null: none. */
  readonly leanBefore: readonly number[] | undefined | null;
  readonly leanAfter: readonly number[] | undefined | null;
  /** Clearance in the straight before the step and after it, by way of being held. */
  readonly straightBefore: readonly number[] | undefined;
  readonly straightAfter: readonly number[] | undefined;
  /** That straight is a flight solved from level to level: its plan length [mm], the tape taken; what of the
   * piece stands on a landing needs none of it. */
  readonly reachBefore: number | undefined;
  readonly reachAfter: number | undefined;
  readonly size: PieceSize;
}

/** What a step of a chain does with the piece. Ways of being held are indices into ALL_HOLDS. */
export interface ChainStep {
  readonly enters: number;
  /** Held so through the stage: before and after it. */
  readonly from: number;
  readonly to: number;
  readonly leaves: number;
  /** Undefined where the step is not measured. */
  readonly passage: BookPassage | undefined;
  /** Clearance of the step [mm a side]: of the way, the changes of pose and the straights beside it. */
  readonly clearance: number;
  readonly closest:
    'passage' | 'change before' | 'change after' | 'straight before' | 'straight after' | 'leaning';
}

/** Lays the steps of a route out for one piece in one tape case. */
export function routeLayers(
  route: PreparedRoute,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
): Layer[] {
  const { steps } = route;
  const size = piece.taped[tapeCase];
  const shift = tapeCase === 'worst' ? -book.tape : tapeCase === 'best' ? book.tape : 0;
  const turnings: (TurningCase | null | undefined)[] = [];
  for (const { stage } of steps) turnings.push(stage && book.turningOf(stage, piece, tapeCase));
  const layers: Layer[] = [];
  for (let i = 0; i < steps.length; i++) {
    const { stage, straight, straightBefore } = steps[i]!;
    // Outdoors before the first step there is room for anything.
    const before = i === 0 ? undefined : turnings[i - 1];
    const after = i + 1 === steps.length ? null : turnings[i + 1];
    const roomToLean = before !== null && after !== null;
    layers.push({
      passages: stage && book.caseOf(stage, piece, tapeCase, roomToLean).passages,
      turning: turnings[i] ?? null,
      leanBefore: before && before.leanAfter,
      leanAfter: after && after.leanBefore,
      straightBefore: straightBefore && straightRoom(straightBefore, shift, size),
      straightAfter: straight && straightRoom(straight, shift, size),
      reachBefore: straightBefore?.reach && straightBefore.reach + shift,
      reachAfter: straight?.reach && straight.reach + shift,
      size,
    });
  }
  return layers;
}

/** Clearance in a straight by way of being held, each of the tapes it is made of off by `shift` [mm]. */
const straightRoom = (
  { length, tapes }: { readonly length: number; readonly tapes: number },
  shift: number,
  size: PieceSize,
): number[] => ALL_HOLDS.map((hold) => (length + shift * tapes - sizesOfHold(size, hold).along) / 2);

/** Clearance of a way with the room it needs to lean. */
function passageClearance(passage: BookPassage, layer: Layer): number {
  if (!passage.turningRoom) return passage.clearance;
  return min(
    passage.clearance,
    leaningRoomAt(layer.leanBefore, passage.from),
    leaningRoomAt(layer.leanAfter, passage.to),
  );
}

const leaningRoomAt = (lean: readonly number[] | undefined | null, hold: number): number =>
  lean === undefined ? Infinity : lean === null ? -Infinity : lean[hold]!;

/**
 * The greatest clearance with which some chain of poses passes every step: the widest path. -Infinity where
 * no chain is shown.
 * @param freeOnly leave out the ways that are at best tight
 */
export function widestClearance(layers: readonly Layer[], freeOnly: boolean): number {
  let reach: number[] = new Array<number>(HOLD_COUNT).fill(Infinity);
  for (const layer of layers) {
    const { passages, turning, straightBefore, straightAfter } = layer;
    const comes = layer.reachBefore === undefined ? reach : reach.slice();
    limit(reach, straightBefore);
    if (turning) reach = changed(reach, turning.before);
    let onward: number[] | undefined;
    if (passages) {
      const next = new Array<number>(HOLD_COUNT).fill(-Infinity);
      for (const passage of passages) {
        if (freeOnly && passage.capped) continue;
        const { from, to } = passage;
        let before = reach[from]!;
        if (layer.reachBefore !== undefined && passage.onLanding) {
          before = max(before, min(comes[from]!, straightIn(layer, from, passage)));
        }
        const value = min(before, passageClearance(passage, layer));
        if (value > next[to]!) next[to] = value;
        if (layer.reachAfter !== undefined && passage.onLanding) {
          onward ??= new Array<number>(HOLD_COUNT).fill(-Infinity);
          onward[to] = max(onward[to]!, min(value, straightOut(layer, to, passage)));
        }
      }
      reach = next;
    } else {
      reach.fill(max(...reach));
    }
    if (turning) reach = changed(reach, turning.after);
    limit(reach, straightAfter);
    if (onward) for (let hold = 0; hold < HOLD_COUNT; hold++) reach[hold] = max(reach[hold]!, onward[hold]!);
  }
  return max(...reach);
}

/** Clearance in the straight before a way and after it; what of the piece stands on a landing needs none of it. */
function straightIn(layer: Layer, hold: number, passage: BookPassage | undefined): number {
  if (!layer.straightBefore) return Infinity;
  const whole = layer.straightBefore[hold]!;
  if (layer.reachBefore === undefined || !passage?.onLanding) return whole;
  return max(whole, besideLanding(layer, hold, layer.reachBefore + passage.onLanding.before));
}

function straightOut(layer: Layer, hold: number, passage: BookPassage | undefined): number {
  if (!layer.straightAfter) return Infinity;
  const whole = layer.straightAfter[hold]!;
  if (layer.reachAfter === undefined || !passage?.onLanding) return whole;
  return max(whole, besideLanding(layer, hold, layer.reachAfter + passage.onLanding.after));
}

const besideLanding = ({ size }: Layer, hold: number, room: number): number =>
  (room - sizesOfHold(size, ALL_HOLDS[hold]!).along) / 2;

function limit(reach: number[], by: readonly number[] | undefined): void {
  if (!by) return;
  for (let hold = 0; hold < HOLD_COUNT; hold++) reach[hold] = min(reach[hold]!, by[hold]!);
}

function changed(reach: readonly number[], changes: readonly number[]): number[] {
  const next = reach.slice();
  for (let from = 0; from < HOLD_COUNT; from++) {
    for (let to = 0; to < HOLD_COUNT; to++) {
      const value = min(reach[from]!, changes[from * HOLD_COUNT + to]!);
      if (value > next[to]!) next[to] = value;
    }
  }
  return next;
}

// What a chain costs besides: a high lift or a rail, a change of pose, leaning; each counts as so many mm short.
const COST = { capped: 0.1, change: 0.01, leaning: 0.005 } as const;
// Among equals the roomier: far too little to outweigh any of the above over a hundred steps.
const ROOMIER = 1e-8;

interface Trace {
  cost: number;
  before: Trace | undefined;
  step: ChainStep | undefined;
}

/**
 * Among the chains with the widest clearance, the one a person would choose: least short of the allowance at
 * all its steps together, then the fewest lifts and pose changes, then the roomiest.
 * @param widest the widest clearance, as `widestClearance` gave it with the same `freeOnly`
 * @returns its steps; undefined when no chain is shown
 */
export function bestChain(
  layers: readonly Layer[],
  freeOnly: boolean,
  widest: number,
  allowance: number,
): ChainStep[] | undefined {
  if (widest === -Infinity) return undefined;
  let reach: (Trace | undefined)[] = ALL_HOLDS.map(() => ({ cost: 0, before: undefined, step: undefined }));

  for (const layer of layers) {
    const next: (Trace | undefined)[] = new Array<Trace | undefined>(HOLD_COUNT).fill(undefined);
    if (layer.passages) {
      for (const passage of layer.passages) {
        if (freeOnly && passage.capped) continue;
        const clearance = passageClearance(passage, layer);
        if (clearance >= widest)
          goOn(reach, next, layer, passage.from, passage.to, passage, clearance, widest, allowance);
      }
    } else {
      for (let from = 0; from < HOLD_COUNT; from++) {
        for (let to = 0; to < HOLD_COUNT; to++) {
          goOn(reach, next, layer, from, to, undefined, Infinity, widest, allowance);
        }
      }
    }
    reach = next;
  }
  let end: Trace | undefined;
  for (const trace of reach) if (trace && (!end || trace.cost < end.cost)) end = trace;
  const steps: ChainStep[] = [];
  for (let trace = end; trace?.step; trace = trace.before) steps.unshift(trace.step);
  return steps;
}

/** Goes on from where the chains stand by one way through a step, with the changes of pose beside it. */
function goOn(
  reach: readonly (Trace | undefined)[],
  next: (Trace | undefined)[],
  layer: Layer,
  from: number,
  to: number,
  passage: BookPassage | undefined,
  clearance: number,
  widest: number,
  allowance: number,
): void {
  const { turning } = layer;
  for (let enters = 0; enters < HOLD_COUNT; enters++) {
    const trace = reach[enters];
    const changeIn = changeClearance(turning?.before, enters, from);
    // Changing its pose on the landing it stands there wholly, come from the straight as it was.
    const roomIn = straightIn(layer, enters, enters === from ? passage : undefined);
    if (!trace || changeIn < widest || roomIn < widest) continue;
    for (let leaves = 0; leaves < HOLD_COUNT; leaves++) {
      const changeOut = changeClearance(turning?.after, to, leaves);
      const roomOut = straightOut(layer, leaves, leaves === to ? passage : undefined);
      if (changeOut < widest || roomOut < widest) continue;
      const least = min(clearance, changeIn, changeOut, roomIn, roomOut);
      const cost =
        trace.cost +
        (passage === undefined ? 0 : price(least, allowance)) +
        (enters === from ? 0 : COST.change) +
        (leaves === to ? 0 : COST.change) +
        (passage?.capped ? COST.capped : 0) +
        (passage?.turningRoom ? COST.leaning : 0);
      const known = next[leaves];
      if (known && known.cost <= cost) continue;
      const closest: ChainStep['closest'] =
        least === clearance
          ? passage && clearance < passage.clearance
            ? 'leaning'
            : 'passage'
          : least === changeIn
            ? 'change before'
            : least === changeOut
              ? 'change after'
              : least === roomOut
                ? 'straight after'
                : 'straight before';
      next[leaves] = {
        cost,
        before: trace,
        step: { enters, from, to, leaves, passage, clearance: least, closest },
      };
    }
  }
}

/** What a step costs that leaves a clearance: what is short of the allowance, the roomier a hair less. */
const price = (clearance: number, allowance: number): number =>
  max(0, allowance - clearance) - ROOMIER * min(clearance, 1000);

const changeClearance = (table: readonly number[] | undefined, from: number, to: number): number =>
  from === to ? Infinity : table ? table[from * HOLD_COUNT + to]! : -Infinity;
