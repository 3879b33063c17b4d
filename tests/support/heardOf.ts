import type { Page } from 'playwright-core';

/** What a page asks for and complains of, from now on. */
export interface Heard {
  /** Addresses. */
  readonly asked: string[];
  /** Errors, and what its console was given as an error or a warning. */
  readonly complaints: string[];
}

/** Listens to a page that has not been opened yet. */
export function heardOf(page: Page): Heard {
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  return { asked, complaints };
}
