import type { FunctionDescription } from '../description';
import { advise } from './advise';
import { buildRoom } from './buildRoom';
import { checkPieces } from './checkPieces';
import { checkRoute } from './checkRoute';
import { checkRow } from './checkRow';
import { codeLoad } from './codeLoad';
import { codePoint } from './codePoint';
import { corner } from './corner';
import { cornerLength } from './cornerLength';
import { diagonal } from './diagonal';
import { diagonalAngle } from './diagonalAngle';
import { doorClear } from './doorClear';
import { facingDoor } from './facingDoor';
import { flight } from './flight';
import { flightLoad } from './flightLoad';
import { floorLoad } from './floorLoad';
import { footLoad } from './footLoad';
import { footPressure } from './footPressure';
import { halfLanding } from './halfLanding';
import { handlers } from './handlers';
import { jobTime } from './jobTime';
import { joist } from './joist';
import { joistFeet } from './joistFeet';
import { liftCar } from './liftCar';
import { liftIndex } from './liftIndex';
import { liftLimit } from './liftLimit';
import { lowerShare } from './lowerShare';
import { moves } from './moves';
import { opening } from './opening';
import { pitch } from './pitch';
import { playRoom } from './playRoom';
import { quarterLanding } from './quarterLanding';
import { questions } from './questions';
import { remeasure } from './remeasure';
import { reply } from './reply';
import { restTime } from './restTime';
import { roomSpare } from './roomSpare';
import { sideDoor } from './sideDoor';
import { slabMass } from './slabMass';
import { stageClear } from './stageClear';
import { stages } from './stages';
import { stairTurn } from './stairTurn';
import { standing } from './standing';
import { surveys } from './surveys';
import { teamLimit } from './teamLimit';
import { toKg } from './toKg';
import { toMm } from './toMm';
import { treadLoad } from './treadLoad';
import { upend } from './upend';
import { verdict } from './verdict';
import { working } from './working';
import { workRate } from './workRate';

/** Every function but WORKING, in the order of the reference. A new function is a file and a line here. */
const DESCRIBED: readonly FunctionDescription[] = [
  // Measures and pieces
  toMm,
  toKg,
  slabMass,
  doorClear,
  // Clearance
  opening,
  diagonal,
  diagonalAngle,
  corner,
  cornerLength,
  sideDoor,
  upend,
  pitch,
  flight,
  quarterLanding,
  halfLanding,
  stairTurn,
  facingDoor,
  liftCar,
  // Carrying
  lowerShare,
  teamLimit,
  handlers,
  liftLimit,
  liftIndex,
  workRate,
  restTime,
  standing,
  // Floors
  floorLoad,
  codeLoad,
  codePoint,
  footLoad,
  footPressure,
  joist,
  joistFeet,
  flightLoad,
  treadLoad,
  // Room
  playRoom,
  roomSpare,
  buildRoom,
  // Routes and surveys
  checkRow,
  checkRoute,
  checkPieces,
  stageClear,
  stages,
  verdict,
  advise,
  surveys,
  remeasure,
  jobTime,
  moves,
  questions,
  reply,
];

/** Every function of the add-in; WORKING shows the working of the others. */
export const FUNCTIONS: readonly FunctionDescription[] = [...DESCRIBED, working(DESCRIBED)];
