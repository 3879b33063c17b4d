/** Says why a command failed, and lets it end so. */
export function failed(error: unknown): void {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
