import fc from 'fast-check';
import type { Cell } from '../../src/core/measures/readQuantity';
import { HostError, callInCell, callInCells } from '../support/callInCells';
import { evenly } from '../support/evenly';

// What must hold of every clearance, whatever the numbers; each function is called as a cell calls it.

type Way = 'room' | 'piece' | 'other';

interface Measure {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  /** room: more of it never takes clearance away; piece: more never adds any; other: no such rule. */
  readonly way: Way;
  /** Not a length: stays as it is when all lengths are multiplied. */
  readonly fixed?: boolean;
}

const room = (name: string, least = 400, most = 2400): Measure => ({ name, least, most, way: 'room' });
const piece = (name: string, least: number, most: number): Measure => ({ name, least, most, way: 'piece' });

const PIECE: readonly Measure[] = [
  piece('length', 320, 2800),
  piece('breadth', 20, 1500),
  piece('thickness', 5, 600),
];
const STEP: readonly Measure[] = [
  { name: 'rise', least: 150, most: 220, way: 'other' },
  { name: 'going', least: 220, most: 300, way: 'other' },
];

const SCENES: Readonly<Record<string, readonly Measure[]>> = {
  OPENING: [room('opening_width'), room('opening_height'), ...PIECE],
  DIAGONAL: [
    room('opening_width'),
    room('opening_height'),
    piece('face_length', 320, 2800),
    piece('face_width', 5, 1500),
  ],
  CORNER: [
    room('width_in'),
    room('width_out'),
    room('ceiling', 600, 2800),
    ...PIECE,
    { name: 'turn', least: 1, most: 120, way: 'other', fixed: true },
  ],
  UPEND: [room('ceiling', 600, 2800), ...PIECE, room('width')],
  FLIGHT: [room('width'), room('headroom', 1200, 2600), ...STEP, ...PIECE],
};
const FUNCTIONS = Object.entries(SCENES);

const numbers = (measures: readonly Measure[]) => fc.tuple(...measures.map((m) => evenly(m.least, m.most)));
const numberOf = (id: string, values: readonly number[]): number => {
  const value = callInCell(id, ...values);
  if (typeof value !== 'number') throw new Error(`${id}(${values.join()}) gave ${JSON.stringify(value)}`);
  return value;
};
/** Rounding and the last step of an iteration; far below anything a tape can show. */
const ROUNDING = 1e-6;

describe.each(FUNCTIONS)('%s', (id, measures) => {
  test('clearance never grows when a space shrinks or a piece grows', () => {
    fc.assert(
      fc.property(
        numbers(measures),
        fc.nat(measures.length - 1),
        fc.oneof(evenly(0, 1), evenly(0, 400)),
        (values, which, by) => {
          const measure = measures[which]!;
          if (measure.way === 'other') return;
          const changed = [...values];
          changed[which] = values[which]! + by;
          const before = numberOf(id, values);
          const after = numberOf(id, changed);
          if (measure.way === 'room') expect(after).toBeGreaterThanOrEqual(before - ROUNDING);
          else expect(after).toBeLessThanOrEqual(before + ROUNDING);
        },
      ),
      { seed: 101, numRuns: 600 },
    );
  });

  test('all lengths times k give the clearance times k', () => {
    fc.assert(
      fc.property(numbers(measures), evenly(0.95, 2), (values, k) => {
        const scaled = values.map((value, i) => (measures[i]!.fixed ? value : value * k));
        expect(Math.abs(numberOf(id, scaled) - k * numberOf(id, values))).toBeLessThan(10 * ROUNDING);
      }),
      { seed: 102, numRuns: 300 },
    );
  });

  test('it is at least what a piece of no size would have, and loses its last millimetre where it says', () => {
    fc.assert(
      fc.property(numbers(measures), (values) => {
        const sizes = measures.flatMap((m, i) => (m.way === 'piece' ? [values[i]!] : []));
        const c = numberOf(id, values);
        expect(c).toBeGreaterThanOrEqual(-Math.max(...sizes) / 2 - ROUNDING);
        // Padded by its clearance a piece has none left. The rules of a cell take only sizes in their range.
        const padded = values.map((v, i) => (measures[i]!.way === 'piece' ? v + 2 * c : v));
        const paddedSizes = sizes.map((s) => s + 2 * c);
        if (
          Math.min(...paddedSizes) <= 0 ||
          Math.max(...paddedSizes) < 300 ||
          Math.max(...paddedSizes) > 6000
        )
          return;
        expect(Math.abs(numberOf(id, padded))).toBeLessThan(10 * ROUNDING);
      }),
      { seed: 103, numRuns: 300 },
    );
  });

  test('a range call equals its cell calls', () => {
    const rows = fc.sample(numbers(measures), { seed: 104, numRuns: 200 });
    const columns = measures.map((_, i) => rows.map((row): Cell[] => [row[i]!]));
    const bad = new HostError('#DIV/0!');
    columns[0]![7] = [null];
    columns[1]![9] = ['wide'];
    columns[1]![11] = [bad];
    const table = callInCells(id, ...columns);
    expect(table).toHaveLength(200);
    table.forEach((row, r) =>
      expect(row).toEqual([callInCell(id, ...columns.map((column) => column[r]![0]))]),
    );
    expect([table[7], table[9], table[11]]).toMatchObject([
      [{ code: '#N/A' }],
      [{ code: '#VALUE!' }],
      [{ code: '#DIV/0!' }],
    ]);
  });
});

