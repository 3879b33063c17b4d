import { paneModel } from '../../src/taskpane/paneModel';

const SLATE = { name: 'Slate', size: { length: 1830, breadth: 930, thickness: 25 } };
const OPTIONS = { allowance: 25, tape: 5 };
const HEADERS = ['Step', 'Stage', 'Width', 'Width out', 'Height', 'Turn', 'Rise', 'Going', 'Ceiling'];

const model = (
  cells: (string | number | null)[],
  piece: typeof SLATE | undefined = SLATE,
  options = OPTIONS,
) => paneModel(cells, HEADERS, 'Route!A2:I2', piece && { name: piece.name, pieces: [piece] }, options)!;

const passage = (width: number) => model([2, 'passage', width, null, 2300]);

describe('the verdict of one stage', () => {
  // By hand, after the definition of the tape: on edge 25 mm across, worst case (w - 5 - 30)/2.
  test('goes exactly from the allowance in the worst case', () => {
    // (115 - 5 - 30)/2 = 40; an allowance of 40 is met, one of 40.5 is not.
    const at = (allowance: number) =>
      model([2, 'passage', 115, null, 2300], SLATE, { allowance, tape: 5 }).judged!;
    expect(at(40).verdict).toBe('goes');
    expect(at(40.5).verdict).toBe('tight');
    expect(at(40).clearances.map(({ text }) => text)).toEqual(['40.0', '45.0', '50.0']);
  });

  test('a leaning fit by itself has room before and after', () => {
    // Carver's formula: the longest p for q = 1 in 8 x 6 is 9.055656; here in units of 100 mm.
    const verdictOf = (breadth: number) =>
      model(
        [1, 'door', 600, null, 800],
        { name: 'Board', size: { length: 1500, breadth, thickness: 100 } },
        { allowance: 0, tape: 0 },
      ).judged!.verdict;
    expect(verdictOf(905)).toBe('goes');
    expect(verdictOf(906)).toBe('no way found');
  });

  test('a proof gives cannot go, and its reason', () => {
    // A slab 300 thick through 250 mm of width: its least size is more than the opening's.
    const thick = { name: 'Block', size: { length: 900, breadth: 600, thickness: 300 } };
    const { judged } = model([1, 'door', 250, null, 2000], thick);
    expect(judged!.verdict).toBe('cannot go');
    expect(judged!.reason).toMatch(/thickness/);
  });

  test('beside a problem a verdict says that it holds for what was typed', () => {
    const look = /as typed: look at the problems/;
    const exchanged = model([1, 'door', 1981, null, 762]);
    expect(exchanged.judged!.verdict).toBe('goes');
    expect(exchanged.problems).toHaveLength(1);
    expect(exchanged.judged!.reason).toMatch(look);
    expect(passage(900).judged!.reason).not.toMatch(look);
  });

  test('needs a piece', () => {
    const m = paneModel([2, 'passage', 900, null, 2300], HEADERS.slice(0, 5), 'x', undefined, OPTIONS)!;
    expect(m.judged).toBeUndefined();
    expect(m.notJudged).toMatch(/three sizes/);
    // The stage itself is drawn all the same.
    expect(m.drawing!.text).toContain('clear width 900');
  });
});

describe('cautions', () => {
  test('are there for every stage, and more of them on stairs', () => {
    expect(passage(900).cautions).toHaveLength(1);
    const flight = model([3, 'flight', 860, null, 2050, null, 190, 240]);
    expect(flight.cautions.join(' ')).toContain('carried on stairs');
    expect(model([3, 'flght', 860]).cautions).toHaveLength(1);
  });
});

describe('measures', () => {
  test('are named as at the stage, with what was read', () => {
    const { measures } = model([3, 'flight', '86 cm', null, 2050, null, 190, 240]);
    expect(measures[0]).toEqual({ name: 'Width', cell: '86 cm', read: '860 mm', state: 'read' });
    expect(measures[1]).toMatchObject({ name: 'Height (headroom)', cell: '2050', state: 'read' });
  });

  test('that the stage does not use are said to be of no use', () => {
    const { measures } = model([2, 'passage', 900, 700, 2300]);
    expect(measures.find(({ name }) => name === 'Width out')).toMatchObject({
      read: '700 mm, not used here',
      state: 'not used',
    });
  });

  test('that are missing are marked where the tape goes', () => {
    const m = model([3, 'corner', 800, null, 2300]);
    expect(m.drawing!.text).toMatch(/[A-Z], Width out: missing/);
    expect(m.drawing!.pictures[0]!.svg).toContain('class="dimension missing"');
    expect(m.measures.find(({ name }) => name === 'Width out')?.state).toBe('missing');
  });
});

test('a stage misspelt has no verdict and no drawing, and says what is wrong', () => {
  const m = model([3, 'passge', 900, null, 2300]);
  expect(m.heading).toBe('Step 3: "passge"');
  expect(m.problems.join(' ')).toContain('passage');
  expect(m.judged).toBeUndefined();
  expect(m.drawing).toBeUndefined();
});

test('an empty row is nothing', () => {
  expect(
    paneModel([null, '', null], HEADERS, 'x', { name: 'Slate', pieces: [SLATE] }, OPTIONS),
  ).toBeUndefined();
});

test('the note says verdict, reason and problems in one text', () => {
  expect(passage(900).note).toMatch(/^Slate: goes, 437 mm a side left/);
  expect(model([3, 'corner', 800, null, 2300]).note).toMatch(/^Slate: not measured\. Width out/);
});

test('without a piece and without problems there is nothing to note', () => {
  expect(
    paneModel([2, 'passage', 900, null, 2300], HEADERS.slice(0, 5), 'x', undefined, OPTIONS)?.note,
  ).toBeUndefined();
});
