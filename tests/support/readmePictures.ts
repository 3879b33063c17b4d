import { existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { launchBrowser } from './browser';
import { exampleBook } from './paneBooks';
import { openPane } from './panePage';

const ROOT = path.resolve(__dirname, '../..');
const PICTURES = path.join(ROOT, 'src/sample/pictures');
const PAGE = path.join(ROOT, 'dist/sample-month.html');

/** Row of the example shown, counted from 0: a flight. */
const FLIGHT = 6;

/** The pictures of README, from what is built: `npm run month && npm run pictures`. */
async function readmePictures(): Promise<void> {
  if (!existsSync(PAGE)) throw new Error('There is no page of the month yet: npm run month writes it.');
  mkdirSync(PICTURES, { recursive: true });
  const browser = await launchBrowser();
  const book = exampleBook();
  book.selection.row = FLIGHT;
  const pane = await openPane(browser, book, { colorScheme: 'light' });
  await pane.page.getByRole('status').getByText('Row').waitFor();
  await pane.page.screenshot({ path: path.join(PICTURES, 'pane.png') });
  await pane.close();
  const month = await browser.newPage({ viewport: { width: 1000, height: 760 }, colorScheme: 'light' });
  await month.goto(`file://${PAGE}`);
  await month.getByRole('heading', { name: 'The month in numbers' }).scrollIntoViewIfNeeded();
  await month.evaluate(() => document.querySelector('h2')?.scrollIntoView());
  await month.screenshot({ path: path.join(PICTURES, 'month.png') });
  await browser.close();
}

void readmePictures();
