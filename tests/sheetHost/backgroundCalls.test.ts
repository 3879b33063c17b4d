import { registerBundle, type Bundle } from '../../src/sheetHost/bundle';
import { customFunctionsRuntime } from '../../src/sheetHost/customFunctionsRuntime';
import { isBusy, isCellError, type CellValue } from '../../src/sheetHost/hostValues';
import { BackgroundCalls, workersFor } from '../../src/sheetHost/page/backgroundCalls';
import type { CallToRun, ToWorker } from '../../src/worksheet/calls/messages';
import type { SmallerCalls } from '../../src/worksheet/calls/smallerCalls';
import type { WorkerLike } from '../../src/worksheet/calls/workers';

/** A worker that answers when it is told to: each row of its first argument with itself doubled. */
class SlowWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  readonly calls: CallToRun[] = [];
  readonly had: unknown[] = [];
  preferred: readonly number[] = [];

  postMessage(message: ToWorker): void {
    if (message.kind === 'run') {
      this.calls.push(...message.calls);
      this.had.push(...message.calls.map(({ values }) => (values as unknown[])[0]));
    }
    if (message.kind === 'first') this.preferred = message.numbers;
    if (message.kind === 'give up') {
      const at = this.calls.findIndex(({ number }) => number === message.number);
      this.calls.splice(at, 1);
    }
  }

  terminate(): void {}

  /** Answers the first of what it has. */
  answer(): void {
    const call = this.calls.shift();
    if (!call) return;
    const [rows, factor] = call.values as [number[][], number];
    const cells = rows.map((row) => row.map((cell) => cell * factor));
    this.onmessage?.({ data: { kind: 'answers', answers: [{ number: call.number, cells }] } });
  }
}

const PARAMETERS = [
  { name: 'routes', type: 'any', dimensionality: 'matrix' },
  { name: 'factor', type: 'number' },
];

function bundleOf(): Bundle {
  const runtime = customFunctionsRuntime();
  runtime.global.associate('TIMES', () => {
    throw new Error('it is never called here');
  });
  const result = { dimensionality: 'matrix' };
  const options = { requiresAddress: true };
  return registerBundle(
    { functions: [{ id: 'TIMES', name: 'TIMES', parameters: PARAMETERS, result, options }] },
    runtime,
  );
}

/** Each row by itself. */
function rowByRow(_: string, values: readonly unknown[]): SmallerCalls | undefined {
  const [rows, factor] = values as [number[][], number];
  if (rows.length < 2) return undefined;
  return { calls: rows.map((row) => [[row], factor]), join: (answers) => answers.flat() };
}

function aside(workers: number) {
  const made: SlowWorker[] = [];
  const heard = { answered: 0, further: 0 };
  const calls = new BackgroundCalls(
    {
      makeWorker: () => {
        const worker = new SlowWorker();
        made.push(worker);
        return worker;
      },
      workers,
      inSmallerCalls: rowByRow,
    },
    () => heard.answered++,
    () => heard.further++,
  );
  const bundle = calls.wrap(bundleOf());
  /** What the cells show after all formulas have been computed. */
  const compute = (asked: Readonly<Record<string, readonly [number[][], number]>>, front: string[] = []) => {
    calls.begin();
    const shown = Object.entries(asked).map(([address, given]) =>
      bundle.functions.get('TIMES')!.call(...given, { address }),
    );
    calls.settle(new Set(front));
    return shown as CellValue[][][];
  };
  return { calls, bundle, made, heard, compute };
}

const isWaiting = (cells: CellValue[][]): boolean => isBusy(cells[0]![0]!);

test('workers share a call, which is answered once all of it is', () => {
  const { compute, made, heard, calls } = aside(2);
  const rows = Array.from({ length: 12 }, (_, i) => [i + 1]);
  const asked = { 'A!B1': [rows, 10] } as const;
  expect(compute(asked).map(isWaiting)).toEqual([true]);
  expect(made.map(({ calls }) => calls.length)).toEqual([3, 3]);
  expect(calls.progress()).toMatchObject({ waiting: 1, done: 0, share: { done: 0, of: 12 } });
  made[0]!.answer();
  expect(heard).toEqual({ answered: 0, further: 1 });
  expect(calls.progress().share).toEqual({ done: 1, of: 12 });
  // The one that is done first gets more to do.
  for (let i = 0; i < 12; i++) made[1]!.answer();
  for (let i = 0; i < 3; i++) made[0]!.answer();
  expect(heard.answered).toBe(1);
  expect(compute(asked)).toEqual([rows.map(([row]) => [row! * 10])]);
  expect(made[1]!.had.length).toBeGreaterThan(made[0]!.had.length);
});

