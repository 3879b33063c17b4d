import { kindOf, type StageName } from '../stages/kinds';
import type { StageRole } from '../stages/stageKind';
import { armOf, floorBetween, levelArm, ownLength, type Arm } from './arms';
import type { LimitCause } from './limitCause';
import { flightPlan } from './flightPlan';
import { pastDoorJoints } from './pastDoor';
import { turnSources } from './turnSources';
import { stairJoints, turnBeyond, type JointPlan } from './jointPlan';
import { shortFlightJoints, type JointBegins, type ShortFlightsPlan } from './shortFlights';
import { restToRest, type Rest } from './restToRest';
import { tapedBlock, type BlockToSolve } from './tapedBlock';
import type { PlacedMeasures } from '../stages/solvers';
import type { TurningSpace } from '../motion/turningSpace';
import { isLanding, widthLeaving, type Reading } from './reading';
import { needed, type BookStage } from './stageBook';
import type { TapeCase } from './tapeCase';
import { leastLength, straightLength, type WayLength } from './wayLength';
import { lastOf } from '../lists/ends';
import { entryAt } from '../lists/entryAt';
import { ceilingOverLanding } from '../geometry/landingModel';

/** Where the passages of a part come from: a stage of the book, and how far its arms hold. */
export interface PassageSource {
  readonly stage: BookStage;
  /** The way goes through the stage the other way round. */
  readonly reversed?: boolean;
  /** The piece must not reach farther than this before it and after it [mm]. */
  readonly upToBefore: number;
  /** [mm] */
  readonly upToAfter: number;
  readonly causeBefore?: LimitCause | undefined;
  readonly causeAfter?: LimitCause | undefined;
  /** Rows beside the stage that narrowed it. */
  readonly by?: readonly number[] | undefined;
  /** What it is solved as is not what it is: where it is closest is told of this. */
  readonly toldAs?: 'steps' | 'ramp';
  /** So much more than by itself it is raised above what is below it [mm]. */
  readonly raised?: number;
  /** Only what is held so that it need not lean counts. */
  readonly steadyOnly?: boolean;
  /** Only what goes round level or upright counts. */
  readonly levelOnly?: boolean;
  /** Passages that were searched suppose a flight so long [mm] on both sides. */
  readonly searchedUpTo?: number | undefined;
}

/** Several sources of which each must hold: what is not measured may be any of them. */
export type PassageSources = readonly PassageSource[];

/** A place that limits what is beside it. */
export interface PlannedLimit {
  /** [mm] the piece must lie in it wholly; or else ... */
  readonly length: number;
  /** ... fit so many mm across. */
  readonly orAcross?: number | undefined;
  readonly cause: LimitCause;
}

/** A piece laid along the pitch of a flight. */
export interface LaidOnPitch {
  readonly flight: BookStage;
}

/** One part of a route in one tape case, without a piece: see `Part`. */
export interface PartPlan {
  readonly row: number;
  /** Undefined where the row is not measured. */
  readonly sources: readonly PassageSources[] | undefined;
  readonly laid?: LaidOnPitch | undefined;
  /** A floor where only the pose is changed. */
  readonly floor?: TurningSpace | undefined;
  readonly isFloor?: boolean;
  /** The stage whose own space there is to change the pose. */
  readonly turning?: BookStage | undefined;
  /** The piece has to turn round in this room, wherever its doors are [mm]. */
  readonly disc?: number | undefined;
  readonly limitsBefore: readonly PlannedLimit[];
  readonly limitsAfter: readonly PlannedLimit[];
  readonly joints?: readonly {
    readonly parts: number;
    readonly sources: readonly PassageSources[];
    /** Row of a side door past which the piece is pushed, to come back. */
    readonly pastDoor?: number;
    /** Solved only where the rows by themselves leave too little. */
    readonly solved?: readonly JointPlan[];
    /** Rows solved as one space. */
    readonly level?: BlockToSolve;
    /** A landing with flights that may be shorter than the piece. */
    readonly short?: ShortFlightsPlan;
  }[];
}

/** Rows that are passed as one. */
export type PlannedJoint = NonNullable<PartPlan['joints']>[number];

