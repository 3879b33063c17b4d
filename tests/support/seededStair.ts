/** From what on, and over how much, a measure is drawn [mm]. */
type Spread = readonly [least: number, over: number];

interface StairSpreads {
  readonly width: Spread;
  /** The upper flight's width, or the landing's depth, over the lower flight's width. */
  readonly other: Spread;
  readonly headroom: Spread;
  /** Parts of all in which the landing's ceiling is level with the flights', and in which it is that or lower. */
  readonly level: number;
  readonly notHigher: number;
  /** How much lower and how much higher it is otherwise [mm]. */
  readonly lower: number;
  readonly higher: number;
}

/** A seeded stair with a landing, its ceiling below, at or above the flights'; walls on the inner sides. */
export function seededStair(next: () => number, spreads: StairSpreads) {
  const drawn = ([least, over]: Spread): number => least + over * next();
  const width = drawn(spreads.width);
  const other = width + drawn(spreads.other);
  const headroom = drawn(spreads.headroom);
  const kind = next();
  const stair = {
    headroom,
    rise: 150 + 70 * next(),
    going: 200 + 100 * next(),
    overRail: 0,
    landingCeiling:
      kind < spreads.level
        ? headroom
        : kind < spreads.notHigher
          ? headroom - spreads.lower * next()
          : headroom + spreads.higher * next(),
  };
  return { width, other, stair, quarter: { ...stair, widthIn: width, widthOut: other } };
}

/** A half landing of such a stair. */
export const halfOf = ({ width, other, stair }: ReturnType<typeof seededStair>, well: number) => ({
  ...stair,
  flightWidth: width,
  well,
  landingDepth: other,
});
