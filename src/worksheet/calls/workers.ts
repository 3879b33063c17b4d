import type { FromWorker, ToWorker } from './messages';

/** As much of a worker as is used here. */
export interface WorkerLike {
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: unknown) => void) | null;
  postMessage(message: ToWorker): void;
  terminate(): void;
}

/**
 * Makes workers of one script; none where the page is not allowed any.
 * @param address of the script
 * @returns a worker, or undefined when none can be made
 */
export function makeWorkersOf(address: string): () => WorkerLike | undefined {
  return () => {
    if (typeof Worker === 'undefined') return undefined;
    try {
      return new Worker(address) as unknown as WorkerLike;
    } catch (fault) {
      // The page's policy, mostly; the calls are then made beside the pane.
      console.warn('No worker can be made:', fault);
      return undefined;
    }
  };
}
