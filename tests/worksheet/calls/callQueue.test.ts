import type { Parts } from '../../../src/core/measures/parts';
import { CallQueue, type NoAnswer } from '../../../src/worksheet/calls/callQueue';
import { CallRunner } from '../../../src/worksheet/calls/callRunner';
import type { FromWorker, PlainCells, ToWorker } from '../../../src/worksheet/calls/messages';
import type { WorkerLike } from '../../../src/worksheet/calls/workers';
import type { FunctionDescription, TableFunction } from '../../../src/worksheet/description';

/*
 * The queue of calls with a clock and a turn of the page that the test moves by hand, and workers that are runners in
 * this process: what is computed how often, by whom, in what order. What is expected follows from what is asked for
 * (one computation for equal calls, a part of each call in turn, nothing more of a call that is given up).
 */

/** Parts that were worked, by the call that they belong to, in order. */
let worked: string[] = [];
let time = 0;

/** A function that works as many parts as it is asked to, each of 10 ms, and gives its first argument. */
const counting: FunctionDescription = {
  id: 'COUNTING',
  kind: 'table',
  group: 'Measures and pieces',
  summary: 'for the tests',
  arguments: [
    { name: 'name', help: 'what it is called', quantity: 'text' },
    { name: 'parts', help: 'how many', quantity: 'count', least: 1, most: 1000, whole: true },
  ],
  result: { meaning: 'its name', unit: '' },
  source: 'none',
  example: { arguments: [], result: [], source: 'none' },
  compute: () => ({ ok: true, value: [['unused']] }),
  computeInParts: function* ({ name, parts }): ReturnType<NonNullable<TableFunction['computeInParts']>> {
    for (let done = 0; done < (parts as number); done++) {
      worked.push(String(name));
      time += 10;
      yield { done, of: parts as number };
    }
    return { ok: true, value: [[String(name)]] };
  } as (ready: Readonly<Record<string, unknown>>) => Parts<never>,
} as unknown as FunctionDescription;

class Page {
  private readonly turns: (() => void)[] = [];
  private readonly timers: { readonly at: number; readonly run: () => void }[] = [];
  made = 0;
  ended = 0;
  readonly workers: FakeWorker[] = [];
  readonly queue: CallQueue;

  constructor(
    readonly count: number,
    private readonly kind: 'works' | 'not allowed' | 'never starts' | 'breaks' = 'works',
  ) {
    worked = [];
    time = 0;
    this.queue = new CallQueue([counting], {
      now: () => time,
      later: this.later,
      after: (wait, run) => void this.timers.push({ at: time + wait, run }),
      makeWorker: () => this.makeWorker(),
      workers: count,
    });
  }

  readonly later = (run: () => void): void => void this.turns.push(run);

  private makeWorker(): WorkerLike | undefined {
    if (this.kind === 'not allowed') return undefined;
    this.made++;
    const worker = new FakeWorker(this, this.kind);
    this.workers.push(worker);
    return worker;
  }

  /** Gives turns until nothing waits, or as many as are given. */
  turn(most = Infinity): void {
    for (let i = 0; i < most; i++) {
      const next = this.turns.shift();
      if (!next) return;
      next();
    }
  }

  wait(wait: number): void {
    time += wait;
    for (const timer of this.timers.splice(0)) {
      if (timer.at <= time) timer.run();
      else this.timers.push(timer);
    }
    this.turn();
  }

  /** A call as several: the answer names them in their order. */
  askTogether(names: readonly string[], parts: number): ReturnType<Page['ask']> {
    const asked: ReturnType<Page['ask']> = { told: 0, answer: undefined, giveUp: () => {} };
    asked.giveUp = this.queue.askTogether(
      'COUNTING',
      names.map((name) => JSON.stringify([[[name]], [[parts]]])),
      (answers) => [answers.map((cells) => cells[0]?.[0] ?? '')],
      (cells, why) => {
        asked.answer = cells;
        if (why) asked.why = why;
        asked.told++;
      },
    );
    return asked;
  }

  ask(
    name: string,
    parts: number,
  ): { answer: PlainCells | undefined; why?: NoAnswer; told: number; giveUp(): void } {
    const asked: ReturnType<Page['ask']> = { answer: undefined, told: 0, giveUp: () => {} };
    asked.giveUp = this.queue.ask('COUNTING', JSON.stringify([[[name]], [[parts]]]), (cells, why) => {
      asked.answer = cells;
      if (why) asked.why = why;
      asked.told++;
    });
    return asked;
  }
}

class FakeWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  readonly got: string[] = [];
  private readonly runner: CallRunner;
  private alive = true;

  constructor(
    private readonly page: Page,
    private readonly kind: string,
  ) {
    const tell = (data: FromWorker): void =>
      page.later(() => {
        if (this.alive) this.onmessage?.({ data: structuredClone(data) });
      });
    this.runner = new CallRunner([counting], 20, { now: () => time, later: page.later, tell });
    if (kind !== 'never starts') tell({ kind: 'ready' });
  }

  postMessage(message: ToWorker): void {
    const sent = structuredClone(message);
    if (sent.kind === 'run') this.got.push(...sent.calls.map(({ values }) => String(values)));
    this.page.later(() => {
      if (!this.alive || this.kind === 'never starts') return;
      if (sent.kind === 'give up') this.runner.giveUp(sent.number);
      else if (sent.kind === 'first') this.runner.prefer(sent.numbers);
      else if (this.kind === 'breaks') this.onerror?.(new Error('broken'));
      else this.runner.run(sent.calls);
    });
  }

  terminate(): void {
    this.alive = false;
    this.page.ended++;
  }
}

const times = (name: string): number => worked.filter((part) => part === name).length;

test('equal calls in flight are computed once, and each asker is told once', () => {
  const page = new Page(2);
  const asked = [page.ask('a', 5), page.ask('a', 5), page.ask('b', 5)];
  page.turn();
  expect(asked.map(({ answer, told }) => [answer, told])).toEqual([
    [[['a']], 1],
    [[['a']], 1],
    [[['b']], 1],
  ]);
  expect([times('a'), times('b')]).toEqual([5, 5]);
});

test('what was answered lately is answered from memory, at once', () => {
  const page = new Page(1);
  page.ask('a', 5);
  page.turn();
  expect(page.ask('a', 5)).toMatchObject({ answer: [['a']], told: 1 });
  expect(times('a')).toBe(5);
});

test('memory is bounded: of very many answers the oldest are forgotten', () => {
  const page = new Page(1);
  const large = 'x'.repeat(100_000);
  for (let i = 0; i < 30; i++) {
    page.ask(`${i}${large}`, 1);
    page.turn();
  }
  const before = worked.length;
  page.ask(`29${large}`, 1);
  page.ask(`0${large}`, 1);
  page.turn();
  expect(worked.slice(before).map((name) => name.slice(0, 2))).toEqual(['0x']);
});

test('a worker gives each of its calls a part in turn, so a short one is not kept waiting by a long one', () => {
  const page = new Page(1);
  const long = page.ask('long', 200);
  const short = page.ask('short', 3);
  for (let i = 0; i < 400 && !short.answer; i++) page.turn(1);
  expect(short.answer).toEqual([['short']]);
  expect(long.answer).toBeUndefined();
  // Neither is more than a part or two ahead while both run.
  expect(times('long')).toBeLessThanOrEqual(times('short') + 3);
  page.turn();
  expect(long.answer).toEqual([['long']]);
});

test('there are no more workers than may be, and long calls are spread over them', () => {
  const page = new Page(3);
  for (let i = 0; i < 12; i++) page.ask(`call ${i}`, 2);
  page.turn();
  expect(page.made).toBe(3);
  expect(page.workers.map(({ got }) => got.length).sort()).toEqual([4, 4, 4]);
});

