import type { PieceSize } from '../measures/piece';
import { ALL_HELD, heldSizes } from '../motion/held';
import type { PreparedRoute } from './preparedRoute';
import { HELD_COUNT, type BookPiece, type StageBook, type TurningCase, type Way } from './stageBook';
import type { TapeCase } from './tapeCase';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { max, min } = Math;

/** One step of a route with all that can be done with one piece there, in one tape case. */
export interface Layer {
  /** Undefined where the step is not measured: then every way is taken to be open. */
  readonly ways: readonly Way[] | undefined;
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

/** What a step of a chain does with the piece. Ways of being held are indices into ALL_HELD. */
export interface ChainStep {
  readonly enters: number;
  /** Held so through the stage: before and after it. */
  readonly from: number;
  readonly to: number;
  readonly leaves: number;
  /** Undefined where the step is not measured. */
  readonly way: Way | undefined;
  /** Clearance of the step [mm a side]: of the way, the changes of pose and the straights beside it. */
  readonly clearance: number;
  readonly closest:
    'way' | 'change before' | 'change after' | 'straight before' | 'straight after' | 'leaning';
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
      ways: stage && book.caseOf(stage, piece, tapeCase, roomToLean).ways,
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
): number[] => ALL_HELD.map((held) => (length + shift * tapes - heldSizes(size, held).along) / 2);

/** Clearance of a way with the room it needs to lean. */
function wayClearance(way: Way, layer: Layer): number {
  if (!way.turningRoom) return way.clearance;
  return min(
    way.clearance,
    leaningRoomAt(layer.leanBefore, way.from),
    leaningRoomAt(layer.leanAfter, way.to),
  );
}

const leaningRoomAt = (lean: readonly number[] | undefined | null, held: number): number =>
  lean === undefined ? Infinity : lean === null ? -Infinity : lean[held]!;

/**
 * The greatest clearance with which some chain of poses passes every step: the widest path. -Infinity where
 * no chain is shown.
 * @param freeOnly leave out the ways that are at best tight
 */
export function widestClearance(layers: readonly Layer[], freeOnly: boolean): number {
  let reach: number[] = new Array<number>(HELD_COUNT).fill(Infinity);
  for (const layer of layers) {
    const { ways, turning, straightBefore, straightAfter } = layer;
    const comes = layer.reachBefore === undefined ? reach : reach.slice();
    limit(reach, straightBefore);
    if (turning) reach = changed(reach, turning.before);
    let onward: number[] | undefined;
    if (ways) {
      const next = new Array<number>(HELD_COUNT).fill(-Infinity);
      for (const way of ways) {
        if (freeOnly && way.capped) continue;
        const { from, to } = way;
        let before = reach[from]!;
        if (layer.reachBefore !== undefined && way.onLanding) {
          before = max(before, min(comes[from]!, straightIn(layer, from, way)));
        }
        const value = min(before, wayClearance(way, layer));
        if (value > next[to]!) next[to] = value;
        if (layer.reachAfter !== undefined && way.onLanding) {
          onward ??= new Array<number>(HELD_COUNT).fill(-Infinity);
          onward[to] = max(onward[to]!, min(value, straightOut(layer, to, way)));
        }
      }
      reach = next;
    } else {
      reach.fill(max(...reach));
    }
    if (turning) reach = changed(reach, turning.after);
    limit(reach, straightAfter);
    if (onward) for (let held = 0; held < HELD_COUNT; held++) reach[held] = max(reach[held]!, onward[held]!);
  }
  return max(...reach);
}

/** Clearance in the straight before a way and after it; what of the piece stands on a landing needs none of it. */
function straightIn(layer: Layer, held: number, way: Way | undefined): number {
  if (!layer.straightBefore) return Infinity;
  const whole = layer.straightBefore[held]!;
  if (layer.reachBefore === undefined || !way?.onLanding) return whole;
  return max(whole, besideLanding(layer, held, layer.reachBefore + way.onLanding.before));
}

function straightOut(layer: Layer, held: number, way: Way | undefined): number {
  if (!layer.straightAfter) return Infinity;
  const whole = layer.straightAfter[held]!;
  if (layer.reachAfter === undefined || !way?.onLanding) return whole;
  return max(whole, besideLanding(layer, held, layer.reachAfter + way.onLanding.after));
}

const besideLanding = ({ size }: Layer, held: number, room: number): number =>
  (room - heldSizes(size, ALL_HELD[held]!).along) / 2;

function limit(reach: number[], by: readonly number[] | undefined): void {
  if (!by) return;
  for (let held = 0; held < HELD_COUNT; held++) reach[held] = min(reach[held]!, by[held]!);
}

function changed(reach: readonly number[], changes: readonly number[]): number[] {
  const next = reach.slice();
  for (let from = 0; from < HELD_COUNT; from++) {
    for (let to = 0; to < HELD_COUNT; to++) {
      const value = min(reach[from]!, changes[from * HELD_COUNT + to]!);
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
  let reach: (Trace | undefined)[] = ALL_HELD.map(() => ({ cost: 0, before: undefined, step: undefined }));

  for (const layer of layers) {
    const next: (Trace | undefined)[] = new Array<Trace | undefined>(HELD_COUNT).fill(undefined);
    if (layer.ways) {
      for (const way of layer.ways) {
        if (freeOnly && way.capped) continue;
        const clearance = wayClearance(way, layer);
        if (clearance >= widest)
          goOn(reach, next, layer, way.from, way.to, way, clearance, widest, allowance);
      }
    } else {
      for (let from = 0; from < HELD_COUNT; from++) {
        for (let to = 0; to < HELD_COUNT; to++) {
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
  way: Way | undefined,
  clearance: number,
  widest: number,
  allowance: number,
): void {
  const { turning } = layer;
  for (let enters = 0; enters < HELD_COUNT; enters++) {
    const trace = reach[enters];
    const changeIn = changeClearance(turning?.before, enters, from);
    // Changing its pose on the landing it stands there wholly, come from the straight as it was.
    const roomIn = straightIn(layer, enters, enters === from ? way : undefined);
    if (!trace || changeIn < widest || roomIn < widest) continue;
    for (let leaves = 0; leaves < HELD_COUNT; leaves++) {
      const changeOut = changeClearance(turning?.after, to, leaves);
      const roomOut = straightOut(layer, leaves, leaves === to ? way : undefined);
      if (changeOut < widest || roomOut < widest) continue;
      const least = min(clearance, changeIn, changeOut, roomIn, roomOut);
      const cost =
        trace.cost +
        (way === undefined ? 0 : price(least, allowance)) +
        (enters === from ? 0 : COST.change) +
        (leaves === to ? 0 : COST.change) +
        (way?.capped ? COST.capped : 0) +
        (way?.turningRoom ? COST.leaning : 0);
      const known = next[leaves];
      if (known && known.cost <= cost) continue;
      const closest: ChainStep['closest'] =
        least === clearance
          ? way && clearance < way.clearance
            ? 'leaning'
            : 'way'
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
        step: { enters, from, to, leaves, way, clearance: least, closest },
      };
    }
  }
}

/** What a step costs that leaves a clearance: what is short of the allowance, the roomier a hair less. */
const price = (clearance: number, allowance: number): number =>
  max(0, allowance - clearance) - ROOMIER * min(clearance, 1000);

const changeClearance = (table: readonly number[] | undefined, from: number, to: number): number =>
  from === to ? Infinity : table ? table[from * HELD_COUNT + to]! : -Infinity;
