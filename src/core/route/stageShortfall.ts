import { shortfallOf } from '../survey/table/shortfall';
import type { StageRow } from '../survey/table/stageRow';
import { measureHeading } from '../survey/words/measureHeading';

/** Why a step with a stage cannot be judged, in words; undefined where it can be. */
export function stageShortfall(row: StageRow): string | undefined {
  const shortfall = row.stage && shortfallOf(row, row.stage);
  if (!shortfall) return undefined;
  if (shortfall.kind === 'not measured') return `${measureHeading(shortfall.measure)} is not measured`;
  const { measure, why } = shortfall.refusal;
  return `${measureHeading(measure)} cannot be taken: ${why}`;
}