describe('a call that is asked for as several', () => {
  const names = Array.from({ length: 20 }, (_, i) => `part ${i}`);

  test('is shared by all workers, answered once in the order of its parts, and counts as one', () => {
    const page = new Page(3);
    const whole = page.askTogether(names, 2);
    expect(page.queue.state()).toMatchObject({ waiting: 1, share: { done: 0, of: 20 } });
    page.turn();
    expect([whole.answer, whole.told]).toEqual([[names], 1]);
    expect(page.workers.map(({ got }) => got.length).every((got) => got > 4)).toBe(true);
    expect(page.queue.state()).toMatchObject({ waiting: 0, done: 1 });
  });

  test('computes a part that has not changed no second time, and one of two calls once', () => {
    const page = new Page(1);
    const first = page.askTogether(names, 2);
    const beside = page.askTogether([...names.slice(0, 3), 'own'], 2);
    page.turn();
    const changed = page.askTogether([...names.slice(0, 19), 'changed'], 2);
    page.turn();
    const known = page.askTogether(names, 2);
    expect([first, beside, changed, known].map(({ answer, told }) => [answer?.[0]?.at(-1), told])).toEqual([
      ['part 19', 1],
      ['own', 1],
      ['changed', 1],
      ['part 19', 1],
    ]);
    expect(names.map(times)).toEqual(names.map(() => 2));
    expect(['own', 'changed'].map(times)).toEqual([2, 2]);
  });

  test('keeps no other call waiting until its last part', () => {
    const page = new Page(1);
    const whole = page.askTogether(names, 10);
    page.turn(5);
    const other = page.ask('other', 3);
    for (let i = 0; i < 2000 && !other.answer; i++) page.turn(1);
    expect(other.answer).toEqual([['other']]);
    expect(whole.answer).toBeUndefined();
    expect(new Set(worked).size).toBeLessThan(15);
    page.turn();
    expect(whole.answer).toEqual([names]);
  });

  test('is given up with all its parts, but for those that another call wants', () => {
    const page = new Page(1);
    const whole = page.askTogether(names, 50);
    const other = page.ask('part 0', 50);
    page.turn(20);
    whole.giveUp();
    page.turn();
    expect([whole.told, other.answer]).toEqual([0, [['part 0']]]);
    expect(times('part 1')).toBeLessThan(50);
    expect(times('part 19')).toBe(0);
    expect(page.queue.state()).toMatchObject({ waiting: 0 });
  });

  test('is stopped once, and fails once where a part of it does', () => {
    const stopped = new Page(2);
    const whole = stopped.askTogether(names, 50);
    stopped.turn(10);
    stopped.queue.stop();
    stopped.turn();
    expect([whole.why, whole.told]).toEqual(['stopped', 1]);
    const broken = new Page(1, 'breaks');
    const failed = broken.askTogether(names, 3);
    broken.turn();
    expect([failed.why, failed.told]).toEqual(['failed', 1]);
    expect(broken.queue.state()).toMatchObject({ waiting: 0 });
  });
});

test('the first worker may be started ahead, and takes the first call', () => {
  const page = new Page(2);
  page.queue.warm();
  page.queue.warm();
  page.turn();
  expect(page.made).toBe(1);
  const asked = page.ask('a', 2);
  page.turn();
  expect([page.made, asked.answer]).toEqual([1, [['a']]]);
  const none = new Page(1, 'not allowed');
  none.queue.warm();
  const beside = none.ask('a', 2);
  none.turn();
  expect(beside.answer).toEqual([['a']]);
});

test('a call that nobody wants any more is given up; one that somebody wants goes on', () => {
  const page = new Page(1);
  const [first, second, third] = [page.ask('a', 50), page.ask('a', 50), page.ask('b', 50)];
  page.turn(20);
  const before = times('a');
  expect(before).toBeGreaterThan(0);
  first.giveUp();
  third.giveUp();
  page.turn();
  expect([first.told, third.told]).toEqual([0, 0]);
  expect(second.answer).toEqual([['a']]);
  expect(times('a')).toBe(50);
  expect(times('b')).toBeLessThan(50);
  expect(page.queue.state()).toMatchObject({ waiting: 0 });
});

test('stop gives up all, tells each asker why, and what is asked afterwards is computed', () => {
  const page = new Page(1);
  const asked = [page.ask('a', 50), page.ask('b', 50)];
  page.turn(15);
  expect(page.queue.state()).toMatchObject({ waiting: 2, done: 0, share: { of: 50 } });
  page.queue.stop();
  expect(asked.map(({ answer, why, told }) => [answer, why, told])).toEqual([
    [undefined, 'stopped', 1],
    [undefined, 'stopped', 1],
  ]);
  page.turn();
  expect(asked.map(({ told }) => told)).toEqual([1, 1]);
  expect(times('a')).toBeLessThan(50);
  const again = page.ask('a', 50);
  page.turn();
  expect(again.answer).toEqual([['a']]);
});

