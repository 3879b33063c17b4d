import { centreCutBlocks, lineReaches } from '../geometry/proofs/centreCutBlocks';
import { radians, RIGHT_ANGLE } from '../measures/angle';
import type { PieceSize } from '../measures/piece';
import { deepProof } from './deepProof';
import { isStair, type StageName } from '../stages/kinds';
import { solverOf } from '../stages/solvers';
import { openingAtMost } from '../stages/opening/openingAtMost';
import { armOf } from './arms';
import { endBeside, isLanding, ceilingAt, standsAlone, type Reading } from './reading';
import type { StageMeasures } from '../stages/measures';
import type { PreparedRoute } from './preparedRoute';
import type { BookPiece, BookStage, StageBook } from './stageBook';
import { tapedMeasures } from './tapeCase';
import { leastLength } from './wayLength';
import { entryAt } from '../lists/entryAt';

/**
 * The condition by which a piece is proved not to pass a step of its route, even with the tape and all that is not
 * measured in its favour; undefined where nothing is proved.
 *
 * A section that has to be passed always counts: a door, a passage, a lift's car. What is proved of a turn supposes
 * its arms: it counts where these are nowhere wider or higher than the proof supposes, as far as the piece reaches
 * from there (for a cut that the middle has to cross: half as far).
 */
export function proofAt(
  route: PreparedRoute,
  i: number,
  piece: BookPiece,
  book: StageBook,
): string | undefined {
  const stage = route.steps[i]?.stage;
  if (!stage) return undefined;
  switch (stage.stage) {
    case 'door':
    case 'passage':
    case 'lift':
      return book.blockedBy(stage, piece);
    case 'room':
      // In a room that is only passed through, from open ground too, the piece need never be wholly.
      return i + 1 === route.steps.length ? book.blockedBy(stage, piece) : undefined;
    case 'corner':
    case 'side door':
      return sectionProof(stage, piece, book.tape) ?? turnProof(route, i, stage, piece, book);
    case 'flight':
      return flightProof(route, i, stage, piece, book);
    default:
      return turnProof(route, i, stage, piece, book);
  }
}

/** The sections of a turn's two ways, whatever lies beyond them. */
function sectionProof(stage: BookStage, piece: BookPiece, tape: number): string | undefined {
  const [m] = tapedMeasures(stage.stage, stage.measures, tape, 'best');
  const { width = Infinity, widthOut = Infinity, height = Infinity, ceiling = height } = m;
  const sections =
    stage.stage === 'corner'
      ? ([
          [width, height, 'one of the two passages'],
          [widthOut, height, 'one of the two passages'],
        ] as const)
      : ([
          [width, height, 'the door'],
          [widthOut, ceiling, 'the passage'],
        ] as const);
  for (const [wide, high, where] of sections) {
    const { atMost, bound } = openingAtMost({ width: wide, height: high }, piece.taped.best, where);
    if (atMost < 0) return bound;
  }
  return undefined;
}

const diagonalOf = ({ length, breadth, thickness }: PieceSize): number =>
  Math.hypot(length, breadth, thickness);

/** A turn with a flight on either side. */
const isTurnOfStair = (stage: StageName | undefined): boolean => isLanding(stage) || stage === 'winder';

/** What is proved of a turn, where its arms hold. */
function turnProof(
  route: PreparedRoute,
  i: number,
  stage: BookStage,
  piece: BookPiece,
  book: StageBook,
): string | undefined {
  const reach = diagonalOf(piece.taped.best);
  const hold = (far: number): boolean =>
    route.readings.every(({ reading }) => armsHold(reading, i, far, book.tape));
  if (!hold(reach / 2)) return undefined;
  if (hold(reach)) {
    const blocked = book.blockedBy(stage, piece);
    if (blocked === undefined || !isTurnOfStair(stage.stage)) return blocked;
    const covered = route.readings.every(({ reading }) => lowerFlightCovered(reading, i, reach, book.tape));
    return covered ? blocked : openStairProof(stage, piece, book.tape);
  }
  if (stage.stage !== 'corner') return undefined;
  // What passes by itself is blocked by nothing; that is asked before the cut, which takes longer.
  if (book.blockedBy(stage, piece) === undefined) return undefined;
  const [{ width, widthOut, height, turn }] = tapedMeasures('corner', stage.measures, book.tape, 'best');
  if (width === undefined || widthOut === undefined || height === undefined) return undefined;
  const room = {
    widthIn: width,
    widthOut,
    ceiling: height,
    turn: turn === undefined ? RIGHT_ANGLE : radians(turn),
  };
  // A line may start some way into the wider arm.
  return hold(reach / 2 + lineReaches(room)) && centreCutBlocks(room, piece.taped.best)
    ? 'its middle cannot cross from the inner corner to the outer walls, however it is turned'
    : undefined;
}

/** What is proved of a landing or of winders whatever is above the flight that leads up to it. */
function openStairProof({ stage, measures }: BookStage, piece: BookPiece, tape: number): string | undefined {
  const solver = solverOf(stage);
  if (solver.solvedBy === 'closed form') return undefined;
  const open = { ...measures, lowerOpen: true };
  const size = piece.taped.best;
  const quick = tapedMeasures(stage, open, tape, 'best')
    .map((taped) => solver.searched(taped).proved(size))
    .reduce((one, other) => (other.atMost > one.atMost ? other : one));
  return quick.atMost < 0 ? quick.bound : deepProof(stage, open, tape, size);
}

