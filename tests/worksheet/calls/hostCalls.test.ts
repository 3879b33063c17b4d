import type { CellError } from '../../../src/core/measures/readQuantity';
import { CallQueue } from '../../../src/worksheet/calls/callQueue';
import { HostCalls, type Invocation } from '../../../src/worksheet/calls/hostCalls';
import { Refusals } from '../../../src/worksheet/calls/refusals';
import { FUNCTIONS } from '../../../src/worksheet/functions';
import { callInCells } from '../../support/callInCells';

/*
 * What the host's calls do with their turn of the page and with the invocation that the host hands over. The runtime
 * script of the platform keeps the invocation of every call that may be taken back until it is, however long ago it was
 * answered (custom-functions-runtime.debug.js, _invocationContextMap): what hangs on it stays as long.
 */
const makeError = (code: string, message = ''): CellError => ({ code, message });

function page(): {
  turn: () => Promise<void>;
  /** How long each call takes from now on [ms]. */
  eachTakes: (time: number) => void;
  call: (id: string, given: readonly unknown[], invocation: Invocation) => unknown;
} {
  let time = 0;
  let oneTakes = 0;
  const turns: (() => void)[] = [];
  const later = (run: () => void): void => void turns.push(run);
  const queue = new CallQueue(FUNCTIONS, {
    now: () => time,
    later,
    after: () => {},
    makeWorker: () => undefined,
    workers: 1,
  });
  const calls = new HostCalls(queue, makeError, new Refusals(), () => (time += oneTakes), later);
  return {
    turn: async () => {
      for (let next = turns.shift(); next; next = turns.shift()) {
        next();
        await Promise.resolve();
      }
    },
    eachTakes: (one) => void (oneTakes = one),
    call: (id, given, invocation) => {
      const description = FUNCTIONS.find((f) => f.id === id);
      if (!description) throw new Error(`no function ${id}`);
      return calls.functionOf(description)(...given.map((value) => [[value]]), invocation);
    },
  };
}

test('a short call is answered at once while the page has its turn, and afterwards by a promise with the same', async () => {
  const { call, turn, eachTakes } = page();
  const expected = callInCells('PITCH', 190, 250);
  eachTakes(1);
  for (let i = 0; i < 20; i++) expect(call('PITCH', [190, 250], {})).toEqual(expected);
  eachTakes(1000);
  expect(call('PITCH', [190, 250], {})).toEqual(expected);
  const later = call('PITCH', [190, 250], {});
  expect(later).toBeInstanceOf(Promise);
  await turn();
  expect(await later).toEqual(expected);
});

test('nothing hangs on the invocation of a short call, and of a long one only while it runs', async () => {
  const { call, turn, eachTakes } = page();
  const short: Invocation = {};
  eachTakes(1000);
  call('PITCH', [190, 250], short);
  eachTakes(0);
  const queued: Invocation = {};
  const answer = call('PITCH', [200, 250], queued);
  const long: Invocation = {};
  const landing = call('HALFLANDING', [900, 100, 950, 2100, 190, 250, 1400, 700, 25, null, null], long);
  expect(long.onCanceled).toBeInstanceOf(Function);
  await turn();
  await Promise.all([answer, landing]);
  expect(Object.keys(short)).toEqual([]);
  expect(Object.keys(queued)).toEqual([]);
  expect(long.onCanceled).toBeUndefined();
});

test('nothing hangs on the invocation of a long call that is known already', async () => {
  const { call, turn } = page();
  const given = [900, 100, 950, 2100, 190, 250, 1400, 700, 25, null, null];
  const landing = call('HALFLANDING', given, {});
  await turn();
  const again: Invocation = {};
  const known = call('HALFLANDING', given, again);
  expect(await known).toEqual(await landing);
  expect(again.onCanceled).toBeUndefined();
});
