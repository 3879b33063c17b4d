import { readFile } from 'node:fs/promises';
import path from 'node:path';
import vm from 'node:vm';
import { registerBundle, type Bundle } from './bundle';
import { customFunctionsRuntime } from './customFunctionsRuntime';

/**
 * Runs a script of custom functions in a context of its own, with nothing of Node in it, and registers what it
 * associates through its metadata. For Node; a page runs the script by a script tag.
 * @param script the content of functions.js
 * @param metadata the content of functions.json
 */
export function runBundle(script: string, metadata: unknown): Bundle {
  const runtime = customFunctionsRuntime();
  // An ordinary global object: with the usual one every look-up of `Math` or `Array` leaves the context and comes
  // back, which makes a computation some five times slower. Older versions of Node 20 have only that one.
  const plain = vm.constants.DONT_CONTEXTIFY as typeof vm.constants.DONT_CONTEXTIFY | undefined;
  const context = vm.createContext(plain ?? {}) as Record<string, unknown>;
  Object.assign(context, {
    CustomFunctions: runtime.global,
    Office: {
      onReady: () => Promise.resolve({ host: null, platform: null }),
      actions: { associate: () => {} },
    },
    console: { log: () => {}, warn: () => {}, error: () => {} },
  });
  new vm.Script(script, { filename: 'functions.js' }).runInContext(context);
  return registerBundle(metadata, runtime);
}

/** Reads functions.js and functions.json from a folder and runs them. Throws when they are not there. */
export async function loadBundle(folder: string): Promise<Bundle> {
  const [script, metadata] = await Promise.all([
    readFile(path.join(folder, 'functions.js'), 'utf8'),
    readFile(path.join(folder, 'functions.json'), 'utf8'),
  ]);
  return runBundle(script, JSON.parse(metadata));
}
