import { degrees } from '../measures/angle';
import type { PieceSize } from '../measures/piece';
import { leaningBesideBlock } from '../geometry/rectangleBesideBlock';
import { ALL_HOLDS, sizesOfHold } from '../motion/hold';
import type { StagePassage } from '../motion/stagePassage';
import { shownGiven } from '../measures/shown';
import { closestAt } from '../motion/closest';

/** A way that is narrower near its floor: a radiator, a newel, a handrail's brackets, on an unknown side. */
interface WithLowPart {
  readonly width: number;
  readonly height: number;
  /** Clear width up to `lowHeight` above the floor or the line of nosings [mm]; absent: as wide as above. */
  readonly lowWidth?: number | undefined;
  readonly lowHeight?: number | undefined;
}

/** How the section of a way stands: plumb, or square to the pitch of a stair, where heights are shorter. */
export interface SectionOfWay {
  /** Height square to the way for a plumb one of 1. */
  readonly square: number;
  /** What leans in the section: whatever is held there, only what lies along the way, or nothing. */
  readonly leans: 'any' | 'lengthwise' | 'none';
}

/** Heights stand plumb, and the piece may lean either way. */
export const PLUMB: SectionOfWay = { square: 1, leans: 'any' };

/**
 * The passages of a way that is narrower near its floor: as narrow as that all the way up, raised above it, or leaning
 * past its upper edge. That is all there is in the section, and each is sufficient on whichever side the narrow part
 * stands, since the section is only mirrored.
 * @param way sizes [mm]; one whose narrow part is not measured, or is no narrower, passes as it is
 * @param passages solves a way so wide and high, the piece carried so much above its floor [mm]
 * @returns every passage, those of the narrow way first; what is proved is proved of the whole way
 */
export function besideLow(
  { width, height, lowWidth, lowHeight }: WithLowPart,
  piece: PieceSize,
  { square, leans }: SectionOfWay,
  passages: (way: { readonly width: number; readonly height: number }, raise: number) => StagePassage[],
): StagePassage[] {
  if (lowWidth === undefined || lowWidth >= width) return passages({ width, height }, 0);
  // Only the whole way proves anything: what is too wide for its narrow part may be raised above it.
  const [whole] = passages({ width, height }, 0);
  const proof = { atMost: whole?.answer.atMost ?? Infinity, bound: whole?.answer.bound ?? '' };
  const proved = (found: StagePassage[]): StagePassage[] =>
    found.map((passage) => ({ ...passage, answer: { ...passage.answer, ...proof } }));
  const narrow = proved(passages({ width: lowWidth, height }, 0));
  // Without its height the narrow part may reach up to the ceiling.
  if (lowHeight === undefined || lowHeight >= height) return narrow;
  const section = { width, height: height * square, lowWidth, lowHeight: lowHeight * square };
  const leaning = ALL_HOLDS.flatMap((hold): StagePassage[] => {
    if (leans === 'none' || (leans === 'lengthwise' && hold[0] !== 'L')) return [];
    const { across, upright } = sizesOfHold(piece, hold);
    const [long, short] = [Math.max(across, upright), Math.min(across, upright)];
    // Parted from the low part by its long side. By its short one it passes nowhere where it does not pass so, beside the
    // low part or above it: with sides l >= k and a, b left beside and above, a s + b c >= l + k s c asks for both to be
    // from k to l, and then the long side at the other angle leaves more: (a - b)(c - s) + (l - k)(1 - s c) >= 0.
    const { clearance, angle, raise } = leaningBesideBlock(section, long, short);
    if (clearance < 0) return [];
    return [
      {
        from: hold,
        to: hold,
        needsTurningRoom: true,
        answer: {
          clearance,
          ...proof,
          pose: 'leaning',
          critical: closestAt(
            `leaning ${shownGiven(degrees(angle), 0)} degrees over the part that is narrower below`,
          ),
          ...(raise > 0 ? { raise: raise / square } : {}),
        },
      },
    ];
  });
  return [...narrow, ...proved(passages({ width, height: height - lowHeight }, lowHeight)), ...leaning];
}

/** Carried so much higher [mm]. */
export const raisedBy = (passages: readonly StagePassage[], raise: number): StagePassage[] =>
  raise === 0
    ? [...passages]
    : passages.map((passage) => ({
        ...passage,
        answer: { ...passage.answer, raise: (passage.answer.raise ?? 0) + raise },
      }));
