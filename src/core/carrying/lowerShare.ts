import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { ADVICE } from './advice';
import { GUIDELINE_EACH, TEAM_FACTORS } from './teamLimit';

/** A piece held by two people on a slope. */
export interface LowerShareInput {
  /** [kg] */
  readonly mass: number;
  /** Distance between the two grips [mm]. */
  readonly gripSpacing: number;
  /** Centre of mass, square above the line of the grips and midway along it [mm]; negative below. */
  readonly massHeight: number;
  /** Pitch of the line of the grips, 0 to 60 degrees [rad]. */
  readonly pitch: number;
}

/** What one of a team of two may take by the guideline [kg]; level floor, since nothing covers stairs. */
const ONE_OF_TWO = GUIDELINE_EACH * TEAM_FACTORS[1];

const STATICS = 'statics: moments about the upper grip, both carriers lifting straight up';

/**
 * What the lower of two carriers holds up on a slope, both lifting straight up.
 *
 * @source moments about the upper grip, share = 1/2 + (h/d) tan(pitch); the crate of Young & Freedman, University
 * Physics, ch. 11, is one case.
 * @param input mass [kg], grip spacing [mm], mass height [mm] (negative below the grips), pitch [rad] of 0 to 60 degrees
 * @returns mass on the lower carrier [kg]
 * @problems `impossible` when the share falls outside 0..mass: the piece tips over a carrier.
 * @example lowerShare({ mass: 200, gripSpacing: 1250, massHeight: 250, pitch: Math.PI / 4 }) // 140
 */
export function lowerShare(input: LowerShareInput, working?: Working): Outcome<number> {
  const { mass, gripSpacing, massHeight, pitch } = input;
  const slope = Math.tan(pitch);
  const share = 0.5 + (massHeight / gripSpacing) * slope;
  working?.({ what: 'Slope', formula: 'tan(pitch)', value: slope, unit: '', source: 'geometry' });
  working?.({
    what: 'Part on the lower carrier',
    formula: '1/2 + (mass_height / grip_spacing) x slope',
    value: share,
    unit: '',
    source: STATICS,
  });
  if (share < 0 || share > 1) {
    return refused({
      kind: 'impossible',
      argument: 'mass_height',
      got: massHeight,
      because:
        share > 1
          ? 'the piece tips over the lower carrier; grip further apart, or nearer the height of its centre of mass'
          : 'the piece tips over the upper carrier; grip further apart, or nearer the height of its centre of mass',
    });
  }
  const lower = share * mass;
  if (working) {
    working({
      what: 'On the upper carrier',
      formula: 'mass - lower share',
      value: mass - lower,
      unit: 'kg',
      source: STATICS,
    });
    working({
      what: 'Guideline for one of two, level floor',
      formula: '25 kg x 2/3',
      value: ONE_OF_TWO,
      unit: 'kg',
      source: 'HSE L23; no guidance covers stairs',
    });
    if (Math.max(lower, mass - lower) > ONE_OF_TWO) {
      working({
        what: 'Next',
        formula: 'a share over the guideline',
        value: ADVICE.share,
        unit: '',
        source: '',
      });
    }
    working({
      what: 'On the lower carrier',
      formula: 'part on the lower carrier x mass',
      value: lower,
      unit: 'kg',
      source: STATICS,
    });
  }
  return found(lower);
}
