import type { Browser, Page } from 'playwright-core';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the thread [microseconds]; not there on every system. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * Processor time of the longest task that a page's main thread ran during some work [ms]. Other programs on the
 * machine do not count, as they would in what a clock says.
 */
export async function longestTask<T>(
  browser: Browser,
  page: Page,
  work: () => Promise<T>,
): Promise<{ readonly result: T; readonly longest: number }> {
  await browser.startTracing(page, { categories: ['toplevel', '__metadata'] });
  const result = await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString('utf8')) as {
    traceEvents: readonly TraceEvent[];
  };
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const tasks = traceEvents.filter(
    ({ ph, pid, tid, tdur }) => ph === 'X' && tdur !== undefined && main.has(`${pid} ${tid}`),
  );
  if (tasks.length === 0) throw new Error('the browser has traced no task of a main thread');
  return { result, longest: tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur), 0) / 1000 };
}
