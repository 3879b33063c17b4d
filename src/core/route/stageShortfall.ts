import type { MeasureName, StageName, StageRow } from '../survey/stageMeasures';

/** What a stage needs, and what it may have besides. */
const USED: Readonly<Record<StageName, { needs: readonly MeasureName[]; may: readonly MeasureName[] }>> = {
  door: { needs: ['width', 'height'], may: ['wall'] },
  'side door': { needs: ['width', 'height', 'wall', 'widthOut', 'ceiling'], may: ['depth'] },
  passage: { needs: ['width', 'height'], may: ['length'] },
  corner: { needs: ['width', 'widthOut', 'height'], may: ['turn'] },
  flight: {
    needs: ['width', 'height', 'rise', 'going'],
    may: ['risers', 'length', 'footCeiling', 'footSpace', 'headCeiling', 'headSpace'],
  },
  'quarter landing': {
    needs: ['width', 'widthOut', 'height', 'rise', 'going'],
    may: ['overRail', 'ceiling'],
  },
  'half landing': {
    needs: ['width', 'well', 'depth', 'height', 'rise', 'going'],
    may: ['overRail', 'ceiling'],
  },
  winder: { needs: ['width', 'height', 'turn', 'rise', 'going'], may: [] },
  lift: { needs: ['width', 'height', 'widthOut', 'depth', 'ceiling'], may: ['ratedLoad'] },
  room: { needs: ['length', 'width', 'height'], may: [] },
};

/** A measure as its column is headed: `widthOut` is `Width out`. */
export const measureHeading = (measure: MeasureName): string =>
  measure[0]!.toUpperCase() + measure.slice(1).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** The measures a stage is judged by. */
export const measuresUsed = (stage: StageName): readonly MeasureName[] => [
  ...USED[stage].needs,
  ...USED[stage].may,
];

/** The measures a stage needs. */
export const measuresNeeded = (stage: StageName): readonly MeasureName[] => USED[stage].needs;

/** Why a step cannot be judged: a measure that its stage needs is missing, or one it uses is refused. */
export function stageShortfall(row: StageRow): string | undefined {
  const used = USED[row.stage!];
  const refused = row.refused.find((r) => used.needs.includes(r.measure) || used.may.includes(r.measure));
  if (refused) return `${measureHeading(refused.measure)} cannot be taken: ${refused.why}`;
  const missing = used.needs.find((name) => row.measures[name] === undefined);
  return missing === undefined ? undefined : `${measureHeading(missing)} is not measured`;
}
