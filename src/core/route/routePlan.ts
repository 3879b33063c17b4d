import { lastOf } from '../lists/ends';
import { entryAt } from '../lists/entryAt';
import { kindOf } from '../stages/kinds';
import type { StageRole } from '../stages/stageKind';
import { endLimits } from './armLimits';
import { armOf, floorBetween, levelArm, ownLength, type Arm } from './arms';
import { flightPlan } from './flightPlan';
import { stairJoints, turnBeyond } from './jointPlan';
import { landingBesideFlights, shortJoints } from './landingBesideFlights';
import { alone, type PartPlan, type PlannedJoint, type PlannedLimit } from './partPlan';
import { pastDoorJoints } from './pastDoor';
import { bareFlight, type Planning } from './planning';
import { isLanding, widthLeaving, type Reading } from './reading';
import { restToRest, type Rest } from './restToRest';
import { needed, type BookStage } from './stageBook';
import { tapedBlock } from './tapedBlock';
import { turnSources } from './turnSources';
import { leastLength, straightLength } from './wayLength';

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
      ...(row.stage === 'door'
        ? [...shortJoints(planning, i + 2, 'door'), ...shortJoints(planning, i + 3, 'door before a passage')]
        : []),
      ...(role === 'turn' ? shortJoints(planning, i + 2, 'turn') : []),
    ];
    joints.push(...ontoFlight(planning, i));
    const plan = rowPlan(planning, i, stage, role);
    return [joints.length > 0 ? { ...plan, joints } : plan];
  });
  return planning.close === 'by themselves' ? rows.flat() : withBlocks(planning, rows);
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
    if (throughRoom) continue;
    const rests = { begins: { row: from.row, at: from.at }, ends: { row: to.row, at: to.at } };
    const toSolve =
      tapeCase === 'worst' ? tapedBlock(close, tape) : { blocks: [block], holds, less: 0, rests };
    if (!toSolve) continue;
    const begin = BEGINS[from.at];
    const all = rows.slice(first, last + 1).reduce((sum, parts) => sum + parts.length, 0);
    const left = entryAt(rows, last).length - (ENDS[to.at] ?? entryAt(rows, last).length);
    const begins = entryAt(entryAt(rows, first), begin);
    const joint = { parts: all - begin - left, sources: [], block: toSolve };
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
  // What lies between a turn and its flight belongs to the turn's row.
  if (!beside && armOf(reading, k, 'before').end.row !== i) return [];
  const bare = bareFlight(planning, flight);
  const solved = beside
    ? stairJoints(planning, k, 'before', bare)
    : (turnBeyond(planning, k, 'before', bare)?.plans ?? []);
  return solved.length > 0 ? [{ parts: k - i + 2, sources: [], solved }] : [];
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
      return { ...plain, ...landingBesideFlights(planning, i, stage) };
    case 'car':
      return { ...plain, ...liftPlan(planning, i, stage) };
  }
}

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
