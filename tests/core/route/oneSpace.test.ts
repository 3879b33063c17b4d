import type { StageMeasures } from '../../../src/core/stages/measures';
import type { StageName } from '../../../src/core/stages/kinds';
import type { PieceSize } from '../../../src/core/measures/piece';
import { judge, piece, route } from './routeFixtures';

// Routes in which the rows stand close, so that one by itself says nothing. What is true of each is worked out here
// by geometry of its own, not by the code that is tested.

type Steps = readonly (readonly [StageName, StageMeasures])[];
const judged = (steps: Steps, size: PieceSize) => judge(route(...steps), size);
const room = ['room', { length: 5000, width: 4000, height: 2400 }] as const;

/**
 * Whether a level rectangle p x q comes round a right-angled corner of arms a and b, turning with it: the least over
 * the angle f of a cos f + b sin f - p sin f cos f - q, sampled finely (the rectangle round a corner, Moretti,
 * College Math. J. 33(3), 2002, 196-200).
 */
function leastRoundCorner(p: number, q: number, a: number, b: number): number {
  let least = Infinity;
  for (let k = 0; k <= 90000; k++) {
    const f = (k * Math.PI) / 180000;
    least = Math.min(least, a * Math.cos(f) + b * Math.sin(f) - p * Math.sin(f) * Math.cos(f) - q);
  }
  return least;
}

describe('a narrowing past a corner stands anywhere across it', () => {
  const cabinet = piece(2480, 1360, 480);
  const steps = (width: number): Steps => [
    ['corner', { width: 1400, widthOut: 1400, height: 2400, run: 0 }],
    ['passage', { width, height: 2400, length: 4000 }],
    room,
  ];

  test('flush with the outer wall it is a corner of its own width', () => {
    // On edge: 2480 x 480 in plan, 1360 high. It turns between 1400 and 1400, and not between 1400 and 900.
    expect(leastRoundCorner(2480, 480, 1400, 1400)).toBeGreaterThan(0);
    expect(leastRoundCorner(2480, 480, 1400, 900)).toBeLessThan(0);
    expect(judged(steps(1400), cabinet).verdict).toBe('goes');
    // With the narrowing in the middle no way is found either; between long arms the corner 1400/900 is proved impossible.
    expect(judged(steps(900), cabinet).verdict).toBe('no way found');
    const long = (width: number) => ['passage', { width, height: 2400, length: 4000 }] as const;
    const corner = ['corner', { width: 1400, widthOut: 900, height: 2400 }] as const;
    expect(judged([long(1400), corner, long(900)], cabinet).verdict).toBe('cannot go');
  });

  test('a door a hand beyond the corner is as good as at it', () => {
    // A side door of 715 off a passage of 1050: 1150 x 330 on end is 2060 high, above the door's head.
    const crate = piece(2060, 1150, 330);
    const door = ['door', { width: 715, height: 1981 }] as const;
    const corner = (run: number) => ['corner', { width: 1050, widthOut: 1050, height: 2400, run }] as const;
    expect(leastRoundCorner(2060, 330, 1050, 715)).toBeLessThan(0);
    expect(judged([corner(50), door], crate).verdict).toBe('no way found');
    // After a long passage the rows are one plan. Flush with the inner edge, the worst place, 5.7 mm a side are short by
    // one account and some 16 by our planner; in the middle of the arm next to nothing is left: as measured just so.
    const approach = ['passage', { width: 1050, height: 2400, length: 4000 }] as const;
    const planned = judged([approach, corner(50), door], crate);
    expect(planned.verdict).toBe('tight');
    expect(planned.clearance!).toBeGreaterThanOrEqual(0);
    expect(planned.clearance!).toBeLessThan(1);
  });

  test('between two corners', () => {
    const sheet = piece(2400, 900, 25);
    const corner = ['corner', { width: 1000, widthOut: 1000, height: 2300 }] as const;
    const passage = ['passage', { width: 600, height: 2300, length: 2600 }] as const;
    // Even as a rod tilted up to the ceiling: sqrt(2400^2 + 900^2 - 2300^2) = 1125 mm are left in plan, which turn;
    // level, 2400 x 25 do not turn between 1000 and 600 (calculus-book ladder: 2232 mm).
    expect((1000 ** (2 / 3) + 600 ** (2 / 3)) ** 1.5).toBeLessThan(2400);
    expect(judged([corner, passage, corner], sheet).verdict).toBe('no way found');
    expect(
      judged([corner, ['passage', { width: 1000, height: 2300, length: 2600 }], corner], sheet).verdict,
    ).toBe('goes');
  });

  test('out of the piece’s reach it does not count', () => {
    // On edge it is 1830 long; with 25 of allowance a side, and the tape on run and piece, 1830 + 50 + 5 + 5 = 1890.
    const slate = piece(1830, 930, 25);
    const steps = (run: number): Steps => [
      ['corner', { width: 900, widthOut: 900, height: 1500, run }],
      ['door', { width: 330, height: 1400 }],
    ];
    expect(leastRoundCorner(1830, 25, 900, 330)).toBeLessThan(0);
    expect(judged(steps(1890), slate).verdict).toBe('goes');
    expect(judged(steps(1889.9), slate).verdict).toBe('tight');
    expect(judged(steps(1830), slate)).toMatchObject({ verdict: 'tight', clearance: 0 });
    expect(judged(steps(1829), slate).verdict).toBe('no way found');
    // Out of a long passage it is one plan; the door is wide enough for 25 mm of thickness to go in at a slant.
    const arm = ['passage', { width: 900, height: 1500, length: 3000 }] as const;
    expect(judged([arm, ...steps(1829)], slate).verdict).toBe('tight');
    // A run that is not measured may be long, and may be none.
    const open = judged([['corner', { width: 900, widthOut: 900, height: 1500 }], steps(0)[1]!], slate);
    expect(open.verdict).toBe('tight');
    expect(open.reason).toContain('the straight after step 1 is not measured');
  });
});

