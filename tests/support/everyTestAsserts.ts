// A test that has run through without expecting anything has tested nothing: a loop over nothing, a branch never taken.
beforeEach(() => expect.hasAssertions());

// IDLE=1 npx jest: which expectations of a file were never come to, though another one in the test was.
if (process.env['IDLE']) {
  const come = new Set<number>();
  const told = globalThis as { comeTo?: (line: number) => void; expectsAt?: readonly number[] };
  told.comeTo = (line) => void come.add(line);
  afterAll(() => {
    const idle = (told.expectsAt ?? []).filter((line) => !come.has(line));
    if (idle.length > 0)
      console.log(`never come to in ${expect.getState().testPath}: lines ${idle.join(', ')}`);
  });
}
