import type { JointRow } from '../jointRow';
import { isStair, turns, type StageName } from '../../stages/kinds';
import type { LooseStageMeasures } from '../../stages/measures';
import { ceilingBeforeRiser } from './buildFlight';
import type { FlightCeiling } from './flightCeiling';

/** Whether a row is a landing or winding treads, where the way turns between two flights. */
export const isLanding = (row: JointRow | undefined): boolean =>
  row !== undefined && turns(row.stage) && isStair(row.stage);

/** Whether a stage is one level floor with those beside it; the car of a lift is a floor of its own. */
export const isLevel = (stage: StageName): boolean => !isStair(stage) && stage !== 'lift';

/** The end of a flight that faces the row before it, and the one that faces the row after it. */
export const endsOf = (
  row: JointRow,
): { readonly before: 'foot' | 'head'; readonly after: 'foot' | 'head' } =>
  row.way === 'down' ? { before: 'head', after: 'foot' } : { before: 'foot', after: 'head' };

const spaceAt = (flight: JointRow, end: 'foot' | 'head'): number | undefined =>
  end === 'foot' ? flight.measures.footSpace : flight.measures.headSpace;

const ceilingAt = (flight: JointRow, end: 'foot' | 'head'): number | undefined =>
  end === 'foot' ? flight.measures.footCeiling : flight.measures.headCeiling;

/**
 * The straight in the arm that leaves a turning row [mm]: its Run; before a flight else what the flight's space leaves;
 * none before a passage or a room, which begin at once.
 */
export function runOf(row: JointRow, next: JointRow | undefined): number {
  const { run, width = 0, depth } = row.measures;
  if (!turns(row.stage) || next === undefined) return 0;
  if (next.stage === 'passage' || next.stage === 'room') return 0;
  if (run !== undefined) return run;
  if (next.stage !== 'flight') return 0;
  const space = spaceAt(next, endsOf(next).before);
  if (space === undefined) return 0;
  if (row.stage === 'corner') return Math.max(0, space - width);
  if (row.stage === 'side door') return Math.max(0, space - width - (depth ?? 0));
  return 0;
}

/**
 * Level floor of the flight's own at one of its ends [mm], as wide as the flight.
 * @param beside the row at that end
 * @param side where on the way that row is: before the flight, or after it
 */
export function floorBeside(
  flight: JointRow,
  end: 'foot' | 'head',
  beside: JointRow | undefined,
  side: 'before' | 'after',
): number {
  const space = spaceAt(flight, end) ?? 0;
  if (beside === undefined || beside.stage === 'door' || beside.stage === 'lift') return space;
  // A turn before the flight brings the straight with it; one after it leaves it to the flight.
  if (side === 'before') return 0;
  const { width = 0, widthOut = 0, depth = 0 } = beside.measures;
  if (beside.stage === 'corner') return Math.max(0, space - widthOut);
  if (beside.stage === 'side door') return Math.max(0, space - width - depth);
  return 0;
}

/** Whether a side door leads into its passage: first, after a door, or where the row before is not as wide as it. */
export function leadsIn(row: JointRow, before: JointRow | undefined): boolean {
  if (before === undefined || before.stage === 'door') return true;
  if (before.stage === 'flight') return false;
  const { width, widthOut } = before.measures;
  const wide = turns(before.stage) ? widthOut : width;
  return wide !== row.measures.widthOut;
}

/** The least ceiling [mm] over a level row's floor: its own, and what is given for the end of a flight beside it. */
export function ceilingWith(own: number, before: JointRow | undefined, after: JointRow | undefined): number {
  const fromBefore = before?.stage === 'flight' ? ceilingAt(before, endsOf(before).after) : undefined;
  const fromAfter = after?.stage === 'flight' ? ceilingAt(after, endsOf(after).before) : undefined;
  return Math.min(own, fromBefore ?? Infinity, fromAfter ?? Infinity);
}

/**
 * How the ceiling lines of the flights beside a straight row run on over it, at its beginning and at its end; undefined
 * where no flight's line runs on.
 * @param length of the row [mm]
 */
export function flightCeilings(
  length: number,
  before: JointRow | undefined,
  after: JointRow | undefined,
): { readonly start: FlightCeiling | undefined; readonly end: FlightCeiling | undefined } {
  const from = (
    flight: JointRow | undefined,
    end: 'foot' | 'head' | undefined,
  ): FlightCeiling | undefined => {
    if (flight?.stage !== 'flight' || end !== 'foot') return undefined;
    const { height: headroom, rise, going, footCeiling } = flight.measures;
    if (headroom === undefined || rise === undefined || going === undefined) return undefined;
    const over = Math.min(length, ceilingBeforeRiser({ headroom, rise, going, footCeiling }));
    return over > 0 ? { over, height: rise + headroom } : undefined;
  };
  return {
    start: before && from(before, endsOf(before).after),
    end: after && from(after, endsOf(after).before),
  };
}

/**
 * A flight with the ceilings at its ends as low as those of the level rows beside it: over one floor the least holds. One
 * that stands alone is no higher above its slope than a lower ceiling at its foot, see `heightUnderLintel`.
 */
export function withLeastCeilings(
  row: JointRow,
  before: JointRow | undefined,
  after: JointRow | undefined,
): JointRow {
  if (row.stage !== 'flight') return row;
  const ends = endsOf(row);
  const least = (end: 'foot' | 'head'): number | undefined => {
    const given = ceilingAt(row, end);
    const beside = ends.before === end ? before : after;
    return given === undefined ? undefined : Math.min(given, levelCeiling(beside));
  };
  const footCeiling = least('foot');
  const headCeiling = least('head');
  const height = row.standsAlone ? heightUnderLintel(row.measures, footCeiling) : row.measures.height;
  const told = { footCeiling, headCeiling, height };
  const known = Object.entries(told).filter(([, value]) => value !== undefined);
  return { ...row, measures: { ...row.measures, ...Object.fromEntries(known) } };
}

/**
 * The headroom [mm] over steps or a ramp with a ceiling at their foot. They lead out from under no stairwell: a ceiling
 * there that is lower than their own begins where they do, and not where it would meet theirs. They are taken to be no
 * higher above their slope than that.
 * @param measures those of the flight that they are: headroom, rise and the foot ceiling of their own [mm]
 * @param foot the ceiling over the floor at their foot [mm]; undefined where nothing limits it
 */
export function heightUnderLintel(
  { height, rise = 0, footCeiling = Infinity }: Pick<LooseStageMeasures, 'height' | 'rise' | 'footCeiling'>,
  foot: number | undefined,
): number | undefined {
  // Their own roof reaches over the ground before them.
  if (foot === undefined || height === undefined || foot >= footCeiling) return height;
  return Math.max(1, Math.min(height, foot - rise));
}

/** The ceiling over a level row's own floor [mm]; Infinity where it gives none. */
function levelCeiling(row: JointRow | undefined): number {
  switch (row?.stage) {
    case 'passage':
    case 'room':
    case 'corner':
      return row.measures.height ?? Infinity;
    case 'side door':
      return row.measures.ceiling ?? row.measures.height ?? Infinity;
    default:
      return Infinity;
  }
}
