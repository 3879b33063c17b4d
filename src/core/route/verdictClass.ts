import type { Verdict } from './verdict';

/**
 * Why a piece is tight: measured, and it leaves less than the allowance; not measured enough, so that more of the tape
 * may free it; or only a trial can tell (winding treads, a raise farther than by hand), whatever is measured.
 */
export type Tightness = 'measured' | 'open' | 'trial';

/** The first words of a reason that is tight, by kind. */
export const TIGHT_WORDS: Readonly<Record<Tightness, string>> = {
  measured: 'measured, and tight',
  open: 'not measured enough',
  trial: 'needs a trial',
};

/** The first words of a reason where the check doubts what goes as typed. */
export const LOOK_FIRST = 'as typed, but look first';

/** With these words a reason goes on where the check of the route asks to look at a row, whatever the verdict. */
export const CHECK_ASKS = 'the check asks';

/** With these a reason begins where the tape alone decides. */
export const WITHIN_TAPE = 'within the tape';

/** The name of a class of verdicts, as a month is counted by. */
export type VerdictClassName =
  | 'goes'
  | 'goes as typed, but look first'
  | 'tight as measured'
  | 'tight, not measured enough'
  | 'tight, needs a trial'
  | 'no way found'
  | 'not measured'
  | 'cannot go';

/** What verdicts are counted and sorted by: finer than the verdict. */
export interface VerdictClass {
  readonly name: VerdictClassName;
  readonly verdict: Verdict;
  /** The first words of its reasons; none: any other of its verdict. */
  readonly begins?: string;
}

/** Best first. */
export const VERDICT_CLASSES: readonly VerdictClass[] = [
  { name: 'goes', verdict: 'goes' },
  { name: 'goes as typed, but look first', verdict: 'goes', begins: LOOK_FIRST },
  { name: 'tight as measured', verdict: 'tight', begins: TIGHT_WORDS.measured },
  { name: 'tight, not measured enough', verdict: 'tight', begins: TIGHT_WORDS.open },
  { name: 'tight, needs a trial', verdict: 'tight', begins: TIGHT_WORDS.trial },
  { name: 'no way found', verdict: 'no way found' },
  { name: 'not measured', verdict: 'not measured' },
  { name: 'cannot go', verdict: 'cannot go' },
];

/** What stands before the first colon of a reason. */
const LABEL = /^[^:]*(?=: )/;

/**
 * Reads the class of a verdict back from the two cells that show it: a workbook holds nothing else of it. Every reason of
 * a class with a label begins with that label and a colon. Whoever has the verdict itself asks that.
 * @returns undefined where the verdict is none of ours
 * @example verdictClassOf('goes', 'as typed, but look first: step 2 (door): …')?.name // 'goes as typed, but look first'
 */
export const verdictClassOf = (verdict: string, reason: string): VerdictClass | undefined => {
  const alike = VERDICT_CLASSES.filter((one) => one.verdict === verdict);
  const label = LABEL.exec(reason)?.[0];
  return (
    alike.find(({ begins }) => begins !== undefined && begins === label) ??
    alike.find(({ begins }) => begins === undefined) ??
    alike[0]
  );
};

/** What a class means, in a clause. */
export const CLASS_MEANING: Readonly<Record<VerdictClassName, string>> = {
  goes: 'clear by the allowance, the tape counted against it; space alone',
  'goes as typed, but look first':
    'the same, if what the check asks about is right: look before anybody loads',
  'tight as measured': 'passes as measured, but not by the allowance: a frame or template first',
  'tight, not measured enough': 'what is not measured may free it: measure the rest',
  'tight, needs a trial':
    'winding treads, or raised farther than by hand: a trial with a frame, whatever is measured',
  'no way found': 'no motion is shown, and nothing proves it impossible',
  'not measured': 'a measure is missing or cannot be taken',
  'cannot go': 'proved, with the reason named',
};
