/** A stream of numbers in 0..1 from a seed: Park & Miller's minimal standard generator, Comm. ACM 31(10), 1988. */
export const seeded = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
};
