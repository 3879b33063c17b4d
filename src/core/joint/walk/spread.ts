/** The first of a row, the last, and some between. */
export function spread<T>(row: readonly T[]): T[] {
  const parts = [0, 1, 0.5, 0.25, 0.75];
  const at = new Set(parts.map((part) => Math.round(part * (row.length - 1))));
  return [...at].flatMap((n) => row.slice(n, n + 1));
}
