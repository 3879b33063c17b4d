import { degrees } from '../measures/angle';
import type { Pose } from '../measures/piece';
import { poseOfHold, type Hold } from '../motion/hold';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import { CAUTIONS } from '../measures/cautions';
import { mmNeeded } from '../route/reason';
import { capital } from '../survey/words/capital';
import { isStair, kindOf, type StageName } from '../stages/kinds';
import type { Aid } from './aidFor';
import { passes, type CarryMove, type HandRoom, type MoveKind } from './carryMoves';
import { shownGiven, shownUp } from '../measures/shown';
import { RAISED, type MoveRoundLanding } from './roundLanding';

/** What a piece is carried along, as the crew calls it; a slope or a few steps outdoors are no stair to them. */
const wayWord = (stage: StageName): string =>
  stage === 'ramp' || stage === 'steps' ? stage : isStair(stage) ? 'stair' : 'way';

/** `long side along the stair`, as it is held level or along the pitch. */
function sideWords(hold: Hold, pose: Pose, stage: StageName): string {
  const way = wayWord(stage);
  if (pose === 'on end')
    return hold[0] === 'T' ? `broad face across the ${way}` : `broad face along the ${way}`;
  switch (hold[0]) {
    case 'L':
      return `long side along the ${way}`;
    case 'B':
      return pose === 'on edge' ? `broad face along the ${way}` : `long side across the ${way}`;
    default:
      return `sideways, broad face across the ${way}`;
  }
}

/** What is done to the piece where it stands, as an order. */
export function changeOrder(from: Hold, to: Hold): string {
  const [before, after] = [poseOfHold(from), poseOfHold(to)];
  if (before === after) {
    if (after === 'on end') return 'Turn it a quarter about, on end';
    return to[0] === 'L'
      ? 'Turn it a quarter, until its long side lies along the way'
      : 'Turn it a quarter, until its long side lies across the way';
  }
  if (after === 'on end') return 'Stand it on its short end';
  if (after === 'flat') return before === 'on end' ? 'Lay it down flat' : 'Lay it flat';
  return before === 'on end' ? 'Lay it down on its long edge' : 'Stand it on its long edge';
}

/** The move in plain words for the crew. */
export function moveOrder(move: CarryMove): string {
  const { kind, from, to, pose, stage, supposedAfter } = move;
  if (kind === 'no way shown' || !from || !to || !pose || !stage) {
    return passes(move)
      ? 'Not told: it passes here by itself, but how it comes here hangs on a step that is not settled'
      : 'No way shown: do not start the carry before this step is settled';
  }
  const order = orderOf(move, { kind, from, to, pose, stage });
  if (supposedAfter === undefined) return order;
  // Nobody has shown how it comes out of there: what follows holds for the pose in which it is supposed to.
  const held = poseOfHold(from);
  return `Only once step ${supposedAfter} is settled, and if it comes out of there ${held}, ${sideWords(from, held, stage)}: ${order}`;
}

/** What a move that is shown is known to have. */
interface Shown {
  readonly kind: Exclude<MoveKind, 'no way shown'>;
  readonly from: Hold;
  readonly to: Hold;
  readonly pose: Pose;
  readonly stage: StageName;
}

function orderOf(move: CarryMove, { kind, from, to, pose, stage }: Shown): string {
  const { hand, way } = move;
  if (kind === 'change') return changeOrder(from, to);
  if (kind !== 'pass') return landingOrder(move, kind, from, to, pose);
  const { stair, passedBy } = kindOf(stage);
  const turnedTo = move.pastDoor === 'away from the own' ? otherHand(hand) : hand;
  const side = turnedTo === undefined ? '' : ` to the ${turnedTo}`;
  const through =
    stair === 'flight'
      ? way === undefined
        ? `Along ${passedBy}, up or down`
        : `${way === 'up' ? 'Up' : 'Down'} ${passedBy}`
      : `${capital(passedBy)}${stair !== null && way ? `, ${way}` : ''}${side}`;
  const parts = [through, pose, sideWords(from, pose, stage)];
  // On the way through, as on a landing where it is stood up and laid down again.
  if (poseOfHold(from) !== pose && pose !== 'tilted' && pose !== 'leaning') {
    parts.splice(1, 2, `${changeOrder(from, onlyHold(pose)).toLowerCase()} on the way`);
  }
  if (poseOfHold(to) !== poseOfHold(from)) parts.push(`and come out ${poseOfHold(to)}`);
  const slope = shownGiven(degrees(move.tilt ?? 0), 0);
  if (stair === null && pose !== 'tilted' && pose !== 'leaning' && slope > 0) {
    parts.push(`not level yet beside the stair, tilted up to ${slope} degrees`);
  }
  if (move.overRail) parts.push('over the handrail');
  if (move.pastDoor) parts.push(PAST_DOOR[move.pastDoor]);
  const raise = shownUp(move.raise ?? 0);
  if ((move.raise ?? 0) >= RAISED) parts.push(`raised ${raise} mm${move.heavy ? raiseWords(raise) : ''}`);
  return parts.join(', ');
}

