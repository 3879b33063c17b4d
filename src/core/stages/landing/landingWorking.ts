import { deeperBound } from '../../motion/deeperBound';
import { writeAnswer } from '../../motion/answerWorking';
import { ALL_HOLDS, poseOfHold } from '../../motion/hold';
import type { StageAnswer } from '../../motion/stageAnswer';
import { degrees } from '../../measures/angle';
import type { PieceSize } from '../../measures/piece';
import type { Working } from '../../measures/working';
import { bestFamilyFit } from './solveFamilies';
import type { FamilyFit, RoundAs } from './familyFit';
import type { LandingPlan } from './landingPlan';
import { DRAWN } from './familyFit';
import { slidFit } from './slidFit';

const SOURCE =
  'own derivation: the rectangle round a corner in plan, the bends between level and pitch from the side';

/** How the piece goes round, by family. */
const GOES_ROUND: Readonly<Record<RoundAs, string>> = {
  level: 'kept level, at a held height, and turned about on the landing',
  tilted: 'one end higher at a fixed tilt while it is turned about',
  upright: 'stood up on the landing, turned about, and laid along the upper flight',
  swung: 'swung up across the landing over one flight and down over the other',
  slid: 'kept along the pitch while its inner side slides round the inner edge',
};

/** Searched further than the families by more than this [mm]. */
const SAME = 0.01;

/**
 * Writes the steps of the best family of motions round a landing, then what decides.
 * @param families the motions that are looked at, in words
 * @param proves the deep proof of the landing: the condition that a padded piece fails, in words
 */
export function writeLanding(
  plan: LandingPlan | undefined,
  piece: PieceSize,
  answer: StageAnswer,
  families: string,
  proves: (padded: PieceSize) => string | undefined,
  working: Working,
): void {
  const bounded = deeperBound(answer, piece, proves);
  if (!plan) return writeAnswer(bounded, families, working);
  const pitch = Math.atan(plan.rise / plan.going);
  working({
    what: 'Pitch of both flights',
    formula: 'atan(rise / going)',
    value: degrees(pitch),
    unit: 'degrees',
    source: 'geometry of the line of nosings',
  });
  working({
    what: 'Clear height square to the pitch line',
    formula: 'headroom x cos(pitch)',
    value: plan.headroom * Math.cos(pitch),
    unit: 'mm',
    source: 'headroom is measured plumb: Approved Document K 1.11',
  });
  const best = bestOfAll(plan, piece);
  if (best) writeFamily(best, answer, working);
  writeAnswer(bounded, families, working);
}

function bestOfAll(plan: LandingPlan, piece: PieceSize): FamilyFit | undefined {
  let best: FamilyFit | undefined;
  for (const hold of ALL_HOLDS) {
    for (const fit of [bestFamilyFit(plan, piece, hold), slidFit(plan, piece, hold)])
      if (fit && fit.clearance > (best?.clearance ?? -Infinity)) best = fit;
  }
  return best;
}

function writeFamily(fit: FamilyFit, answer: StageAnswer, working: Working): void {
  working({
    what: 'Best family: how it is held on the flights',
    formula: 'along the pitch, this side upright',
    value: poseOfHold(fit.hold),
    unit: '',
    source: SOURCE,
  });
  working({
    what: 'Best family: how it goes round',
    formula: fit.sideways ? `${GOES_ROUND[fit.as]}; moved across sideways` : GOES_ROUND[fit.as],
    value: fit.as,
    unit: '',
    source: SOURCE,
  });
  working({
    what: 'Best family: tilt while it goes round',
    formula: 'the tilt that leaves most between landing and ceiling',
    value: degrees(fit.tilt),
    unit: 'degrees',
    source: SOURCE,
  });
  working({
    what: 'Best family: its lowest corner above the landing',
    formula: 'as high as the first riser of the upper flight asks for',
    value: fit.raise,
    unit: 'mm',
    source: SOURCE,
  });
  working({
    what: `Best family: what it leaves, closest ${fit.critical.words}`,
    formula: 'the greatest padding with which every part of that motion is free',
    value: fit.clearance,
    unit: 'mm a side',
    source: SOURCE,
  });
  working({
    what: 'Best family: less what its drawn motion is held off',
    formula: `that less ${DRAWN}`,
    value: fit.clearance - DRAWN,
    unit: 'mm a side',
    source: 'every claimed motion is drawn and replayed',
  });
  if (Math.abs(answer.clearance - (fit.clearance - DRAWN)) <= SAME) return;
  working({
    what: 'A widened motion',
    formula: 'widened in space beyond the families, or over the handrail, shown free over its whole way',
    value: answer.clearance,
    unit: 'mm a side',
    source: 'certified moves from one attitude to the next',
  });
}
