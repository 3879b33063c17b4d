import type { PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { leadsStraightOn, turns } from '../../stages/kinds';
import type { ShortOfPiece } from '../../stages/stairTurn/turnedPlace';
import { entryAt } from '../../lists/entryAt';
import type { JointBlock, JointRow } from '../jointRow';
import { flightMove } from './flightMove';
import { movedFrame, placedKey, placingOf, type Frame } from '../place/frame';
import { placeRoute, type PlacedRoute } from '../place/placedRoute';
import { endsOf, isLanding, runOf } from '../place/rowContext';
import { shortOf, tooShort } from '../shortFlightJoint';
import { turnJoint } from '../turnJoint';
import { landingPlanOf } from '../../stages/landing/landingPlanOf';
import { pastStraights } from './straights';

/** Level rows beyond a turn that are looked at. */
const MOST_BEYOND = 3;
/** What is above what is asked is of no use [mm]. */
const ENOUGH = 0.5;

/**
 * The keys of the turn at one end of flight i, in the scene and in the way's order: from the flight to beyond the turn, or
 * to the flight; undefined where no turn bears the padding.
 * @param side where the turn is: before the flight or after it
 * @param from how the piece is held before all of it
 * @param to how it is held after all of it
 */
export function stairTurnKeys(
  route: PlacedRoute,
  i: number,
  side: 'before' | 'after',
  piece: PieceSize,
  drawn: number,
  from: Hold,
  to: Hold,
): KeyAttitude[] | undefined {
  const step = side === 'after' ? 1 : -1;
  const flight = route.rows[i];
  const k = turnNear(route, i, side);
  if (flight?.joint.stage !== 'flight' || flight.supposed || k === undefined) return undefined;
  const turn = entryAt(route.rows, k);
  const beyond = [];
  for (let n = k + step; beyond.length < MOST_BEYOND; n += step) {
    const row = route.rows[n];
    if (!row || !leadsStraightOn(row.joint.stage)) break;
    beyond.push(row.joint);
  }
  const open = route.rows[k + (1 + beyond.length) * step] === undefined ? 'open' : 'straight';
  const lane = k === i + step ? undefined : laneBetween(route, i, k, side);
  const [onTurn, onFlight] = lane ? lane.rows : [turn.joint, flight.joint];
  const rows = side === 'after' ? [onFlight, onTurn, ...beyond] : [...beyond.reverse(), onTurn, onFlight];
  const block: JointBlock = {
    rows,
    before: side === 'after' ? 'straight' : open,
    after: side === 'after' ? open : 'straight',
  };
  const ask = { atLeast: drawn, enough: drawn + ENOUGH, from: [from] };
  const found = turnJoint(block, piece, ask, shortBeside(route, i, side, piece));
  const shown = found?.find((passage) => passage.to === to)?.shown();
  if (!shown) return undefined;
  const placed = placeRoute(rows).rows.filter(({ supposed }) => !supposed);
  const own = placed.find(({ row }) => rows[row] === onTurn);
  const [first] = placed;
  if (!own || !first) return undefined;
  // The joint begins where the stair does: level floor of the flight's own before it is no part of that.
  const [x, y, z] = own.entry.at;
  const entry: Frame = {
    ...own.entry,
    at: [side === 'after' ? x - flightMove.floorBefore(first) : x, y, z],
  };
  const placing =
    side === 'after'
      ? placingOf(entry, movedFrame(turn.entry, 0, lane?.aside ?? 0))
      : placingOf(
          movedFrame(own.exit, -runOf(onTurn, onFlight)),
          movedFrame(turn.exit, -runOf(turn.joint, route.rows[k + 1]?.joint), lane?.aside ?? 0),
        );
  return shown.motion.map((key) => placedKey(placing, key));
}

/** Number of the row of the turn to which the way leads straight on from the flight of row i, through doors and passages too; undefined where it leads to none. */
export function turnNear(route: PlacedRoute, i: number, side: 'before' | 'after'): number | undefined {
  const k = pastStraights(route.rows, i, side === 'after' ? 1 : -1);
  const turn = route.rows[k]?.joint;
  return turn && turns(turn.stage) && !isLanding(turn) ? k : undefined;
}

/**
 * What lies between the turn of row k and flight i taken as one straight floor, as narrow and low as it is anywhere: the
 * turn and the flight beside each other with it, and how far to the left of the turn's own middle it lies [mm].
 */
function laneBetween(
  route: PlacedRoute,
  i: number,
  k: number,
  side: 'before' | 'after',
): { readonly rows: readonly [JointRow, JointRow]; readonly aside: number } {
  const [turn, flight] = [entryAt(route.rows, k), entryAt(route.rows, i)];
  const between = route.rows.slice(Math.min(i, k) + 1, Math.max(i, k));
  const { joint } = turn;
  const { joint: stair } = flight;
  const ends = endsOf(stair);
  const end = side === 'before' ? ends.before : ends.after;
  const ceiling = end === 'foot' ? stair.measures.footCeiling : stair.measures.headCeiling;
  const ownSection = side === 'before' ? turn.exitSection : turn.entrySection;
  const sections = [
    ...between.map(({ entry, entrySection }) => ({ at: entry.at, ...entrySection })),
    { at: flight.entry.at, width: stair.measures.width ?? 0, height: ceiling ?? Infinity },
    { at: (side === 'before' ? turn.exit : turn.entry).at, width: Infinity, height: Infinity, ...ownSection },
  ];
  const height = Math.min(...sections.map((section) => section.height));
  const narrow = sections.reduce((one, other) => (other.width < one.width ? other : one));
  const frame = side === 'before' ? turn.exit : turn.entry;
  const [dx, dy] = [narrow.at[0] - frame.at[0], narrow.at[1] - frame.at[1]];
  const aside = -Math.sin(frame.heading) * dx + Math.cos(frame.heading) * dy;
  const rowsLong = between.reduce(
    (sum, { entry, exit }) => sum + Math.hypot(exit.at[0] - entry.at[0], exit.at[1] - entry.at[1]),
    0,
  );
  const floor = side === 'before' ? flightMove.floorBefore(flight) : flightMove.floorAfter(flight);
  const run = side === 'before' ? runOf(joint, route.rows[k + 1]?.joint) : 0;
  const straight = run + rowsLong + floor;
  const m = joint.measures;
  const corner = joint.stage === 'corner';
  // What the space to the facing wall holds beside the straight.
  const turnDeep = (corner ? m.widthOut : m.width) ?? 0;
  const widths = corner && side === 'after' ? { width: narrow.width } : { widthOut: narrow.width };
  const heights = corner ? { height } : { ceiling: height, height: Math.min(m.height ?? height, height) };
  const onTurn: JointRow = {
    ...joint,
    measures: {
      ...m,
      ...widths,
      ...heights,
      ...(side === 'before' ? { run: straight } : {}),
      // Nothing is used of the passage beyond a door in its side.
      ...(corner ? {} : { depth: 0 }),
    },
  };
  const space = side === 'before' ? straight : straight + turnDeep;
  const at =
    end === 'foot' ? { footSpace: space, footCeiling: height } : { headSpace: space, headCeiling: height };
  const onFlight: JointRow = { ...stair, measures: { ...stair.measures, width: narrow.width, ...at } };
  return { rows: [onTurn, onFlight], aside };
}

/** The flight as the turn sees it, where a landing stands at its other end and it does not hold the piece. */
function shortBeside(
  route: PlacedRoute,
  i: number,
  side: 'before' | 'after',
  piece: PieceSize,
): ShortOfPiece | undefined {
  const landing = route.rows[side === 'after' ? i - 1 : i + 1];
  const flight = route.rows[i];
  const plan =
    landing && isLanding(landing.joint)
      ? landingPlanOf(landing.joint.stage, landing.joint.measures)
      : undefined;
  if (!plan || !flight) return undefined;
  const { risers = 2 } = flight.joint.measures;
  if (!tooShort((risers - 1) * Math.hypot(plan.rise, plan.going), piece)) return undefined;
  // Up from the landing it is the upper flight.
  const up = (flight.joint.way === 'up') === (side === 'after');
  return shortOf(plan, up ? 'upper' : 'lower', risers);
}
