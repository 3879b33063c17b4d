import { nearestWord } from './nearestWord';
import { kindOf, STAGE_NAMES, type StageName } from '../../stages/kinds';

const BY_TEXT = new Map<string, StageName>(STAGE_NAMES.map((name) => [name.replace(' ', ''), name]));

/** The stage a text names, in any case and with any spaces; undefined when it is none of ours. */
export function stageNamed(text: string): StageName | undefined {
  return (
    BY_TEXT.get(text) ?? (text.length > 40 ? undefined : BY_TEXT.get(text.toLowerCase().replace(/\s+/g, '')))
  );
}

/** The header row once more, in the middle of a table. */
export const isRepeatedHeader = (stageText: string): boolean => stageText.trim().toLowerCase() === 'stage';

/** The stages that a text may mean which names none: the one it is nearest to, or those another word stands for. */
export function stagesMeant(text: string): readonly StageName[] {
  const near = nearestWord(text, STAGE_NAMES);
  if (near) return [near];
  const words = text.toLowerCase().replace(/\s+/g, '');
  return STAGE_NAMES.filter((stage) => kindOf(stage).otherWords.includes(words));
}
