import type { Paper } from './paper';

/** A view of a stage: the drawing, whose dimensions and notes say the same in words. */
export interface StageView {
  readonly paper: Paper;
  /** What is drawn: `Plan of a corner`. */
  readonly title: string;
}
