import { measureHeading } from '../survey/words/measureHeading';
import { stageNeeds, usesMeasure } from '../stages/kinds';
import type { StageRow } from '../survey/table/stageRow';

export { measureHeading } from '../survey/words/measureHeading';

/** Why a step cannot be judged: a measure that its stage needs is missing, or one it uses is refused. */
export function stageShortfall(row: StageRow): string | undefined {
  const stage = row.stage!;
  const refused = row.refused.find((r) => usesMeasure(stage, r.measure));
  if (refused) return `${measureHeading(refused.measure)} cannot be taken: ${refused.why}`;
  const missing = stageNeeds(stage).needs.find((name) => row.measures[name] === undefined);
  return missing === undefined ? undefined : `${measureHeading(missing)} is not measured`;
}
