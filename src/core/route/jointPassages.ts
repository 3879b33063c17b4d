import type { JointBlock, JointPassage, JointRow } from '../joint/jointRow';
import { isRound, type BlockToSolve } from './tapedBlock';
import { levelledJoint } from '../joint/levelledJoint';
import type { PieceSize } from '../measures/piece';
import { solveJoint } from '../joint/solveJoint';
import { holdAt, sizesOfHold } from '../motion/hold';
import type { StagePassage } from '../motion/stagePassage';
import { facingDoorPassages } from '../stages/facingDoor/facingDoor';
import { stairTurnWays } from '../stages/stairTurn/stairTurn';
import type { DoorOut, JointPlan } from './jointPlan';
import {
  bookPassage,
  raisedBy,
  shownInBoth,
  type BookPassage,
  type BookPiece,
  type StageBook,
} from './stageBook';
import type { PlacedMeasures } from '../stages/solvers';
import { tapedMeasures, type TapeCase } from './tapeCase';
import { firstOf, lastOf } from '../lists/ends';

/**
 * The ways through a door or a turn and on to the flight there, or off it, as the chain takes them: between level
 * beyond it and lying along the pitch. What leans is left out: it could not be set level on the flight.
 * @param enough clearance [mm a side] below which the rest of what is not measured is not looked at
 */
export function jointPassages(
  plan: JointPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const { flight, ...own } = plan;
  // Only the worst case is looked at no farther than is enough: what is found as measured holds for every allowance.
  const asked = tapeCase === 'worst' ? enough : '';
  const key = `${JSON.stringify(own)}|${flight.id}|${piece.id}|${tapeCase}|${asked}`;
  return book.remembered(key, () => solved(plan, piece, book, tapeCase, enough));
}

/** What the places where a block begins and ends leave of a piece that rests there [mm a side]. */
export const leftAtRest = ({ holds, less }: BlockToSolve, size: PieceSize): number =>
  (holds - size.length) / 2 - less;

/**
 * The ways through rows that stand close. To find them takes long, so they are asked for only where nothing else passes,
 * and no more is looked for than is enough: more room must not lead to a lesser figure by the rows alone.
 * @param least clearance [mm a side] below which none is wanted
 * @param enough clearance [mm a side] above which more is of no interest
 * @param from how it is held where they begin
 */
export function blockPassages(
  block: BlockToSolve,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  asked: { readonly least: number; readonly enough: number; readonly from: number },
): readonly BookPassage[] {
  const { blocks, less, rests } = block;
  const size = piece.taped[tapeCase];
  const { least, from } = asked;
  const enough = Math.min(asked.enough, leftAtRest(block, size));
  if (enough < least) return [];
  // What is shown is told a hair less.
  const ask = {
    atLeast: least + less + A_HAIR,
    enough: enough + less + A_HAIR,
    tolerance: GRID,
    from: [holdAt(from)],
  };
  const key = `${JSON.stringify([blocks, rests])}|${less}|${piece.id}|${tapeCase}|${least}|${enough}|${from}`;
  return book.remembered(key, () => {
    let all: BookPassage[] | undefined;
    for (const block of blocks) {
      const found = solveJoint(block, size, ask, 'without search').map((passage) =>
        lessened(asOne(bookPassage(passage), passage, block, rests), less),
      );
      all = all ? shownInBoth(all, found) : found;
      if (all.length === 0) break;
    }
    return all ?? [];
  });
}

/** A passage with the rows that it passes as one space, as measured; round a turn of the stair it is known so alone. */
const asOne = (
  passage: BookPassage,
  { motion }: JointPassage,
  block: JointBlock,
  rests: BlockToSolve['rests'],
): BookPassage => ({
  ...passage,
  ...(rests ? { block: { ...rests, block, motion } } : {}),
  ...(isRound(block) ? { capped: true, measuredOnly: true } : {}),
});

