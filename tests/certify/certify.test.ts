import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { certificates } from './certificates';
import {
  check,
  type AttitudeCell,
  type Certificate,
  type Key,
  type PassCertificate,
  type Proof,
  type Row,
  type ShutCertificate,
} from './check';

// Certificates of surveys of the month, and what is done to them by someone who wants a verdict to stand.

jest.setTimeout(120_000);

const passing: PassCertificate[] = [];
const shut: ShutCertificate[] = [];
beforeAll(async () => {
  const ids = ['Q-01', 'Q-35', 'Q-25', 'Q-31'];
  for await (const one of certificates(SAMPLE_SURVEYS.filter(({ id }) => ids.includes(id)))) {
    if (!('certificates' in one)) throw new Error(`${one.survey}: ${one.none}`);
    for (const made of one.certificates) {
      if (made.verdict === 'cannot go') shut.push(made);
      else passing.push(made);
    }
  }
});

const faultsOf = (one: Certificate): string => check(one).faults.join('; ');

describe('that a piece passes', () => {
  /** The certificate with the longest motion, as one may write into. */
  const copy = (): { -readonly [K in keyof PassCertificate]: PassCertificate[K] } =>
    structuredClone(passing.reduce((long, one) => (one.keys.length > long.keys.length ? one : long)));

  test('is verified, with room to spare', () => {
    expect(passing.length).toBeGreaterThan(3);
    for (const one of passing) {
      const { faults, padding, looked } = check(one);
      expect([one.survey, one.piece.name, faults]).toEqual([one.survey, one.piece.name, []]);
      expect(padding).toBeGreaterThan(0);
      expect(padding).toBeLessThan(one.clearance);
      expect(looked).toBeGreaterThan(20);
    }
  });

  test('with any one key in the middle of the way shifted aside by more than the way is wide is not', () => {
    const { keys } = copy();
    for (let k = 1; k + 1 < keys.length; k += Math.ceil(keys.length / 12)) {
      const one = copy();
      one.keys = keys.map((key, i) =>
        i === k
          ? { ...key, at: [key.at[0], key.at[1], key.at[2] - one.piece.thickness - 2 * one.padding - 400] }
          : key,
      );
      expect([k, faultsOf(one)]).toEqual([k, expect.stringMatching(/leaves the air|end behind/)]);
    }
  });

  test('with the keys between two rows left out is not', () => {
    const one = copy();
    one.keys = [one.keys[0]!, one.keys[one.keys.length - 1]!];
    expect(faultsOf(one)).toMatch(/leaves the air/);
  });

  test('with the end or the beginning left out is not', () => {
    const one = copy();
    const half = Math.floor(one.keys.length / 2);
    expect(faultsOf({ ...one, keys: one.keys.slice(0, half) })).toMatch(/does not end/);
    expect(faultsOf({ ...one, keys: one.keys.slice(half) })).toMatch(/does not begin/);
  });

  test('with a row narrower, or wider than it was measured is not', () => {
    for (const by of [0.4, 3]) {
      const one = copy();
      one.rows = one.rows.map((row) => ({
        ...row,
        measures: { ...row.measures, width: (row.measures['width'] ?? 0) * by },
      }));
      expect(faultsOf(one)).toMatch(/measured as/);
      // Measured so as well, the narrower one is no way for it.
      if (by < 1) expect(faultsOf({ ...one, measured: one.rows })).toMatch(/leaves the air|begin/);
    }
  });

  test('with a row left out is not', () => {
    const one = copy();
    expect(faultsOf({ ...one, rows: one.rows.slice(1) })).toMatch(/not those measured/);
    expect(faultsOf({ ...one, rows: one.rows.slice(1), measured: one.measured.slice(1) })).not.toBe('');
  });

  test('with any one of its rows lower by a metre is not: every wall of it counts', () => {
    const whole = copy();
    whole.rows.forEach(({ stage, measures }, i) => {
      if (measures['height'] === undefined || stage === 'steps') return;
      const lower = whole.rows.map((row, k) =>
        k === i ? { ...row, measures: { ...row.measures, height: 1, ceiling: 1 } } : row,
      );
      expect([stage, faultsOf({ ...whole, rows: lower, measured: lower })]).toEqual([
        stage,
        expect.stringMatching(/./),
      ]);
    });
  });

  test('with any measure of any row changed, a hand or a way exchanged, is not: no wall may be missing', () => {
    const whole = copy();
    let tried = 0;
    whole.measured.forEach((row, i) => {
      const tampered = (change: (was: Row) => Row): string =>
        faultsOf({ ...whole, rows: whole.rows.map((was, k) => (k === i ? change(was) : was)) });
      for (const [name, value] of Object.entries(row.measures)) {
        if (value === undefined) continue;
        tried++;
        for (const other of [value + 1, value - 1, undefined])
          expect([
            name,
            tampered((was) => ({ ...was, measures: { ...was.measures, [name]: other } })),
          ]).toEqual([name, expect.stringMatching(/measured as/)]);
      }
      if (row.hand)
        expect(tampered((was) => ({ ...was, hand: was.hand === 'left' ? 'right' : 'left' }))).toMatch(
          /hand is/,
        );
      if (row.way)
        expect(tampered((was) => ({ ...was, way: was.way === 'up' ? 'down' : 'up' }))).toMatch(/way is/);
      expect(tampered((was) => ({ ...was, stage: 'room' === was.stage ? 'passage' : 'room' }))).toMatch(
        /measured as|end/,
      );
    });
    expect(tried).toBeGreaterThan(10);
  });

  test('that leads round the house over the open ground is not', () => {
    // A door of 900 in a wall; behind it a way that turns back by two corners, into the open beside the door.
    const wide = { width: 900, height: 2100 };
    const rows: Row[] = [
      { stage: 'door', measures: { ...wide, wall: 100 } },
      { stage: 'passage', measures: { ...wide, length: 2000 } },
      { stage: 'corner', measures: { ...wide, widthOut: 900, run: 2000 }, hand: 'left' },
      { stage: 'corner', measures: { ...wide, widthOut: 900, run: 3000 }, hand: 'left' },
      { stage: 'door', measures: { ...wide, wall: 100 } },
    ];
    // Held level along the way; it is turned about only where there is room outdoors.
    const [turn, back]: Key['turn'][] = [
      [1, 0, 0, 0],
      [0, 0, 0, 1],
    ] as const satisfies Key['turn'][];
    const motion = (keys: Key[]): string =>
      faultsOf({
        survey: 'S',
        build: 'B',
        piece: { name: 'P', length: 600, breadth: 400, thickness: 100 },
        verdict: 'passes as measured',
        measured: rows,
        rows,
        clearance: 60,
        padding: 50,
        keys,
      });
    const outside: Key = { at: [-1500, 0, 500], turn: turn, row: -1 };
    const behind: Key = { at: [-3500, 2900, 500], turn: back, row: rows.length };
    // Through the house its middle goes along the middle of the way: 2550 in, 2900 to the left, and back.
    const through: Key[] = [
      outside,
      { at: [2550, 0, 500], turn: turn, row: 2 },
      { at: [2550, 2900, 500], turn: turn, row: 3 },
      { at: [-3500, 2900, 500], turn: turn, row: 5 },
    ];
    expect(motion(through)).toBe('');
    expect(motion([outside, { ...outside, at: [-3500, 0, 500] }, behind])).toMatch(
      /from row to row|last row/,
    );
    expect(motion([outside, { ...behind, row: -1 }])).toMatch(/from row to row|last row/);
    // With the door at the end left out of the motion it is not behind the last row.
    expect(motion(through.slice(0, 3))).toMatch(/does not end/);
  });

  test('for a piece that is larger than it may be is not', () => {
    const one = copy();
    expect(faultsOf({ ...one, piece: { ...one.piece, length: 6000, breadth: 2500 } })).not.toBe('');
    expect(faultsOf({ ...one, piece: { ...one.piece, thickness: 0 } })).toMatch(/thickness is 0/);
  });

  test('with more padding than there is clearance, or none is not', () => {
    const one = copy();
    expect(faultsOf({ ...one, padding: one.clearance + 600 })).not.toBe('');
    for (const padding of [0, -5, NaN, Infinity]) expect(faultsOf({ ...one, padding })).toMatch(/padding/);
  });

  test('with a turn that is none, or a place that is none is not', () => {
    for (const [change, said] of [
      [{ turn: [1, 1, 0, 0] }, /unit quaternion/],
      [{ turn: [NaN, 0, 0, 1] }, /no place/],
      [{ at: [0, Infinity, 0] }, /no place/],
    ] as const) {
      const one = copy();
      one.keys = one.keys.map((key, i) => (i === 2 ? { ...key, ...change } : key));
      expect(faultsOf(one)).toMatch(said);
    }
  });

  test('riding where there is no lift, or with a part that is said not to be drawn is not', () => {
    const one = copy();
    one.keys = one.keys.map((key, i) => (i === 3 ? { ...key, rides: true } : key));
    expect(faultsOf(one)).toMatch(/rides/);
    expect(faultsOf({ ...copy(), notDrawn: 'level at row 2' })).toMatch(/not drawn/);
  });
});

