import type { StageRow } from '../table/stageRow';
import { kindOf } from '../../stages/kinds';
import type { RouteProblem } from './surveyProblem';

/** From floor to floor [mm]: the lowest room and a thin floor to a high old house. Common practice, no source. */
const STOREY = { least: 2200, most: 4500 } as const;

/** A floor with its ceiling, from the ceiling below to the boards above [mm]. Common practice, no source. */
const FLOOR_DEPTH = { least: 120, most: 600 } as const;

/** Fewer risers than this lead to a porch or half way up, not to another storey [count]. No source. */
const FEW_RISERS = 10;

/**
 * Stairs whose rises do not add up to the storey. Stair rows that follow each other are one climb; it is added up
 * only when the risers of all its flights were counted and nothing in it winds.
 *
 * A climb with enough risers for a storey is held against what storeys measure. A single flight is also held
 * against the ceiling at its foot, above which the floor it leads to lies.
 */
export function storeySlips(rows: readonly StageRow[]): RouteProblem[] {
  return climbs(rows).flatMap(climbSlips);
}

const stairOf = ({ stage }: StageRow) => (stage ? kindOf(stage).stair : null);

function climbs(rows: readonly StageRow[]): StageRow[][] {
  const all: StageRow[][] = [];
  let climb: StageRow[] | undefined;
  for (const row of rows) {
    if (stairOf(row) !== null) {
      if (climb) climb.push(row);
      else all.push((climb = [row]));
    } else climb = undefined;
  }
  return all;
}

function climbSlips(climb: readonly StageRow[]): RouteProblem[] {
  if (climb.some((row) => stairOf(row) === 'winding')) return [];
  const flights = climb.filter((row) => stairOf(row) === 'flight');
  let risers = 0;
  let total = 0;
  for (const { measures } of flights) {
    if (measures.risers === undefined || measures.rise === undefined) return [];
    risers += measures.risers;
    total += measures.risers * measures.rise;
  }
  const last = flights[flights.length - 1];
  if (!last || risers < FEW_RISERS) return [];
  const at = { severity: 'warning', rowIndex: last.rowIndex, measure: 'risers', risers, total } as const;
  const single = climb.length === 1 ? last.measures : undefined;
  if (single?.footCeiling !== undefined && single.rise !== undefined) {
    const least = single.footCeiling + FLOOR_DEPTH.least;
    const most = single.footCeiling + FLOOR_DEPTH.most;
    if (total >= least && total <= most) return [];
    const { footCeiling: ceiling, rise } = single;
    return [{ kind: 'storey against ceiling', ...at, rise, ceiling, least, most }];
  }
  // Several storeys in one climb are each a storey.
  const storeys = Math.max(1, Math.round(total / ((STOREY.least + STOREY.most) / 2)));
  const least = STOREY.least * storeys;
  const most = STOREY.most * storeys;
  if (total >= least && total <= most) return [];
  return [{ kind: 'not a storey', ...at, least, most }];
}
