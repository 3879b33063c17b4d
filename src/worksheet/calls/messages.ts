import type { Share } from '../../core/measures/parts';
import type { CellError } from '../../core/measures/readQuantity';

/** One call of a function, as it is handed to whoever runs it. */
export interface CallToRun {
  readonly number: number;
  /** The function's id. */
  readonly id: string;
  /** Its arguments; errors among them as plain `{code, message}`. A text: the same as JSON. */
  readonly values: readonly unknown[] | string;
}

/** The cells that a call gives; errors among them as plain `{code, message}`. */
export type PlainCells = readonly (readonly (string | number | boolean | CellError)[])[];

export interface CallAnswer {
  readonly number: number;
  readonly cells: PlainCells;
}

/** What a worker of the add-in is told. */
export type ToWorker =
  | { readonly kind: 'run'; readonly calls: readonly CallToRun[] }
  | { readonly kind: 'give up'; readonly number: number }
  /** These go before all others, which wait for them. */
  | { readonly kind: 'first'; readonly numbers: readonly number[] };

/** What it tells. */
export type FromWorker =
  | { readonly kind: 'ready' }
  | { readonly kind: 'answers'; readonly answers: readonly CallAnswer[] }
  | { readonly kind: 'share'; readonly number: number; readonly share: Share };
