import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { launchBrowser } from './browser';
import { exampleBook } from './paneBooks';
import { LOOKS, openPane } from './panePage';

/** Rows of the example shown, counted from 0: a passage, a corner with a measure missing, a flight. */
const ROWS = { passage: 4, missing: 5, flight: 6 } as const;

/** Pictures of the built pane, 320 px wide: `tsx tests/support/paneScreenshots.ts <folder>`. */
async function paneScreenshots(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  for (const [what, row] of Object.entries(ROWS)) {
    for (const [name, look] of Object.entries(LOOKS)) {
      const book = exampleBook();
      book.selection.row = row;
      const open = await openPane(browser, book, look);
      await open.page.getByRole('status').getByText('Row').waitFor();
      const file = path.join(folder, `pane-${what}-${name}.png`);
      await open.page.screenshot({ path: file, fullPage: true });
      console.log(file);
      await open.close();
    }
  }
  await browser.close();
}

const folder = process.argv[2];
if (!folder) throw new Error('Say into which folder the pictures go.');
void paneScreenshots(path.resolve(folder));
