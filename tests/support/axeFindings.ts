import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds on a page, a line each. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = window as never as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const found = await axe.run();
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`);
  });
}
