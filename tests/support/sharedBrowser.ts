import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { chromium, type Browser } from 'playwright-core';
import { launchBrowserServer } from './browser';

/** Where a test file asks for the browser of the run. */
const ADDRESS = 'TESTS_BROWSER';

/**
 * Before all tests: answers with the address of one browser for the whole run, started when the first file asks.
 * Run by jest in its own process; each file has pages of its own in that browser.
 */
export default async function shareBrowser(): Promise<void> {
  let started: ReturnType<typeof launchBrowserServer> | undefined;
  const server = createServer((_, response) => {
    (started ??= launchBrowserServer()).then(
      (browser) => response.end(browser.wsEndpoint()),
      (error: unknown) => response.writeHead(500).end(String(error)),
    );
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  process.env[ADDRESS] = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  // What is started here must not keep the run alive, and ends with it.
  server.unref();
  (globalThis as { endBrowser?: () => Promise<void> }).endBrowser = async () => {
    server.close();
    await (await started)?.close();
  };
}

/** The browser of this run. Closing it only leaves it. */
export async function sharedBrowser(): Promise<Browser> {
  const address = process.env[ADDRESS];
  if (address === undefined) throw new Error('no browser is shared: run the tests through jest');
  const answer = await fetch(address);
  const text = await answer.text();
  if (!answer.ok) throw new Error(`no browser started: ${text}`);
  return chromium.connect(text);
}
