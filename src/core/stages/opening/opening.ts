import { degrees } from '../../measures/angle';
import { rectangleThroughOpening, type RectangleFit } from '../../geometry/rectangleThroughOpening';
import type { PieceSize } from '../../measures/piece';
import type { Working } from '../../measures/working';
import { ALL_HOLDS, sizesOfHold, poseOfHold } from '../../motion/hold';
import { openingAtMost } from './openingAtMost';
import type { StageAnswer } from '../../motion/stageAnswer';
import type { StagePassage } from '../../motion/stagePassage';
import { shownGiven } from '../../measures/shown';
import { closestAt } from '../../motion/closest';

/** A rectangular opening. */
export interface OpeningMeasures {
  /** Clear width [mm]. */
  readonly width: number;
  /** Clear height [mm]. */
  readonly height: number;
}

/**
 * The best section of a piece in an opening. It travels along its length: the section breadth x thickness
 * lies within both others, so no other section can do better.
 */
export function sectionThroughOpening({ width, height }: OpeningMeasures, piece: PieceSize): RectangleFit {
  return rectangleThroughOpening(width, height, piece.breadth, piece.thickness);
}

/**
 * Clearance of a piece straight through an opening [mm a side], in its best pose, slanted ones included.
 * @source Carver's condition (Wetzel, Mathematics Magazine 73, 2000, 204-211)
 * @example openingClearance({ width: 762, height: 1981 }, { length: 1830, breadth: 930, thickness: 25 }) // 368.5
 */
export function openingClearance(measures: OpeningMeasures, piece: PieceSize, working?: Working): number {
  const { clearance, angle } = sectionThroughOpening(measures, piece);
  working?.({
    what: 'Section across the travel, breadth x thickness',
    formula: 'the two smaller sizes',
    value: `${piece.breadth} x ${piece.thickness}`,
    unit: 'mm',
    source: 'the section of least sides lies within the other two',
  });
  working?.({
    what: "Best turn of the section in the opening, long side to the opening's long side",
    formula: 'square on, or cos t - sin t = (a - b)/(p - q)',
    value: degrees(angle),
    unit: 'degrees',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211',
  });
  working?.({
    what: 'Clearance',
    formula: 'greatest c with (p+2c) cos t + (q+2c) sin t <= a and (p+2c) sin t + (q+2c) cos t <= b',
    value: clearance,
    unit: 'mm a side',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211, solved for the padding',
  });
  return clearance;
}

/** What an opening and its parts are called where a piece is closest. */
export interface OpeningWords {
  readonly whole: string;
  readonly sides: string;
  readonly head: string;
}

const OPENING_WORDS: OpeningWords = {
  whole: 'the opening',
  sides: 'the sides of the opening',
  head: 'the head of the opening',
};

/**
 * The ways through an opening: level in each way of being held, and leaning about the direction of travel.
 * A leaning way needs room beside the opening to lean and to stand it level again.
 */
export function openingPassages(
  measures: OpeningMeasures,
  piece: PieceSize,
  words = OPENING_WORDS,
): StagePassage[] {
  const { width, height } = measures;
  const { atMost, bound } = openingAtMost(measures, piece, words.whole);
  const passages: StagePassage[] = [];
  for (const hold of ALL_HOLDS) {
    const { across, upright } = sizesOfHold(piece, hold);
    const byWidth = (width - across) / 2;
    const byHeight = (height - upright) / 2;
    const level = Math.max(Math.min(byWidth, byHeight), -Math.max(across, upright) / 2);
    passages.push({
      from: hold,
      to: hold,
      answer: {
        clearance: level,
        atMost,
        bound,
        pose: poseOfHold(hold),
        critical:
          byWidth <= byHeight
            ? closestAt(`between ${words.sides}`, 'sides')
            : closestAt(`under ${words.head}`, 'head'),
      },
    });
    const leaning = rectangleThroughOpening(width, height, across, upright);
    if (leaning.clearance > level && leaning.angle > 0) {
      passages.push({
        from: hold,
        to: hold,
        needsTurningRoom: true,
        answer: {
          clearance: leaning.clearance,
          atMost,
          bound,
          pose: 'leaning',
          critical: closestAt(
            `leaning ${shownGiven(degrees(leaning.angle), 0)} degrees in ${words.whole}`,
            'sides',
            'head',
          ),
        },
      });
    }
  }
  return passages;
}

/** The answer of the passage with the greatest clearance; among equals the first. */
export function bestPassage(passages: readonly StagePassage[]): StageAnswer {
  return passages.reduce((best, next) => (next.answer.clearance > best.answer.clearance ? next : best))
    .answer;
}
