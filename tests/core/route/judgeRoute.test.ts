import type { StageName } from '../../../src/core/stages/kinds';
import type { StageMeasures } from '../../../src/core/stages/measures';
import { judge, openEnds, piece, route, row } from './routeFixtures';

// The half of what is left over between plain sizes is arithmetic, so the expected values here are sums that a
// reader can do: they are derived, not regressions.

const slate = piece(1830, 930, 25);

describe('a route of stages with known clearances', () => {
  const rows = route(
    ['door', { width: 838, height: 1981 }],
    ['passage', { width: 900, height: 2400, length: 6000 }],
    ['door', { width: 125, height: 2400 }],
    ['room', { length: 6000, width: 4000, height: 2400 }],
  );

  test('has their worst, at the step where it is', () => {
    const judged = judge(rows, slate);
    expect(judged.verdict).toBe('goes');
    expect(judged.clearance).toBe((125 - 25) / 2);
    expect(rows[judged.step]!.step).toBe(3);
    expect(judged.pose).toBe('on edge');
  });

  test('gives every step its own clearance on that chain', () => {
    const { steps } = judge(rows, slate);
    // On edge: the thickness across, the breadth upright.
    expect(steps.map((s) => s.clearance)).toEqual([
      Math.min(838 - 25, 1981 - 930) / 2,
      (900 - 25) / 2,
      50,
      expect.any(Number),
    ]);
    expect(steps.every((s) => s.pose === 'on edge' && s.verdict === 'goes')).toBe(true);
  });

  test('names the first among equal steps', () => {
    const equal = route(['door', { width: 125, height: 1981 }], ['door', { width: 125, height: 1981 }]);
    expect(judge(equal, slate).step).toBe(0);
  });

  test('takes the rows by their step numbers, not by their place', () => {
    const backwards = [...rows].reverse();
    expect(judge(backwards, slate)).toEqual(judge(rows, slate));
  });
});

describe('the best pose of each stage alone is not the best chain', () => {
  // 1000 x 600 x 100. The first door is best flat (the second pose leaves less), the second only takes it on
  // edge; without a place to turn it over, on edge has to do for both.
  const tile = piece(1000, 600, 100);
  const low = { width: 800, height: 640 } as const;
  const narrow = { width: 160, height: 2000 } as const;

  test('one pose has to serve both stages', () => {
    expect(judge(route(['door', low]), tile, { allowance: 10 }).clearance).toBe((800 - 600) / 2);
    const both = judge(route(['door', low], ['door', narrow]), tile, { allowance: 10 });
    // On edge under 640: (640 - 600)/2 = 20, though alone the first door leaves 100.
    expect(both.steps.map((s) => s.clearance)).toEqual([20, 30]);
    expect(both.steps.map((s) => s.pose)).toEqual(['on edge', 'on edge']);
    expect(both.clearance).toBe(20);
  });

  test('with a room between them the pose is changed there, and the answer says so', () => {
    const rows = route(
      ['door', low],
      ['room', { length: 3000, width: 3000, height: 2400 }],
      ['door', narrow],
    );
    const judged = judge(rows, tile, { allowance: 25 });
    expect(judged.clearance).toBe(30);
    expect(judged.verdict).toBe('goes');
    expect(judged.steps.map((s) => s.pose)).toEqual(['flat', expect.any(String), 'on edge']);
    expect(judged.reason).toContain('stood on edge in the room at step 2');
  });

  test('a room too low to turn it over is no help', () => {
    // Its section's diagonal is 608.3 mm: 600 mm of height hold it on no side but flat.
    const rows = route(['door', low], ['room', { length: 3000, width: 3000, height: 605 }], ['door', narrow]);
    expect(judge(rows, tile).clearance!).toBeLessThan(20);
  });

  test('a passage changes the pose only where its length is known', () => {
    const passage = (length?: number) =>
      route(
        ['door', low],
        ['passage', { width: 900, height: 2400, ...(length ? { length } : {}) }],
        ['door', narrow],
      );
    expect(judge(passage(3000), tile).clearance).toBe(30);
    // Not measured it is as long as can be as measured, and nothing at the worst.
    expect(judge(passage(3000), tile).verdict).toBe('goes');
    expect(judge(passage(), tile)).toMatchObject({ verdict: 'tight', clearance: 30 });
    // Too short for the piece: turned over about its length it needs 1000 mm and the padding.
    expect(judge(passage(1010), tile).clearance).toBe(20);
  });
});

