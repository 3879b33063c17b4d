/** What is said of a piece at a stage, of a piece on a route, and of a build: best first. */
export const VERDICTS = ['goes', 'tight', 'no way found', 'not measured', 'cannot go'] as const;

/** What is said of a piece at a step, and of a build on a route. */
export type Verdict = (typeof VERDICTS)[number];

/** Place of a verdict [count], 0 the best. A route is as good as its worst stage, a build as its worst piece. */
export const verdictRank = (verdict: Verdict): number => VERDICTS.indexOf(verdict);
