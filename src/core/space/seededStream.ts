/**
 * A stream of numbers in [0, 1) that look random and are the same on every machine: the 32-bit generator
 * sfc32 (Chris Doty-Humphrey, PractRand, public domain), integer arithmetic only.
 */
export function seededStream(seed: number): () => number {
  let a = 0x9e3779b9 | 0;
  let b = 0x243f6a88 | 0;
  let c = seed | 0;
  let counter = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}
