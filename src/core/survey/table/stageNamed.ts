import { nearestWord } from './nearestWord';
import { STAGE_NAMES, type StageName } from './stageMeasures';

const BY_TEXT = new Map<string, StageName>(STAGE_NAMES.map((name) => [name.replace(' ', ''), name]));

/** The stage a text names, in any case and with any spaces; undefined when it is none of ours. */
export function stageNamed(text: string): StageName | undefined {
  return (
    BY_TEXT.get(text) ?? (text.length > 40 ? undefined : BY_TEXT.get(text.toLowerCase().replace(/\s+/g, '')))
  );
}

/** Other plain words for a stage, to be asked about and not to be taken. */
const OTHER_WORDS: Readonly<Record<string, readonly StageName[]>> = {
  doorway: ['door'],
  gate: ['door'],
  hall: ['passage'],
  hallway: ['passage'],
  corridor: ['passage'],
  turn: ['corner'],
  bend: ['corner'],
  stair: ['flight'],
  stairs: ['flight'],
  steps: ['flight'],
  staircase: ['flight'],
  landing: ['quarter landing', 'half landing'],
  winders: ['winder'],
  elevator: ['lift'],
};

/** The stages that a text may mean which names none: the one it is nearest to, or those another word stands for. */
export function stagesMeant(text: string): readonly StageName[] {
  const near = nearestWord(text, STAGE_NAMES);
  if (near) return [near];
  const words = text.toLowerCase().replace(/\s+/g, '');
  return Object.prototype.hasOwnProperty.call(OTHER_WORDS, words) ? OTHER_WORDS[words]! : [];
}
