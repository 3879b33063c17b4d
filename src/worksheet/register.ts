import type { CellError } from '../core/measures/readQuantity';
import { hostFunction } from './callFunction';
import { CallQueue } from './calls/callQueue';
import { leaveCallsBoard } from './calls/callsBoard';
import { HostCalls } from './calls/hostCalls';
import { laterByMessage } from './calls/later';
import { Refusals } from './calls/refusals';
import { makeWorkersOf } from './calls/workers';
import { FUNCTIONS } from './functions';

/** The entry of functions.js: joins every described function to its id in functions.json. */
const hostError = (code: string, message?: string): CellError =>
  new CustomFunctions.Error(code as CustomFunctions.ErrorCode, message);

/** In the page of the add-in a long call is made aside; any other host has to wait for it. */
function callsOfPage(): HostCalls | undefined {
  if (typeof document === 'undefined' || typeof Office === 'undefined') return undefined;
  const now = (): number => performance.now();
  const later = laterByMessage();
  const { currentScript } = document;
  const address = currentScript instanceof HTMLScriptElement ? currentScript.src : document.baseURI;
  const queue = new CallQueue(FUNCTIONS, {
    now,
    later,
    after: (time, run) => void setTimeout(run, time),
    makeWorker: makeWorkersOf(new URL('callWorker.js', address).href),
    workers: Math.max(1, (navigator.hardwareConcurrency || 1) - 1),
  });
  const refusals = new Refusals();
  leaveCallsBoard(new Set(FUNCTIONS.map(({ id }) => id)), queue, refusals);
  return new HostCalls(queue, hostError, refusals, now, later);
}

const calls = callsOfPage();
for (const description of FUNCTIONS) {
  const call = calls?.functionOf(description) ?? hostFunction(description, hostError);
  CustomFunctions.associate(description.id, call);
}
