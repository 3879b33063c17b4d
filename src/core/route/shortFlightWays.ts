import { shortFlightPassages, tooShort } from '../joint/shortFlightJoint';
import { ALL_HOLDS, sizesOfHold, type Hold } from '../motion/hold';
import type { PieceSize } from '../measures/piece';
import type { DoorAtEnd, FlightToLevel } from '../joint/shortFlightSection';
import { landingPlanOf } from '../stages/landing/landingPlanOf';
import type { BeyondFlight, FlightBeside, ShortFlightsPlan, TurnAtEnd } from './shortFlights';
import { extremes } from './jointPassages';
import {
  bookPassage,
  raisedBy,
  shownInBoth,
  type BookPassage,
  type BookPiece,
  type StageBook,
} from './stageBook';
import { tapedMeasures, type TapeCase } from './tapeCase';
import { present } from '../lists/present';

/** Clearance [mm a side] above which more is of no interest as measured. */
const AMPLE = 150;
/** In the worst case what is enough is asked for alone, nearer than the solver's own step [mm]. */
const SPARE = 0.9;

/**
 * The ways round a landing with flights that are shorter than the piece, as the chain takes them; none where this is not
 * how the piece meets them: a flight that holds it is passed by itself, and a door is gone through at once only where
 * the floor before it is too short.
 * @param enough clearance [mm a side] that is asked for in the worst case
 */
export function shortFlightWays(
  plan: ShortFlightsPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): readonly BookPassage[] {
  const size = piece.taped[tapeCase];
  const { first, second, beyondFirst, beyondSecond } = plan;
  if (!mayBe(beyondFirst, first, size) || !mayBe(beyondSecond, second, size)) return [];
  const { landing, ...own } = plan;
  // As measured all is looked for, whatever is enough.
  const asked = tapeCase === 'worst' ? enough : '';
  const key = `short|${JSON.stringify(own)}|${landing.id}|${piece.id}|${tapeCase}|${asked}`;
  return book.remembered(key, () => solved(plan, piece, book, tapeCase, enough));
}

/**
 * Whether a piece is so beyond a flight. One that hardly holds it may be passed by itself, beside a shorter one, and may be
 * passed together with the landing: it then comes off the stairs at the one end while it is still on them at the other.
 */
const mayBe = (beyond: BeyondFlight, flight: FlightBeside | undefined, size: PieceSize): boolean =>
  beyond === 'laid' ? laidOn(flight, size) : flight !== undefined && beyond === beyondOf(flight, size);

/** Whether a piece comes to lie along the flight; a flight that is not known is long. */
const laidOn = (flight: FlightBeside | undefined, size: PieceSize): boolean =>
  !flight || flight.line >= size.length || beyondOf(flight, size) === 'laid';

function beyondOf(flight: FlightBeside, size: PieceSize): BeyondFlight {
  if (flight.line >= LONG * size.length) return 'laid';
  const { toLevel, turns, doors } = flight;
  const [turn] = turns;
  if (turn && turn.floor.at.some((straight) => tooShort(straight, size))) return 'turn';
  if (!toLevel) return 'laid';
  const { space } = toLevel;
  return doors.length > 0 && space !== undefined && tooShort(space, size) ? 'door' : 'level';
}

/** A flight so many times as long as the piece is passed by itself: between its two bends it lies along it. */
const LONG = 2;

function solved(
  plan: ShortFlightsPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const { landing, upward } = plan;
  const size = piece.taped[tapeCase];
  const off = tapeCase === 'worst' ? book.tape : tapeCase === 'best' ? -book.tape : 0;
  const sides = [
    sideFor(plan.first, plan.beyondFirst, size),
    sideFor(plan.second, plan.beyondSecond, size),
  ] as const;
  const turns = sides.flatMap(({ turn }) => (turn ? [turn] : []));
  // Between two bends closer than its length it would have to be solved with both.
  if (turns.some(({ upTo }) => upTo < size.length)) return [];
  const less = turns.reduce((sum, { floor }) => sum + floor.less, 0);
  const raised = Math.max(...sides.map(({ door, turn }) => door?.raised ?? turn?.raised ?? 0));
  const least = enough + less;
  const ask =
    tapeCase === 'worst' ? { atLeast: least, enough: least + SPARE } : { atLeast: 0, enough: AMPLE };
  let passages: BookPassage[] | undefined;
  let holds: readonly Hold[] = ALL_HOLDS;
  const sets = tapedMeasures(landing.stage, landing.measures, book.tape, tapeCase);
  // The steepest and the gentlest first: where one of these does not pass, no other is looked at.
  for (const measures of new Set([...extremes(sets), ...sets])) {
    for (const [one, other] of lengthsOf(sides, off)) {
      const [lower, upper] = upward ? [one, other] : [other, one];
      const round = {
        landing: present(landingPlanOf(landing.stage, measures), 'the plan of a landing'),
        lower,
        upper,
      };
      const ways = shortFlightPassages(round, size, ask, holds);
      const found = ways.map((passage): BookPassage => {
        const booked = bookPassage(passage);
        const shown = raisedBy(
          { ...booked, clearance: booked.clearance - less },
          raised > 0 ? raised : undefined,
        );
        return upward ? shown : { ...shown, from: booked.to, to: booked.from };
      });
      if (tapeCase !== 'worst') {
        // As measured any length will do.
        passages = [...(passages ?? []), ...found];
        continue;
      }
      passages = passages ? shownInBoth(passages, found) : found;
      if (passages.length === 0) return [];
      // What does not pass here does not pass in every case.
      holds = ALL_HOLDS.filter((hold) => ways.some((way) => way.hold === hold));
    }
  }
  return (passages ?? []).map((passage) =>
    withinArm(withinArm(passage, sides[0], passage.from, size), sides[1], passage.to, size),
  );
}

