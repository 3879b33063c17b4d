import type { MeasureAt, MeasureOf } from './stageKind';
import { BALUSTRADE, LAMP, RAIL } from './siteRemedies';
import { GOING, HEADROOM, RAIL_HEIGHT, RISE, STAIR_WIDTH } from './usualRanges';

/** Clear width between the walls or the rails of a stair, as several of its parts have it. */
export const STAIR_CLEAR: MeasureAt = { usual: STAIR_WIDTH, tape: 'more helps', remedy: RAIL };
/** Headroom, plumb over the nosings. */
export const STAIR_HEADROOM: MeasureOf<'height'> = {
  of: 'over the nosings',
  usual: HEADROOM,
  tape: 'more helps',
  remedy: LAMP,
  called: 'headroom',
  heading: 'Headroom',
};
/** Rise and going of one step, taped by themselves. */
export const STEP_RISE: MeasureOf<'rise'> = { of: 'one step', usual: RISE, tape: 'either way', remedy: null };
/** Going of one step, taped by itself. */
export const STEP_GOING: MeasureAt = {
  usual: GOING,
  tape: 'either way',
  remedy: null,
  heading: 'Tread depth',
};
/** Height of the handrail with air above it at the open side; 0: walls to the ceiling. */
export const OVER_RAIL: MeasureAt = {
  usual: RAIL_HEIGHT,
  tape: 'more hinders, 0 is none',
  remedy: BALUSTRADE,
  none: '0 mm',
};
/** Ceiling over a landing. */
export const LANDING_CEILING: MeasureOf<'ceiling'> = {
  of: 'floor of the place',
  usual: HEADROOM,
  tape: 'more helps',
  remedy: null,
};