/** Asked for beyond what is needed [mm a side], so that rounding takes nothing off it. */
const A_HAIR = 0.01;
/** How near the clearance of rows that stand close is looked for [mm a side]. */
const GRID = 1;

/** Clearance [mm a side] above which more is of no interest as measured. */
const AMPLE = 150;
/** At worst no more is of interest than is enough, and this [mm a side]. */
const SPARE = 5;

function solved(
  plan: JointPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const size = piece.taped[tapeCase];
  // Between two bends closer than its length it would have to be solved with both.
  if (plan.upTo < size.length) return [];
  if ((plan.roomierUpTo ?? 0) >= size.length + 2 * AMPLE) return [];
  const off = tapeCase === 'worst' ? book.tape : tapeCase === 'best' ? -book.tape : 0;
  const sets = setsOf(plan, book, tapeCase);
  let passages: BookPassage[] | undefined;
  const less = plan.kind === 'stair turn' ? plan.floor.less : 0;
  const least = enough + less;
  for (const floor of plan.kind === 'stair turn' ? plan.floor.at : [plan.floor.least]) {
    for (const { width = 0, height: headroom = 0, rise = 0, going = 1 } of sets) {
      const common = {
        end: plan.end,
        flightWidth: Math.max(1, Math.min(width, plan.width - off)),
        headroom,
        rise,
        going,
        ceiling: Math.max(1, plan.ceiling - off),
      };
      const found: readonly StagePassage[] =
        plan.kind === 'facing door'
          ? facingDoorPassages(
              {
                ...common,
                doorWidth: Math.max(1, plan.doorWidth - off),
                doorHeight: Math.max(1, plan.doorHeight - off),
                wallThickness: Math.max(0, plan.wall + off),
                space: floor,
                ...(plan.floor.most > floor ? { spaceMost: plan.floor.most } : {}),
              },
              size,
            )
          : stairTurnWays(
              {
                ...common,
                straight: floor,
                passageWidth: Math.max(1, plan.passageWidth - off),
                overRail: 0,
              },
              size,
              'best',
              tapeCase === 'worst'
                ? { atLeast: least, enough: least + SPARE }
                : { atLeast: 0, enough: AMPLE },
            ).map((way) => way.passage);
      const byDoor =
        plan.kind === 'stair turn' &&
        plan.doorOut &&
        clearanceOf(found) < (tapeCase === 'worst' ? least : PLENTY)
          ? throughDoorOut(plan.doorOut, { ...common, straight: floor }, size, off, {
              atLeast: Math.max(tapeCase === 'worst' ? least : 0, clearanceOf(found)),
              enough: tapeCase === 'worst' ? least + SPARE : PLENTY,
            })
          : [];
      const booked = [...found, ...byDoor]
        .filter(({ needsTurningRoom }) => needsTurningRoom !== true)
        .map((passage) => raisedBy(inRowOrder(plan, lessened(bookPassage(passage), less)), plan.raised));
      if (!passages) passages = booked;
      // At worst every length has to do, as measured any.
      else if (tapeCase === 'worst') passages = shownInBoth(passages, booked);
      else passages = [...passages, ...booked];
      if (tapeCase === 'worst' && passages.every(({ clearance }) => clearance < enough)) break;
    }
  }
  return (passages ?? []).map((passage) => {
    const { along } = sizesOfHold(size, holdAt(plan.flightAfter ? passage.from : passage.to));
    const most = (plan.upTo - along) / 2;
    return most >= passage.clearance ? passage : { ...passage, clearance: most, limit: plan.cause };
  });
}

/**
 * The stairs that the tape allows: the steepest and the gentlest first, and at worst all of them. A turn was seen to leave
 * 2 mm less on one as steep as measured with smaller treads.
 */
function setsOf({ kind, flight }: JointPlan, book: StageBook, tapeCase: TapeCase): readonly PlacedMeasures[] {
  const sets = tapedMeasures('flight', flight.measures, book.tape, tapeCase);
  const ends = extremes(sets);
  return tapeCase === 'worst' && kind === 'stair turn' ? [...new Set([...ends, ...sets])] : ends;
}

