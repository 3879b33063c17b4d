import { radians } from '../../measures/angle';
import { isStair, kindOf, isUsual, possibleRange, usesMeasure, type StageName } from '../../stages/kinds';
import { within } from '../../stages/measures';
import type { StageRow } from '../table/stageRow';
import type { RowProblem } from './surveyProblem';

/** Steepest private stair [rad]: 42 degrees, Approved Document K table 1.1. */
const STEEPEST_STAIR = radians(42);
/** Steeper than this it is climbed as a ladder [rad]: 60 degrees, common practice, no source. */
export const LADDER = radians(60);
const AS_LADDER = { as: 'ladder', limit: LADDER } as const;
const AS_STAIR = { as: 'steep stair', limit: STEEPEST_STAIR } as const;
/** Twice the rise and the going [mm]: Approved Document K table 1.1. */
const RISES_AND_GOING = { least: 550, most: 700 } as const;
/** Headroom that is let be only over a loft stair [mm]: Approved Document K 1.12; 2000 elsewhere, 1.11. */
const LOFT_HEADROOM = 1900;
/** What headroom a builder leaves where 2000 is asked, with a tape's error [mm]: common practice, no source. */
const PLUMB_AGAIN = { least: 1940, most: 2150 } as const;

/** Slips in the measures of a stair: in its steps, its headroom, its length, its landing. */
export function stairSlips(row: StageRow, stage: StageName): RowProblem[] {
  if (!isStair(stage)) return [];
  return [
    ...stepSlips(row, stage),
    ...headroomSquare(row),
    ...wholeRise(row),
    ...flightLength(row, stage),
    ...landingShallow(row, stage),
  ];
}

function stepSlips({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { rise, going } = measures;
  if (rise === undefined || going === undefined) return [];
  const at = { severity: 'warning', rowIndex } as const;
  const usual = (r: number, g: number): boolean =>
    isUsual(stage, 'rise', r) && isUsual(stage, 'going', g) && steepness(r, g) <= STEEPEST_STAIR;
  if (rise > going && usual(going, rise)) return [{ kind: 'rise and going exchanged', ...at, rise, going }];
  const problems: RowProblem[] = [];
  const pitch = steepness(rise, going);
  if (pitch > STEEPEST_STAIR) {
    problems.push({ kind: 'steep', ...at, pitch, ...(pitch > LADDER ? AS_LADDER : AS_STAIR) });
  }
  const sum = 2 * rise + going;
  if (sum < RISES_AND_GOING.least || sum > RISES_AND_GOING.most) {
    problems.push({ kind: 'rises and going', ...at, sum, ...RISES_AND_GOING });
  }
  return problems;
}

const steepness = (rise: number, going: number): number => Math.atan2(rise, going);

/** A headroom below what even a loft stair has that would be the usual one, were it taken square to the slope. */
function headroomSquare({ measures, rowIndex }: StageRow): RowProblem[] {
  const { height: value, rise, going } = measures;
  if (value === undefined || rise === undefined || going === undefined || rise > going) return [];
  const pitch = steepness(rise, going);
  const plumb = value / Math.cos(pitch);
  if (value >= LOFT_HEADROOM || !within(plumb, PLUMB_AGAIN)) return [];
  return [{ kind: 'headroom square', severity: 'warning', rowIndex, measure: 'height', value, plumb, pitch }];
}

/** The rise of the whole flight in place of one step's. */
function wholeRise({ measures, refused, rowIndex, stage }: StageRow): RowProblem[] {
  const { risers } = measures;
  const got = refused.find((r) => r.measure === 'rise')?.got;
  if (risers === undefined || typeof got !== 'number' || got <= possibleRange(stage, 'rise').most) return [];
  if (!isUsual('flight', 'rise', got / risers)) return [];
  return [{ kind: 'rise of the flight', severity: 'warning', rowIndex, measure: 'rise', total: got, risers }];
}

/** From first nosing to last, a tenth off either way: some measure it level, some along the slope. */
const LENGTH_SPREAD = 0.1;

function flightLength({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { length, risers, rise, going } = measures;
  if (kindOf(stage).stair !== 'flight' || !length || !risers || !rise || !going || risers < 2) return [];
  const level = (risers - 1) * going;
  const sloping = (risers - 1) * Math.hypot(rise, going);
  // Some count the going of the landing's step, too.
  if (length >= level * (1 - LENGTH_SPREAD) && length <= (sloping + going) * (1 + LENGTH_SPREAD)) return [];
  return [
    {
      kind: 'flight length',
      severity: 'warning',
      rowIndex,
      measure: 'length',
      value: length,
      risers,
      expected: sloping,
    },
  ];
}

/** A landing is at least as deep as the flight is wide: Approved Document K 1.20. */
function landingShallow({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { depth, width } = measures;
  if (!usesMeasure(stage, 'depth') || depth === undefined || width === undefined || depth >= width) return [];
  return [{ kind: 'landing shallow', severity: 'warning', rowIndex, measure: 'depth', depth, width }];
}