/** Whether both arms of a turn are nowhere wider or higher than its own measures, as far as that. */
function armsHold(reading: Reading, i: number, far: number, tape: number): boolean {
  const { stage, measures: m, into } = entryAt(reading, i);
  const { width = 0, widthOut = 0, height = 0, ceiling = height } = m;
  if (isTurnOfStair(stage)) {
    return flightHolds(reading, i, 'before', far, tape) && flightHolds(reading, i, 'after', far, tape);
  }
  if (stage === 'corner') {
    return (
      armHolds(reading, i, 'before', width, height, far, tape) &&
      armHolds(reading, i, 'after', widthOut, height, far, tape)
    );
  }
  if (stage === 'side door') {
    const [doorSide, passageSide] = into ? (['before', 'after'] as const) : (['after', 'before'] as const);
    return (
      armHolds(reading, i, doorSide, width, ceiling, far, tape) &&
      armHolds(reading, i, passageSide, widthOut, ceiling, far, tape)
    );
  }
  return false;
}

function armHolds(
  reading: Reading,
  i: number,
  side: 'before' | 'after',
  width: number,
  height: number,
  far: number,
  tape: number,
): boolean {
  const { sections, end } = armOf(reading, i, side);
  for (const section of sections) {
    if (leastLength(section.at, tape) >= far) return true;
    if (section.width > width || section.height > height) return false;
  }
  return leastLength(end.at, tape) >= far;
}

/** Whether the flight below a landing is under its own ceiling as far as that from the landing. */
function lowerFlightCovered(reading: Reading, i: number, far: number, tape: number): boolean {
  const down = reading[i]?.way === 'up' ? -1 : 1;
  const k = i + down;
  const flight = reading[k];
  if (flight?.stage !== 'flight') return true;
  // At another landing the line begins with the flight.
  const below = reading[k + down];
  const foot = below && isLanding(below.stage) ? 0 : (footCeiling(reading, k) ?? Infinity);
  return underOwnCeiling(flight.measures, foot, tape) >= far;
}

/** Whether a landing has on one side the flight that its proofs suppose, as far as that. */
function flightHolds(
  reading: Reading,
  i: number,
  side: 'before' | 'after',
  far: number,
  tape: number,
): boolean {
  const flight = reading[side === 'before' ? i - 1 : i + 1];
  const { stage, measures: own, way } = entryAt(reading, i);
  // Without a stair beside it a landing has a long flight of its own; winding treads at once are none, and may end on a floor.
  if (flight?.stage !== 'flight') {
    return stage !== 'winder' && (flight?.stage === undefined || !isStair(flight.stage));
  }
  const { width = Infinity, height = Infinity, rise = 0, going = 0, risers } = flight.measures;
  const lower = (way === 'up') === (side === 'before');
  const ownWidth = stage !== 'half landing' && !lower ? (own.widthOut ?? own.width) : own.width;
  return (
    risers !== undefined &&
    (risers - 1) * going - tape >= far &&
    width <= (ownWidth ?? 0) &&
    height <= (own.height ?? 0) &&
    rise === own.rise &&
    going === own.going
  );
}

/**
 * The clear way up a stair counts where there is one: its ceiling line begins where it meets the ceiling over the
 * foot, and from there on the plane square to the pitch through some nosing has to lie within the flight. Else only
 * its width counts.
 */
function flightProof(
  route: PreparedRoute,
  i: number,
  stage: BookStage,
  piece: BookPiece,
  book: StageBook,
): string | undefined {
  const { measures } = stage;
  const feet = route.readings.map(({ reading }) => footCeiling(reading, i) ?? Infinity);
  const foot = Math.max(...feet);
  const { rise = 0, going = 1, height = 0 } = measures;
  const square = (height * rise * going) / (rise * rise + going * going);
  if (underOwnCeiling(measures, foot, book.tape) >= square + going + 2 * book.tape) {
    // Its row may leave to the row beside it what the ceiling is over the foot; of what lies beyond nothing is supposed.
    const noTreads = route.readings.some(({ reading }) => standsAlone(entryAt(reading, i)));
    const open = { ...measures, footCeiling: foot, endsOpen: true, noTreads };
    return book.blockedBy(book.stageOf('flight', open), piece);
  }
  const [{ width = Infinity }] = tapedMeasures('flight', measures, book.tape, 'best');
  return piece.taped.best.thickness > width
    ? 'its least thickness is more than the clear width there'
    : undefined;
}

/**
 * Length in plan [mm], before its last nosing, over which a flight's own ceiling is known to hold: less than nothing
 * where the ceiling over its foot may reach beyond, or its risers are not known.
 * @param foot greatest height of the ceiling over its foot [mm]
 */
function underOwnCeiling(
  { risers, rise = 0, going = 1, height = 0 }: StageMeasures,
  foot: number,
  tape: number,
): number {
  if (risers === undefined) return -Infinity;
  const trimmer = ((foot + tape - rise - (height - tape)) * going) / rise;
  return (risers - 1) * going - Math.max(0, trimmer);
}

/** The ceiling over a flight's foot, where it is told. */
function footCeiling(reading: Reading, i: number): number | undefined {
  const { measures, way } = entryAt(reading, i);
  const own = ceilingAt(measures, 'foot');
  if (own !== undefined) return own;
  const side = endBeside(way, 'before') === 'foot' ? 'before' : 'after';
  const beside = reading[side === 'before' ? i - 1 : i + 1];
  if (!beside) return undefined;
  const { height, ceiling = height } = beside.measures;
  return isLanding(beside.stage)
    ? ceiling
    : beside.stage === 'passage' || beside.stage === 'room'
      ? height
      : undefined;
}