/** What a plan is made with. */
export interface Planning {
  readonly reading: Reading;
  readonly tapeCase: TapeCase;
  /** [mm] */
  readonly tape: number;
  /** The row's stage; undefined where the row cannot be judged. */
  readonly stageAt: (i: number) => BookStage | undefined;
  readonly lookUp: (stage: StageName, measures: LooseMeasures) => BookStage;
}

/** Measures of which some may be undefined: those are not there. */
export type LooseMeasures = { readonly [Name in keyof PlacedMeasures]: PlacedMeasures[Name] | undefined };

/** Lays a reading of a route out in parts, in one tape case. */
export function routePlan(planning: Planning): PartPlan[] {
  const rows = planning.reading.map((row, i): PartPlan[] => {
    const measured = planning.stageAt(i);
    const stage =
      measured && row.measures !== row.row.measures
        ? planning.lookUp(measured.stage, row.measures)
        : measured;
    if (!stage) return [{ row: i, sources: undefined, limitsBefore: [], limitsAfter: [] }];
    const role = kindOf(stage.stage).role;
    if (role === 'flight') return flightPlan(planning, i, stage);
    const joints: PlannedJoint[] = [
      ...pastDoorJoints(planning, i),
      ...shortJoints(planning, i, 'landing'),
      ...(row.stage === 'door' ? shortJoints(planning, i + 2, 'door') : []),
      ...(role === 'turn' ? shortJoints(planning, i + 2, 'turn') : []),
    ];
    joints.push(...ontoFlight(planning, i));
    const alone = rowPlan(planning, i, stage, role);
    return [joints.length > 0 ? { ...alone, joints } : alone];
  });
  return withBlocks(planning, rows);
}

/** With the blocks from one place of rest to the next, each at the part with which it begins. */
function withBlocks(
  { reading, stageAt, tape, tapeCase }: Planning,
  rows: readonly (readonly PartPlan[])[],
): PartPlan[] {
  const extra = new Map<PartPlan, PlannedJoint[]>();
  for (const close of restToRest(reading)) {
    const { from, to, block, holds } = close;
    const [first, last] = [Math.max(0, from.row), Math.min(rows.length - 1, to.row)];
    if (!reading.slice(first, last + 1).every((_row, k) => stageAt(first + k))) continue;
    // A room that is passed through has its doors anywhere.
    const throughRoom =
      tapeCase === 'worst' && last + 1 < reading.length && lastOf(block.rows).stage === 'room';
    const level = tapeCase === 'worst' ? tapedBlock(close, tape) : { blocks: [block], holds, less: 0 };
    if (throughRoom || !level) continue;
    const begin = BEGINS[from.at];
    const all = rows.slice(first, last + 1).reduce((sum, parts) => sum + parts.length, 0);
    const left = entryAt(rows, last).length - (ENDS[to.at] ?? entryAt(rows, last).length);
    const begins = entryAt(entryAt(rows, first), begin);
    const joint = { parts: all - begin - left, sources: [], level };
    extra.set(begins, [...(extra.get(begins) ?? []), joint]);
  }
  return rows.flat().map((part) => {
    const more = extra.get(part);
    return more ? { ...part, joints: [...(part.joints ?? []), ...more] } : part;
  });
}

// A flight is the floor at its first end, its two halves, and the floor at its second end.
/** Part of its row with which a block begins that begins there. */
const BEGINS: Readonly<Record<Rest['at'], number>> = {
  row: 0,
  along: 2,
  'floor before': 0,
  'floor after': 3,
  behind: 0,
};
/** Parts of its row that a block has that ends there; all of them where it is not said. */
const ENDS: Readonly<Partial<Record<Rest['at'], number>>> = { along: 2, 'floor before': 1 };

/** Row i, what leads straight on from it to a flight, the floor at the flight's first end, and its first half. */
function ontoFlight(planning: Planning, i: number): PlannedJoint[] {
  const { reading, stageAt } = planning;
  const beside = reading[i + 1]?.stage === 'flight';
  const k = beside ? i + 1 : armOf(reading, i, 'after').end.row;
  const flight = k !== undefined && reading[k]?.stage === 'flight' ? stageAt(k) : undefined;
  if (k === undefined || !flight) return [];
  const bare = bareFlight(planning, flight);
  const beyond = beside ? undefined : turnBeyond(planning, k, 'before', bare);
  const solved = beside ? stairJoints(planning, k, 'before', bare) : beyond?.row === i ? beyond.plans : [];
  return solved.length > 0 ? [{ parts: k - i + 2, sources: [], solved }] : [];
}