describe('leaning needs room beside the opening', () => {
  // 900 x 10 section under 800 x 800: only slanted, and the 800 mm square lets it.
  const sheet = piece(1200, 900, 10);
  const door = { width: 800, height: 800 } as const;

  test('outdoors before, a room after: it leans', () => {
    const rows = route(['door', door], ['room', { length: 3000, width: 3000, height: 2400 }]);
    const judged = judge(rows, sheet);
    expect(judged.steps[0]!.pose).toBe('leaning');
    expect(judged.clearance!).toBeGreaterThan(0);
  });

  test('a door straight before leaves it no room either: only before the first step it is outdoors', () => {
    const room = { length: 3000, width: 3000, height: 2400 } as const;
    const rows = route(['door', { width: 1000, height: 1000 }], ['door', door], ['room', room]);
    expect(judge(rows, sheet).verdict).toBe('no way found');
  });

  test('with another door straight after it does not', () => {
    const rows = route(['door', door], ['door', { width: 1000, height: 1000 }]);
    expect(judge(rows, sheet).verdict).toBe('no way found');
  });
});

describe('every verdict at its edge', () => {
  // On edge in a door as wide as we like: clearance (w - 25)/2; the tape takes tape from w and adds it to T.
  const door = (width: number) => route(['door', { width, height: 1981 }]);
  const tape = 5;
  const allowance = 25;
  const edge = 25 + 2 * allowance + 2 * tape;

  test('goes when the worst case leaves exactly the allowance', () => {
    expect(judge(door(edge), slate, { allowance, tape }).verdict).toBe('goes');
    expect(judge(door(edge - 1e-6), slate, { allowance, tape }).verdict).toBe('tight');
  });

  test('tight, plainly, while the worst case is at least 0', () => {
    const atZero = judge(door(25 + 2 * tape), slate, { allowance, tape });
    expect(atZero.verdict).toBe('tight');
    expect(atZero.steps[0]!.because).not.toMatch(/^within the tape/);
    const below = judge(door(25 + 2 * tape - 1e-6), slate, { allowance, tape });
    expect(below.verdict).toBe('tight');
    expect(below.steps[0]!.because).toMatch(/^within the tape/);
  });

  test('tight down to 0 as measured, then no way found', () => {
    // 800 x 500 x 400: the opening is too low for a lean, so the level clearance decides.
    const box = piece(800, 400, 400);
    expect(judge(route(['door', { width: 400, height: 900 }]), box).verdict).toBe('tight');
    expect(judge(route(['door', { width: 399.9, height: 900 }]), box).verdict).toBe('no way found');
  });

  test('cannot go once the tape cannot save it: the width taken 5 mm more, the thickness 5 mm less', () => {
    const box = piece(800, 400, 400);
    expect(judge(route(['door', { width: 390.1, height: 900 }]), box).verdict).toBe('no way found');
    const judged = judge(route(['door', { width: 389.9, height: 900 }]), box);
    expect(judged.verdict).toBe('cannot go');
    expect(judged.reason).toContain('Width 389.9 mm');
  });

  test('cannot go round a low corner is proved by its longest diagonal, or by an angle it cannot pass', () => {
    // 500 mm arms under 1000 mm: too long a rod for the plan even tilted; 635 mm takes the finer proof; the
    // critical width of the planar corner is 664.7 mm (measured by two planners on this corner).
    // A proof at a corner supposes its arms: passages as wide and as low, longer than the piece.
    const arm = (width: number) => ['passage', { width, height: 1000, length: 3000 }] as const;
    const corner = (width: number) =>
      judge(route(arm(width), ['corner', { width, widthOut: width, height: 1000 }], arm(width)), slate);
    expect(corner(500).verdict).toBe('cannot go');
    expect(corner(635).verdict).toBe('cannot go');
    expect(corner(660).verdict).toBe('no way found');
    expect(corner(670).verdict).toBe('tight');
  });

  test('not measured names the measure; a proof elsewhere comes before it', () => {
    const missing = route(['door', { height: 1981 }], ['door', { width: 838, height: 1981 }]);
    const judged = judge(missing, slate);
    expect(judged.verdict).toBe('not measured');
    expect(judged.reason).toBe('step 1 (door): Width is not measured');
    expect(judged.steps[1]!.verdict).toBe('goes');
    const blocked = route(['door', { height: 1981 }], ['door', { width: 300, height: 300 }]);
    expect(judge(blocked, piece(900, 900, 900)).verdict).toBe('cannot go');
  });

  test('a refused measure is not measured, even an optional one that the stage would use', () => {
    const corner = {
      ...row(1, 'corner', { width: 900, widthOut: 900, height: 2400 }),
      refused: [{ measure: 'turn' as const, got: 'sharp', why: 'it is no number' }],
    };
    expect(judge([corner], slate).verdict).toBe('not measured');
  });

  test('a tape of 0 makes the three cases one', () => {
    expect(judge(door(75), slate, { allowance, tape: 0 }).verdict).toBe('goes');
    expect(judge(door(74.999), slate, { allowance, tape: 0 }).verdict).toBe('tight');
  });
});

