import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { functionsJson } from '../../src/worksheet/functionsJson';
import { serveFiles, type Served } from './browser';
import { builtFolder } from './builtFolder';
import { heardOf } from './heardOf';

/*
 * The host's side of the platform's own custom-functions runtime: the script that Excel runs beside the add-in is in
 * the office-js package, and talks to its host through `_richApiNativeBridge`. What the messages look like was read in
 * that script; nothing of it was recorded from Excel.
 */

/** What the functions hand back for one call. */
export interface HostAnswer {
  readonly failed: boolean;
  readonly value: unknown;
  /** Of a failure: 1 #N/A, 2 and 7 #VALUE!, 3 rejected by no error of the host's class. */
  readonly errorCode?: number;
}

export interface HostCall {
  readonly id: string;
  readonly values: readonly unknown[];
  readonly address?: string;
}

/** How the calls of a batch went, with the page's frames beside them. */
export interface BatchRun {
  readonly answers: readonly (HostAnswer | null)[];
  /** The longest time that the page had no turn [ms]. */
  readonly longestGap: number;
  /** Turns that the page had meanwhile. */
  readonly turns: number;
  /** Until the last answer [ms]. */
  readonly time: number;
}

export interface FunctionsPage {
  readonly page: Page;
  /** What the console complained of, violations of the content security policy among it. */
  readonly complaints: readonly string[];
  run(calls: readonly HostCall[], options?: RunOptions): Promise<BatchRun>;
  close(): Promise<void>;
}

export interface RunOptions {
  /** The calls are taken back after this time [ms]; only answers until then count. */
  readonly cancelAfter?: number;
}

/** As the metadata say: error values reach a function, and a call that may be taken back says so. */
const FLAGS = { cancelable: 1, allowsErrors: 4 };
const FLAGS_BY_ID: Readonly<Record<string, number>> = Object.fromEntries(
  functionsJson(FUNCTIONS).functions.map(({ id, options }) => [
    id,
    FLAGS.allowsErrors | (options.cancelable ? FLAGS.cancelable : 0),
  ]),
);

const HOST_SCRIPT = `
(() => {
  const flags = ${JSON.stringify(FLAGS_BY_ID)};
  const answered = new Map();
  let next = 1;
  /** A page's timer waits 4 ms at least when it is set again and again. */
  const EVERY = 4;
  const bridge = {
    onMessageFromHost: undefined,
    sendMessageToHost(text) {
      const message = JSON.parse(text);
      const body = typeof message.message.body === 'string' ? JSON.parse(message.message.body) : message.message.body;
      const results = [];
      for (const action of (body && body.Actions) || []) {
        if (action.Name === 'SetInvocationArrayResults') {
          for (const [id, well, value, code] of action.ArgumentInfo.Arguments[0]) {
            const waits = answered.get(id);
            // What has been answered is forgotten, as by a host that goes on for hours.
            answered.delete(id);
            if (waits) waits(well ? { failed: false, value } : { failed: true, value, errorCode: code });
          }
        }
        results.push({ ActionId: action.Id, Value: null });
      }
      setTimeout(() => bridge.onMessageFromHost(JSON.stringify({
        id: message.id, type: 2,
        message: { statusCode: 200, headers: {}, body: JSON.stringify({ Results: results }) },
      })), 0);
    },
  };
  window._richApiNativeBridge = bridge;
  window.runCalls = async (calls, cancelAfter) => {
    const first = next;
    const answers = calls.map(() => null);
    let left = calls.length;
    let longestGap = 0;
    let turns = 0;
    let running = true;
    const start = performance.now();
    let last = start;
    // A timer, and no message that is sent again and again: that would take a core from the workers.
    const tick = () => {
      const now = performance.now();
      longestGap = Math.max(longestGap, now - last - EVERY);
      last = now;
      turns++;
      if (running) setTimeout(tick, EVERY);
    };
    setTimeout(tick, EVERY);
    const all = new Promise((done) => {
      calls.forEach((call, i) => {
        answered.set(next + i, (answer) => {
          if (answers[i] === null) left--;
          answers[i] = answer;
          if (left === 0) done();
        });
      });
      if (cancelAfter !== undefined) setTimeout(() => {
        bridge.onMessageFromHost(JSON.stringify({ type: 3, message: { entries: calls.map((_, i) => ({
          messageCategory: 1, messageType: 1001, targetId: '', message: { invocationId: first + i } })) } }));
        setTimeout(done, 1500);
      }, cancelAfter);
    });
    next += calls.length;
    const entries = calls.map((call, i) => ({ messageCategory: 1, messageType: 1000, targetId: '',
      message: [first + i, call.id, call.values, call.address === undefined ? null : call.address, flags[call.id] ?? ${FLAGS.allowsErrors}] }));
    const text = JSON.stringify({ type: 3, message: { entries } });
    await new Promise((go) => setTimeout(go, 30));
    longestGap = 0;
    last = performance.now();
    bridge.onMessageFromHost(text);
    const handedOver = performance.now();
    await all;
    const time = performance.now() - handedOver;
    tick();
    running = false;
    return { answers, longestGap, turns, time };
  };
  window.Office = { onReady: () => Promise.resolve({ host: null, platform: null }) };
})();`;

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; worker-src 'self'; connect-src 'self'";

