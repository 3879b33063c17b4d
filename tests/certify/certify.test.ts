import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { certificates } from './certificates';
import { check, type Certificate } from './check';

// Certificates of two surveys of the month, and what is done to them by someone who wants a verdict to stand.

jest.setTimeout(120_000);

const made: Certificate[] = [];
beforeAll(async () => {
  const surveys = SAMPLE_SURVEYS.filter(({ id }) => id === 'Q-01' || id === 'Q-35');
  for await (const one of certificates(surveys)) if ('certificates' in one) made.push(...one.certificates);
});

/** The certificate with the longest motion, as one may write into. */
const copy = (): { -readonly [K in keyof Certificate]: Certificate[K] } =>
  structuredClone(made.reduce((long, one) => (one.keys.length > long.keys.length ? one : long)));

test('each is verified, with room to spare', () => {
  expect(made.length).toBeGreaterThan(3);
  for (const one of made) {
    const { faults, padding, places } = check(one);
    expect([one.survey, one.piece.name, faults]).toEqual([one.survey, one.piece.name, []]);
    expect(padding).toBeGreaterThan(0);
    expect(padding).toBeLessThan(one.clearance);
    expect(places).toBeGreaterThan(20);
  }
});

describe('is not verified', () => {
  test('with any one key in the middle of the way shifted aside by more than the way is wide', () => {
    const { keys } = copy();
    for (let k = 1; k + 1 < keys.length; k += Math.ceil(keys.length / 12)) {
      const one = copy();
      one.keys = keys.map((key, i) =>
        i === k
          ? { ...key, at: [key.at[0], key.at[1], key.at[2] - one.piece.thickness - 2 * one.padding - 400] }
          : key,
      );
      expect([k, check(one).faults.length]).toEqual([k, 1]);
    }
  });
  test('with the keys between two rows left out', () => {
    const one = copy();
    one.keys = [one.keys[0]!, one.keys[one.keys.length - 1]!];
    expect(check(one).faults).toHaveLength(1);
  });
  test('with the end or the beginning left out', () => {
    const one = copy();
    expect(check({ ...one, keys: one.keys.slice(0, Math.floor(one.keys.length / 2)) }).faults.join()).toMatch(
      /end/,
    );
    expect(check({ ...one, keys: one.keys.slice(Math.floor(one.keys.length / 2)) }).faults.join()).toMatch(
      /begin/,
    );
  });
  test('with a row narrower, or wider than it was measured', () => {
    for (const by of [0.4, 3]) {
      const one = copy();
      one.rows = one.rows.map((row) => ({
        ...row,
        measures: { ...row.measures, width: (row.measures['width'] ?? 0) * by },
      }));
      expect(check(one).faults.join()).toMatch(/measured as/);
      // Measured so as well, the narrower one is no way for it.
      if (by < 1) expect(check({ ...one, measured: one.rows }).faults.join()).toMatch(/leaves the air|begin/);
    }
  });
  test('with a row left out', () => {
    const one = copy();
    expect(check({ ...one, rows: one.rows.slice(1) }).faults.join()).toMatch(/not those measured/);
    expect(
      check({ ...one, rows: one.rows.slice(1), measured: one.measured.slice(1) }).faults.length,
    ).toBeGreaterThan(0);
  });
  test('for a piece that is larger than it may be', () => {
    const one = copy();
    one.piece = { ...one.piece, length: 6000, breadth: 2500 };
    expect(check(one).faults.length).toBeGreaterThan(0);
  });
  test('with more padding than there is clearance, or none', () => {
    const one = copy();
    expect(check({ ...one, padding: one.clearance + 600 }).faults.length).toBeGreaterThan(0);
    for (const padding of [0, -5, NaN]) expect(check({ ...one, padding }).faults.join()).toMatch(/padding/);
  });
  test('with a turn that is none, or a place that is none', () => {
    for (const change of [
      { turn: [1, 1, 0, 0] },
      { turn: [NaN, 0, 0, 1] },
      { at: [0, Infinity, 0] },
    ] as const) {
      const one = copy();
      one.keys = one.keys.map((key, i) => (i === 2 ? { ...key, ...change } : key));
      expect(check(one).faults.length).toBeGreaterThan(0);
    }
  });
  test('riding where there is no lift, or with a part that is said not to be drawn', () => {
    const one = copy();
    one.keys = one.keys.map((key, i) => (i === 3 ? { ...key, rides: true } : key));
    expect(check(one).faults.join()).toMatch(/rides/);
    expect(check({ ...copy(), notDrawn: 'level at row 2' }).faults.join()).toMatch(/not drawn/);
  });
});
