import { readFileSync } from 'node:fs';
import path from 'node:path';
import { withFunctionTables } from '../../src/commands/readmeTables';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { functionTables, referencePage, signature } from '../../src/worksheet/reference';

const readme = readFileSync(path.resolve(__dirname, '../../README.md'), 'utf8');

test('the tables of README are those of the descriptions (npm run reference)', () => {
  expect(withFunctionTables(readme, functionTables(FUNCTIONS))).toBe(readme);
});

test('every function and every argument is in the reference', () => {
  const page = referencePage(FUNCTIONS);
  for (const f of FUNCTIONS) {
    expect(page).toContain(`### ${f.id}\n`);
    expect(page).toContain(`=${signature(f)}`);
    if (f.caution) expect(page).toContain(`**Caution:** ${f.caution}`);
    for (const a of f.arguments) expect(page).toContain(`| \`${a.name}\` |`);
  }
});

test('a README without its marks is refused', () => {
  expect(() => withFunctionTables('# x', 'y')).toThrow(/marks/);
});

// The worksheet contract fixes these ids and the order of their arguments, because saved workbooks depend on them.
test.each([
  'TOMM(measure)',
  'SLABMASS(length, breadth, thickness, [density])',
  'DOORCLEAR(leaf_width, [leaf_thickness], [stop], [furniture], [open_angle])',
  'OPENING(opening_width, opening_height, length, breadth, thickness)',
  'CORNER(width_in, width_out, ceiling, length, breadth, thickness, [turn])',
  'CORNERLENGTH(width_in, width_out, thickness, [turn])',
  'SIDEDOOR(door_width, door_height, wall_thickness, passage_width, ceiling, length, breadth, thickness, [dead_end], [approach_width])',
  'UPEND(ceiling, length, breadth, thickness, [width])',
  'FLIGHT(width, headroom, rise, going, length, breadth, thickness, [risers], [foot_ceiling], [foot_space], [head_ceiling], [head_space])',
  'QUARTERLANDING(width_in, width_out, headroom, rise, going, length, breadth, thickness, [over_rail], [landing_ceiling])',
  'HALFLANDING(flight_width, well, landing_depth, headroom, rise, going, length, breadth, thickness, [over_rail], [landing_ceiling])',
  'STAIRTURN(end, flight_width, headroom, rise, going, landing_depth, ceiling, length, breadth, thickness, [over_rail])',
  'FACINGDOOR(door_width, door_height, wall_thickness, space, flight_width, headroom, rise, going, ceiling, length, breadth, thickness, [end])',
  'LIFTCAR(door_width, door_height, car_width, car_depth, car_height, length, breadth, thickness)',
  'LOWERSHARE(mass, grip_spacing, mass_height, pitch)',
  'TEAMLIMIT(handlers, [limit_each])',
  'LIFTLIMIT(reach, height, travel, [twist], [lifts_per_minute], [hours], [grip])',
  'LIFTINDEX(mass, reach, height, travel, [twist], [lifts_per_minute], [hours], [grip])',
  'WORKRATE(body_mass, load, speed, [grade], [terrain])',
  'RESTTIME(minutes, work_rate, [limit], [resting])',
  'CODELOAD(use, [code])',
  'FOOTLOAD(mass, feet, [worst_share])',
  'FOOTPRESSURE(mass, feet, pad_side, [worst_share])',
  'JOIST(span, spacing, breadth, depth, grade, dead, imposed, [point_load], [point_at], [duration])',
  'FLIGHTLOAD(mass, crew, length, width, [body_mass])',
  'TREADLOAD(body_mass, share)',
  'PLAYROOM(play_length, play_width, cue, [backswing])',
  'ROOMSPARE(room_length, room_width, play_length, play_width, cue, [backswing])',
  'CHECKROW(headers, row)',
  'CHECKROUTE(route)',
  'CHECKPIECES(pieces)',
  'STAGECLEAR(headers, rows, length, breadth, thickness)',
  'STAGES(route, length, breadth, thickness, [allowance], [tape])',
  'VERDICT(route, pieces, [allowance], [tape])',
  'ADVISE(route, pieces, [allowance], [tape])',
  'SURVEYS(routes, pieces, [orders], [allowance], [tape])',
  'REMEASURE(route, pieces, [allowance], [tape])',
  'JOBTIME(route, pieces, crew, [rates], [fitters])',
])('%s stands as saved workbooks expect it', (call) => {
  expect(FUNCTIONS.map(signature)).toContain(`CARRY.${call}`);
});