/** No more than what the straight beyond a turn leaves of the piece lying in it. */
function withinArm(
  passage: BookPassage,
  { turn }: SideOfLanding,
  hold: number,
  size: PieceSize,
): BookPassage {
  const name = ALL_HOLDS[hold];
  if (!turn || !name) return passage;
  const { upTo, cause } = turn;
  const most = (upTo - sizesOfHold(size, name).along) / 2;
  return most >= passage.clearance ? passage : { ...passage, clearance: most, limit: cause };
}

type Sides = readonly [SideOfLanding, SideOfLanding];
interface SideOfLanding {
  readonly flight: FlightBeside | undefined;
  readonly beyond: BeyondFlight;
  readonly door: DoorAtEnd | undefined;
  readonly turn: TurnAtEnd | undefined;
}

/** A side with as much of what is beyond its flight as the piece needs: as wide as that is, raised only where it must. */
function sideFor(flight: FlightBeside | undefined, beyond: BeyondFlight, size: PieceSize): SideOfLanding {
  const { doors = [], turns = [] } = flight ?? {};
  const door = doors.find(({ lengthBeyond }) => !tooShort(lengthBeyond, size)) ?? doors[0];
  const turn = turns.find(({ upTo }) => !tooShort(upTo, size)) ?? turns[turns.length - 1];
  return {
    flight,
    beyond,
    door: beyond === 'door' ? door : undefined,
    turn: beyond === 'turn' ? turn : undefined,
  };
}

/** The flights on both sides with the lengths at their other ends as they may be, each with each. */
function lengthsOf(
  [one, other]: Sides,
  off: number,
): (readonly [FlightToLevel | undefined, FlightToLevel | undefined])[] {
  const others = taped(other, off);
  return taped(one, off).flatMap((first) => others.map((second) => [first, second] as const));
}

/** With the tape against the piece; a door is only there where the piece goes through it at once. */
function taped(
  { flight, beyond, door, turn }: SideOfLanding,
  off: number,
): readonly (FlightToLevel | undefined)[] {
  const { toLevel } = flight ?? {};
  if (turn) {
    const passageWidth = Math.max(1, turn.passageWidth - off);
    const ceiling = Math.max(1, turn.ceiling - off);
    return turn.floor.at.map((straight) => ({
      risers: turn.risers,
      ceiling,
      space: straight + passageWidth,
      door: undefined,
      floorWidth: turn.width - off,
      turn: { width: turn.width - off, straight, passageWidth, passageCeiling: ceiling },
    }));
  }
  if (beyond === 'laid' || !toLevel) return [undefined];
  const { risers, ceiling, space, floorWidth = Infinity } = toLevel;
  const level: FlightToLevel = {
    risers,
    ceiling: ceiling === undefined ? undefined : Math.max(1, ceiling - off),
    space: space === undefined ? undefined : Math.max(0, space - off),
    door: undefined,
    floorWidth: Math.max(1, floorWidth - off),
  };
  if (!door || level.space === undefined) return [level];
  const through = {
    width: Math.max(1, door.width - off),
    height: Math.max(1, door.height - off),
    wall: Math.max(0, door.wall + off),
    widthBeyond: Math.max(1, door.widthBeyond - off),
    heightBeyond: Math.max(1, door.heightBeyond - off),
    lengthBeyond: Math.max(0, door.lengthBeyond - off),
  };
  // The floor before a door is no better the longer it is.
  const spaces = off === 0 ? [level.space] : [level.space, level.space + 2 * off];
  return spaces.map((length) => ({ ...level, space: length, door: through }));
}
