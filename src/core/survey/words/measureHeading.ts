import { isStair } from '../table/stageNeeds';
import type { MeasureName, StageName } from '../table/stageMeasures';

/** A measure as its column is headed: `widthOut` is `Width out`. */
export const measureHeading = (measure: MeasureName): string =>
  measure[0]!.toUpperCase() + measure.slice(1).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A measure as people call it at its stage, after its column's heading: `Height (headroom)`. */
export function measureAtStage(measure: MeasureName, stage: StageName | undefined): string {
  const also = stage && alsoCalled(measure, stage);
  return also ? `${measureHeading(measure)} (${also})` : measureHeading(measure);
}

function alsoCalled(measure: MeasureName, stage: StageName): string | undefined {
  if (measure === 'height' && isStair(stage)) return 'headroom';
  if (stage === 'side door') {
    if (measure === 'widthOut') return 'passage';
    if (measure === 'depth') return 'dead end';
  }
  if (stage === 'lift') {
    if (measure === 'widthOut') return 'car width';
    if (measure === 'depth') return 'car depth';
    if (measure === 'ceiling') return 'car height';
    if (measure === 'width' || measure === 'height') return 'door';
  }
  return undefined;
}
