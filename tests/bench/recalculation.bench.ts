import type { Page } from 'playwright-core';
import { launchBrowser } from '../support/browser';
import { openFunctions, type HostCall } from '../support/functionsHost';
import type { Figure } from './figure';
import { corner, landing } from './hostCalls';

/*
 * Some minutes of recalculation of the built functions in a real browser: what the page and its workers keep after
 * collection must not grow with time. CARRY_MINUTES=5 is the campaign; the workbook of each round is another, so that no
 * answer is known already, but every fiftieth.
 */
const MINUTES = Number(process.env['CARRY_MINUTES'] ?? 0.5);
const LANDINGS = 50;
/** Calls whose answers are as much as is kept for those who ask again, so that this is full from the beginning. */
const FILLING = 70;
const filling = (i: number): HostCall => ({
  id: 'CHECKROUTE',
  values: [
    [
      ['Survey', 'Step', 'Stage', 'Width', 'Height'],
      ...Array.from({ length: 300 }, (_, row) => [`${i}: to fill what is kept`, row, 'door', 800, 2000]),
    ],
  ],
});

const inMegabytes = (bytes: number): number => bytes / 2 ** 20;

/** Reads the heaps of a page and of its workers after collection [MB]. */
async function heapsOf(page: Page): Promise<() => Promise<{ page: number; workers: number }>> {
  const session = await page.context().newCDPSession(page);
  const workers = new Set<string>();
  const waiting = new Map<number, (result: { usedSize?: number }) => void>();
  let asked = 0;
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') workers.add(sessionId);
  });
  session.on('Target.detachedFromTarget', ({ sessionId }) => workers.delete(sessionId));
  session.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message) as { id?: number; result?: { usedSize?: number } };
    if (id !== undefined) waiting.get(id)?.(result ?? {});
  });
  await session.send('Target.setAutoAttach', {
    autoAttach: true,
    waitForDebuggerOnStart: false,
    flatten: false,
  });
  const askWorker = (sessionId: string, method: string): Promise<{ usedSize?: number }> =>
    new Promise((answered) => {
      const id = ++asked;
      waiting.set(id, answered);
      void session.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    });
  return async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    let kept = 0;
    for (const worker of workers) {
      await askWorker(worker, 'HeapProfiler.collectGarbage');
      kept += (await askWorker(worker, 'Runtime.getHeapUsage')).usedSize ?? 0;
    }
    return { page: inMegabytes(usedSize), workers: inMegabytes(kept) };
  };
}

export async function run(): Promise<Figure[]> {
  const browser = await launchBrowser();
  try {
    const page = await openFunctions(browser);
    const heaps = await heapsOf(page.page);
    // The same calls to functions that do nothing, under the same runtime: it keeps the context of each call that may be
    // taken back until it is (custom-functions-runtime.debug.js, _invocationContextMap), and nobody else can let it go.
    const bare = await openFunctions(browser, 'nothing');
    const bareHeaps = await heapsOf(bare.page);
    for (const one of [page, bare]) await one.run(Array.from({ length: FILLING }, (_, i) => filling(i)));
    const begun = performance.now();
    let rounds = 0;
    const until = async (
      share: number,
    ): Promise<{ page: number; bare: number; workers: number; count: number }> => {
      while (performance.now() - begun < MINUTES * 60_000 * share) {
        const calls = Array.from({ length: 500 }, (_, i) => corner(rounds * 500 + i));
        const known = rounds % LANDINGS;
        const round = [...calls, landing(known), landing(known + 1), landing(LANDINGS + rounds)];
        await Promise.all([page.run(round), bare.run(round)]);
        rounds++;
      }
      const heap = await heaps();
      const { page: ofBare } = await bareHeaps();
      console.log(
        `after ${(MINUTES * share).toFixed(1)} min: page ${heap.page.toFixed(2)} MB, workers ${heap.workers.toFixed(2)} MB, page of functions that do nothing ${ofBare.toFixed(2)} MB, ${rounds} rounds`,
      );
      return { ...heap, bare: ofBare, count: page.page.workers().length };
    };
    const first = await until(0.2);
    for (const share of [0.4, 0.6, 0.8]) await until(share);
    const last = await until(1);
    await page.close();
    await bare.close();
    return [
      { name: `${MINUTES} minutes of recalculation, rounds of 503 calls`, figure: rounds, unit: '' },
      {
        name: "the page's heap at the end over that after a fifth",
        figure: last.page / first.page,
        unit: 'x',
      },
      {
        name: 'the same without what the runtime keeps of the same calls to functions that do nothing',
        figure: (last.page - (last.bare - first.bare)) / first.page,
        unit: 'x',
        goal: 1.05,
      },
      {
        name: "the workers' heap at the end over that after a fifth",
        figure: last.workers / first.workers,
        unit: 'x',
        goal: 1.05,
      },
      { name: 'workers more at the end', figure: last.count - first.count, unit: '', goal: 0 },
    ];
  } finally {
    await browser.close();
  }
}
