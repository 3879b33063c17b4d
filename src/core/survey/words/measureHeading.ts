import { capital } from './capital';
import { measureAt, type StageName } from '../../stages/kinds';
import type { MeasureName } from '../../stages/measures';

/** A measure as its column is headed: `widthOut` is `Width out`. */
export const measureHeading = (measure: MeasureName): string =>
  capital(measure.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));

/** A measure as people call it at its stage, after its column's heading: `Height (headroom)`. */
export function measureAtStage(measure: MeasureName, stage: StageName | undefined): string {
  const also = stage && measureAt(stage, measure)?.called;
  return also ? `${measureHeading(measure)} (${also})` : measureHeading(measure);
}
