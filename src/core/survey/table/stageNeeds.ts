import type { MeasureName, StageName } from './stageMeasures';

export interface StageNeeds {
  /** Without these the stage is not measured. */
  readonly needs: readonly MeasureName[];
  /** Used where given. */
  readonly may: readonly MeasureName[];
}

const STAGE_NEEDS: Readonly<Record<StageName, StageNeeds>> = {
  door: { needs: ['width', 'height'], may: ['wall'] },
  'side door': { needs: ['width', 'height', 'wall', 'widthOut', 'ceiling'], may: ['depth'] },
  passage: { needs: ['width', 'height'], may: ['length'] },
  corner: { needs: ['width', 'widthOut', 'height'], may: ['turn'] },
  // The length of a flight is a straight between two turns.
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

/**
 * The measures that a stage needs, and those it may have besides. `run` belongs to no stage but to the way on
 * to the next one, and is in neither list: without it a route is still measured.
 * @example stageNeeds('corner') // { needs: ['width', 'widthOut', 'height'], may: ['turn'] }
 */
export const stageNeeds = (stage: StageName): StageNeeds => STAGE_NEEDS[stage];

const USED = new Map<StageName, ReadonlySet<MeasureName>>(
  (Object.keys(STAGE_NEEDS) as StageName[]).map((stage) => [
    stage,
    new Set([...STAGE_NEEDS[stage].needs, ...STAGE_NEEDS[stage].may]),
  ]),
);

/** Whether a stage is judged by a measure, needed or not. */
export const usesMeasure = (stage: StageName, measure: MeasureName): boolean => USED.get(stage)!.has(measure);

/** Stages whose height is a headroom, measured plumb above the line of nosings. */
export const STAIR_STAGES: readonly StageName[] = ['flight', 'quarter landing', 'half landing', 'winder'];

export const isStair = (stage: StageName): boolean => STAIR_STAGES.includes(stage);
