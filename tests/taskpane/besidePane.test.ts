import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { startSheetServer } from '../../src/commands/sheetServer';
import { axeFindings } from '../support/axeFindings';
import { serveFiles, type Served } from '../support/browser';
import { builtFolder } from '../support/builtFolder';
import { fakeExcelScript } from '../support/fakeExcel';
import { exampleBook } from '../support/paneBooks';
import { eventually } from '../support/eventually';
import { sharedBrowser } from '../support/sharedBrowser';

/** What the build puts beside the pane: the notice for old engines, the page of help, the script of the workers. */
let browser: Browser;
let served: Served | undefined;
let page: Page | undefined;

jest.setTimeout(30_000);
beforeAll(async () => {
  builtFolder();
  browser = await sharedBrowser();
}, 180_000);
afterAll(() => browser?.close());
afterEach(async () => {
  await page?.close();
  await served?.close();
});

const file = (name: string) => ({ file: path.join(builtFolder(), name) });

async function openAs(taskpane: { text: string } | { file: string }): Promise<Page> {
  served = await serveFiles({
    '/taskpane.html': file('taskpane.html'),
    '/taskpane.css': file('taskpane.css'),
    '/functions.js': file('functions.js'),
    '/oldEngine.js': file('oldEngine.js'),
    '/taskpane.js': taskpane,
    '/office/office.js': { text: fakeExcelScript(exampleBook()) },
  });
  page = await browser.newPage();
  await page.goto(`${served.origin}/taskpane.html`);
  return page;
}

test('an engine that cannot read the script of the pane is told so in plain words', async () => {
  // Stands for syntax that is newer than the engine: this one refuses it as an old one refuses `?.`.
  const opened = await openAs({ text: 'const later = a ?!. b;' });
  await opened.getByRole('alert').getByText('too old for Carry Route Functions').waitFor();
  await eventually(async () =>
    expect(await opened.locator('body').innerText()).toMatch(/ES2020.*Update Excel/),
  );
});

test('an engine that can read it sees no notice', async () => {
  const opened = await openAs(file('taskpane.js'));
  await opened.getByRole('button', { name: 'Add starter sheets' }).waitFor();
  await eventually(async () => expect(await opened.getByText('too old').count()).toBe(0));
});

test('the page of help stands by itself, narrow and wide, and axe finds nothing', async () => {
  served = await serveFiles({ '/support.html': file('support.html'), '/taskpane.css': file('taskpane.css') });
  for (const width of [320, 1200]) {
    page = await browser.newPage({ viewport: { width, height: 700 } });
    const complaints: string[] = [];
    page.on('console', (message) => complaints.push(message.text()));
    await page.goto(`${served.origin}/support.html`);
    await page.getByRole('heading', { name: 'A cell shows #NAME?' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    expect(complaints.filter((text) => !/favicon/.test(text) && !/404/.test(text))).toEqual([]);
    await page.close();
  }
});

test('the script of the workers is served with the try-out page and runs under its policy', async () => {
  const server = await startSheetServer(builtFolder(), new Uint8Array(), 0);
  page = await browser.newPage();
  await page.goto(`${server.origin}/functions.json`);
  const first = await page.evaluate(
    () =>
      new Promise((told, failed) => {
        const worker = new Worker('callWorker.js');
        worker.onmessage = ({ data }) => told(data);
        worker.onerror = () => failed(new Error('the worker could not be loaded'));
      }),
  );
  expect(first).toEqual({ kind: 'ready' });
  await server.close();
});