/** A flight without its ends. */
export function bareFlight({ lookUp }: Planning, { measures }: BookStage): BookStage {
  const { width, height, rise, going, risers, lowWidth, lowHeight } = measures;
  return lookUp('flight', { width, height, rise, going, risers, lowWidth, lowHeight });
}

function rowPlan(
  planning: Planning,
  i: number,
  stage: BookStage,
  role: Exclude<StageRole, 'flight'>,
): PartPlan {
  const { reading, tapeCase } = planning;
  const row = entryAt(reading, i);
  const plain = { row: i, turning: turningStage(planning, i, stage), limitsBefore: [], limitsAfter: [] };
  switch (role) {
    case 'opening':
    case 'straight': {
      const limits = offsetLimits(planning, i);
      return { ...plain, sources: [[alone(stage)]], limitsBefore: limits };
    }
    case 'room': {
      const middle = i > 0 && i + 1 < reading.length;
      const { length = 0, width = 0 } = row.measures;
      const disc = middle && tapeCase === 'worst' ? Math.min(length, width) - planning.tape : undefined;
      return { ...plain, sources: [[alone(stage)]], disc };
    }
    case 'turn':
      return { ...plain, ...turnPlan(planning, i, stage) };
    case 'landing':
      return { ...plain, ...landingPlan(planning, i, stage) };
    case 'car':
      return { ...plain, ...liftPlan(planning, i, stage) };
  }
}

/** A stage by itself, its arms as long as it takes. */
export const alone = (stage: BookStage): PassageSource => ({
  stage,
  upToBefore: Infinity,
  upToAfter: Infinity,
});

/** A passage whose length is not measured has at best room to change the pose, and at worst none. */
function turningStage({ tapeCase, reading, lookUp, tape }: Planning, i: number, stage: BookStage): BookStage {
  const { measures } = stage;
  if (stage.stage !== 'passage') return stage;
  const own = ownLength(reading, i);
  if (measures.length !== undefined) {
    // The book takes the tape off.
    return own.known < measures.length ? lookUp('passage', { ...measures, length: own.known }) : stage;
  }
  const length = straightLength(own, tapeCase, tape);
  if (!(length > 0)) return stage;
  return lookUp('passage', { ...measures, length: Math.min(length, AMPLE) });
}

/** Longer than any piece [mm]. */
const AMPLE = 20000;

/** A turn on one floor with its arms as narrow and low as they are within the piece's reach. */
function turnPlan(
  planning: Planning,
  i: number,
  stage: BookStage,
): Partial<PartPlan> & Pick<PartPlan, 'sources'> {
  const less = planning.tapeCase === 'worst' ? planning.tape : 0;
  const before = levelArm(planning.reading, i, 'before', less);
  const after = levelArm(planning.reading, i, 'after', less);
  return {
    sources: turnSources(planning, i, stage, before, after).map((source) => [source]),
    limitsBefore: endLimits(planning, i, before, 'before'),
    limitsAfter: endLimits(planning, i, after, 'after'),
  };
}

/** What an arm's end leaves: the straight up to the next place where the way bends, or a room's depth beyond it. */
export function endLimits(
  { reading, tapeCase, tape }: Planning,
  i: number,
  arm: Arm,
  side: 'before' | 'after',
): PlannedLimit[] {
  const { kind, at, row } = arm.end;
  const rows: [number, number] = side === 'after' ? [i, row ?? i] : [row ?? i, i];
  if (kind === 'turn' || kind === 'stair') {
    return [
      {
        length: straightLength(at, tapeCase, tape),
        cause: { kind: 'straight', length: shownLength(at), rows },
      },
    ];
  }
  if (kind !== 'room' || row === undefined) return [];
  const { length = Infinity, width = Infinity } = entryAt(reading, row).measures;
  const depth = tapeCase === 'worst' ? Math.min(length, width) - tape : Math.max(length, width);
  // A straight that is not measured is nothing at worst.
  const room = leastLength({ ...at, open: false }, tapeCase === 'worst' ? tape : 0) + depth;
  return [
    {
      length: tapeCase !== 'worst' && at.open ? Infinity : room,
      cause: { kind: 'room depth', length: room, rows },
    },
  ];
}