/**
 * How the functions of a page answer: with workers, without because none is allowed, each at once in the page, or
 * not at all, so that what is left is the platform's own work.
 */
export type Answering = 'allowed' | 'blocked' | 'at once' | 'nothing';

// Without an Office around them the functions take the page for another host and answer at once.
const BEFORE_FUNCTIONS: Readonly<Partial<Record<Answering, string>>> = {
  'at once': 'window.Office = undefined;',
  nothing: 'for (const id of window.carryIds) CustomFunctions.associate(id, () => [[0]]);',
};

/** Opens a page with the platform's runtime and the built functions. */
export async function openFunctions(
  browser: Browser,
  workers: Answering = 'allowed',
): Promise<FunctionsPage> {
  const dist = builtFolder();
  const runtime = path.join(
    path.dirname(require.resolve('@microsoft/office-js/package.json')),
    'dist/custom-functions-runtime.js',
  );
  const policy = workers === 'blocked' ? POLICY.replace("worker-src 'self'", "worker-src 'none'") : POLICY;
  const ids = `window.carryIds = ${JSON.stringify(FUNCTIONS.map(({ id }) => id))};`;
  const html = `<!doctype html><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}">
<script src="host.js"></script><script src="custom-functions-runtime.js"></script><script src="before.js"></script>
${workers === 'nothing' ? '' : '<script src="functions.js"></script>'}`;
  const served: Served = await serveFiles({
    '/index.html': { text: html },
    '/host.js': { text: HOST_SCRIPT },
    '/custom-functions-runtime.js': { file: runtime },
    '/before.js': { text: `${ids}${BEFORE_FUNCTIONS[workers] ?? ''}` },
    '/favicon.ico': { text: '' },
    '/functions.js': { file: path.join(dist, 'functions.js') },
    '/callWorker.js': { file: path.join(dist, 'callWorker.js') },
  });
  const page = await browser.newPage();
  const { complaints } = heardOf(page);
  await page.goto(`${served.origin}/index.html`);
  return {
    page,
    complaints,
    run: async (calls, options = {}) => {
      const plain = calls.map(({ id, values, address }) => ({ id, values, address }));
      return page.evaluate(
        ([given, after]) =>
          (
            globalThis as unknown as {
              runCalls: (calls: unknown, after: number | undefined) => Promise<BatchRun>;
            }
          ).runCalls(given, after),
        [plain, options.cancelAfter] as const,
      );
    },
    close: async () => {
      await page.close();
      await served.close();
    },
  };
}
