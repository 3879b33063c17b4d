import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { NO_CODE_VALUE, type CodeLoadInput } from './codeLoad';
import { CODE_LOADS } from './codeLoads';

/**
 * The concentrated load that a code gives a floor for its use, acting alone on a small square (EN: side 50 mm,
 * EN 1991-1-1 6.3.1.2(5), from memory; US: 2 in x 2 in, for a stair tread and not for a floor).
 *
 * @source see `CODE_LOADS`, clause by clause, each marked as read or from memory.
 * @param input use and code
 * @returns load [kN]
 * @problems `no answer` for a use for which the code, as held here, gives none.
 * @example codePoint({ use: 'stairs', code: 'US' }) // 1.334, that is 300 lb
 */
export function codePoint(input: CodeLoadInput, working?: Working): Outcome<number> {
  const point = CODE_LOADS[input.code][input.use]?.point;
  if (!point) {
    return refused({
      kind: 'no answer',
      because: `no concentrated load for a ${input.use} is held for code ${input.code}`,
      instead: NO_CODE_VALUE,
    });
  }
  working?.({
    what: `Concentrated load, ${input.use}, ${input.code}`,
    formula: 'a value of the code',
    value: point.value,
    unit: 'kN',
    source: `${point.clause} (${point.status})`,
  });
  return found(point.value);
}