/** What is plenty as measured [mm a side]. */
const PLENTY = 60;

const clearanceOf = (passages: readonly StagePassage[]): number =>
  passages.reduce((most, { answer }) => Math.max(most, answer.clearance), -Infinity);

/** A flight as it ends at a floor with a door in its side [mm]. */
interface FlightAtDoor {
  readonly end: 'foot' | 'head';
  readonly flightWidth: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  /** Floor between the stair's end and the nearer jamb. */
  readonly straight: number;
}

/**
 * On to a flight, or off it, through a door in the side of the floor at its end: level at the stair's end, partly over
 * the flight, then out through the door on open ground. In the order of the way up at a head, and from the door up the
 * flight at a foot.
 */
function throughDoorOut(
  door: DoorOut,
  flight: FlightAtDoor,
  size: PieceSize,
  off: number,
  ask: { readonly atLeast: number; readonly enough: number },
): StagePassage[] {
  const { end, flightWidth: width, headroom: height, rise, going, straight } = flight;
  const doorWidth = Math.max(1, door.width - off);
  // What is left of the floor behind the farther jamb; both measures may be off.
  const depth =
    door.space === undefined ? undefined : Math.max(0, door.space - 2 * off - straight - door.width);
  const space = straight + doorWidth + (depth ?? 0);
  const ceiling = Math.max(1, door.ceiling - off);
  const stair: JointRow = {
    stage: 'flight',
    // Walked off the flight, whichever way the route goes.
    way: end === 'head' ? 'up' : 'down',
    measures: {
      width,
      height,
      rise,
      going,
      risers: Math.ceil((size.length + AMPLE) / going) + 1,
      ...(end === 'head'
        ? { headCeiling: ceiling, headSpace: space }
        : { footCeiling: ceiling, footSpace: space }),
    },
  };
  const out: JointRow = {
    stage: 'side door',
    into: false,
    measures: {
      width: doorWidth,
      height: Math.max(1, door.height - off),
      wall: Math.max(0, door.wall + off),
      widthOut: width,
      ceiling,
      ...(depth === undefined ? {} : { depth }),
    },
  };
  const found = levelledJoint({ rows: [stair, out], before: 'straight', after: 'open' }, size, {
    ...ask,
    tolerance: 1,
  });
  // Solved off the flight; `inRowOrder` takes what is in the way's order up.
  return (found ?? []).map((passage): StagePassage => {
    const upward = end === 'head';
    return {
      from: upward ? passage.from : passage.to,
      to: upward ? passage.to : passage.from,
      answer: passage.answer,
      ...(passage.needsTurningRoom === undefined ? {} : { needsTurningRoom: passage.needsTurningRoom }),
    };
  });
}

/** A passage that leaves so much less [mm a side]. */
const lessened = (passage: BookPassage, less: number): BookPassage =>
  less === 0 ? passage : { ...passage, clearance: passage.clearance - less };

/** The steepest and the gentlest of the stairs that the tape allows. */
export function extremes<Set extends { readonly rise?: number; readonly going?: number }>(
  sets: readonly Set[],
): Set[] {
  if (sets.length < 3) return [...sets];
  const bySlope = [...sets].sort((a, b) => slopeOf(a) - slopeOf(b));
  return [firstOf(bySlope), lastOf(bySlope)];
}

const slopeOf = ({ rise = 0, going = 1 }: { readonly rise?: number; readonly going?: number }): number =>
  rise / going;

/** Solved from the floor up the flight at a foot, and up off it at a head; a route may go the other way. */
function inRowOrder(plan: JointPlan, passage: BookPassage): BookPassage {
  const upward = (plan.end === 'foot') === plan.flightAfter;
  return upward ? passage : { ...passage, from: passage.to, to: passage.from };
}
