import type { PieceSize } from '../measures/piece';
import { ALL_HOLDS, holdAt, poseOfHold, sizesOfHold } from '../motion/hold';
import { clearSquareToPitch } from '../stages/flight/flight';
import type { Part, PlaceLimit, RoomBeside } from './chain';
import type { LimitCause } from './limitCause';
import { diagonalClearance, poseChanges } from './poseChange';
import { blockPassages, jointPassages, leftAtRest } from './jointPassages';
import { shortFlightWays } from './shortFlightWays';
import type { PartPlan, PassageSource, PassageSources, PlannedJoint, PlannedLimit } from './partPlan';
import { isRound, type BlockToSolve } from './tapedBlock';
import {
  raisedBy,
  shownInBoth,
  turningRoom,
  type BookPassage,
  type BookPiece,
  type BookStage,
  type StageBook,
} from './stageBook';
import { tapedMeasures, type TapeCase } from './tapeCase';
import { shownGiven } from '../measures/shown';
import { closestAt, closestAtFigure, NOWHERE_CLOSEST } from '../motion/closest';

/**
 * The parts of a route for one piece, in the tape case for which they were planned.
 * @param joints solve what stands close together as one, too: takes longer; with less than `enough` clearance
 *   [mm a side] it need not be looked at to the end
 */
export function routeParts(
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  joints?: JointsAsked,
): Part[] {
  const alone = partsAlone(plans, piece, book, tapeCase, Infinity);
  return joints ? withJoints(alone, plans, piece, book, tapeCase, joints) : alone;
}

/**
 * The parts of a route by themselves: what stands close is not solved together.
 * @param enough clearance [mm a side] above which more is of no interest in the worst case
 */
export function partsAlone(
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): Part[] {
  const size = piece.taped[tapeCase];
  const places = plans.map((plan) => placeOf(plan, piece, book, tapeCase));
  return plans.map((plan, k): Part => {
    const own = places[k];
    return {
      row: plan.row,
      floor: plan.isFloor === true,
      passages: plan.isFloor
        ? []
        : plan.sources && passagesOf(plan, plan.sources, piece, book, tapeCase, enough),
      changeBefore: own?.before,
      changeAfter: own?.after,
      // Outdoors, before the first part and after the last, there is room for anything.
      leanBefore: k === 0 ? undefined : (places[k - 1]?.roomAfter ?? null),
      leanAfter: k + 1 === plans.length ? undefined : (places[k + 1]?.roomBefore ?? null),
      limitsBefore: plan.limitsBefore.map((limit) => limitFor(limit, size)),
      limitsAfter: plan.limitsAfter.map((limit) => limitFor(limit, size)),
      joints: plan.joints?.map(({ parts, sources, pastDoor }) => ({
        parts,
        passages: sources
          .flatMap((all) => fromSources(all, piece, book, tapeCase, enough))
          .map((passage) => (pastDoor === undefined ? passage : { ...passage, pastDoor })),
      })),
    };
  });
}

/**
 * The same parts with what stands close solved together, too.
 * @param alone the parts of these plans by themselves, or with joints to which blocks are added
 */
export function withJoints(
  alone: readonly Part[],
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  joints: Exclude<JointsAsked, undefined>,
): Part[] {
  return withMore(alone, plans, (joint) => {
    if (joints !== 'supposed') return solvedPassages(joint, piece, book, tapeCase, joints.enough);
    return isSolved(joint) || (joint.block?.blocks.length ?? 0) > 0 ? ANY_WAY : [];
  });
}

/** Whether there is anything to solve in rows that stand close, other than as a block. */
export const isSolved = ({ solved = [], short }: PlannedJoint): boolean =>
  solved.length > 0 || short !== undefined;

/**
 * The ways through rows that stand close, other than as a block.
 * @param enough with less clearance [mm a side] they need not be looked at to the end
 */
export const solvedPassages = (
  { solved = [], short }: PlannedJoint,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): readonly BookPassage[] => [
  ...solved.flatMap((joint) => jointPassages(joint, piece, book, tapeCase, enough)),
  ...(short ? shortFlightWays(short, piece, book, tapeCase, enough) : []),
];

/** The same parts with blocks of rows, each as far as it is asked for. */
export const withBlocks = (
  others: readonly Part[],
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  blocks: BlocksAsked,
): Part[] =>
  withMore(others, plans, ({ block }) => (block ? ofBlock(block, piece, book, tapeCase, blocks) : []));

/**
 * The same parts, in the worst case, with blocks that are not looked at there supposed to be passed in any way, so that the
 * rest of the route is told with the tape against it.
 */
export const withBlocksNotLookedAt = (parts: readonly Part[], plans: readonly PartPlan[]): Part[] =>
  withMore(parts, plans, ({ block }) => (block?.blocks.length === 0 ? ANY_WAY_TIGHT : []));

