import { handlers } from '../carrying/handlers';
import { GUIDELINE_EACH } from '../carrying/teamLimit';
import type { Pose } from '../measures/piece';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import { kindOf, type StageName } from '../stages/kinds';

/** What an aid is asked for: one move of one piece. */
export interface AidedMove {
  readonly stage: StageName;
  readonly pose: Pose;
  /** It is stood up, laid down or turned where it is. */
  readonly change: boolean;
  /** [mm] */
  readonly raise: number;
  readonly overRail: boolean;
}

const NONE_KNOWN = [
  'none known: raised',
  'none known: over the rail',
  'none known: turned over',
  'none known: tilted or leaning',
  'none known: landing',
  'none known: winding treads',
  'none known: ramp',
] as const;

/** What can stand under a move; `none known` says so, which is an answer too. */
export type Aid =
  | (typeof NONE_KNOWN)[number]
  | 'mass not given'
  | 'none needed by the guideline on the level'
  | 'none covered: no guidance holds on stairs'
  | 'skates'
  | 'stair climber';

/** Whether a move is one for which no aid is known. */
export const isNoneKnown = (aid: Aid | undefined): boolean => NONE_KNOWN.some((one) => one === aid);

/** Whether a mass [kg] is above the guideline for the largest team that has one, `teamLimit` of three. */
export const aboveGuideline = (mass: number): boolean => !handlers({ mass, limitEach: GUIDELINE_EACH }).ok;

/**
 * The aid that can stand where a move is made and do what it asks: skates a level floor under a level piece, a stair
 * climber a straight flight under a piece that is not raised off it and does not lean. For everything else none is known, and none is named.
 *
 * @source what an aid needs under it: common practice, no source; the guideline is HSE L23, see `teamLimit`.
 * @param mass of the piece [kg]; undefined where it is not given
 * @example aidFor({ stage: 'winder', pose: 'on edge', change: false, raise: 0, overRail: false }, 120)
 * // 'none known: winding treads'
 */
export function aidFor(move: AidedMove, mass: number | undefined): Aid {
  if (mass === undefined) return 'mass not given';
  const { stair } = kindOf(move.stage);
  const heavy = aboveGuideline(mass);
  if (!heavy) {
    return stair === null
      ? 'none needed by the guideline on the level'
      : 'none covered: no guidance holds on stairs';
  }
  if (move.overRail) return 'none known: over the rail';
  if (move.raise > RAISE_BY_HAND) return 'none known: raised';
  if (move.change) return 'none known: turned over';
  if (stair === 'winding') return 'none known: winding treads';
  if (stair === 'landing') return 'none known: landing';
  // It climbs steps: on a slope it only rolls.
  if (move.stage === 'ramp') return 'none known: ramp';
  // What leans over to one side stands on no plate of it.
  if (stair === 'flight') return move.pose === 'leaning' ? 'none known: tilted or leaning' : 'stair climber';
  return move.pose === 'tilted' || move.pose === 'leaning' ? 'none known: tilted or leaning' : 'skates';
}
