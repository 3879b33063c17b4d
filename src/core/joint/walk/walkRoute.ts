import type { PieceSize } from '../../measures/piece';
import { kindOf } from '../../stages/kinds';
import type { JointRow } from '../jointRow';
import { movedFrame } from '../place/frame';
import { placeRoute, type PlacedRoute, type PlacedRow } from '../place/placedRoute';
import { isLanding } from '../place/rowContext';
import { carriedSizes, standsAlike, turnOfCarriage } from './carriage';
import type { WalkKey } from './carrier';
import { flightMove } from './flightMove';
import { levelTo, stationAfter } from './levelMoves';
import { passFlight } from './passFlight';
import { passLanding } from './passLanding';
import { passAsOne } from './passAsOne';
import { passFromFarther, passLevel } from './passLevel';
import { GROUND_AWAY } from './reach';
import { floorBeforeStair } from './straights';
import { changeTo, takeUpIn, tiltsFor } from './takingUp';
import { turnOnToStair } from './turnsAtStairs';
import { GAP, OFF, Walk, type NotDrawn, type WalkBlock, type WalkStep } from './walk';

export type { WalkStep } from './walk';

/** One motion of the piece through the scene of its route. */
export interface RouteWalk {
  readonly route: PlacedRoute;
  readonly keys: readonly WalkKey[];
  /** Padding [mm a side] with which every move is shown free. */
  readonly padding: number;
  /** Undefined when the motion leads from before the first row to behind the last. */
  readonly notDrawn: NotDrawn | undefined;
  /** Rows where a search joined what is drawn. */
  readonly searched: readonly number[];
}

/**
 * Draws the motion of a chain as one: from before the first row to behind the last, each step's own motion (moves in
 * plan among what stands in the layer that the piece fills, moves in a flight's section, families round landings),
 * put into the route's one scene and joined by straight moves, tilted and turned where there is room. Every move is
 * shown free for the piece with the padding before it is kept.
 *
 * @param rows with every length, hand, way and place concrete
 * @param steps what is done at each row
 * @param padding for which the motion is to be free [mm a side]
 */
export function walkRoute(
  rows: readonly JointRow[],
  steps: readonly WalkStep[],
  piece: PieceSize,
  padding: number,
): RouteWalk {
  const walked = rows.map((row) => asWalked(row, piece));
  const route = placeRoute(walked);
  const walk = new Walk(route, walked, steps, piece, padding);
  const notDrawn = wholeWay(walk);
  return { route, keys: walk.carrier.keys, padding, notDrawn, searched: [...walk.carrier.searched] };
}

/** No piece need be carried higher above a floor, whatever its ceiling [mm over its length]. */
const OVERHEAD = 2000;

/** Steps and ramps are walked as the flight that they are, and no higher under the sky than anybody need. */
function asWalked(row: JointRow, { length }: PieceSize): JointRow {
  const measures = kindOf(row.stage).solvedAsFlight?.(row.measures);
  const flight = measures ? { ...row, stage: 'flight' as const, measures, standsAlone: true } : row;
  if (flight.stage !== 'flight') return flight;
  const { height, footCeiling, headCeiling } = flight.measures;
  const most = length + OVERHEAD;
  const under = (told: number | undefined): number | undefined => told && Math.min(told, most);
  if (![height, footCeiling, headCeiling].some((told) => told !== undefined && told > most)) return flight;
  const low = { height: under(height), footCeiling: under(footCeiling), headCeiling: under(headCeiling) };
  const known = Object.entries(low).filter(([, told]) => told !== undefined);
  return { ...flight, measures: { ...flight.measures, ...Object.fromEntries(known) } };
}

