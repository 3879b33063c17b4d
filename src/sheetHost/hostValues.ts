/** An error in a cell: its code, and the message that the host shows beside it. */
export interface CellError {
  readonly code: string;
  readonly message?: string;
}

/** What a cell shows: null when it is empty. */
export type CellValue = number | string | boolean | null | CellError;

/** How a host hands over what was not given. Excel does it differently from platform to platform. */
export interface HostManners {
  /** A lone empty cell given for an argument. */
  readonly emptyCell: null | 0;
  /** An empty cell inside a range. */
  readonly emptyInRange: null | 0 | '';
  /** An optional argument left out. */
  readonly leftOut: null | undefined;
}

/** In a browser an empty cell comes as null. */
export const WEB_MANNERS: HostManners = { emptyCell: null, emptyInRange: null, leftOut: null };

/**
 * On Windows and Mac it comes as 0, so that a measure not taken looks like a measure of nothing.
 * @internal the tests hand it to a host; the product runs as the browser does
 */
export const DESKTOP_MANNERS: HostManners = { emptyCell: 0, emptyInRange: 0, leftOut: null };

/**
 * Whether a value is an error of a cell.
 */
export const isCellError = (value: unknown): value is CellError =>
  typeof value === 'object' && value !== null && typeof (value as { code?: unknown }).code === 'string';

/** The message beside the #N/A of a cell whose call is computed aside and not answered yet. */
export const BUSY = 'still being computed';

export const isBusy = (value: CellValue): boolean => isCellError(value) && value.message === BUSY;
