import { advisedInstead } from '../core/route/advisedInstead';
import { mmLeft } from '../core/route/reason';
import { CHECK_ASKS, verdictClassOf, type VerdictClass } from '../core/route/verdictClass';
import type { Remeasure } from '../core/route/remeasure';
import type { StageDrawing } from '../drawing/drawStage';

/** Why a survey does not go as asked for, beyond its row of the workbook. */
export interface Explanation {
  /** What to measure again or to change, the most useful first. */
  readonly remeasure: readonly Remeasure[];
  /**
   * The deciding stage, and where the piece's motion is drawn its numbered places from the side; absent where it cannot be
   * drawn, and then `undrawn` says why.
   */
  readonly drawings?: readonly StageDrawing[];
  readonly undrawn?: string;
  /** Clearance [mm a side] of the way that is drawn, where a piece is. */
  readonly drawnClearance?: number;
}

/** One survey of a month, as the cells of the workbook show it; '' where a cell is empty. */
export interface MonthSurvey {
  readonly survey: string;
  readonly customer: string;
  readonly place: string;
  /** Day of the month on which it was taken; absent where the orders do not say. */
  readonly day?: string;
  readonly build: string;
  readonly verdict: string;
  /** What it is counted by; undefined where the verdict is none of ours. */
  readonly verdictClass: VerdictClass | undefined;
  /** Its reason says already that the survey is to be looked at. */
  readonly asksToLook: boolean;
  /** [mm a side] */
  readonly clearance: number | undefined;
  readonly step: string;
  readonly stage: string;
  readonly piece: string;
  readonly pose: string;
  /** [kg] */
  readonly heaviest: number | undefined;
  readonly carry: string;
  readonly reason: string;
  readonly caution: string;
  /** What to advise: a build, or words. */
  readonly advise: string;
  readonly nextStep: string;
  /** The smaller, the sooner it is looked at again; undefined where the workbook does not say. */
  readonly urgency: number | undefined;
  /** What the check of the route asks to look at, whatever the verdict: `step 3: Rise is 245 mm and …`. */
  readonly toCheck?: readonly string[];
  /** Only for a survey that does not go. */
  readonly explanation?: Explanation;
}

/** A survey as its cells show it, with what it is counted by: read here once, and data from here on. */
export const surveyOfCells = (cells: Omit<MonthSurvey, 'verdictClass' | 'asksToLook'>): MonthSurvey => ({
  ...cells,
  verdictClass: verdictClassOf(cells.verdict, cells.reason),
  asksToLook: cells.reason.includes(CHECK_ASKS),
});

/** A month of surveys, one verdict a survey. */
export interface Month {
  readonly surveys: readonly MonthSurvey[];
  /** Clearance that the firm insists on [mm a side]. */
  readonly allowance: number;
  /** How far off a measure may be [mm]. */
  readonly tape: number;
}

/** Surveys that are to be looked at again, the most urgent first: measured again, or tried with a frame. */
export function lookedAtAgain(month: Month): MonthSurvey[] {
  return byUrgency(month).filter(({ verdict }) => verdict !== 'goes' && verdict !== 'cannot go');
}

/** All surveys, the most urgent first; those without an urgency last, as they stand. */
export function byUrgency({ surveys }: Month): MonthSurvey[] {
  return [...surveys].sort((a, b) => place(a) - place(b));
}

const place = ({ urgency }: MonthSurvey): number => urgency ?? Number.MAX_VALUE;

/** `-77 mm a side`, rounded as the reasons are, or '' for none. */
export const clearanceWords = (clearance: number | undefined): string =>
  clearance === undefined ? '' : `${mmLeft(clearance)} a side`;

/** The workbook's advice in a sentence: a build's name alone means that it goes. */
export function adviceWords(advise: string): string {
  const advised = advisedInstead(advise);
  if (advised.kind === 'none') return `${advise} goes, or is tight`;
  if (advised.kind !== 'build') return advise;
  return advised.fits === 'tight'
    ? `${advised.build}: tight, a frame or template first`
    : `${advised.build}: goes, space alone`;
}
