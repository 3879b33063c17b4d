/** What a piece is, by the words in its name. */
export type Part = 'slate' | 'cabinet' | 'legs' | 'cushions';

/** A table comes as slate, cabinet (built up or as panels), legs and cushions: common practice, no source. */
const PARTS: readonly { readonly part: Part; readonly word: RegExp }[] = [
  { part: 'slate', word: /\bslates?\b|\bslabs?\b/i },
  { part: 'legs', word: /\blegs?\b|\bpedestals?\b/i },
  { part: 'cushions', word: /\bcushions?\b|\brails?\b/i },
  { part: 'cabinet', word: /\bcabinets?\b|\bframes?\b|\bpanels?\b/i },
];

/** The part of a table that a piece's name stands for; undefined when it names none of them. */
export const partOf = (name: string): Part | undefined => PARTS.find(({ word }) => word.test(name))?.part;

const NUMBER_WORDS = ['one', 'two', 'three', 'four', 'five'];
const SECTION = /\b(\d)\s*(?:of|\/)\s*(\d)\b/i;
const PIECES = /\b(\d|one|two|three|four|five)[\s-]*(?:piece|pieces|pc|section|sections)\b/i;

/** The number of a section, and of how many [count], in a name like `Slate 2 of 3` or `slate 2/3`; undefined where it names none. */
export function sectionOf(name: string): { readonly number: number; readonly of: number } | undefined {
  const match = SECTION.exec(name);
  return match ? { number: Number(match[1]), of: Number(match[2]) } : undefined;
}

/** In how many sections [count] a slate is said to be, as in `three-piece` or `3 piece`; undefined where it is not said. */
export function sectionsSaid(text: string): number | undefined {
  const match = PIECES.exec(text);
  if (!match) return undefined;
  const word = (match[1] ?? '').toLowerCase();
  const at = NUMBER_WORDS.indexOf(word);
  return at >= 0 ? at + 1 : Number(word);
}
