import type { StagePassage } from '../motion/stagePassage';

/** A way that is narrower near its floor: a radiator, a newel, a handrail's brackets, on an unknown side. */
interface WithLowPart {
  readonly width: number;
  readonly height: number;
  /** Clear width up to `lowHeight` above the floor or the line of nosings [mm]; absent: as wide as above. */
  readonly lowWidth?: number | undefined;
  readonly lowHeight?: number | undefined;
}

/**
 * The passages of a way that is narrower near its floor: as narrow as that all the way up, or raised above it. Both
 * are sufficient on whichever side the narrow part stands.
 * @param passages of a way so wide and high, carried so much above its floor [mm]
 */
export function besideLow(
  { width, height, lowWidth, lowHeight }: WithLowPart,
  passages: (way: { readonly width: number; readonly height: number }, raise: number) => StagePassage[],
): StagePassage[] {
  if (lowWidth === undefined || lowWidth >= width) return passages({ width, height }, 0);
  // Only the whole way proves anything: what is too wide for its narrow part may be raised above it.
  const [whole] = passages({ width, height }, 0);
  const proved = (found: StagePassage[]): StagePassage[] =>
    found.map((passage) => ({
      ...passage,
      answer: {
        ...passage.answer,
        atMost: whole?.answer.atMost ?? Infinity,
        bound: whole?.answer.bound ?? '',
      },
    }));
  const narrow = proved(passages({ width: lowWidth, height }, 0));
  // Without its height the narrow part may reach up to the ceiling.
  if (lowHeight === undefined || lowHeight >= height) return narrow;
  return [...narrow, ...proved(passages({ width, height: height - lowHeight }, lowHeight))];
}

/** Carried so much higher [mm]. */
export const raisedBy = (passages: readonly StagePassage[], raise: number): StagePassage[] =>
  raise === 0
    ? [...passages]
    : passages.map((passage) => ({
        ...passage,
        answer: { ...passage.answer, raise: (passage.answer.raise ?? 0) + raise },
      }));