describe('between the stages', () => {
  const corner = { width: 1200, widthOut: 1200, height: 2400 } as const;

  test('an unknown straight between two turns is at best tight', () => {
    const judged = judge(route(['corner', corner], ['corner', corner]), slate);
    expect(judged.verdict).toBe('tight');
    expect(judged.reason).toContain('the straight after step 1 is not measured');
    // It lies before the one turn and after the other.
    expect(judged.steps.map((s) => s.verdict)).toEqual(['tight', 'tight']);
  });

  test('what an unmeasured straight needs is said, and no figure that only it is to blame for', () => {
    const low = { ...corner, height: 1500 } as const;
    const open = judge(route(['corner', low], ['corner', low]), slate);
    expect(open.reason).not.toMatch(/-\d/);
    // Lengthwise 1830 with 25 of allowance a side, 5 of tape on the piece, and 5 on the straight once it is measured.
    const needed = 1830 + 2 * 25 + 5 + 5;
    expect(open.reason).toContain(`that straight needs at least ${needed} mm`);
    const measured = (run: number) => route(['corner', { ...low, run }], ['corner', low]);
    expect(judge(measured(needed), slate).verdict).toBe('goes');
    expect(judge(measured(needed - 1), slate).verdict).not.toBe('goes');
    // Measured and too short: by how much of its own length.
    expect(judge(measured(1700), slate).reason).toContain('130 mm too long in the straight after this step');
  });

  test('a straight as long as the piece and its padding is enough; a shorter one is solved with both turns', () => {
    // Under 1500 mm it cannot stand on end, where it would be shorter along the way.
    const low = (run: number) =>
      route(['corner', { ...corner, height: 1500, run }], ['corner', { ...corner, height: 1500 }]);
    // Lengthwise 1830 with 25 of allowance a side and 5 of tape on each.
    const enough = 1830 + 2 * 25 + 2 * 5;
    expect(judge(low(enough), slate).verdict).toBe('goes');
    expect(judge(low(enough - 0.01), slate).verdict).toBe('tight');
    expect(judge(low(1830), slate).verdict).toBe('tight');
    const judged = judge(low(1700), slate);
    expect(judged.verdict).toBe('no way found');
    expect(judged.clearance).toBe((1700 - 1830) / 2);
    expect(judged.reason).toContain('the straight after this step, 1700 mm long');
    // Out of a long passage it is one plan: there is a way between two wide corners, back beside itself and on alike.
    const long = ['passage', { width: 1200, height: 1500, length: 3000 }] as const;
    const wide = { ...corner, height: 1500 } as const;
    const turned = judge(route(long, ['corner', { ...wide, run: 1700 }], ['corner', wide], long), slate);
    expect(turned.verdict).toBe('goes');
    // Too narrow for a thick piece to swing from one into the other.
    const narrow = (run: number) =>
      route(
        ['passage', { width: 900, height: 1500, length: 3000 }],
        ['corner', { width: 900, widthOut: 900, height: 1500, run }],
        ['corner', { width: 900, widthOut: 900, height: 1500 }],
        ['passage', { width: 900, height: 1500, length: 3000 }],
      );
    const crate = piece(1400, 1200, 880);
    expect(judge(narrow(700), crate).verdict).toBe('no way found');
  });

  test('a passage with its length is a straight', () => {
    const passage = { width: 1200, height: 1500 } as const;
    const low = { ...corner, height: 1500 } as const;
    const rows = (length?: number) =>
      route(['corner', low], ['passage', length ? { ...passage, length } : passage], ['corner', low]);
    expect(judge(rows(2000), slate).verdict).toBe('goes');
    expect(judge(rows(1700), slate).verdict).toBe('no way found');
    expect(judge(rows(), slate).reason).toContain('the straight after step 1 is not measured');
  });

  test('a straight is a passage with its length, by one tape, and a run that no turn leaves is not used', () => {
    const low = { ...corner, height: 1500 } as const;
    const wide = { width: 1200, height: 1500 } as const;
    const rows = (measures: { length?: number; run?: number }) =>
      route(['door', wide], ['corner', low], ['passage', { ...wide, ...measures }], ['corner', low]);
    // 1830 with 25 of allowance a side and one tape of 5 on each of length and piece.
    const enough = 1830 + 2 * 25 + 2 * 5;
    expect(judge(rows({ length: enough }), slate).verdict).toBe('goes');
    expect(judge(rows({ length: enough - 0.01 }), slate).verdict).toBe('tight');
    expect(judge(rows({ length: enough - 0.01, run: 1000 }), slate).verdict).toBe('tight');
    // Two passages, each with its tape: 5 more.
    const both = (length: number) =>
      route(
        ['door', wide],
        ['corner', low],
        ['passage', { ...wide, length: 1000 }],
        ['passage', { ...wide, length }],
        ['corner', low],
      );
    expect(judge(both(enough + 5 - 1000), slate).verdict).toBe('goes');
    expect(judge(both(enough + 5 - 1000 - 0.01), slate).verdict).toBe('tight');
  });

  test('a stair end that is not measured is taken at its worst: no floor there, and a ceiling as low as the headroom', () => {
    const flight = { width: 900, height: 2100, rise: 190, going: 250, risers: 13 } as const;
    const hall = ['passage', { width: 900, height: 2100 }] as const;
    const bare = judge(route(hall, ['flight', flight], hall), slate);
    expect(bare.verdict).toBe('tight');
    expect(bare.reason).toContain('Foot space is not measured');
    expect(judge(route(hall, ['flight', { ...flight, ...openEnds }], hall), slate).verdict).toBe('goes');
    // On open ground before the first row and after the last there is floor enough.
    expect(judge(route(['flight', flight]), slate).verdict).toBe('goes');
  });

  test('between two landings a flight shorter than the piece will do: its ends are measured by the landings', () => {
    const stairs = { width: 950, height: 2200, rise: 180, going: 250 } as const;
    const half = { ...stairs, well: 100, depth: 1000, ceiling: 2500 } as const;
    const ends = { footCeiling: 2400, footSpace: 1000, headCeiling: 2400, headSpace: 1000 } as const;
    const panel = piece(1830, 700, 25);
    const rows = (risers: number, measured: object) =>
      route(['half landing', half], ['flight', { ...stairs, risers, ...measured }], ['half landing', half]);
    // 5 risers: 1540 mm along the pitch, and 1000 mm in plan from the first nosing to the last.
    expect(judge(rows(5, ends), panel)).toMatchObject({
      verdict: 'goes',
      clearance: (1000 + 1000 - 1830) / 2,
    });
    expect(judge(rows(5, {}), panel)).toMatchObject({ verdict: 'goes', clearance: (1000 + 1000 - 1830) / 2 });
    expect(judge(rows(3, ends), panel).verdict).toBe('no way found');
    expect(judge(rows(3, {}), panel).verdict).toBe('no way found');
  });

  test('beside one landing a route listed downward is judged as it is upward', () => {
    const stairs = { width: 950, height: 2200, rise: 180, going: 250 } as const;
    const half = { ...stairs, well: 100, depth: 1000, ceiling: 2500 } as const;
    // The head is on the landing, 1000 deep; the foot on a hall floor.
    const measured = { footCeiling: 2400, footSpace: 3000, headCeiling: 2500, headSpace: 1000, risers: 8 };
    const flight = ['flight', { ...stairs, ...measured }] as const;
    const up = judge(route(flight, ['half landing', half]), piece(1830, 700, 25));
    const down = judge(route(['half landing', half], flight), piece(1830, 700, 25));
    expect(up.verdict).toBe('goes');
    expect([down.verdict, down.clearance]).toEqual([up.verdict, up.clearance]);
    // Without the landing its centre has to come over the 1000 mm of floor at the head: (2 x 1000 - 1830) / 2.
    const floor = judge(route(flight), piece(1830, 700, 25));
    expect(floor.clearance!).toBeLessThan(up.steps[0]!.clearance!);
  });

  test('between two landings a reach of exactly what is needed goes, a hundredth of a millimetre less is tight', () => {
    const stairs = { width: 950, height: 2200, rise: 180, going: 250 } as const;
    const half = { ...stairs, well: 100, depth: 1000, ceiling: 2500 } as const;
    const ends = { footCeiling: 2400, footSpace: 1000, headCeiling: 2400, headSpace: 1000 } as const;
    const flight = { ...stairs, risers: 5, ...ends };
    const rows = route(['half landing', half], ['flight', flight], ['half landing', half]);
    // In plan 4 goings of 250 and the landing's 1000, each 5 mm less, are 1990; so long may it be with 25 mm a side
    // and 5 mm of tape on the piece: 1990 - 2 x 25 - 5 = 1935. As measured (2000 - 1935) / 2 = 32.5 are left.
    const exact = judge(rows, piece(1935, 700, 25), { allowance: 25, tape: 5 });
    expect(exact).toMatchObject({ verdict: 'goes', clearance: 32.5 });
    expect(exact.reason).toContain('on the flight and the landing beside it');
    expect(judge(rows, piece(1935.01, 700, 25), { allowance: 25, tape: 5 }).verdict).toBe('tight');
    const shallower = { ...half, depth: 999.99 };
    const less = route(['half landing', half], ['flight', flight], ['half landing', shallower]);
    expect(judge(less, piece(1935, 700, 25), { allowance: 25, tape: 5 }).verdict).toBe('tight');
    // Each landing counts at its own side of the flight.
    const other = route(['half landing', shallower], ['flight', flight], ['half landing', half]);
    expect(judge(other, piece(1935, 700, 25), { allowance: 25, tape: 5 }).verdict).toBe('tight');
    // With the allowance and the tape 0 the sum as measured decides: 2000.
    expect(judge(rows, piece(2000, 400, 25), { allowance: 0, tape: 0 }).clearance).toBe(0);
    expect(judge(rows, piece(2000.01, 400, 25), { allowance: 0, tape: 0 }).verdict).toBe('no way found');
  });

  test('beside one landing only the end on it needs no floor under the piece', () => {
    const stairs = { width: 950, height: 2200, rise: 180, going: 250 } as const;
    const half = { ...stairs, well: 100, depth: 1000, ceiling: 2500 } as const;
    const ends = {
      footCeiling: 2500,
      footSpace: 1000,
      headCeiling: 2500,
      headSpace: 850,
      risers: 12,
    } as const;
    const up = route(['half landing', half], ['flight', { ...stairs, ...ends }]).map((r) => ({
      ...r,
      way: 'up' as const,
    }));
    const judged = judge(up, piece(1830, 700, 25));
    // Its centre has to come over the 850 mm of floor at the head: (2 x 850 - 1830) / 2.
    expect(judged.steps[1]!.clearance).toBeLessThanOrEqual((2 * 850 - 1830) / 2);
    expect(judged.verdict).toBe('no way found');
  });

  test('a winder is never better than tight', () => {
    const stairs = { width: 1000, height: 2300, turn: 90, rise: 180, going: 260 } as const;
    const judged = judge(route(['winder', stairs]), piece(600, 200, 20), { tape: 0 });
    expect(judged.verdict).toBe('tight');
    expect(judged.reason).toContain('a template goes first');
  });
});

