const PATIENCE = 10_000; // [ms], for a machine that has other work
const PAUSE = 25; // [ms]

/**
 * Holds what a page shows to an expectation as soon as it is met. A page draws when the browser lets it:
 * what is read once, at once, may be the picture before.
 *
 * @param expectation - reads the page anew and expects
 * @throws what the expectation last complained of, where it is not met within ten seconds
 */
export async function eventually(expectation: () => Promise<void>): Promise<void> {
  for (let waited = 0; waited < PATIENCE; waited += PAUSE) {
    try {
      return await expectation();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  }
  return expectation();
}
