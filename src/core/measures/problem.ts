import type { ReadFailure } from './readQuantity';

/**
 * A refusal, as data. The core never throws and never words a message: the worksheet turns a problem into
 * the words a cell shows, in one file, so that no message is written twice.
 */
export type Problem =
  /** The measure was not taken: the cell is blank. */
  | { readonly kind: 'not measured'; readonly argument: string }
  /** What came is no number, or no text that can be read as one. */
  | {
      readonly kind: 'not readable';
      readonly argument: string;
      readonly got: unknown;
      readonly allowed: string;
      readonly why?: ReadFailure;
    }
  /** A number outside what is allowed. `hint` says what it may be instead, e.g. an empty cell read as 0. */
  | {
      readonly kind: 'out of range';
      readonly argument: string;
      readonly got: unknown;
      readonly allowed: string;
      readonly hint?: string;
    }
  /** Arguments each allowed, but not together. `because` is a whole clause. */
  | {
      readonly kind: 'impossible';
      readonly argument: string;
      readonly got: unknown;
      readonly because: string;
    }
  /** A question with no published or computable answer; `instead` says what to do about it. */
  | { readonly kind: 'no answer'; readonly because: string; readonly instead: string };

/** Either a value or the problem that stands in its way. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/**
 * An outcome that is a value.
 */
export const found = <T>(value: T): Outcome<T> => ({ ok: true, value });

/**
 * An outcome that is a refusal.
 */
export const refused = (problem: Problem): { readonly ok: false; readonly problem: Problem } => ({
  ok: false,
  problem,
});