test('a piece that passes a short hall and a stair together is stopped where nothing beside helps', () => {
  const hall: readonly (readonly [StageName, StageMeasures])[] = [
    ['door', { width: 859, height: 1974, wall: 280 }],
    ['passage', { width: 1075, height: 2576, length: 1362 }],
    [
      'flight',
      {
        ...{ width: 889, height: 2067, rise: 191, going: 252, risers: 8 },
        ...{ footCeiling: 2497, footSpace: 4678, headCeiling: 2491, headSpace: 3290 },
      },
    ],
    ['passage', { width: 889, height: 2548, length: 3860 }],
  ];
  const cabinet = piece(2060, 1150, 330);
  expect(judge(route(...hall), cabinet).verdict).toBe('goes');
  // On edge or flat it has to be as wide as 330: a side door of 720 off a passage as wide is the turn that stops it.
  const behind = route(
    ...hall,
    ['side door', { width: 720, height: 1990, wall: 110, widthOut: 889, ceiling: 2548 }],
    ['passage', { width: 900, height: 2500, length: 4000 }],
  );
  const { verdict, step, reason, steps, clearance } = judge(behind, cabinet);
  expect(verdict).toBe('no way found');
  expect(step).toBe(4);
  expect(reason).toContain('step 5 (side door)');
  expect(steps[4]?.clearance).toBe(clearance);
});
