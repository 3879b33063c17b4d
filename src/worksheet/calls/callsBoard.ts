import type { CallQueue, CallsState } from './callQueue';
import type { Refusals, Refusal } from './refusals';

/** What the pane may know of the calls of the functions, and do about them. */
export interface CallsBoard {
  /** Ids of all functions. */
  readonly functions: ReadonlySet<string>;
  state(): CallsState;
  /** Calls back often: after each answer and each error. */
  onChange(listener: () => void): void;
  /** Gives up all that is being computed; its cells say so. */
  stop(): void;
  /** The last error of a cell; rows and columns count from 0. */
  refusalAt(sheet: string, row: number, column: number): Refusal | undefined;
}

/** The functions and the pane are scripts of one page: the one leaves this for the other. */
const BOARD = 'carryCallsBoard';

/** What the functions of this page have left; nothing where they answer each call at once. */
export const callsBoard = (): CallsBoard | undefined =>
  (globalThis as { readonly [BOARD]?: CallsBoard })[BOARD];

export function leaveCallsBoard(functions: ReadonlySet<string>, queue: CallQueue, refusals: Refusals): void {
  const board: CallsBoard = {
    functions,
    state: () => queue.state(),
    onChange: (listener) => {
      queue.onChange(listener);
      refusals.onChange(listener);
    },
    stop: () => queue.stop(),
    refusalAt: (sheet, row, column) => refusals.at(sheet, row, column),
  };
  Object.assign(globalThis, { [BOARD]: board });
}
