import type { PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import type { ShortOfPiece } from '../../stages/stairTurn/turnedPlace';
import type { JointBlock } from '../jointRow';
import { placedKey, placingOf, START } from '../place/frame';
import type { PlacedRoute } from '../place/placedRoute';
import { isLanding } from '../place/rowContext';
import { shortOf, tooShort } from '../shortFlightJoint';
import { turnJoint } from '../turnJoint';
import { landingPlanOf } from './landingMove';

/** Level rows beyond a turn that are looked at. */
const MOST_BEYOND = 3;
/** What is above what is asked is of no use [mm]. */
const ENOUGH = 0.5;

/**
 * The keys of the turn at one end of flight i, in the scene and in the way's order: from the flight to beyond the turn, or
 * to the flight; undefined where no turn bears the padding.
 * @param side where the turn is: before the flight or after it
 * @param from how the piece is held before all of it, and @param to after
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
  const turn = route.rows[i + step];
  if (flight?.joint.stage !== 'flight' || flight.supposed || !turn) return undefined;
  const beyond = [];
  for (let k = i + 2 * step; beyond.length < MOST_BEYOND; k += step) {
    const row = route.rows[k];
    if (row?.joint.stage !== 'door' && row?.joint.stage !== 'passage') break;
    beyond.push(row);
  }
  const open = route.rows[i + (2 + beyond.length) * step] === undefined ? 'open' : 'straight';
  const placed = side === 'after' ? [flight, turn, ...beyond] : [...beyond.reverse(), turn, flight];
  const block: JointBlock = {
    rows: placed.map(({ joint }) => joint),
    before: side === 'after' ? 'straight' : open,
    after: side === 'after' ? open : 'straight',
  };
  const ask = { atLeast: drawn, enough: drawn + ENOUGH, from: [from] };
  const found = turnJoint(block, piece, ask, shortBeside(route, i, side, piece));
  const entry = placed[0]?.entry;
  const shown = found?.find((passage) => passage.to === to)?.shown();
  if (!shown || !entry) return undefined;
  const placing = placingOf(START, entry);
  return shown.motion.map((key) => placedKey(placing, key));
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
  const plan = landing && isLanding(landing.joint) ? landingPlanOf(landing.joint) : undefined;
  if (!plan || !flight) return undefined;
  const { risers = 2 } = flight.joint.measures;
  if (!tooShort((risers - 1) * Math.hypot(plan.rise, plan.going), piece)) return undefined;
  // Up from the landing it is the upper flight.
  const up = (flight.joint.way === 'up') === (side === 'after');
  return shortOf(plan, up ? 'upper' : 'lower', risers);
}
