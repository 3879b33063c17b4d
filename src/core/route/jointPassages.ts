import type { JointBlock } from '../joint/jointRow';
import { solveJoint } from '../joint/solveJoint';
import { ALL_HOLDS, sizesOfHold } from '../motion/hold';
import type { StagePassage } from '../motion/stagePassage';
import { facingDoorPassages } from '../stages/facingDoor/facingDoor';
import { stairTurnWays } from '../stages/stairTurn/stairTurn';
import type { JointPlan } from './jointPlan';
import { bookPassage, shownInBoth, type BookPassage, type BookPiece, type StageBook } from './stageBook';
import { tapedMeasures, type TapeCase } from './tapeCase';

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
  const key = `${JSON.stringify(own)}|${flight.id}|${piece.id}|${tapeCase}|${enough}`;
  return book.remembered(key, () => solved(plan, piece, book, tapeCase, enough));
}

/** What counts as enough in plan [mm a side]: more than a usual allowance. */
const ENOUGH_IN_PLAN = 40;

/**
 * The ways through level rows that stand close, as they are measured: they take long, and are asked for where nothing
 * else passes.
 */
export function levelPassages(
  block: JointBlock,
  piece: BookPiece,
  book: StageBook,
  asked: boolean,
): readonly BookPassage[] {
  if (!asked) return [];
  return book.remembered(`${JSON.stringify(block)}|${piece.id}`, () =>
    (
      solveJoint(
        block,
        piece.size,
        { atLeast: 0, enough: ENOUGH_IN_PLAN, tolerance: 0.25 },
        'without search',
      ) ?? []
    ).map((passage) => bookPassage('passage', passage)),
  );
}

/** Clearance [mm a side] above which more is of no interest: as measured, and beyond what is enough at worst. */
const AMPLE = 150;
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
  const off = tapeCase === 'worst' ? book.tape : tapeCase === 'best' ? -book.tape : 0;
  const sets = extremes(tapedMeasures('flight', plan.flight.measures, book.tape, tapeCase));
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
      const booked = found
        .filter(({ needsTurningRoom }) => needsTurningRoom !== true)
        .map((passage) => inRowOrder(plan, lessened(bookPassage('flight', passage), less)));
      if (!passages) passages = booked;
      // At worst every length has to do, as measured any.
      else if (tapeCase === 'worst') passages = shownInBoth(passages, booked);
      else passages = [...passages, ...booked];
      if (tapeCase === 'worst' && passages.every(({ clearance }) => clearance < enough)) break;
    }
  }
  return (passages ?? []).map((passage) => {
    const { along } = sizesOfHold(size, ALL_HOLDS[plan.flightAfter ? passage.from : passage.to]!);
    const most = (plan.upTo - along) / 2;
    return most >= passage.clearance ? passage : { ...passage, clearance: most, limit: plan.cause };
  });
}

/** A passage that leaves so much less [mm a side]. */
const lessened = (passage: BookPassage, less: number): BookPassage =>
  less === 0 ? passage : { ...passage, clearance: passage.clearance - less };

/** The steepest and the gentlest of the stairs that the tape allows, between which the others lie. */
function extremes<Set extends { readonly rise?: number; readonly going?: number }>(
  sets: readonly Set[],
): Set[] {
  if (sets.length < 3) return [...sets];
  const bySlope = [...sets].sort((a, b) => slopeOf(a) - slopeOf(b));
  return [bySlope[0]!, bySlope[bySlope.length - 1]!];
}

const slopeOf = ({ rise = 0, going = 1 }: { readonly rise?: number; readonly going?: number }): number =>
  rise / going;

/** Solved from the floor up the flight at a foot, and up off it at a head; a route may go the other way. */
function inRowOrder(plan: JointPlan, passage: BookPassage): BookPassage {
  const upward = (plan.end === 'foot') === plan.flightAfter;
  return upward ? passage : { ...passage, from: passage.to, to: passage.from };
}
