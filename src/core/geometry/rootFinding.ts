/**
 * The greatest padding between `low` and `high` [mm] for which `spare` is not negative, `spare` falling (not
 * necessarily evenly) as the padding grows. Undefined when it is negative at `low` already. The result is on
 * the safe side: `spare` was seen not negative there.
 * @param fineness how near the greatest it has to be [mm]
 * @source regula falsi with the Illinois rule and a halving now and then
 */
export function greatestPadding(
  low: number,
  high: number,
  spare: (padding: number) => number,
  fineness = 1e-7,
): number | undefined {
  if (!(high >= low)) return undefined;
  let atLow = spare(low);
  if (!(atLow >= 0)) return undefined;
  let atHigh = spare(high);
  if (atHigh >= 0) return high;
  let side = 0;
  for (let i = 0; i < 100 && high - low > fineness; i++) {
    const halve = i % 5 === 4 || !Number.isFinite(atHigh) || !Number.isFinite(atLow);
    const middle = halve ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
    const at = spare(middle);
    if (at >= 0) {
      low = middle;
      atLow = at;
      if (at < 1e-6) break;
      if (side === 1) atHigh /= 2;
      side = 1;
    } else {
      high = middle;
      atHigh = at;
      if (side === -1) atLow /= 2;
      side = -1;
    }
  }
  return low;
}

/**
 * Where a condition that holds at `low`, and ceases to hold once on the way to `high`, does so, by halving. Both
 * ends are answered, so that the caller takes the one that is on the safe side.
 * @param fineness how near each other they have to be, in the unit of the ends
 * @example bracket(0, 2, (x) => x * x <= 2, 1e-9).holds // 1.4142136
 */
export function bracket(
  low: number,
  high: number,
  holds: (x: number) => boolean,
  fineness: number,
): { readonly holds: number; readonly fails: number } {
  let [yes, no] = [low, high];
  while (Math.abs(no - yes) > fineness) {
    const middle = (yes + no) / 2;
    // Between two neighbouring numbers there is no other.
    if (middle === yes || middle === no) break;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return { holds: yes, fails: no };
}