test('after a change only what it is about is made anew, by whom has had it', () => {
  const { compute, made } = aside(2);
  const rows = [[1], [2], [3], [4], [5], [6]];
  compute({ 'A!B1': [rows, 10] });
  for (let i = 0; i < 6; i++) for (const worker of made) worker.answer();
  const before = made.map(({ had }) => [...had]);
  for (const worker of made) worker.had.length = 0;

  const changed = rows.map(([row]) => (row === 3 ? [30] : [row!]));
  expect(compute({ 'A!B1': [changed, 10] }).map(isWaiting)).toEqual([true]);
  expect(made.flatMap(({ had }) => had)).toEqual([[[30]]]);
  for (const worker of made) worker.answer();
  expect(compute({ 'A!B1': [changed, 10] })).toEqual([[[10], [20], [300], [40], [50], [60]]]);
  // What was asked before is known still, whole.
  expect(compute({ 'A!B1': [rows, 10] })).toEqual([[[10], [20], [30], [40], [50], [60]]]);

  // With another factor all are made anew, each where it was.
  for (const worker of made) worker.had.length = 0;
  compute({ 'A!B1': [rows, 7] });
  for (const [i, worker] of made.entries()) {
    expect(worker.had.length).toBeGreaterThan(0);
    for (const had of worker.had) expect(before[i]).toContainEqual(had);
  }
});

test('what the sheet in front needs is handed on before the rest of a call that it does not need', () => {
  const { compute, made, calls } = aside(2);
  const long = Array.from({ length: 20 }, (_, i) => [i]);
  compute({ 'A!B1': [long, 2], 'Front!A1': [[[100]], 3] }, ['Front!A1']);
  expect(made.flatMap(({ had }) => had)).toContainEqual([[100]]);
  expect(calls.progress()).toMatchObject({ waiting: 2, inFront: 1 });
});

test('a stored value stands for a call until its answer is there, and is told from one', () => {
  const { compute, made, calls, bundle } = aside(1);
  const asked: Readonly<Record<string, readonly [number[][], number]>> = { 'A!B1': [[[1], [2]], 10] };
  calls.open(new Map([['A!B1', [[7], [7]]]]));
  const [shown] = compute(asked);
  expect(shown).toEqual([[7], [7]]);
  expect(bundle.isProvisional?.(shown)).toBe(true);
  made[0]!.answer();
  made[0]!.answer();
  const [answer] = compute(asked);
  expect(answer).toEqual([[10], [20]]);
  expect(bundle.isProvisional?.(answer)).toBe(false);
  expect(isCellError(answer![0]![0]!)).toBe(false);
});

test('a cell of the sheet in front that shows nothing yet goes before one that has a stored value meanwhile', () => {
  const { compute, made, calls } = aside(1);
  const long = Array.from({ length: 20 }, (_, i) => [i]);
  calls.open(new Map([['Front!A1', long]]));
  compute({ 'Front!A1': [long, 2] }, ['Front!A1']);
  const typed: Readonly<Record<string, readonly [number[][], number]>> = {
    'Front!A1': [long, 2],
    'Front!C1': [[[100]], 3],
  };
  compute(typed, ['Front!A1', 'Front!C1']);
  expect(made[0]!.had.at(-1)).toEqual([[100]]);
  const number = made[0]!.calls.at(-1)!.number;
  expect(made[0]!.preferred).toEqual([number]);
});

test('some processors are left to the page, and a worker is made for no more than eight', () => {
  expect([1, 2, 3, 4, 8, 9, 64].map(workersFor)).toEqual([2, 2, 2, 3, 7, 8, 8]);
});
