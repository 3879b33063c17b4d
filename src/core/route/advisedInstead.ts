/** How a month's sheet says what to advise: a build's name alone means that it goes. Its cells are read by the same words. */
export const ADVISED = {
  asAsked: 'as asked',
  ifRight: 'as asked, if what Route marks is right',
  ifTried: 'as asked, if it passes the trial',
  measureFirst: 'measure first',
  none: 'none of the next builds',
  /** Before the name of a build that is tight. */
  tight: 'tight: ',
} as const;

/** What a cell of the month advises. */
export type AdvisedInstead =
  | { readonly kind: 'nothing' | 'as asked' | 'measure first' | 'none' }
  | { readonly kind: 'build'; readonly build: string; readonly fits: 'goes' | 'tight' };

/**
 * Reads what a cell of the month advises.
 * @example advisedInstead('tight: 8 ft three-piece') // { kind: 'build', build: '8 ft three-piece', fits: 'tight' }
 */
export function advisedInstead(cell: string): AdvisedInstead {
  switch (cell) {
    case '':
      return { kind: 'nothing' };
    case ADVISED.asAsked:
    case ADVISED.ifRight:
    case ADVISED.ifTried:
      return { kind: 'as asked' };
    case ADVISED.measureFirst:
      return { kind: 'measure first' };
    case ADVISED.none:
      return { kind: 'none' };
    default:
      return cell.startsWith(ADVISED.tight)
        ? { kind: 'build', build: cell.slice(ADVISED.tight.length), fits: 'tight' }
        : { kind: 'build', build: cell, fits: 'goes' };
  }
}
