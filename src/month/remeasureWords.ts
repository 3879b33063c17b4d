import { mm, mmNeededFrom } from '../core/route/reason';
import type { Remeasure } from '../core/route/remeasure';

/** The first measure to take again, in a line; undefined where nothing is named. */
export function firstToMeasure(lines: readonly Remeasure[]): string | undefined {
  const [first] = takenTogether(lines);
  if (!first) return undefined;
  const { called, measure, asMeasured, needed, why } = first;
  const at = `${called}: `;
  if (asMeasured === undefined) return measure === '' ? `${at}${why}` : `${at}${measure}: ${why}`;
  const need = needed === undefined ? '' : `, needs ${mmNeededFrom(asMeasured, needed)}`;
  return `${at}${measure} ${mm(asMeasured)}${need}`;
}

/**
 * The same lines in another order: those of the deciding step first, among them those that say what is needed; those
 * that name no measure last.
 */
export function decidingFirst(lines: readonly Remeasure[], decidingStep: string): Remeasure[] {
  const later = ({ step, measure, needed }: Remeasure): number =>
    (measure === '' ? 4 : 0) + (String(step) === decidingStep ? 0 : 2) + (needed === undefined ? 1 : 0);
  return [...lines].sort((a, b) => later(a) - later(b));
}

/** Measures not taken at one step for one reason, in one line: `Head ceiling, Head space`. */
export function takenTogether(lines: readonly Remeasure[]): Remeasure[] {
  const together: Remeasure[] = [];
  for (const line of lines) {
    const last = together[together.length - 1];
    const alike = last && last.step === line.step && last.why === line.why && last.measure !== '';
    const figures = [last?.asMeasured, last?.needed, line.asMeasured, line.needed];
    if (alike && line.measure !== '' && figures.every((value) => value === undefined)) {
      together[together.length - 1] = { ...last, measure: `${last.measure}, ${line.measure}` };
    } else together.push(line);
  }
  return together;
}
