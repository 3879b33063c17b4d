import type { Browser, Page } from 'playwright-core';
import { startSheetServer, type SheetServer } from '../../src/commands/sheetServer';
import { builtFolder } from './builtFolder';
import { heardOf, type Heard } from './heardOf';
import type { Look } from './panePage';

export interface OpenSheetPage extends Heard {
  readonly page: Page;
  readonly server: SheetServer;
  close(): Promise<void>;
}

/** Opens the built sheet page with a workbook, as `npm start` serves it. */
export async function openSheetPage(
  browser: Browser,
  workbook: Uint8Array,
  look: Look & { readonly width?: number; readonly height?: number } = {},
): Promise<OpenSheetPage> {
  const server = await startSheetServer(builtFolder(), workbook, 0);
  const { width = 1280, height = 800, ...colours } = look;
  const page = await browser.newPage({ viewport: { width, height }, ...colours });
  const { asked, complaints } = heardOf(page);
  await page.goto(server.origin);
  await page.getByRole('grid').waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: 'Add starter sheets' }).waitFor({ timeout: 30_000 });
  return {
    page,
    server,
    asked,
    complaints,
    close: async () => {
      await page.close();
      await server.close();
    },
  };
}