/** Parts with further passages through their joints; those of a part that gets none stay the same. */
export const withMore = (
  parts: readonly Part[],
  plans: readonly PartPlan[],
  more: (joint: PlannedJoint) => readonly BookPassage[],
): Part[] =>
  parts.map((part, k) => {
    const { joints } = part;
    if (!joints || joints.length === 0) return part;
    const planned = plans[k]?.joints ?? [];
    return {
      ...part,
      joints: joints.map((joint, n) => {
        const plan = planned[n];
        const found = plan ? more(plan) : [];
        return found.length === 0 ? joint : { ...joint, passages: [...joint.passages, ...found] };
      }),
    };
  });

/** Whether what stands close is solved together, or supposed to pass in any way: more it cannot leave. */
export type JointsAsked =
  | {
      /** With less clearance [mm a side] it need not be looked at to the end. */
      readonly enough: number;
    }
  | 'supposed'
  | undefined;

/**
 * Blocks are solved by need, each as it is begun in the holds that are listed for it; what else there is of them is left
 * out, or supposed to pass in any way.
 */
export interface BlocksAsked {
  readonly solved: ReadonlyMap<BlockToSolve, ReadonlySet<number>>;
  readonly others: 'left out' | 'supposed';
  /** Clearances [mm a side] between which they are looked for. */
  readonly least: number;
  readonly enough: number;
  /** The clearance that the firm insists on [mm a side]. */
  readonly allowance: number;
  /** What a block is supposed to let pass, once it has been asked for. */
  readonly supposed: Map<BlockToSolve, readonly BookPassage[]>;
}

function ofBlock(
  block: BlockToSolve,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  asked: BlocksAsked,
): readonly BookPassage[] {
  const left = leftAtRest(block, piece.taped[tapeCase]);
  if (block.blocks.length === 0 || left < asked.least) return [];
  const holds = asked.solved.get(block);
  const found = holds
    ? [...holds].flatMap((from) => blockPassages(block, piece, book, tapeCase, { ...asked, from }))
    : [];
  if (asked.others === 'left out') return found;
  let supposed = asked.supposed.get(block);
  if (!supposed)
    asked.supposed.set(block, (supposed = supposedOf(block, Math.min(left, hopedOf(block, asked)))));
  return holds ? [...found, ...supposed.filter(({ from }) => !holds.has(from))] : supposed;
}

/** The block that is supposed to be passed so. */
const SUPPOSES = new WeakMap<BookPassage, BlockToSolve>();

/** The block that a passage supposes to pass; undefined where it is a real one. */
export const supposedIn = (passage: BookPassage): BlockToSolve | undefined => SUPPOSES.get(passage);

/** Round a turn of the stair one way that leaves the allowance is enough: to solve them all for the widest takes too long. */
const hopedOf = ({ blocks: [block] }: BlockToSolve, { least, enough, allowance }: BlocksAsked): number =>
  block && isRound(block) ? Math.min(enough, Math.max(least, allowance)) : enough;

function supposedOf(block: BlockToSolve, clearance: number): BookPassage[] {
  const any = anyWay(clearance);
  for (const passage of any) SUPPOSES.set(passage, block);
  return any;
}

/** Passages between any two ways of being held, each with that clearance [mm a side]. */
export const anyWay = (clearance: number): BookPassage[] => ANY_WAY.map((any) => ({ ...any, clearance }));

const ANY_WAY: readonly BookPassage[] = ALL_HOLDS.flatMap((_, from) =>
  ALL_HOLDS.map((pose, to): BookPassage => ({
    from,
    to,
    clearance: Infinity,
    turningRoom: false,
    capped: false,
    answer: { clearance: Infinity, atMost: Infinity, pose: poseOfHold(pose), critical: NOWHERE_CLOSEST },
    onLanding: undefined,
  })),
);

const ANY_WAY_TIGHT: readonly BookPassage[] = ANY_WAY.map((passage) => ({ ...passage, capped: true }));

/** What room a part has to change the pose. */
function placeOf(
  plan: PartPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
):
  | {
      readonly before: readonly number[];
      readonly after: readonly number[] | undefined;
      readonly roomBefore: Exclude<RoomBeside, undefined>;
      readonly roomAfter: Exclude<RoomBeside, undefined>;
    }
  | undefined {
  if (plan.isFloor) {
    if (!plan.floor) return undefined;
    const size = piece.taped[tapeCase];
    const room = turningRoom(plan.floor, size);
    return { before: poseChanges(plan.floor, size), after: undefined, roomBefore: room, roomAfter: room };
  }
  return (plan.turning && book.turningOf(plan.turning, piece, tapeCase)) ?? undefined;
}

function limitFor({ length, orAcross, cause }: PlannedLimit, size: PieceSize): PlaceLimit {
  const by = ALL_HOLDS.map((hold) => {
    const { along, across } = sizesOfHold(size, hold);
    const within = (length - along) / 2;
    return orAcross === undefined ? within : Math.max(within, (orAcross - across) / 2);
  });
  return { by, cause };
}