describe('that a piece cannot go', () => {
  const by = (kind: Proof['by']): ShutCertificate => {
    const found = shut.find(({ proof }) => proof.by === kind);
    if (!found) throw new Error(`no certificate by ${kind}`);
    return structuredClone(found);
  };
  const withCells = (change: (cells: AttitudeCell[]) => AttitudeCell[]): ShutCertificate => {
    const one = by('line');
    if (one.proof.by !== 'line') throw new Error('another proof');
    return { ...one, proof: { ...one.proof, cells: change([...one.proof.cells]) } };
  };
  const measuredAs = (
    one: ShutCertificate,
    k: number,
    measures: Record<string, number | undefined>,
  ): ShutCertificate => ({
    ...one,
    measured: one.measured.map((row, i) =>
      i === k ? { ...row, measures: { ...row.measures, ...measures } } : row,
    ),
  });

  test('is verified', () => {
    expect(shut.map(({ survey }) => survey)).toEqual(['Q-25', 'Q-31']);
    for (const one of shut) expect([one.survey, faultsOf(one)]).toEqual([one.survey, '']);
  });

  test('with any cell left out is not: a gap', () => {
    const count = withCells((cells) => cells);
    if (count.proof.by !== 'line') throw new Error('another proof');
    const cells = count.proof.cells.length;
    for (let k = 0; k < cells; k += Math.ceil(cells / 20)) {
      expect(faultsOf(withCells((all) => all.filter((_, i) => i !== k)))).toMatch(/gap/);
    }
    expect(faultsOf(withCells(() => []))).toMatch(/gap/);
  });

  test('with a cell that is narrower, shifted, or there twice is not', () => {
    const at = 7;
    const changed = (change: (cell: AttitudeCell) => AttitudeCell[]): string =>
      faultsOf(withCells((all) => all.flatMap((cell, i) => (i === at ? change(cell) : [cell]))));
    expect(changed(([x, y, z, dx, ...rest]) => [[x, y, z, dx / 2, ...rest]])).toMatch(/gap/);
    expect(changed(([x, ...rest]) => [[x + 1e-9, ...rest]])).toMatch(/gap/);
    expect(changed((cell) => [cell, cell])).toMatch(/gap|overlap/);
  });

  test('with a bound that is raised is not; nor with one less than the cell needs', () => {
    for (const factor of [1.3, 0.999]) {
      const said = faultsOf(
        withCells((all) =>
          all.map((cell): AttitudeCell => [
            cell[0],
            cell[1],
            cell[2],
            cell[3],
            cell[4],
            cell[5],
            cell[6] * factor,
          ]),
        ),
      );
      expect(said).toMatch(factor > 1 ? /may stand/ : /wider than its bound/);
    }
    expect(
      faultsOf(withCells((all) => all.map((cell) => [...cell.slice(0, 6), NaN] as unknown as AttitudeCell))),
    ).toMatch(/wider than its bound/);
  });

  test('with a corner that is wider or higher than it was is not', () => {
    const one = by('line');
    for (const wider of [{ width: 2400 }, { widthOut: 2400 }, { height: 4000 }, { turn: 20 }]) {
      expect(faultsOf(measuredAs(one, one.row, wider))).not.toBe('');
    }
  });

  test('where the ways beside the corner are wide, high, short or not measured is not', () => {
    const one = by('line');
    for (const change of [{ length: 300 }, { width: 1600 }, { height: 3000 }, { width: undefined }]) {
      expect(faultsOf(measuredAs(one, one.row + 1, change))).toMatch(/way out is not known/);
    }
    expect(faultsOf(measuredAs(one, one.row - 1, { run: 300 }))).toMatch(/way in is not known/);
    expect(faultsOf(measuredAs(one, one.row - 1, { run: undefined }))).toMatch(/way in is not known/);
  });

  test('with a line that does not part the ways is not', () => {
    const one = by('line');
    if (one.proof.by !== 'line') throw new Error('another proof');
    for (const change of [{ from: [-10, -10] }, { to: [10, -10] }, { to: [NaN, 0] }] as const) {
      expect(faultsOf({ ...one, proof: { ...one.proof, ...change } })).toMatch(/line/);
    }
    expect(faultsOf({ ...one, row: 0 })).toMatch(/a line across a/);
    expect(faultsOf({ ...one, row: 99 })).toMatch(/no row/);
  });

  test('for a smaller piece is not', () => {
    for (const one of shut) {
      expect(
        faultsOf({ ...one, piece: { ...one.piece, length: 800, breadth: 400, thickness: 60 } }),
      ).not.toBe('');
    }
  });

  test('with a car that is larger than it was, or a room where it need not stand wholly, is not', () => {
    const one = by('sizes');
    expect(faultsOf(measuredAs(one, one.row, { depth: 3000 }))).toMatch(/may stand/);
    expect(faultsOf({ ...one, row: 0 })).toMatch(/need not stand/);
    expect(faultsOf({ ...one, tape: 400 })).toMatch(/may stand/);
    expect(faultsOf({ ...one, tape: -1 })).toMatch(/tape/);
  });
});

describe('a section is too small for a piece', () => {
  // By hand: a disc as wide as it is thick, a chord as long as it is broad, an area of breadth by thickness.
  const through = (width: number, height: number, sizes: readonly [number, number, number]): string =>
    faultsOf({
      survey: 'S',
      build: 'B',
      piece: { name: 'P', length: sizes[0], breadth: sizes[1], thickness: sizes[2] },
      verdict: 'cannot go',
      measured: [{ stage: 'door', measures: { width, height } }],
      tape: 0,
      row: 0,
      proof: { by: 'section', which: 'way in' },
    });
  test.each([
    ['thicker than the narrower side', 700, 2000, [2400, 1000, 701]],
    ['broader than the diagonal', 300, 400, [2400, 501, 100]],
    ['of more section than the opening', 600, 800, [2400, 990, 490]],
  ] as const)('%s', (_, width, height, sizes) => {
    expect(through(width, height, sizes)).toBe('');
    expect(through(width + 200, height + 200, sizes)).toMatch(/may pass/);
  });
  test('and not where it just fits', () => {
    expect(through(700, 2000, [2400, 1000, 700])).toMatch(/may pass/);
    expect(through(300, 400, [2400, 500, 10])).toMatch(/may pass/);
  });
});