/** From before the first row to behind the last; what could not be drawn, else. */
function wholeWay(walk: Walk): NotDrawn | undefined {
  const [first] = walk.route.rows;
  if (!first) return { row: 0, what: 'start' };
  const begun = begin(walk, first);
  if (begun) return begun;
  let taken: WalkBlock | undefined;
  for (let i = 0; i < walk.route.rows.length; i++) {
    walk.at = i;
    // As it was shown, where rows are passed as one space; else each by itself.
    const asOne = walk.steps[walk.rowAt(i).row]?.asOne;
    const passed = asOne && asOne !== taken ? passAsOne(walk, i, asOne) : undefined;
    taken = asOne;
    if (passed !== undefined) {
      i = passed;
      continue;
    }
    const failed = pass(walk, i);
    if (failed) return failed;
  }
  return finish(walk);
}

/** Before the first row, outdoors; or on the flight that a first landing supposes. */
function begin(walk: Walk, first: PlacedRow): NotDrawn | undefined {
  const stretch = walk.stretchOf(0);
  const sizes = carriedSizes(walk.piece, walk.carriage, walk.drawn);
  if (first.joint.stage === 'flight' && first.supposed) {
    const key = flightMove.lying(walk.route, 0, walk.piece, walk.carriage.hold, walk.drawn, 'far');
    return walk.carrier.stand({ ...key, row: first.row }, stretch) ? undefined : { row: 0, what: 'start' };
  }
  const inside = floorBeforeStair(walk.route.rows, 0);
  const half = Math.hypot(sizes.p, sizes.q, sizes.height) / 2;
  const places = inside
    ? [Math.max(sizes.p / 2 + GAP, Math.min(inside / 2, inside - sizes.p / 2 - GAP))]
    : [-GROUND_AWAY - half, -GROUND_AWAY / 5 - half, -sizes.p / 2 - GAP];
  const stands = places.some((x) => {
    const frame = movedFrame(first.entry, x, 0, sizes.height / 2 + OFF);
    return walk.carrier.stand({ at: frame.at, turn: turnOfCarriage(walk.carriage), row: 0 }, stretch);
  });
  return stands ? undefined : { row: 0, what: 'start' };
}

/** Moves on until the piece is past placed row i. */
function pass(walk: Walk, i: number): NotDrawn | undefined {
  const { joint, row } = walk.rowAt(i);
  const step = walk.steps[row];
  if (!step) return { row, what: 'start' };
  if (joint.stage === 'flight') return passFlight(walk, i, step);
  if (isLanding(joint)) return passLanding(walk, i, step);
  // A turn that was passed with the stair at whose end it is, and what lies between them.
  if (i < walk.turned || i < walk.onto) return undefined;
  if (i === walk.turned) return step.leaves === step.to ? undefined : changeTo(walk, i, step.leaves, 'after');
  const change = changeTo(walk, i, step.from, 'before');
  if (change) return change;
  if (turnOnToStair(walk, i, step)) return undefined;
  const tilts = tiltsFor(walk, i, step);
  let failed: NotDrawn | undefined;
  for (const wanted of tilts) {
    failed = standsAlike(walk.carriage, wanted)
      ? passLevel(walk, i, step)
      : // Tilted where it can be and can go on from there.
        takeUpIn(walk, i, wanted, 'before', () => passFromFarther(walk, i, step));
    if (!failed) break;
  }
  if (failed) return failed;
  return step.leaves === step.to ? undefined : changeTo(walk, i, step.leaves, 'after');
}

/** Behind the last row, outdoors. */
function finish(walk: Walk): NotDrawn | undefined {
  const i = walk.route.rows.length - 1;
  const { joint, row, supposed, exitSection } = walk.rowAt(i);
  if (joint.stage === 'room' || joint.stage === 'lift' || joint.stage === 'flight' || supposed)
    return undefined;
  if (isLanding(joint) || !exitSection) return undefined;
  const station = stationAfter(walk, i, walk.carriage.hold);
  if (station && walk.since > i) return undefined;
  if (!station) return { row, what: 'end' };
  return levelTo(walk, station.frame, station.from, station.to, walk.carriage.hold, i)
    ? undefined
    : { row, what: 'end' };
}
