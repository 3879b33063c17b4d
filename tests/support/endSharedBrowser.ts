/** After all tests: ends the browser that was shared, if one was started. */
export default async function endSharedBrowser(): Promise<void> {
  await (globalThis as { endBrowser?: () => Promise<void> }).endBrowser?.();
}
