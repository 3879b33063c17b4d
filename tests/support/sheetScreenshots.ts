import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { launchBrowser } from './browser';
import { LOOKS } from './panePage';
import { openSheetPage } from './sheetPage';

/** Pictures of the built sheet page with the sample workbook: `tsx tests/support/sheetScreenshots.ts <folder>`. */
async function sheetScreenshots(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  const workbook = await sampleWorkbook();
  for (const [name, look] of Object.entries(LOOKS)) {
    const { page, close } = await openSheetPage(browser, workbook, { ...look, width: 1280, height: 800 });
    await page.getByRole('tab', { name: 'Route', exact: true }).click();
    const file = path.join(folder, `sheet-page-${name}.png`);
    await page.waitForTimeout(500);
    await page.screenshot({ path: file });
    console.log(file);
    await close();
  }
  await browser.close();
}

const folder = process.argv[2];
if (!folder) throw new Error('Say into which folder the pictures go.');
void sheetScreenshots(path.resolve(folder));
