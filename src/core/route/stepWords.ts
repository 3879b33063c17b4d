/** A step in a sentence: `step 3`, `step Front door`; one without a name of its own is called by its place, `row 3`. */
export const stepWords = (name: number | string): string =>
  typeof name === 'string' && /^row \d+$/.test(name) ? name : `step ${name}`;