test('a landing is as narrow and low as the flights beside it', () => {
  const flight = (width: number, height: number) =>
    ['flight', { width, height, rise: 190, going: 240, risers: 14 }] as const;
  const landing = [
    'half landing',
    { width: 1000, well: 100, depth: 1000, height: 2300, rise: 190, going: 240 },
  ] as const;
  const sheet = piece(2000, 900, 25);
  // An independent planner found no motion at any padding between flights of 650 under 1900 (common practice, no
  // source, that a landing is surveyed wider than its flights); widened without chance one passes with some 10 mm, replayed free.
  const narrow = judged([flight(650, 1900), landing, flight(650, 1900)], sheet);
  const wide = judged([flight(1000, 2300), landing, flight(1000, 2300)], sheet);
  expect(narrow.clearance!).toBeLessThan(25);
  expect(wide.clearance!).toBeGreaterThan(50);
  expect(wide.clearance!).toBeCloseTo(judged([landing], sheet).clearance!, 6);
});

describe('a proof supposes its arms', () => {
  test('a short arm into a room is a door out of a passage', () => {
    // 2300 x 300 on edge, out of a passage of 900 through an opening of 900 into a room: turned half-way it stands
    // 2300 sin 45 + 300 cos 45 = 1838 across the opening's line, and the room takes it. So nothing is proved.
    const crate = piece(2300, 1100, 300);
    const arm = (length: number): Steps => [
      ['passage', { width: 900, height: 1990, length: 4000 }],
      ['corner', { width: 900, widthOut: 900, height: 1990 }],
      ['passage', { width: 900, height: 1990, length }],
      room,
    ];
    // An independent planner finds the way as measured; a little more length of the arm and it is shut.
    expect(judged(arm(100), crate).verdict).toBe('tight');
    expect(judged(arm(4000), crate).verdict).toBe('cannot go');
  });

  test('a door always counts', () => {
    expect(judged([['door', { width: 400, height: 1981 }], room], piece(2000, 900, 500)).verdict).toBe(
      'cannot go',
    );
  });
});