/** Where the passage goes on past a side door, and what lies between is too short. */
const PAST_DOOR: Readonly<Record<NonNullable<CarryMove['pastDoor']>, string>> = {
  'on past the next': 'then on past the next door until it is clear of it',
  'away from the own': 'away from the way on, until it is clear of the door',
  'back to the own': 'coming back to it from beyond',
  'back past the last': 'coming back past the last door',
};

const otherHand = (hand: CarryMove['hand']): CarryMove['hand'] =>
  hand === undefined ? undefined : hand === 'left' ? 'right' : 'left';

/** An order on the way round a landing. */
function landingOrder(
  { hand, way, tilt = 0, raise = 0, overRail, heavy, stage }: CarryMove,
  kind: MoveRoundLanding['kind'],
  from: Hold,
  to: Hold,
  pose: Pose,
): string {
  const side = hand === undefined ? '' : ` to the ${hand}`;
  const going = way === undefined ? '' : ` ${way}`;
  const winding = stage === 'winder';
  const over = overRail ? ', over the handrail' : '';
  switch (kind) {
    case 'approach':
      return `Bring it${going} ${winding ? 'to the winding treads' : 'on to the landing'}, ${pose}, ${sideWords(from, pose, stage ?? 'flight')}`;
    case 'tilt':
      return `Raise its upper end until it is tilted ${shownGiven(degrees(tilt), 0)} degrees`;
    case 'level':
      return pose === 'on end' ? 'Bring it upright' : 'Bring it level';
    case 'stand':
      return changeOrder(from, onlyHold(pose));
    case 'raise':
      return `Raise it ${mmNeeded(raise)}${over}${heavy ? raiseWords(raise) : ''}`;
    case 'quarter':
      return `Turn it a quarter${side}, ${pose}${stage === 'half landing' ? ', across the landing' : winding ? ', tread by tread' : ''}${over}`;
    case 'round':
      return `Turn it${side} with the winding treads, ${pose}, tread by tread${over}`;
    case 'second quarter':
      return `Turn it a second quarter${side}, ${pose}${winding ? ', tread by tread' : ''}${over}`;
    case 'aside':
      return `Move it sideways${side} across the landing, ${pose}, without turning it${over}`;
    case 'go on':
      return `Lay it on the slope and go on${going}, ${pose}, ${sideWords(to, pose, stage ?? 'flight')}`;
  }
}

/** What a raise asks of a piece above the team guideline, said where it happens. */
const raiseWords = (raise: number): string =>
  raise > RAISE_BY_HAND
    ? ': more than hands may do with this mass, and no aid is known; settle it before the carry'
    : ': this mass is above the team guideline; only as the written assessment says';

const onlyHold = (pose: Pose): Hold => (pose === 'on end' ? 'BL' : pose === 'flat' ? 'LT' : 'LB');

/** What the hands do at the piece. */
export function handWords({ hands, stage, kind }: CarryMove): string {
  if (hands === undefined || stage === undefined) return '';
  if (kind === 'change' || kind === 'stand') return 'one end down, hands off the edge that comes down';
  const room: Readonly<Record<HandRoom, string>> = {
    'ends and sides': 'at both ends and beside it',
    'ends only': 'at both ends; no room for a hand beside it',
  };
  return isStair(stage) ? `${room[hands]}; held back from above` : room[hands];
}

/** What the lower end bears [kg], as a figure or as what stands in its place; `mass` [kg] is the piece's. */
export function shareWords({ lowerShare, kind }: CarryMove, mass: number | undefined): number | string {
  if (kind === 'no way shown') return '';
  if (mass === undefined) return 'mass not given';
  if (lowerShare === 'tips') return 'all of it: it tips over the lower end';
  return lowerShare ?? 'not known: the slope of this move is not drawn';
}

/** The aid in words; where none can stand, that. */
export function aidWords({ aid, raise }: CarryMove): string {
  if (aid === undefined) return '';
  return AID_WORDS[aid](raise ?? 0);
}

const AID_WORDS: Readonly<Record<Aid, (raise: number) => string>> = {
  'mass not given': () => 'mass not given',
  'none needed by the guideline on the level': () => 'none needed by the guideline on the level',
  'none covered: no guidance holds on stairs': () => 'no guidance covers stairs: ask the assessment',
  skates: () => 'skates on the level floor',
  'stair climber': () =>
    'stair climber, where the assessment allows it and it has level floor to turn on at both ends',
  'none known: raised': (raise) => `raised ${mmNeeded(raise)}: no aid known`,
  'none known: over the rail': () => 'over the handrail: no aid known',
  'none known: turned over': () => 'no aid known for turning it over',
  'none known: tilted or leaning': () => 'no aid known while it is tilted or leans',
  'none known: landing': () => 'no aid known on the landing',
  'none known: ramp': () => 'no aid known on the ramp',
  'none known: winding treads': () => 'no aid known on winding treads',
};

/** The caution that belongs to a move. */
export function moveCaution({ stage, kind, verdict }: CarryMove): string {
  if (kind === 'no way shown') return CAUTIONS.route;
  const own = stage && isStair(stage) ? CAUTIONS.stairs : CAUTIONS.lifting;
  return verdict === 'tight' ? `${own} ${CAUTIONS.route}` : own;
}
