import { stageNeeds, usesMeasure, type StageName } from '../../stages/kinds';
import type { MeasureName } from '../../stages/measures';
import type { RefusedMeasure, StageRow } from './stageRow';

/** Why a row cannot be judged as it stands. */
export type Shortfall =
  | { readonly kind: 'refused'; readonly refusal: RefusedMeasure }
  | { readonly kind: 'not measured'; readonly measure: MeasureName };

/** The first measure that keeps a row from being judged: one it uses that is refused, or one it needs and has not; undefined: it can be judged. */
export function shortfallOf({ refused, measures }: StageRow, stage: StageName): Shortfall | undefined {
  const refusal = refused.find((r) => usesMeasure(stage, r.measure));
  if (refusal) return { kind: 'refused', refusal };
  const measure = stageNeeds(stage).needs.find((name) => measures[name] === undefined);
  return measure && { kind: 'not measured', measure };
}
