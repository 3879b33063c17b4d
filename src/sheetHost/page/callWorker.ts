/**
 * The entry of sheetCalls.js: runs the built functions.js in a worker of the page, for calls that take long.
 * Gets `{ number, id, values }`, answers `{ number, cells }` or `{ number, thrown }`.
 */
import { customFunctionsRuntime } from '../customFunctionsRuntime';
import { isCellError } from '../hostValues';
import type { CallAnswer, CallQuestion } from './backgroundCalls';

interface WorkerScope {
  importScripts(name: string): void;
  onmessage: ((event: { readonly data: CallQuestion }) => void) | null;
  postMessage(answer: CallAnswer): void;
}

const scope = globalThis as unknown as WorkerScope;
const runtime = customFunctionsRuntime();
Object.assign(globalThis, { CustomFunctions: runtime.global });
scope.importScripts('functions.js');

// Errors lose their class on the way between page and worker, and get it again.
const received = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(received);
  return isCellError(value) ? new runtime.global.Error(value.code, value.message) : value;
};

scope.onmessage = ({ data: { number, id, values } }) => {
  try {
    const compute = runtime.associated.get(id);
    if (!compute) throw new Error(`No function is registered as ${id}.`);
    const cells = compute(...values.map(received));
    scope.postMessage({ number, cells });
  } catch (error) {
    const thrown = isCellError(error) ? { code: error.code, ...messageOf(error) } : undefined;
    scope.postMessage({ number, thrown });
  }
};

const messageOf = ({ message }: { readonly message?: string }): { message?: string } =>
  message === undefined ? {} : { message };
