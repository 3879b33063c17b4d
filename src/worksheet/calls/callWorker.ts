/**
 * The entry of callWorker.js: runs calls of the add-in's functions in a worker of the pane's page.
 */
import { FUNCTIONS } from '../functions';
import { CallRunner } from './callRunner';
import { laterByMessage } from './later';
import type { FromWorker, ToWorker } from './messages';

/** So short that a call that is no longer wanted is given up at once [ms]. */
const SLICE = 20;

interface WorkerScope {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: FromWorker): void;
}

const scope = globalThis as unknown as WorkerScope;
const runner = new CallRunner(FUNCTIONS, SLICE, {
  now: () => performance.now(),
  later: laterByMessage(),
  tell: (message) => scope.postMessage(message),
});

scope.onmessage = ({ data }) => {
  if (data.kind === 'run') runner.run(data.calls);
  else if (data.kind === 'first') runner.prefer(data.numbers);
  else runner.giveUp(data.number);
};
scope.postMessage({ kind: 'ready' });
