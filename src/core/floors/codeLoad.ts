import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { CODE_LOADS, type Code, type Use } from './codeLoads';

/** What to do where a code, as held here, has no value. */
export const NO_CODE_VALUE =
  'look the value up in the national annex or local code, or ask a licensed structural engineer';

/** A use of a floor, and the code that is asked. */
export interface CodeLoadInput {
  readonly use: Use;
  readonly code: Code;
}

/**
 * The imposed load that a code gives a floor for its use. A code's load is no permission: the floor that stands may be
 * weaker, and heavy equipment is not covered by it.
 *
 * @source see `CODE_LOADS`, clause by clause, each marked as read or from memory.
 * @param input use and code
 * @returns load [kN/m2]
 * @problems `no answer` for a use that the code, as held here, does not give.
 * @example codeLoad({ use: 'sleeping room', code: 'US' }) // 1.436, that is 30 psf
 */
export function codeLoad(input: CodeLoadInput, working?: Working): Outcome<number> {
  const entry = CODE_LOADS[input.code][input.use];
  if (!entry) {
    return refused({
      kind: 'no answer',
      because: `no load for a ${input.use} is held for code ${input.code}`,
      instead: NO_CODE_VALUE,
    });
  }
  working?.({
    what: `Imposed load, ${input.use}, ${input.code}`,
    formula: 'a value of the code',
    value: entry.area.value,
    unit: 'kN/m2',
    source: `${entry.area.clause} (${entry.area.status})`,
  });
  return found(entry.area.value);
}
