type Method = (...given: unknown[]) => unknown;

/** Methods of arrays that look at one element after another through a function. */
const LOOKING = [
  'map',
  'filter',
  'find',
  'findIndex',
  'some',
  'every',
  'forEach',
  'reduce',
  'flatMap',
] as const;
/** Methods that look through an array for a value. */
const SEARCHING = ['includes', 'indexOf'] as const;

/**
 * How much work something is, without a clock: how many elements of arrays it looks at, one by one, by a loop over an
 * array, by a method with a function, or by a search for a value (counted as the whole array).
 */
export function visitsOf(work: () => void): number {
  const prototype = Array.prototype as unknown as Record<string | symbol, Method>;
  const kept = new Map<string | symbol, Method>();
  let visits = 0;
  const replace = (name: string | symbol, by: (was: Method) => Method): void => {
    const was = prototype[name]!;
    kept.set(name, was);
    prototype[name] = by(was);
  };
  for (const name of LOOKING) {
    replace(
      name,
      (was) =>
        function (this: unknown[], ...given: unknown[]): unknown {
          const [look, ...rest] = given as [Method, ...unknown[]];
          return was.call(
            this,
            function (this: unknown, ...seen: unknown[]) {
              visits++;
              return look.apply(this, seen);
            },
            ...rest,
          );
        },
    );
  }
  for (const name of SEARCHING) {
    replace(
      name,
      (was) =>
        function (this: unknown[], ...given: unknown[]): unknown {
          visits += this.length;
          return was.apply(this, given);
        },
    );
  }
  replace(
    Symbol.iterator,
    (was) =>
      function (this: unknown[]): unknown {
        visits += this.length;
        return was.call(this);
      },
  );
  try {
    work();
  } finally {
    for (const [name, was] of kept) prototype[name] = was;
  }
  return visits;
}
