import type { TapeCase } from './tapeCase';

/** A length along the way, made of measures: what is known of it and what is not. */
export interface WayLength {
  /** Sum of what was measured [mm]. */
  readonly known: number;
  /** Measures it is made of, each off by a tape. */
  readonly tapes: number;
  /** A part of it was not measured: it may be longer by anything from nothing up. */
  readonly open: boolean;
  /** Where it is open: it is no longer than this [mm]; absent: no limit is known. */
  readonly most?: number | undefined;
}

/** No length at all. */
export const NO_LENGTH: WayLength = { known: 0, tapes: 0, open: false };
/** A length of which nothing is known. */
export const OPEN_LENGTH: WayLength = { known: 0, tapes: 0, open: true };

/** A length that was measured [mm]; not measured: it may be anything. */
export const lengthOf = (measured: number | undefined): WayLength =>
  measured === undefined ? OPEN_LENGTH : { known: measured, tapes: 1, open: false };

/** No longer than this [mm]; undefined where no limit is known. */
const mostOf = ({ open, known, most }: WayLength): number | undefined => (open ? most : known);

/** One length after the other. */
export function together(one: WayLength, other: WayLength): WayLength {
  const oneMost = mostOf(one);
  const otherMost = mostOf(other);
  const limited = one.most !== undefined || other.most !== undefined;
  const most = limited && oneMost !== undefined && otherMost !== undefined ? oneMost + otherMost : undefined;
  return {
    known: one.known + other.known,
    tapes: one.tapes + other.tapes,
    open: one.open || other.open,
    ...(most === undefined ? {} : { most }),
  };
}

/** The least such a length can be [mm], each tape off against it. */
export const leastLength = ({ known, tapes }: WayLength, tape: number): number =>
  Math.max(0, known - tapes * tape);

/**
 * A straight in one tape case [mm]: what is not measured is nothing in the worst case, and else as long as it can be.
 * That is the right end only where a longer straight never hurts.
 */
export function straightLength(length: WayLength, tapeCase: TapeCase, tape: number): number {
  if (tapeCase === 'worst') return leastLength(length, tape);
  const off = tapeCase === 'best' ? tape : 0;
  if (!length.open) return length.known + length.tapes * off;
  return length.most === undefined ? Infinity : length.most + off;
}
