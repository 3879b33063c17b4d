import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import type { HostCell } from '../../src/worksheet/callFunction';
import { callInCells } from '../support/callInCells';

const COLUMNS =
  'Step, No., Move, Pose, Tilt, Raise, Clearance, Closest, Hands, Lower share, Aid, Caution'.split(', ');
const [STEP, NUMBER, MOVE, POSE, TILT, RAISE, CLEARANCE, CLOSEST, HANDS, SHARE, AID, CAUTION] =
  COLUMNS.keys();

const headers = ROUTE_COLUMNS.map(([header]) => header);
/** A share of the month, with the widest piece of each build ordered. */
const CARRIES = SAMPLE_SURVEYS.filter((_, i) => [2, 5, 12, 15, 17, 29, 37, 44].includes(i)).map((survey) => {
  const [piece] = SAMPLE_PIECES.filter(({ build }) => build === survey.build).sort(
    (a, b) => b.length * b.breadth - a.length * a.breadth,
  );
  return { survey, piece: piece!, table: [headers, ...routeRows([survey])] };
});

const rounded = (cell: HostCell | undefined): HostCell | undefined =>
  typeof cell === 'number' ? Math.round(cell * 1e6) / 1e6 : cell;

describe.each(CARRIES.map((carry) => [carry.survey.id, carry] as const))('MOVES of %s', (_id, carry) => {
  const { table, piece } = carry;
  const sizes = [piece.length, piece.breadth, piece.thickness] as const;
  const [header, ...moves] = callInCells('MOVES', table, ...sizes, 25, 5, piece.mass);
  const stages = callInCells('STAGES', table, ...sizes, 25, 5).slice(1, -1);

  test('has the columns of its contract and numbers its moves', () => {
    expect(header).toEqual(COLUMNS);
    expect(moves.map((row) => row[NUMBER!])).toEqual(moves.map((_, i) => i + 1));
  });

  test('names every step in order, with the clearance that STAGES gives it', () => {
    const steps = moves.map((row) => row[STEP!]).filter((step, i, all) => step !== all[i - 1]);
    expect(steps).toEqual(stages.map(([step]) => step));
    for (const [step, , verdict, clearance] of stages) {
      const own = moves.filter((row) => row[STEP!] === step);
      const passes = verdict === 'goes' || verdict === 'tight';
      for (const row of own) {
        expect(rounded(row[CLEARANCE!])).toBe(rounded(clearance));
        expect(String(row[MOVE!]).startsWith('No way shown')).toBe(!passes);
        expect(row[CAUTION!]).not.toBe('');
      }
      // One move of the step is where it is closest.
      expect(own.filter((row) => row[CLOSEST!] !== '')).toHaveLength(1);
      if (passes) expect(own.every((row) => row[POSE!] !== '' && row[HANDS!] !== '')).toBe(true);
    }
  });

  test('never says how many may carry it', () => {
    const people =
      /\b(?:one|two|three|four|five|six|\d+)\s+(?:people|persons?|men|hands|carriers|handlers|porters)\b/i;
    for (const row of moves) for (const cell of row) expect(String(cell)).not.toMatch(people);
  });

  test('gives the lower end its share by statics', () => {
    for (const row of moves) {
      const share = row[SHARE!];
      if (typeof share !== 'number') continue;
      expect(share).toBeGreaterThanOrEqual(piece.mass / 2 - 1e-9);
      expect(share).toBeLessThanOrEqual(piece.mass + 1e-9);
      // Moments about the upper grip, on edge along a slope: 1/2 + (B/2)/L tan(tilt).
      if (row[POSE!] === 'on edge' && /long side along the stair/.test(String(row[MOVE!]))) {
        const slope = Math.tan(((row[TILT!] as number) * Math.PI) / 180);
        expect(share).toBeCloseTo(piece.mass * (0.5 + (piece.breadth / 2 / piece.length) * slope), 6);
      }
    }
  });
});