const shownLength = (length: WayLength): number | undefined => (length.open ? undefined : length.known);

/** The joints of landing i with short flights beside it that begin with a given part; none where there is no landing. */
export function shortJoints(planning: Planning, i: number, begins: JointBegins): PlannedJoint[] {
  const { reading, stageAt } = planning;
  const stage = reading[i] && isLanding(reading[i].stage) ? stageAt(i) : undefined;
  if (!stage) return [];
  const { guarded, levelOnly } = asBesideFlights(planning, i, stage);
  // Where one flight stands back from the edge of the other, what goes round tilted has floor where it supposes treads.
  if (levelOnly) return [];
  return shortFlightJoints(planning, i, begins, guarded).map(({ parts, plan }) => ({
    parts,
    sources: [],
    short: plan,
  }));
}

/** A landing as narrow and low as the flights beside it. */
function landingPlan(
  planning: Planning,
  i: number,
  stage: BookStage,
): Pick<PartPlan, 'sources' | 'limitsBefore' | 'limitsAfter'> {
  const { reading } = planning;
  const { guarded, levelOnly, beside, searchedUpTo } = asBesideFlights(planning, i, stage);
  const reversed = entryAt(reading, i).way === 'down';
  const source = { stage: guarded, upToBefore: Infinity, upToAfter: Infinity, reversed };
  return {
    sources: [[{ ...source, levelOnly, searchedUpTo, by: beside }]],
    limitsBefore: [],
    limitsAfter: [],
  };
}

/** The landing of row i as the flights beside it leave it. */
function asBesideFlights(
  { reading, tapeCase, tape, lookUp }: Planning,
  i: number,
  stage: BookStage,
): {
  readonly guarded: BookStage;
  readonly levelOnly: boolean;
  readonly beside: readonly number[];
  readonly searchedUpTo: number | undefined;
} {
  const { measures: m } = stage;
  const { way } = entryAt(reading, i);
  const beside = (k: number) => (reading[k]?.stage === 'flight' ? reading[k] : undefined);
  const [lower, upper] = way === 'up' ? [beside(i - 1), beside(i + 1)] : [beside(i + 1), beside(i - 1)];
  const narrow = (own: number | undefined, ...others: (number | undefined)[]): number | undefined =>
    others.reduce<number | undefined>(
      (a, b) => (a === undefined || b === undefined ? a : Math.min(a, b)),
      own,
    );
  const height = narrow(m.height, lower?.measures.height, upper?.measures.height);
  const quarter = stage.stage === 'quarter landing';
  const [wide, wideOut] = [lower?.measures.width, upper?.measures.width];
  // A handrail at any height is there for what reaches over the flight as it goes round.
  const [clear, clearOut] = [clearWidth(lower?.measures), clearWidth(upper?.measures)];
  const width = quarter ? narrow(m.width, clear) : narrow(m.width, clear, clearOut);
  const widthOut = quarter ? narrow(m.widthOut, clearOut) : m.widthOut;
  const ceiling = ceilingOverLanding({ landingCeiling: m.ceiling, headroom: m.height });
  const guarded = lookUp(stage.stage, { ...m, width, widthOut, height, ceiling });
  // On a quarter landing a narrower flight may stand back from the edge of the other: what goes round tilted
  // has then level floor where it supposes treads.
  const standsBack = (own = 0, flight = own): boolean => own - flight > 2 * tape;
  const levelOnly =
    quarter && tapeCase === 'worst' && (standsBack(m.width, wide) || standsBack(m.widthOut, wideOut));
  const besideRows = [i - 1, i + 1].filter((k) => beside(k) !== undefined);
  const lines = [lower, upper].flatMap((flight) =>
    flight ? [lineLength(flight.measures, tapeCase, tape)] : [],
  );
  const searchedUpTo = lines.length > 0 ? Math.min(...lines) : undefined;
  return { guarded, levelOnly, beside: besideRows, searchedUpTo };
}

/** As narrow as a flight is anywhere up to its ceiling [mm]. */
function clearWidth(measures: LooseMeasures | undefined): number | undefined {
  const { width, lowWidth } = measures ?? {};
  return width === undefined || lowWidth === undefined ? width : Math.min(width, lowWidth);
}