describe('the pose is changed where the swept box has room', () => {
  test('there is no room to tilt it under a low passage before a lift', () => {
    const panel = piece(2000, 700, 25);
    const lift = ['lift', { width: 900, height: 2200, widthOut: 1000, depth: 1650, ceiling: 2300 }] as const;
    const before = (height: number): Steps => [['passage', { width: 1200, height }], lift];
    // Tilted 56 degrees it is 2000 sin 56 + 700 cos 56 = 2049 high; level and straight it is longer than the car.
    expect(2000 * Math.sin((56 * Math.PI) / 180) + 700 * Math.cos((56 * Math.PI) / 180)).toBeGreaterThan(
      1100,
    );
    expect(judged(before(1100), panel).verdict).toBe('no way found');
    // Its diagonal is hypot(2000, 700) = 2119: with 25 a side and the tape it tilts under 2300.
    expect(['goes', 'tight']).toContain(judged(before(2400), panel).verdict);
  });

  test('a piece is stood up before the lift, not in the street', () => {
    const panel = piece(1900, 600, 40);
    const judgement = judged(
      [
        ['door', { width: 900, height: 2100 }],
        ['passage', { width: 1500, height: 2400, length: 3000 }],
        // No higher inside than its door, so that nothing is raised in the car.
        ['lift', { width: 630, height: 2000, widthOut: 1100, depth: 1400, ceiling: 2000 }],
      ],
      panel,
    );
    expect(judgement.verdict).toBe('goes');
    // hypot(1900, 600) = 1992 turns under 2400 in the passage.
    expect(judgement.steps.map(({ pose }) => pose)).toEqual(['on edge', expect.any(String), 'on end']);
  });
});

test('a room behind a side door is as large as it says, and the door may be in its corner', () => {
  const panel = piece(2640, 320, 40);
  const steps: Steps = [
    ['passage', { width: 900, height: 2400, length: 5000 }],
    ['side door', { width: 715, height: 1981, wall: 110, widthOut: 900, ceiling: 2400 }],
    ['room', { length: 5000, width: 3600, height: 2400 }],
  ];
  const judgement = judged(steps, panel);
  // As measured (a planar planner, door in the middle of the wall: 71 mm); in the corner next to nothing is left.
  expect(judgement.verdict).toBe('tight');
  expect(judgement.clearance!).toBeGreaterThan(70);
});

describe('openings need not face each other', () => {
  const slate = piece(1830, 930, 25);
  // Too low to carry it on end, where it would be only 930 long.
  const door = ['door', { width: 762, height: 1400 }] as const;
  const hall = (length?: number) =>
    ['passage', { width: 1500, height: 1400, ...(length === undefined ? {} : { length }) }] as const;

  test('across a short hall two doors may overlap by 762 + 762 - 1500 = 24 mm', () => {
    expect(judged([door, hall(1000), door], slate).verdict).toBe('tight');
    // Wholly in the hall it is moved sideways: 1830 + 50 + 10.
    expect(judged([door, hall(1890), door], slate).verdict).toBe('goes');
    // Without a length its openings face each other.
    expect(judged([door, hall(), door], slate).verdict).toBe('goes');
  });

  test('a room that is passed through has its doors in any walls', () => {
    const small = ['room', { length: 1850, width: 1850, height: 1500 }] as const;
    const low = ['door', { width: 762, height: 1400 }] as const;
    // To turn round in it takes its diagonal: hypot(1830, 25) + padding.
    expect(judged([low, small, low], slate).verdict).toBe('tight');
    expect(judged([low, ['room', { length: 1950, width: 1950, height: 1500 }], low], slate).verdict).toBe(
      'goes',
    );
  });
});

describe('which way a stair is walked', () => {
  const stairs = { width: 860, height: 2100, rise: 190, going: 250, risers: 13 } as const;
  // Much floor at the foot, little at the head.
  const flight = {
    ...stairs,
    footCeiling: 2400,
    footSpace: 4000,
    headCeiling: 2400,
    headSpace: 900,
  } as const;
  const hall = ['passage', { width: 860, height: 2400, length: 4000 }] as const;

  test('not told, what goes has to go both ways', () => {
    const rows = route(hall, ['flight', flight], ['door', { width: 860, height: 2100 }]);
    const way = (said: 'up' | 'down' | undefined) =>
      rows.map((row) => (row.stage === 'flight' ? { ...row, way: said } : row));
    const size = piece(1200, 500, 40);
    const [up, down, both] = [judge(way('up'), size), judge(way('down'), size), judge(way(undefined), size)];
    const rank = ['goes', 'tight', 'no way found'];
    const worse = Math.max(rank.indexOf(up.verdict), rank.indexOf(down.verdict));
    expect(rank.indexOf(both.verdict)).toBeLessThanOrEqual(worse);
    if (both.verdict === 'goes') expect([up.verdict, down.verdict]).toEqual(['goes', 'goes']);
    expect(both.clearance).toBe(Math.max(up.clearance!, down.clearance!));
  });
});

