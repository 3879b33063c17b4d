import { bundleCall, callArguments, formulaParts } from './formulaText';
import { firstOf } from '../core/lists/ends';
import { entryAt } from '../core/lists/entryAt';

/** The name that the engine knows a function of the bundle by. */
export const engineName = (name: string): string => `HOSTCALL.${name}`;

/** A call of this stands where an argument was left out, so that it differs from an empty cell. */
export const LEFT_OUT = 'HOSTLEFTOUT';

/** Stands for HYPERLINK, so that the host learns where a cell leads. */
export const LINK = 'HOSTLINK';

/** A call of this stands where a spill must not go. */
export const NO_SPILL = 'HOSTNOSPILL';

/**
 * A stored formula as the engine is to compute it: calls of the bundle's functions carry the number of their cell,
 * so that messages find their way back, and so do links; `A8#` is the block that A8 fills.
 * @param cell the number of the cell
 * @param known names of the bundle's functions, in capitals
 * @param spilled the block of a spill as `Sheet!A1:B2`, from the text of a reference; undefined when there is none
 */
export function engineFormula(
  stored: string,
  cell: number,
  known: { has(name: string): boolean },
  spilled: (reference: string) => string | undefined,
): string {
  const parts = formulaParts(stored);
  const before = new Map<number, string>();
  const replaced = new Map<number, string>();
  parts.forEach((part, i) => {
    if (part.kind !== 'call') return;
    const name = bundleCall(part.text);
    if (name !== undefined && known.has(name)) {
      const { starts, end } = callArguments(parts, i);
      const isEmpty = (start: number, stop: number) =>
        parts.slice(start, stop).every((p) => p.kind === 'space');
      const none = starts.length === 1 && isEmpty(firstOf(starts), end);
      replaced.set(i, engineName(name));
      before.set(firstOf(starts), none ? `${cell}` : `${cell},`);
      if (none) return;
      starts.forEach((start, n) => {
        const stop = n + 1 < starts.length ? entryAt(starts, n + 1) - 1 : end;
        if (isEmpty(start, stop)) before.set(start, `${before.get(start) ?? ''}${LEFT_OUT}()`);
      });
    } else if (/^HYPERLINK$/i.test(part.text)) {
      replaced.set(i, LINK);
      before.set(firstOf(callArguments(parts, i).starts), `${cell},`);
    } else if (/^_xlfn\.ANCHORARRAY$/i.test(part.text)) {
      const { end } = callArguments(parts, i);
      const reference = parts
        .slice(i + 2, end)
        .map((p) => p.text)
        .join('');
      replaced.set(i, spilled(reference) ?? '#REF!');
      for (let k = i + 1; k <= end; k++) replaced.set(k, '');
    } else if (/^_xlfn\.SINGLE$/i.test(part.text)) replaced.set(i, '@');
  });
  if (replaced.size === 0) return stored;
  return parts.map((part, i) => (before.get(i) ?? '') + (replaced.get(i) ?? part.text)).join('');
}
