const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The least value of a function between two ends where it falls and then rises, each step taking 0.618 of what
 * was left. Of several dips it finds one.
 * @param steps how often it is narrowed down: 24 leave a hundred-thousandth of the range, 60 nothing
 * @source golden-section search, Kiefer 1953
 * @returns the least value that was seen last, and where
 */
export function leastBetween(
  f: (x: number) => number,
  from: number,
  to: number,
  steps: number,
): { readonly at: number; readonly value: number } {
  let low = from;
  let high = to;
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  for (let i = 0; i < steps; i++) {
    if (atLeft <= atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - GOLDEN * (high - low);
      atLeft = f(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + GOLDEN * (high - low);
      atRight = f(right);
    }
  }
  return atLeft <= atRight ? { at: left, value: atLeft } : { at: right, value: atRight };
}
