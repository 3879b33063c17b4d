import type { PlainCells } from './messages';

/** A call as smaller ones of the same function, and how its answer is made of theirs. */
export interface SmallerCalls {
  /** The arguments of each. */
  readonly calls: readonly (readonly unknown[])[];
  /** @param answers one for each call, in their order */
  readonly join: (answers: readonly PlainCells[]) => PlainCells;
}