/** From the first nosing of a flight to its last, along the pitch [mm]; without its risers: of two, or of many. */
export function lineLength(
  { risers, rise = 0, going = 0 }: LooseMeasures,
  tapeCase: TapeCase,
  tape: number,
): number {
  if (risers === undefined) return tapeCase === 'worst' ? Math.hypot(rise, going) : Infinity;
  const off = tapeCase === 'worst' ? -tape : tapeCase === 'best' ? tape : 0;
  return (risers - 1) * Math.hypot(rise, going) + off;
}

/** A lift, its floor before it as wide as the way there: in a corridor it is gone into straight. */
function liftPlan(
  planning: Planning,
  i: number,
  stage: BookStage,
): Pick<PartPlan, 'sources' | 'limitsBefore' | 'limitsAfter'> {
  const { reading, lookUp } = planning;
  const { measures: m } = stage;
  const arms = [armOf(reading, i, 'before'), armOf(reading, i, 'after')] as const;
  const beside = arms.flatMap(({ sections }) => sections.slice(0, 1));
  const own = needed(stage, 'width');
  const door = Math.min(own, ...beside.map(({ width }) => width));
  const guarded =
    beside.length > 0
      ? lookUp('lift', { ...m, width: door, widthOut: Math.min(needed(stage, 'widthOut'), own) })
      : stage;
  const straights = (arm: Arm, side: 'before' | 'after'): PlannedLimit[] =>
    endLimits(planning, i, arm, side).filter(({ cause }) => cause.kind === 'straight');
  return {
    sources: [[alone(guarded)]],
    limitsBefore: straights(arms[0], 'before'),
    limitsAfter: straights(arms[1], 'after'),
  };
}

/** Clear width of a row's way on one of its sides [mm]; undefined where it is no straight way. */
function armWidth(reading: Reading, k: number, side: 'before' | 'after'): number | undefined {
  const { row, stage, measures, into } = entryAt(reading, k);
  if (isLanding(stage) || stage === 'lift') return undefined;
  if (stage === 'side door') return into === (side === 'after') ? measures.widthOut : measures.width;
  return side === 'after' ? widthLeaving(row) : measures.width;
}

/**
 * A straight piece passes sections one after the other where they overlap by what it is wide, wherever the narrower
 * stand across the wider; or it is moved sideways in one that holds it wholly. Counted at the middle row.
 */
function offsetLimits({ reading, tapeCase, tape }: Planning, i: number): PlannedLimit[] {
  // At best openings face each other; a passage without a length has them facing each other always.
  if (tapeCase !== 'worst' || entryAt(reading, i).stage !== 'passage') return [];
  const widths = reading.map((_, k) => armWidth(reading, k, k < i ? 'after' : 'before'));
  const straightRow = (k: number): boolean => {
    const stage = reading[k]?.stage;
    return stage === 'door' || stage === 'passage';
  };
  const own = widths[i];
  if (own === undefined) return [];
  const limits: PlannedLimit[] = [];
  // From each narrower row before it to each narrower row after it, as far as the way is straight.
  let driftBefore = 0;
  let lengthBefore = leastLength(ownLength(reading, i), tape);
  if (ownLength(reading, i).open) return [];
  let lastBefore = own;
  for (let p = i - 1; p >= 0; p--) {
    const before = widths[p];
    if (before === undefined || entryAt(reading, p).stage === 'room') break;
    driftBefore += Math.abs(before - lastBefore) / 2;
    lastBefore = before;
    let drift = driftBefore;
    let last = own;
    let length = lengthBefore;
    for (let q = i + 1; q < reading.length; q++) {
      const after = widths[q];
      if (after === undefined || entryAt(reading, q).stage === 'room') break;
      drift += Math.abs(after - last) / 2;
      last = after;
      const overlap = (before + after) / 2 - drift;
      if (overlap < Math.min(before, after, own)) {
        limits.push({
          length,
          orAcross: overlap - tape * (q - p + 1),
          cause: { kind: 'offset', length: length + tape, rows: [p, q] },
        });
      }
      if (!straightRow(q)) break;
      length += leastLength(ownLength(reading, q), tape);
    }
    if (!straightRow(p)) break;
    lengthBefore +=
      leastLength(ownLength(reading, p), tape) +
      leastLength(floorBetween(entryAt(reading, p), entryAt(reading, p + 1)), tape);
  }
  return limits;
}
