import type { StepMotion, StepPlace } from '../core/joint/walk/stepMotion';
import { RAISED } from '../core/crew/roundLanding';
import { degrees } from '../core/measures/angle';
import type { PieceSize } from '../core/measures/piece';
import { shownDown, shownGiven, shownUp } from '../core/measures/shown';
import { rotate } from '../core/space/quaternion';
import { isStair, roleOf, type StageName } from '../core/stages/kinds';
import { boxCorners } from './section';
import type { StepFacts } from './stepFacts';
import type { Shown } from './stepPlaces';

/** Notes under a picture, and sentences. */
export interface StepSays {
  readonly notes: readonly string[];
  readonly sentences: readonly string[];
}

/**
 * What is said under a step's main picture and in its words.
 * @param picture whether the ring stands in that picture
 */
export function stepSays(
  facts: StepFacts,
  shown: readonly Shown[],
  { ringed }: { readonly ringed: boolean },
): StepSays {
  if (shown.length === 0) {
    const none = facts.passes
      ? 'This part of the way could not be drawn: the place alone'
      : 'No way shown: the place alone';
    return { notes: [none], sentences: [`${none}.`] };
  }
  const closest = facts.decidingMeasure ? `${facts.closest} (${facts.decidingMeasure})` : facts.closest;
  const tight = shown.find(({ isTightest }) => isTightest);
  const high = shownUp(facts.raise);
  const raised = [...(high >= RAISED ? [`Raised on the way, at most ${high}`] : []), ...facts.supposed];
  // What decides may have no face here: the straight before a step, a wall that is not built.
  const decided = tight?.place.closest !== undefined;
  const least = decided ? 'the tightest' : 'where it has least room here';
  const place = shown.length > 1 && tight ? `place ${tight.number}, ${least}` : '';
  const said = facts.smaller
    ? [
        `Dashed: the size that just passes${place && `, at ${place}`}`,
        `No way shown for the piece itself: ${spareInWords(facts)}`,
      ]
    : [
        ...(place || ringed
          ? [[place && `Heavy: ${place}`, ringed && 'Ring: closest'].filter(Boolean).join('. ')]
          : []),
        `Closest ${closest}: ${spareOf(facts)}`,
      ];
  return {
    notes: [...said, ...raised],
    sentences: [
      `${facts.pieceName}, ${sizeWords(facts.size)}, ${facts.pose ?? ''}, in ${shown.length === 1 ? 'one place' : `${shown.length} places, numbered along the way`}.`,
      ...(facts.smaller
        ? said.map((word) => `${word}.`)
        : [
            ...(place && tight
              ? [`Place ${tight.number} is ${decided ? 'the tightest' : 'where it has least room here'}.`]
              : []),
            `Closest ${closest}: ${spareInWords(facts)}.`,
          ]),
      ...raised.map((word) => `${word}.`),
    ],
  };
}

const sizeWords = ({ length, breadth, thickness }: PieceSize): string =>
  [length, breadth, thickness].map((side) => shownGiven(side)).join(' x ');

const spareOf = ({ clearance }: StepFacts): string =>
  clearance === undefined ? '' : `${figure(clearance)} a side`;

const spareInWords = ({ clearance = 0 }: StepFacts): string =>
  clearance >= 0 ? `${figure(clearance)} a side to spare` : `${-figure(clearance)} a side too large`;

/** Clearances as STAGES has them, rounded as in a sentence: never shown greater. */
const figure = (value: number): number => shownDown(value);

/** Heights nearer to each other than this are one [mm]. */
const LEVEL_WITHIN = 3;

/** The floor above which heights are told at a stage. */
export const floorWords = (stage: StageName): string =>
  roleOf(stage) === 'landing' ? 'the landing' : isStair(stage) ? 'the floor at the foot' : 'the floor';

/** `low end 40, high end 830 above the landing`: how high the piece's lower side is, and above which floor. */
export function heightWords(one: Shown, step: StepMotion, { stage }: StepFacts): string {
  const above = floorWords(stage);
  const [low, high] = heightsOfEnds(one, step);
  if (high - low <= LEVEL_WITHIN) return low < 0 ? `${-low} below ${above}` : `${low} above ${above}`;
  const aside = (z: number): string => `${Math.abs(z)} ${z < 0 ? 'below' : 'above'}`;
  return low < 0
    ? `low end ${aside(low)}, high end ${aside(high)} ${above}`
    : `low end ${low}, high end ${high} above ${above}`;
}

/** `0 and 524`, `35 below and 830`: the heights of its two ends, where it is said above what. */
export function endsInWords(one: Shown, step: StepMotion): string {
  const [low, high] = heightsOfEnds(one, step);
  const told = (z: number): string => (z < 0 ? `${-z} below` : String(z));
  return high - low <= LEVEL_WITHIN ? told(low) : `${told(low)} and ${told(high)}`;
}

/** Heights [mm, whole] of its two ends above the lower floor of the step. */
function heightsOfEnds({ solid }: Shown, { exit }: StepMotion): readonly [number, number] {
  const floor = Math.min(0, exit.at[2]);
  const [low, high] = endHeights(solid);
  return [shownGiven(low - floor, 0), shownGiven(high - floor, 0)];
}

/** Heights [mm] of the lowest corners at the two ends of the piece, of its breadth where it stands on end; the lower first. */
function endHeights(solid: Shown['solid']): readonly [number, number] {
  const axis = slopeOf(solid.turn, 0) >= STANDING ? 1 : 0;
  const corners = boxCorners(solid);
  const lowest = (end: 0 | 1): number =>
    Math.min(...corners.filter((_, i) => ((i >> axis) & 1) === end).map(([, , z]) => z));
  const ends = [lowest(0), lowest(1)] as const;
  return ends[0] <= ends[1] ? ends : [ends[1], ends[0]];
}

/** A long side nearer to the plumb line than this [degrees] stands on end. */
const STANDING = 85;

/** Slope [degrees, whole] of one of a box's sides. */
const slopeOf = (turn: StepPlace['turn'], axis: 0 | 1): number =>
  shownGiven(
    degrees(Math.asin(Math.min(1, Math.abs(rotate(turn, axis === 0 ? [1, 0, 0] : [0, 1, 0])[2])))),
    0,
  );

/** `tilted 24°`, `leaning 30°`, `on end`: how a place is held, by the slope of its long side. */
export function placeInWords({ turn, tilt }: Pick<StepPlace, 'turn' | 'tilt'>): string {
  const slope = slopeOf(turn, 0);
  if (slope >= STANDING) return 'on end';
  if (slope > 0) return `tilted ${slope}°`;
  const lean = shownGiven(degrees(tilt), 0);
  return lean === 0 ? 'level' : `leaning ${lean}°`;
}
