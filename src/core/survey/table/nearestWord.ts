import { lastOf } from '../../lists/ends';
import { entryAt } from '../../lists/entryAt';

/**
 * The word of a list that a misspelt word is nearest to: at most one slip (a letter left out, put in, changed, or
 * two neighbours exchanged) in a word of up to 5 letters, at most two in a longer one.
 *
 * @source optimal string alignment distance, a textbook dynamic programme.
 * @returns the nearest word, or undefined when none is near or two are equally near
 * @example nearestWord('pasage', ['passage', 'corner']) // 'passage'
 */
export function nearestWord<W extends string>(word: string, words: readonly W[]): W | undefined {
  const plain = lettersOf(word);
  if (plain === '') return undefined;
  let nearest: W | undefined;
  let least = Infinity;
  for (const candidate of words) {
    const letters = lettersOf(candidate);
    const allowed = letters.length <= 5 ? 1 : 2;
    if (Math.abs(letters.length - plain.length) > allowed) continue;
    const distance = slips(plain, letters);
    if (distance > allowed || distance > least) continue;
    nearest = distance === least ? undefined : candidate;
    least = distance;
  }
  return nearest;
}

/** Hyphens, points and spaces tell no two words of ours apart. */
const lettersOf = (word: string): string => word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

function slips(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(entryAt(last, j) + 1, entryAt(row, j - 1) + 1, entryAt(last, j - 1) + changed);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, entryAt(before, j - 2) + 1);
      }
      row.push(least);
    }
    before = last;
    last = row;
  }
  return lastOf(last);
}