describe('what stands at a stair’s end is met on the stair', () => {
  const upward = (steps: Steps, size: PieceSize) =>
    judge(
      route(...steps).map((row) => ({ ...row, way: 'up' as const })),
      size,
    );
  const slate = piece(1830, 930, 25);
  const stairs = { width: 800, height: 2000, rise: 200, going: 230, risers: 13 } as const;
  const door = (footSpace: number | undefined): Steps => [
    ['door', { width: 770, height: 1981 }],
    [
      'flight',
      {
        ...stairs,
        ...(footSpace === undefined ? {} : { footSpace }),
        footCeiling: 2400,
        headSpace: 3500,
        headCeiling: 2400,
      },
    ],
    ['passage', { width: 900, height: 2400, length: 3500 }],
    ['door', { width: 762, height: 1981 }],
    room,
  ];

  test('through an open front door and up the stair, standing in the door while it is on the stair', () => {
    // 950 mm of floor are less than its length, so that it is on the stair before it is through the door: a planner
    // of another kind finds the motion at once with 25 mm of padding.
    expect(950).toBeLessThan(1830);
    expect(upward(door(950), slate).verdict).toBe('goes');
    // On edge it stands 930 high in a door of 1981: there the floor's length matters little, so every one will do.
    expect(upward(door(undefined), slate).verdict).toBe('goes');
    // Under a door as high as the piece it would have to be level.
    const low = door(950).map(([stage, m]) => [stage, stage === 'door' ? { ...m, height: 990 } : m] as const);
    expect(upward(low, slate).verdict).not.toBe('goes');
  });

  test('round a corner at a stair’s head', () => {
    const panel = piece(2640, 320, 40);
    const flight = {
      ...stairs,
      width: 860,
      height: 2050,
      rise: 195,
      going: 240,
      headCeiling: 2400,
      headSpace: 1000,
    } as const;
    const turn = (widthOut: number): Steps => [
      ['flight', flight],
      ['corner', { width: 860, widthOut, height: 2400 }],
    ];
    // A planner of another kind finds the motion with 25 mm of padding.
    expect(upward(turn(1000), panel).verdict).toBe('goes');
    // Out into 300 mm nothing turns that is 320 wide at the least but for its thickness: it stays below it.
    expect(upward(turn(1000), panel).clearance!).toBeGreaterThan(25);
    expect(upward(turn(1000), piece(2640, 900, 400)).verdict).not.toBe('goes');
  });

  test('through a door anywhere in the side of the floor at a stair’s head', () => {
    const panel = piece(2640, 320, 40);
    const beside = (width: number, risers: number | undefined): Steps => [
      [
        'flight',
        {
          width: 860,
          height: 2050,
          rise: 195,
          going: 240,
          headCeiling: 2400,
          headSpace: 1000,
          ...(risers === undefined ? {} : { risers }),
        },
      ],
      ['side door', { width, height: 1981, wall: 110, widthOut: 860, ceiling: 2400 }],
    ];
    // A planner of another kind finds the motion with 25 mm of padding: level at the head, its end over the flight.
    const through = upward(beside(760, 13), panel);
    expect(through.verdict).toBe('goes');
    expect(through.clearance!).toBeGreaterThan(25);
    // Of how many steps the flight is, is not told: it may be of two.
    expect(upward(beside(760, undefined), panel).verdict).toBe('tight');
    // As a rod between a lane of 860 and a door of 200, tilted up to the ceiling (2400): 1167 mm are left in plan.
    expect((860 ** (2 / 3) + 200 ** (2 / 3)) ** 1.5).toBeLessThan(1420);
    expect(upward(beside(200, 13), piece(2640, 900, 40)).verdict).not.toBe('goes');
  });
});
