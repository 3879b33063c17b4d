/**
 * Worked out when it is first asked for, and kept. For what is something: where the answer may be undefined it is asked
 * again.
 *
 * @example once(() => 7)() // 7
 */
export function once<T>(make: () => T): () => T {
  let known: T | undefined;
  return () => (known ??= make());
}
