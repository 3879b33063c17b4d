/** How far a long computation is: so many of so many parts are done. */
export interface Share {
  readonly done: number;
  readonly of: number;
}

/** A long computation in parts: it pauses after each, so that whoever runs it can do something else between. */
export type Parts<T> = Generator<Share, T, void>;

/** Runs a computation to its end without a pause. */
export function runToEnd<T>(parts: Parts<T>): T {
  for (;;) {
    const { done, value } = parts.next();
    if (done) return value;
  }
}