test('thousands of short calls are each answered once, some by the page itself; stop tells those that still wait', () => {
  const page = new Page(1);
  const told: (PlainCells | undefined)[][] = [];
  for (let i = 0; i < 5000; i++) {
    told.push([]);
    page.queue.askShort('COUNTING', [[[`call ${i}`]], [[1]]], (cells) => told[i]!.push(cells));
  }
  expect(page.queue.state()).toMatchObject({ waiting: 5000 });
  page.turn();
  expect(told.map((answers) => answers.map((cells) => cells?.[0]?.[0]))).toEqual(
    told.map((_, i) => [`call ${i}`]),
  );
  const { got } = page.workers[0]!;
  expect(got.length).toBeGreaterThan(1000);
  expect(got.length).toBeLessThan(5000);
  const why: (NoAnswer | undefined)[] = [];
  for (let i = 0; i < 3000; i++) {
    page.queue.askShort('COUNTING', [[[`${i}`]], [[1]]], (cells, reason) => {
      if (!cells) why.push(reason);
    });
  }
  page.turn(1);
  page.queue.stop();
  page.turn();
  expect(why).toEqual(why.map(() => 'stopped'));
  expect(why.length).toBeGreaterThan(1000);
  expect(page.queue.state()).toMatchObject({ waiting: 0 });
});

describe('without a worker', () => {
  test('that is not allowed, the same is computed beside the page in slices, and the page has its turns between', () => {
    const page = new Page(2, 'not allowed');
    const asked = [page.ask('a', 40), page.ask('b', 40)];
    let longest = 0;
    for (let i = 0; i < 200 && !asked.every(({ answer }) => answer); i++) {
      const before = time;
      page.turn(1);
      longest = Math.max(longest, time - before);
    }
    expect(asked.map(({ answer }) => answer)).toEqual([[['a']], [['b']]]);
    // 80 parts of 10 ms are worked in slices of 25 ms, to the end of a part.
    expect(longest).toBeLessThanOrEqual(30);
    expect(worked.slice(0, 4)).toEqual(['a', 'b', 'a', 'b']);
  });

  test('that starts, its calls are made beside the page after a while', () => {
    const page = new Page(1, 'never starts');
    const asked = page.ask('a', 3);
    page.turn();
    expect(asked.answer).toBeUndefined();
    page.wait(60_000);
    expect(asked.answer).toEqual([['a']]);
    expect(page.ended).toBe(page.made);
  });

  test('that holds, a call breaks two of them at most and then fails by itself', () => {
    const page = new Page(1, 'breaks');
    const asked = page.ask('a', 3);
    page.turn();
    expect(asked).toMatchObject({ answer: undefined, why: 'failed', told: 1 });
    expect(page.made).toBe(2);
    expect(page.ended).toBe(2);
  });
});

test('giving up and stopping work beside the page too', () => {
  const page = new Page(1, 'not allowed');
  const asked = [page.ask('a', 100), page.ask('b', 100)];
  page.turn(4);
  asked[0]!.giveUp();
  page.turn(2);
  page.queue.stop();
  page.turn();
  expect(asked.map(({ why, told }) => [why, told])).toEqual([
    [undefined, 0],
    ['stopped', 1],
  ]);
  expect(worked.length).toBeLessThan(40);
});

test('a runner works on what is asked to go first alone, then on the others from where they stood', () => {
  worked = [];
  time = 0;
  const turns: (() => void)[] = [];
  const answered: number[] = [];
  const runner = new CallRunner([counting], 20, {
    now: () => time,
    later: (run) => void turns.push(run),
    tell: (message) => {
      if (message.kind === 'answers') answered.push(...message.answers.map(({ number }) => number));
    },
  });
  const call = (number: number, name: string, parts: number) => ({
    number,
    id: 'COUNTING',
    values: [[[name]], [[parts]]],
  });
  runner.run([call(1, 'a', 5), call(2, 'b', 5)]);
  turns.shift()?.();
  expect(worked).toEqual(['a', 'b']);
  runner.run([call(3, 'c', 4)]);
  runner.prefer([3]);
  for (let turn = turns.shift(); turn; turn = turns.shift()) turn();
  // Each call works as many parts as it was asked for and none twice.
  expect(worked.slice(2, 6)).toEqual(['c', 'c', 'c', 'c']);
  expect([times('a'), times('b')]).toEqual([5, 5]);
  expect(answered[0]).toBe(3);
});
