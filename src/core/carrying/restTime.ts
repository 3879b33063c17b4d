import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';

/** A spell of work, and what can be kept up all day. */
export interface RestTimeInput {
  /** Work and rest together [min]. */
  readonly minutes: number;
  /** Metabolic rate while working [W]. */
  readonly workRate: number;
  /** Rate that can be kept up all day [W]. */
  readonly limit: number;
  /** Rate while resting [W]. */
  readonly resting: number;
}

const SOURCE = "Murrell's rest allowance, as engineering handbooks give it";

/**
 * Minutes of rest within a spell of work and rest together, so that the mean rate is no more than the limit.
 *
 * @source Murrell's form, T (M - limit) / (M - resting), in engineering handbooks.
 * @param input minutes [min] of work and rest together, rates [W], resting below limit
 * @returns minutes of rest within `minutes` [min]; 0 when the work rate is within the limit
 * @problems `impossible` when resting is not below the limit.
 * @example restTime({ minutes: 60, workRate: 600, limit: 350, resting: 100 }) // 30
 */
export function restTime(input: RestTimeInput, working?: Working): Outcome<number> {
  const { minutes, workRate, limit, resting } = input;
  if (!(resting < limit)) {
    return refused({
      kind: 'impossible',
      argument: 'resting',
      got: resting,
      because: `resting must be below the limit of ${limit} W, else no rest brings the mean down to it`,
    });
  }
  const over = Math.max(0, workRate - limit);
  working?.({
    what: 'Over the limit',
    formula: 'work_rate - limit, at least 0',
    value: over,
    unit: 'W',
    source: SOURCE,
  });
  const part = over === 0 ? 0 : over / (workRate - resting);
  working?.({
    what: 'Part to rest',
    formula: 'over the limit / (work_rate - resting)',
    value: part,
    unit: '',
    source: SOURCE,
  });
  const rest = minutes * part;
  working?.({ what: 'Rest', formula: 'minutes x part to rest', value: rest, unit: 'min', source: SOURCE });
  return found(rest);
}
