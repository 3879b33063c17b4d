import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { serveFiles, type Served } from './browser';
import { builtFolder } from './builtFolder';
import { fakeExcelScript, type FakeBook } from './fakeExcel';
import { heardOf, type Heard } from './heardOf';

/** What a page is shown with. */
export interface Look {
  readonly colorScheme?: 'light' | 'dark';
  readonly forcedColors?: 'active' | 'none';
}

/** In which a page is looked at. */
export const LOOKS: Readonly<Record<string, Look>> = {
  light: { colorScheme: 'light' },
  dark: { colorScheme: 'dark' },
  forced: { colorScheme: 'dark', forcedColors: 'active' },
};

export interface OpenPane extends Heard {
  readonly page: Page;
  readonly served: Served;
  close(): Promise<void>;
}

const BUILT = [
  'taskpane.html',
  'taskpane.css',
  'taskpane.js',
  'oldEngine.js',
  'functions.js',
  'functions.json',
  'callWorker.js',
];

/** Opens the built pane, 320 px wide, beside a stand-in for Excel that holds `book`. */
export async function openPane(browser: Browser, book: FakeBook, look: Look = {}): Promise<OpenPane> {
  const dist = builtFolder();
  const served = await serveFiles({
    ...Object.fromEntries(BUILT.map((name) => [`/${name}`, { file: path.join(dist, name) }])),
    '/office/office.js': { text: fakeExcelScript(book) },
  });
  const page = await browser.newPage({ viewport: { width: 320, height: 700 }, ...look });
  const { asked, complaints } = heardOf(page);
  await page.goto(`${served.origin}/taskpane.html`);
  await page.getByRole('status').waitFor();
  await page.getByRole('button', { name: 'Add starter sheets' }).waitFor();
  return {
    page,
    asked,
    complaints,
    served,
    close: async () => {
      await page.close();
      await served.close();
    },
  };
}
