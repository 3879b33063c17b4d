import type { StageName } from '../stages/kinds';
import type { Reading } from './reading';
import type { BookStage, LooseMeasures } from './stageBook';
import type { TapeCase } from './tapeCase';

/** What a plan is made with. */
export interface Planning {
  readonly reading: Reading;
  readonly tapeCase: TapeCase;
  /** [mm] */
  readonly tape: number;
  /** The row's stage; undefined where the row cannot be judged. */
  readonly stageAt: (i: number) => BookStage | undefined;
  readonly lookUp: (stage: StageName, measures: LooseMeasures) => BookStage;
  /** Whether rows that stand close are solved as one space. */
  readonly close: CloseRows;
}

/** How rows that stand close are taken: as one space, or each by itself with room for everything beside it. */
export type CloseRows = 'as one space' | 'by themselves';

/** A flight without its ends. */
export function bareFlight({ lookUp }: Planning, { measures }: BookStage): BookStage {
  const { width, height, rise, going, risers, lowWidth, lowHeight } = measures;
  return lookUp('flight', { width, height, rise, going, risers, lowWidth, lowHeight });
}