describe.each(['OPENING', 'CORNER', 'UPEND', 'FLIGHT'])('%s', (id) => {
  const measures = SCENES[id]!;
  const first = measures.findIndex((m) => m.name === 'length');
  test("the order of a piece's three sizes does not matter", () => {
    fc.assert(
      fc.property(numbers(measures), (values) => {
        const [l, b, t] = values.slice(first, first + 3) as [number, number, number];
        const answer = numberOf(id, values);
        for (const order of [
          [l, t, b],
          [b, l, t],
          [b, t, l],
          [t, l, b],
          [t, b, l],
        ]) {
          expect(numberOf(id, [...values.slice(0, first), ...order, ...values.slice(first + 3)])).toBe(
            answer,
          );
        }
      }),
      { seed: 105, numRuns: 100 },
    );
  });
});

describe('what changes sides without a difference', () => {
  test('an opening on its side, a face turned over, a corner walked the other way', () => {
    fc.assert(
      fc.property(numbers(SCENES['CORNER']!), (values) => {
        const [a, b, ceiling, l, w, t, turn] = values as [
          number,
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        expect(numberOf('OPENING', [b, a, l, w, t])).toBe(numberOf('OPENING', [a, b, l, w, t]));
        expect(numberOf('DIAGONAL', [b, a, w, l])).toBe(numberOf('DIAGONAL', [a, b, l, w]));
        expect(numberOf('DIAGONALANGLE', [b, a, w, l])).toBe(numberOf('DIAGONALANGLE', [a, b, l, w]));
        const there = numberOf('CORNER', [a, b, ceiling, l, w, t, turn]);
        expect(Math.abs(numberOf('CORNER', [b, a, ceiling, l, w, t, turn]) - there)).toBeLessThan(ROUNDING);
      }),
      { seed: 106, numRuns: 200 },
    );
  });

  test('a corner of 1 degree is never wider than its narrower arm', () => {
    fc.assert(
      fc.property(numbers(SCENES['CORNER']!), (values) => {
        const [a, b, , l, w, t] = values as [number, number, number, number, number, number];
        const least = Math.min(l, w, t);
        const c = numberOf('CORNER', [a, b, 20000, l, w, t, 1]);
        expect(c).toBeLessThanOrEqual(Math.max((Math.min(a, b) - least) / 2, -least / 2) + ROUNDING);
      }),
      { seed: 107, numRuns: 200 },
    );
  });
});

describe('CORNERLENGTH', () => {
  const CORRIDORS = fc.record({
    a: evenly(300, 2000),
    b: evenly(300, 2000),
    slim: evenly(0.01, 0.99),
    turn: fc.oneof(fc.constant(90), evenly(15, 120)),
    k: evenly(0.5, 2),
  });
  test('never shorter in a wider way or for a thinner piece; times k; the same both ways', () => {
    fc.assert(
      fc.property(CORRIDORS, ({ a, b, slim, turn, k }) => {
        const t = slim * Math.min(a, b);
        const length = (...given: [number, number, number]) => numberOf('CORNERLENGTH', [...given, turn]);
        const base = length(a, b, t);
        const slack = 1e-7 * base;
        expect(length(a * (1 + k / 10), b, t)).toBeGreaterThanOrEqual(base - slack);
        expect(length(a, b * (1 + k / 10), t)).toBeGreaterThanOrEqual(base - slack);
        expect(length(a, b, t * 0.9)).toBeGreaterThanOrEqual(base - slack);
        expect(Math.abs(length(k * a, k * b, k * t) - k * base)).toBeLessThan(k * slack);
        expect(Math.abs(length(b, a, t) - base)).toBeLessThan(slack);
      }),
      { seed: 108, numRuns: 150 },
    );
  });
});

describe('PITCH', () => {
  test('steeper with more rise and less going, the same for steps times k', () => {
    fc.assert(
      fc.property(evenly(60, 400), evenly(60, 400), evenly(1.01, 2), (rise, going, k) => {
        const base = numberOf('PITCH', [rise, going]);
        expect(numberOf('PITCH', [k * rise, going])).toBeGreaterThan(base);
        expect(numberOf('PITCH', [rise, k * going])).toBeLessThan(base);
        expect(numberOf('PITCH', [k * rise, k * going])).toBeCloseTo(base, 10);
        expect(numberOf('PITCH', [going, rise])).toBeCloseTo(90 - base, 10);
      }),
      { seed: 109, numRuns: 200 },
    );
  });
});