function passagesOf(
  plan: PartPlan,
  sources: readonly PassageSources[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const size = piece.taped[tapeCase];
  const laid = plan.laid ? laidOnPitch(plan.laid.flight, size, book.tape, tapeCase) : [];
  const passages = [...laid, ...sources.flatMap((all) => fromSources(all, piece, book, tapeCase, enough))];
  const { disc } = plan;
  if (disc === undefined) return passages;
  return passages.map((passage) => {
    const { along, across } = sizesOfHold(size, holdAt(passage.from));
    return limitedTo(passage, diagonalClearance(disc, along, across));
  });
}

/** What passes in every one of the sources. */
function fromSources(
  sources: PassageSources,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const lists = sources.map((source) => fromSource(source, piece, book, tapeCase, enough));
  return lists.length === 0 ? [] : lists.reduce(shownInBoth);
}

function fromSource(
  source: PassageSource,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const { upToBefore, upToAfter, reversed, steadyOnly, levelOnly, searchedUpTo, toldAs } = source;
  const size = piece.taped[tapeCase];
  const passages: BookPassage[] = [];
  for (const found of book.caseOf(
    source.stage,
    piece,
    tapeCase,
    steadyOnly ? 'without leaning' : 'with leaning',
    enough,
  ).passages) {
    if (steadyOnly && found.turningRoom) continue;
    if (levelOnly && found.answer.pose === 'tilted') continue;
    const told = toldAs ? toldOf(found, toldAs) : found;
    const passage = reversed ? { ...told, from: told.to, to: told.from } : told;
    const byBefore = (upToBefore - alongOf(size, passage.from)) / 2;
    const byAfter = (upToAfter - alongOf(size, passage.to)) / 2;
    let most = limitedTo(passage, byBefore, source.causeBefore);
    most = limitedTo(most, byAfter, source.causeAfter);
    if (searchedUpTo !== undefined && !found.onLanding) {
      most = limitedTo(most, (searchedUpTo - alongOf(size, passage.from)) / 2);
    }
    passages.push(raisedBy(most, source.raised));
  }
  return passages;
}

/** What passes level over steps or a ramp is solved as a passage; the steps have sides, but no walls, and no ceiling. */
const toldOf = (found: BookPassage, as: 'steps' | 'ramp'): BookPassage => ({
  ...found,
  answer: {
    ...found.answer,
    critical: OVER[as][found.answer.critical.faces.length === 1 ? oneFace(found) : 'leaning'],
  },
});
const oneFace = ({ answer }: BookPassage): 'sides' | 'head' =>
  answer.critical.faces.includes('sides') ? 'sides' : 'head';

const overThe = (what: string) => ({
  sides: closestAt(`between the sides of the ${what}`, 'sides'),
  head: closestAt(`under what is lowest above the ${what}`, 'slope', 'foot ceiling', 'head ceiling'),
  leaning: closestAt(`leaning over the ${what}`, 'sides', 'slope'),
});
const OVER = { steps: overThe('steps'), ramp: overThe('ramp') } as const;

const alongOf = (size: PieceSize, hold: number): number => sizesOfHold(size, holdAt(hold)).along;

const limitedTo = (passage: BookPassage, most: number, limit?: LimitCause): BookPassage =>
  most >= passage.clearance ? passage : { ...passage, clearance: most, limit };

/** The ways of lying along the pitch of a flight, from one nosing to another. */
function laidOnPitch(flight: BookStage, size: PieceSize, tape: number, tapeCase: TapeCase): BookPassage[] {
  const sets = tapedMeasures('flight', flight.measures, tape, tapeCase);
  return ALL_HOLDS.map((hold, index): BookPassage => {
    const { across, upright } = sizesOfHold(size, hold);
    let clearance = Infinity;
    let byWidth = false;
    for (const { width = Infinity, lowWidth = width, height = Infinity, rise = 0, going = 1 } of sets) {
      const wide = (Math.min(width, lowWidth) - across) / 2;
      const high = (clearSquareToPitch({ width, headroom: height, rise, going }) - upright) / 2;
      if (Math.min(wide, high) >= clearance) continue;
      clearance = Math.min(wide, high);
      byWidth = wide <= high;
    }
    clearance = Math.max(clearance, -Math.max(across, upright) / 2);
    const { width = 0, height = 0 } = flight.measures;
    const answer = {
      clearance,
      atMost: Infinity,
      pose: hold[1] === 'L' ? ('tilted' as const) : poseOfHold(hold),
      critical: byWidth
        ? closestAtFigure(`between the sides of the flight, ${shownGiven(width)} mm apart`, 'sides')
        : closestAtFigure(`under the headroom of ${shownGiven(height)} mm`, 'slope'),
    };
    return {
      from: index,
      to: index,
      clearance,
      turningRoom: false,
      capped: false,
      answer,
      onLanding: undefined,
    };
  });
}