/** 1,830 x 930 x 26 up a straight flight: pitch atan(190/240). */
const FLIGHT = [
  [
    'Step',
    'Stage',
    'Width',
    'Height',
    'Rise',
    'Going',
    'Risers',
    'Foot ceiling',
    'Foot space',
    'Head ceiling',
    'Head space',
    'Way',
  ],
  ['Stair', 'flight', 900, 2050, 190, 240, 13, 2420, 4000, 2400, 3200, 'up'],
];

test('on a flight the piece lies along the pitch, and its line says which way', () => {
  const [, row] = callInCells('MOVES', FLIGHT, 1830, 930, 26, 25, 5, '124 kg');
  const pitch = (Math.atan2(190, 240) * 180) / Math.PI;
  expect(row![MOVE!]).toBe('Up the flight, on edge, long side along the stair');
  expect(row![TILT!]).toBeCloseTo(pitch, 6);
  expect(row![RAISE!]).toBe(0);
});

test('without a mass the share and the aid say so', () => {
  const [, row] = callInCells('MOVES', FLIGHT, 1830, 930, 26);
  expect([row![SHARE!], row![AID!]]).toEqual(['mass not given', 'mass not given']);
});

test('a step without a measure has one line, which says that no way is shown', () => {
  const table = [
    ['Step', 'Stage', 'Width', 'Height'],
    [1, 'door', 838, 1981],
    [2, 'door', 838, null],
  ];
  const rows = callInCells('MOVES', table, 1830, 930, 26).slice(1);
  expect(rows).toHaveLength(2);
  expect(rows[1]![MOVE!]).toMatch(/^No way shown/);
  expect(rows[1]![CLOSEST!]).toMatch(/Height/);
});

test('a ramp and a few steps are called so, and are no stair', () => {
  const table = [
    ['Step', 'Stage', 'Width', 'Height', 'Length', 'Rise', 'Going', 'Risers', 'Way'],
    [1, 'ramp', 1400, 20000, 2600, 190, null, null, 'up'],
    [2, 'passage', 1400, 20000, 4000, null, null, null, null],
    [3, 'steps', 1400, 20000, null, 160, 300, 3, 'down'],
  ];
  const moves = callInCells('MOVES', table, 1830, 930, 26).map((row) => String(row[MOVE!]));
  expect(moves.find((move) => move.includes('ramp'))).toMatch(
    /^Up the ramp, on edge, long side along the ramp/,
  );
  expect(moves.find((move) => move.includes('steps'))).toMatch(
    /^Down the steps, on edge, long side along the steps/,
  );
  expect(moves.join(' ')).not.toContain('stair');
});

test("a corner at a stair's head is begun with the piece still on the slope, and its line says so", () => {
  const table = [
    [...FLIGHT[0]!, 'Width out', 'Hand', 'Run'],
    ['Stair', 'flight', 860, 2010, 190, 240, 14, 2400, 4000, 2390, 900, 'up', null, null, null],
    ['Top', 'corner', 860, 2390, null, null, null, null, null, null, null, null, 900, 'left', 1350],
    ['Door', 'door', 738, 1970, null, null, null, null, null, null, null, null, null, null, null],
  ];
  const moves = callInCells('MOVES', table, 1830, 930, 26, 25, 5, 124);
  const corner = moves.find((row) => row[STEP!] === 'Top')!;
  const pitch = (Math.atan2(190, 240) * 180) / Math.PI;
  expect(corner[MOVE!]).toMatch(
    /^Round the corner to the left, on edge, .*not level yet beside the stair, tilted up to 38 degrees/,
  );
  expect(corner[TILT!]).toBeGreaterThan(5);
  expect(corner[TILT!]).toBeLessThanOrEqual(pitch + 0.5);
  // Skates want a level piece on a level floor.
  expect(corner[AID!]).toBe('no aid known while it is tilted or leans');
});
