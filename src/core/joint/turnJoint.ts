import { Lately } from '../lists/lately';
import type { PieceSize } from '../measures/piece';
import type { KeyAttitude } from '../space/motion';
import { stairTurnMotion } from '../stages/stairTurn/stairTurnMotion';
import { stairTurnWays, type StairTurnAsk } from '../stages/stairTurn/stairTurn';
import type { ShortOfPiece, StairTurnPlan } from '../stages/stairTurn/turnedPlace';
import type { JointAsk, JointBlock, JointPassage } from './jointRow';
import { placedKey, type Placing } from './place/frame';
import { stairAndLevel, StairBlock } from './stairBlock';
import { roleOf } from '../stages/kinds';

/** Padding that is of no more interest [mm a side]. */
const AMPLE = 300;
/** Cosine of an angle that passes for a right one; and rounding of a place [mm]. */
const SQUARE = 1e-6;

/**
 * A flight and a turn beside it, perhaps with narrower rows beyond: the family of turns at a stair's end
 * (`stairTurnWays`) in the space that all of them leave open. Across the flight that is the lane that flight and turn
 * share; along the way on, what the turn and every level row beyond it share, each where it stands.
 *
 * Supposed: nothing but the block; what is wider or higher than all of them is not used.
 * @param short the flight ends before the piece does, at a landing: the motion is drawn from the turn's beginning on
 * @returns undefined where the rows are not one flight with a straight beyond it and a square turn beside it, with level
 *   rows that lead straight on
 */
export function turnJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
  short?: ShortOfPiece,
): JointPassage[] | undefined {
  const made = stairAndLevel(block.rows);
  if (made === undefined || made.straightRows !== 1) return undefined;
  if ((made.order === 'stair first' ? block.before : block.after) !== 'straight') return undefined;
  const longest = piece.length + 2 * AMPLE;
  const { stood, seen } = SEEN.get(block, longest, () => {
    const standing = new StairBlock(block, longest, made.order, made.straightRows);
    return { stood: standing, seen: planOf(standing) };
  });
  if (!seen) return undefined;
  const { placing } = seen;
  const plan: StairTurnPlan = short ? { ...seen.plan, short } : seen.plan;
  // A room in which the way ends has to hold all of it beyond the turn.
  const ending = stood.level[stood.level.length - 1];
  const roomLeaves =
    ending && ending.exitSection === undefined
      ? ((ending.joint.measures.length ?? 0) - piece.length) / 2 - 3
      : Infinity;
  if (roomLeaves < (ask.atLeast ?? 0)) return [];
  const asked: StairTurnAsk = {
    ...(ask.atLeast === undefined ? {} : { atLeast: ask.atLeast }),
    enough: Math.min(ask.enough ?? AMPLE, roomLeaves),
    ...(ask.from && stood.stairFirst ? { holds: ask.from } : {}),
  };
  const passages: JointPassage[] = [];
  for (const { hold, fit, passage } of stairTurnWays(plan, piece, 'every', asked)) {
    if (fit.path.length === 0) continue;
    // A head is solved up and off the flight, a foot from the floor up it.
    const [onFlight, beyond] = plan.end === 'head' ? [passage.from, passage.to] : [passage.to, passage.from];
    const [from, to] = stood.stairFirst ? [onFlight, beyond] : [beyond, onFlight];
    if (ask.from && !ask.from.includes(from)) continue;
    passages.push({
      ...passage,
      from,
      to,
      shown: () => {
        const motion = stairTurnMotion(plan, piece, hold, fit);
        return stood.drawn(
          motion.map((key): KeyAttitude => placedKey(placing, key)),
          passage.answer.clearance,
        );
      },
    });
  }
  return passages;
}

/** The turn as its family sees it, and how that stands in the block. */
interface SeenTurn {
  readonly plan: StairTurnPlan;
  readonly placing: Placing;
}

/** Blocks looked at lately: one is asked for each way of being held in turn. */
const SEEN = new Lately<JointBlock, { readonly stood: StairBlock; readonly seen: SeenTurn | undefined }>(32);

function planOf(stood: StairBlock): SeenTurn | undefined {
  const [flight] = stood.stair;
  const [turning, ...beyond] = stood.level;
  if (!flight || flight.joint.stage !== 'flight' || !turning) return undefined;
  const { width = 0, height = 0, rise = 0, going = 0 } = flight.joint.measures;
  if (!(rise > 0 && going > 0)) return undefined;
  // Where the way leaves the turn, seen from the stair.
  const out = stood.stairFirst ? turning.exit : turning.entry;
  const at = out && stood.seen(out.at);
  const heading = (out?.heading ?? 0) + stood.placing.turn + (stood.stairFirst ? 0 : Math.PI);
  if (!at || Math.abs(Math.cos(heading)) > SQUARE) return undefined;
  const left = Math.sin(heading) > 0;
  // What is open across the way on, and under what.
  let [near, far, head] = [-Infinity, Infinity, Infinity];
  const leaves = stood.stairFirst ? turning.exitSection : turning.entrySection;
  const across = [
    { at: out.at, section: leaves },
    ...beyond.flatMap((row) => [
      { at: row.entry.at, section: row.entrySection },
      ...(row.exitSection ? [{ at: row.exit.at, section: row.exitSection }] : []),
    ]),
  ];
  for (const row of beyond) {
    const turned = row.entry.heading + stood.placing.turn;
    if (Math.abs(Math.cos(turned)) > SQUARE || roleOf(row.joint.stage) === 'turn') return undefined;
  }
  for (const { at: point, section } of across) {
    if (!section) continue;
    const [x] = stood.seen(point);
    near = Math.max(near, x - section.width / 2);
    far = Math.min(far, x + section.width / 2);
    head = Math.min(head, section.height);
  }
  const comes = stood.stairFirst ? turning.entrySection : turning.exitSection;
  const comesAt = stood.stairFirst ? turning.entry.at : turning.exit.at;
  if (!comes) return undefined;
  const middle = stood.seen(comesAt)[1];
  const right = Math.max(stood.right, middle - comes.width / 2);
  const top = Math.min(stood.left, middle + comes.width / 2);
  const edge = flightEdge(stood);
  // Floor of the flight's own is under its own ceiling.
  const levelSide = stood.stairFirst ? flight.exit : flight.entry;
  const own = stood.stairFirst ? flight.exitSection : flight.entrySection;
  const overOwn = stood.seen(levelSide.at)[0] - edge > SQUARE ? (own?.height ?? 0) : Infinity;
  const plan: StairTurnPlan = {
    end: stood.atFoot ? 'foot' : 'head',
    flightWidth: Math.min(width, top - right),
    headroom: height,
    rise,
    going,
    straight: Math.max(0, near - edge),
    passageWidth: far - Math.max(near, edge),
    ceiling: Math.min(comes.height, turning.joint.measures.ceiling ?? comes.height, overOwn),
    passageCeiling: head,
    overRail: 0,
  };
  if (!(plan.flightWidth > 0 && plan.passageWidth > 0)) return undefined;
  // From the outer wall towards the side to which the way leaves.
  const placing: Placing = { mirrored: !left, turn: 0, shift: [edge, left ? right : top, stood.floor] };
  return { plan, placing };
}

/** Where the flight ends at the level floor: its first riser, or its last nosing. */
function flightEdge(stood: StairBlock): number {
  const [flight] = stood.stair;
  if (!flight) return 0;
  const { going = 0, risers = 1 } = flight.joint.measures;
  const plane = stood.stairFirst ? flight.entry : flight.exit;
  return stood.seen(plane.at)[0] + (risers - 1) * going;
}
