import type { MeasureAt } from './stageKind';
import { BALUSTRADE, LAMP, RAIL } from './siteRemedies';
import { GOING, HEADROOM, RAIL_HEIGHT, RISE, STAIR_WIDTH } from './usualRanges';

// Measures that several parts of a stair have in common.
export const STAIR_CLEAR: MeasureAt = { usual: STAIR_WIDTH, tape: 'more helps', remedy: RAIL };
export const STAIR_HEADROOM: MeasureAt = {
  usual: HEADROOM,
  tape: 'more helps',
  remedy: LAMP,
  called: 'headroom',
  heading: 'Headroom',
};
/** Rise and going of one step, taped by themselves. */
export const STEP_RISE: MeasureAt = { usual: RISE, tape: 'either way', remedy: null };
export const STEP_GOING: MeasureAt = {
  usual: GOING,
  tape: 'either way',
  remedy: null,
  heading: 'Tread depth',
};
export const OVER_RAIL: MeasureAt = {
  usual: RAIL_HEIGHT,
  tape: 'more hinders, 0 is none',
  remedy: BALUSTRADE,
  none: '0 mm',
};
export const LANDING_CEILING: MeasureAt = { usual: HEADROOM, tape: 'more helps', remedy: null };
