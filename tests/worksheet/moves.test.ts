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
    for (const [step, , verdict, clearance, , reason] of stages) {
      const own = moves.filter((row) => row[STEP!] === step);
      const passes = verdict === 'goes' || verdict === 'tight';
      for (const row of own) {
        // Where STAGES gives the clearance of a motion that is raised farther, the reason has that of the one told here too.
        const [least, more] = [
          ...String(reason).matchAll(/(-?[\d.]+) mm a side left|by hand it leaves ([\d.]+) mm/g),
        ];
        if (more) expect(row[CLEARANCE!]).toBeLessThan(Number(least![1]) + 1);
        else expect(rounded(row[CLEARANCE!])).toBe(rounded(clearance));
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

test('the clearance told with the moves is theirs, not that of a motion raised farther than by hand', () => {
  // Above a low part of 800 the way is 700 wide, (700 - 300) / 2; beside it 560, (560 - 300) / 2.
  const table = [
    ['Step', 'Stage', 'Width', 'Height', 'Length', 'Low width', 'Low height'],
    [1, 'passage', 700, 2200, 3000, 560, 800],
  ];
  const [, row] = callInCells('MOVES', table, 1830, 930, 300);
  expect([row![RAISE!], row![CLEARANCE!]]).toEqual([0, 130]);
  const [, stage] = callInCells('STAGES', table, 1830, 930, 300);
  expect(stage![3]).toBe(200);
});

describe('after a step for which no way is shown', () => {
  const header = ['Step', 'Stage', 'Width', 'Height', 'Length'];
  const hall = ['passage', 1000, 2400, 5000];
  const moves = (...rows: (string | number | null)[][]): string[] =>
    callInCells('MOVES', [header, ...rows.map((row, i) => [i + 1, ...row])], 1830, 930, 300, 25, 5)
      .slice(1)
      .map((row) => String(row[MOVE!]));

  test('what follows is told as supposed, with the pose in which the piece would come out, and no more than once', () => {
    const [before, none, after, last] = moves(hall, ['door', 250, 2000], hall, ['door', 900, 2000]);
    expect(before).toBe('Along the passage, on edge, long side along the way');
    expect(none).toBe('No way shown: do not start the carry before this step is settled');
    expect(after).toBe(
      'Only once step 2 is settled, and if it comes out of there on edge, long side along the way: ' +
        'Along the passage, on edge, long side along the way',
    );
    expect(last).toBe('Straight through the door, on edge, long side along the way');
  });

  test('two such steps on end are each told, and the last of them is the one to be settled', () => {
    const told = moves(['door', 250, 2000], ['door', 260, 2000], ['door', 900, 2000]);
    expect(told.slice(0, 2)).toEqual(Array(2).fill(expect.stringMatching(/^No way shown/)));
    expect(told[2]).toMatch(/^Only once step 2 is settled/);
  });

  test('where a measure is missing on the way, the steps that pass by themselves are not called unsettled', () => {
    const told = moves(['door', 900, 2000], ['door', null, 2000], ['door', 900, 2000]);
    expect(told[1]).toMatch(/^No way shown/);
    for (const order of [told[0], told[2]]) expect(order).toMatch(/^Not told: it passes here by itself/);
  });

  test('where all is shown nothing is supposed', () => {
    expect(moves(hall, ['door', 900, 2000]).join()).not.toContain('Only once');
  });
});
