import { kindOf, type StageName } from '../../stages/kinds';

/**
 * A stage in a sentence, with the article that it takes.
 * @example aStage('door') // 'a door'
 * @example aStage('steps') // 'steps'
 */
export const aStage = (stage: StageName): string => (kindOf(stage).plural ? stage : `a ${stage}`);

/**
 * A stage that is pointed at.
 * @example thisStage('door') // 'this door'
 * @example thisStage('steps') // 'these steps'
 */
export const thisStage = (stage: StageName): string =>
  kindOf(stage).plural ? `these ${stage}` : `this ${stage}`;

/**
 * The form of a verb that a stage takes: `turns` of one, `turn` of steps.
 * @example stageVerb('steps', 'needs', 'need') // 'need'
 */
export const stageVerb = (stage: StageName, ofOne: string, ofMany: string): string =>
  kindOf(stage).plural ? ofMany : ofOne;
