import { shortFlightPassages, tooShort } from '../joint/shortFlightJoint';
import type { PieceSize } from '../measures/piece';
import type { FlightToLevel } from '../joint/shortFlightSection';
import { acrossHalfLanding } from '../geometry/landingModel';
import type { LandingPlan } from '../stages/landing/motionFamilies';
import type { PlacedMeasures } from '../stages/solvers';
import type { BeyondFlight, FlightBeside, ShortFlightsPlan } from './shortFlights';
import { bookPassage, shownInBoth, type BookPassage, type BookPiece, type StageBook } from './stageBook';
import { tapedMeasures, type TapeCase } from './tapeCase';

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
  if (beyondOf(first, size) !== beyondFirst || beyondOf(second, size) !== beyondSecond) return [];
  const { landing, ...own } = plan;
  const key = `short|${JSON.stringify(own)}|${landing.id}|${piece.id}|${tapeCase}|${enough}`;
  return book.remembered(key, () => solved(plan, piece, book, tapeCase, enough));
}

/** How a piece is beyond a flight. */
function beyondOf(flight: FlightBeside | undefined, size: PieceSize): BeyondFlight {
  if (!flight?.toLevel || !tooShort(flight.line, size)) return 'laid';
  const { space, door } = flight.toLevel;
  return door && space !== undefined && tooShort(space, size) ? 'door' : 'level';
}

function solved(
  plan: ShortFlightsPlan,
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  enough: number,
): BookPassage[] {
  const { landing, upward, beyondFirst, beyondSecond } = plan;
  const size = piece.taped[tapeCase];
  const off = tapeCase === 'worst' ? book.tape : tapeCase === 'best' ? -book.tape : 0;
  const first = beyondFirst === 'laid' ? undefined : plan.first?.toLevel;
  const second = beyondSecond === 'laid' ? undefined : plan.second?.toLevel;
  const ask =
    tapeCase === 'worst' ? { atLeast: enough, enough: enough + SPARE } : { atLeast: 0, enough: AMPLE };
  let passages: BookPassage[] | undefined;
  for (const measures of tapedMeasures(landing.stage, landing.measures, book.tape, tapeCase)) {
    // The floor before a door is no better the longer it is.
    for (const more of off === 0 || ![first, second].some((flight) => flight?.door) ? [0] : [0, 2 * off]) {
      const [one, other] = [first, second].map((flight, k) =>
        taped(flight, (k === 0 ? beyondFirst : beyondSecond) === 'door', off, more),
      );
      const [lower, upper] = upward ? [one, other] : [other, one];
      const found = shortFlightPassages(
        { landing: planOf(landing.stage, measures), lower, upper },
        size,
        ask,
      ).map((passage) => bookPassage(landing.stage, passage));
      passages = passages ? shownInBoth(passages, found) : found;
      if (passages.length === 0) return [];
    }
  }
  return passages ?? [];
}

/** With the tape against the piece; a door is only there where the piece goes through it at once. */
function taped(
  flight: FlightToLevel | undefined,
  throughDoor: boolean,
  off: number,
  more: number,
): FlightToLevel | undefined {
  if (!flight) return undefined;
  const { risers, ceiling, space } = flight;
  const door = throughDoor ? flight.door : undefined;
  return {
    risers,
    ceiling: ceiling === undefined ? undefined : Math.max(1, ceiling - off),
    space: space === undefined ? undefined : Math.max(0, space - off + (door ? more : 0)),
    door: door && {
      width: Math.max(1, door.width - off),
      height: Math.max(1, door.height - off),
      wall: Math.max(0, door.wall + off),
      widthBeyond: Math.max(1, door.widthBeyond - off),
      heightBeyond: Math.max(1, door.heightBeyond - off),
      lengthBeyond: Math.max(0, door.lengthBeyond - off),
    },
  };
}

function planOf(
  stage: string,
  { width = 0, widthOut = 0, well = 0, depth = 0, height = 0, rise = 1, going = 1, ceiling }: PlacedMeasures,
): LandingPlan {
  const half = stage === 'half landing';
  return {
    widthIn: width,
    widthOut: half ? width : widthOut,
    depthIn: half ? depth : widthOut,
    depthOut: half ? depth : width,
    across: half ? acrossHalfLanding({ flightWidth: width, well }) : undefined,
    headroom: height,
    rise,
    going,
    ceiling: ceiling ?? height,
  };
}
