import type { FlightEndMeasures } from '../stages/flight/flightEnds';
import type { StageMeasures } from '../survey/table/stageMeasures';

/** What was measured at a stage, and for a flight on which of its ends the route has a landing. */
export type PlacedMeasures = StageMeasures & Pick<FlightEndMeasures, 'footOnLanding' | 'headOnLanding'>;
