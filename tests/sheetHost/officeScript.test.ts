import { readdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { serveFiles, type Served } from '../support/browser';
import { builtFolder } from '../support/builtFolder';
import { sharedBrowser } from '../support/sharedBrowser';

/*
 * The platform's own office.js, as the local build has it, with the built pane under its content security policy. Who
 * the host is stands in the address, as the script reads it (`_host_Info`; in a browser also `_xdm_Info` in the hash).
 * There is no host behind it, so nothing is answered; what is held here is that all of it may be loaded and run.
 */
let browser: Browser;
let served: Served;

jest.setTimeout(60_000);
beforeAll(async () => {
  const dist = builtFolder();
  browser = await sharedBrowser();
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.\w+$/.test(name),
  );
  served = await serveFiles(
    Object.fromEntries(
      files.map((name) => [`/${name.split(path.sep).join('/')}`, { file: path.join(dist, name) }]),
    ),
  );
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

interface Loaded {
  readonly violations: readonly string[];
  readonly faults: readonly string[];
  readonly missing: readonly string[];
  readonly asked: readonly string[];
  readonly associated: number;
}

async function load(address: string): Promise<Loaded> {
  const page = await browser.newPage();
  const [faults, missing, asked]: [string[], string[], string[]] = [[], [], []];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('requestfailed', (request) => missing.push(request.url()));
  page.on('response', (response) => {
    asked.push(response.url());
    if (response.status() >= 400 && !/favicon/.test(response.url())) missing.push(response.url());
  });
  await page.addInitScript(() => {
    const found: string[] = [];
    Object.assign(window, { violations: found });
    document.addEventListener('securitypolicyviolation', (event) =>
      found.push(`${event.violatedDirective} ${event.blockedURI}`),
    );
  });
  await page.goto(`${served.origin}/taskpane.html${address}`);
  await page.waitForFunction(() => (window as never as { carryPaneRan?: boolean }).carryPaneRan);
  // The script goes on by itself for a while.
  await page.waitForTimeout(1500);
  const [violations, associated] = await page.evaluate(() => {
    const { violations: found, CustomFunctions: functions } = window as never as {
      violations: string[];
      CustomFunctions: { _association?: { mappings: object } };
    };
    return [found, Object.keys(functions._association?.mappings ?? {}).length] as const;
  });
  await page.close();
  return { violations, faults, missing, asked, associated };
}

const HOSTS = [
  ['Windows', '?_host_Info=Excel$Win32$16.01$en-US$$$$0', 'excel-win32-16.01.js'],
  ['Mac', '?_host_Info=Excel$Mac$16.00$en-US$$$$0', 'excel-mac-16.00.js'],
  [
    'a browser',
    '?_host_Info=Excel$Web$16.00$en-US$$$$0#&_xdm_Info=1a2b|3c4d|https://excel.officeapps.live.com',
    'excel-web-16.00.js',
  ],
] as const;

test.each(HOSTS)(
  'for Excel on %s nothing is missing and nothing offends the policy',
  async (_, address, script) => {
    const { violations, faults, missing, asked, associated } = await load(address);
    expect({ violations, faults, missing }).toEqual({ violations: [], faults: [], missing: [] });
    expect(asked.some((url) => url.endsWith(`/office/${script}`))).toBe(true);
    expect(asked.filter((url) => !url.startsWith(served.origin))).toEqual([]);
    expect(associated).toBeGreaterThan(40);
  },
);

test('a workbook held by a page that it does not know: office.js may show its own page about that', async () => {
  const { violations } = await load(
    '?_host_Info=Excel$Web$16.00$en-US$$$$0#&_xdm_Info=1a2b|3c4d|https://sheets.example',
  );
  expect(violations).toEqual([]);
});
