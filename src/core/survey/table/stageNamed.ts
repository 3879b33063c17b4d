import { nearestWord } from './nearestWord';
import { kindOf, STAGE_NAMES, type StageName } from '../../stages/kinds';

const BY_TEXT = new Map<string, StageName>(
  STAGE_NAMES.flatMap((stage) =>
    [stage, ...(kindOf(stage).names ?? [])].map((name) => [name.replace(' ', ''), stage] as const),
  ),
);

/** Spaces and hyphens of any kind tell no two stages apart. */
const lettersOf = (text: string): string => text.toLowerCase().replace(/[\s\u002d\u2010-\u2013]+/g, '');

/** The stage a text names, in any case and with any spaces or hyphens; undefined when it is none of ours. */
export function stageNamed(text: string): StageName | undefined {
  return BY_TEXT.get(text) ?? (text.length > 40 ? undefined : BY_TEXT.get(lettersOf(text)));
}

/** Whether a row is the header row once more, in the middle of a table. */
export const isRepeatedHeader = (stageText: string): boolean => stageText.trim().toLowerCase() === 'stage';

/** Ways into a house that are no stage of ours, whatever stage their word is like. */
const NO_STAGE: ReadonlySet<string> = new Set(['window', 'hoist', 'crane', 'balcony', 'roof', 'baywindow']);

/** Whether a text names a way that is not judged here at all. */
export const isNoStage = (text: string): boolean => NO_STAGE.has(lettersOf(text));

/** The stages that a text may mean which names none: those it is another word for, or the one it is nearest to. */
export function stagesMeant(text: string): readonly StageName[] {
  if (isNoStage(text)) return [];
  const words = lettersOf(text);
  const others = STAGE_NAMES.filter((stage) => kindOf(stage).otherWords.includes(words));
  if (others.length > 0) return others;
  const near = nearestWord(text, STAGE_NAMES);
  return near ? [near] : [];
}
