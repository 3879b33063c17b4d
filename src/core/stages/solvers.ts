import { CORNER_SOLVER } from './corner/cornerSolver';
import { DOOR_SOLVER } from './door/doorSolver';
import { FLIGHT_SOLVER } from './flight/flightSolver';
import type { MeasuresAt, StageName } from './kinds';
import { HALF_LANDING_SOLVER } from './landing/halfLandingSolver';
import { QUARTER_LANDING_SOLVER } from './landing/quarterLandingSolver';
import { LIFT_SOLVER } from './lift/liftSolver';
import type { StageMeasures } from './measures';
import { PASSAGE_SOLVER } from './passage/passageSolver';
import { RAMP_SOLVER } from './ramp/rampSolver';
import { ROOM_SOLVER } from './room/roomSolver';
import { SIDE_DOOR_SOLVER } from './sideDoor/sideDoorSolver';
import { STEPS_SOLVER } from './steps/stepsSolver';
import type { PlacedEnds, StageSolver } from './stageSolver';
import { WINDER_SOLVER } from './winder/winderSolver';

/** How a piece passes each kind of stage. */
const STAGE_SOLVERS: { readonly [Stage in StageName]: StageSolver<MeasuresAt<Stage>> } = {
  door: DOOR_SOLVER,
  'side door': SIDE_DOOR_SOLVER,
  passage: PASSAGE_SOLVER,
  steps: STEPS_SOLVER,
  ramp: RAMP_SOLVER,
  corner: CORNER_SOLVER,
  flight: FLIGHT_SOLVER,
  'quarter landing': QUARTER_LANDING_SOLVER,
  'half landing': HALF_LANDING_SOLVER,
  winder: WINDER_SOLVER,
  lift: LIFT_SOLVER,
  room: ROOM_SOLVER,
};

/** What was measured at a stage, and for a flight on which of its ends the route has a landing. */
export type PlacedMeasures = StageMeasures & PlacedEnds;

/**
 * The solver of a stage whose name is only known when it is read. The measures that the stage needs must be
 * there (`stageNeeds`): the type cannot see to that here, so the caller does.
 */
export const solverOf = (stage: StageName): StageSolver<PlacedMeasures> =>
  STAGE_SOLVERS[stage] as StageSolver<never> as StageSolver<PlacedMeasures>;
