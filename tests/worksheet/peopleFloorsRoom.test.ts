import { ADVICE } from '../../src/core/carrying/advice';
import type { WorkingStep } from '../../src/core/measures/working';
import type { Cell } from '../../src/core/measures/readQuantity';
import { hostFunction } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';
import type { NumberFunction } from '../../src/worksheet/description';
import { HostError, callInCell, callInCells } from '../support/callInCells';

// The ranges are the worksheet contract's own, or chosen beside each argument.

const OURS = FUNCTIONS.filter(
  (f): f is NumberFunction => f.kind === 'number' && ['Carrying', 'Floors', 'Room'].includes(f.group),
);

const LIFT = [300, 700, 500] as const;
const JOIST = [4500, 500, 75, 200, 'C24', 0.5, 1.5] as const;
const JOIST_FEET = [...JOIST, 1, 1500, 1250] as const;

describe('an argument out of its range', () => {
  test.each<[string, readonly unknown[], string, string]>([
    ['LOWERSHARE', [0, 1250, 250, 45], '#VALUE!', 'mass is 0'],
    ['LOWERSHARE', [200, 99, 250, 45], '#VALUE!', 'grip_spacing is 99'],
    ['LOWERSHARE', [200, 1250, 250, 60.1], '#VALUE!', 'pitch is 60.1: allowed is 0 to 60'],
    ['LOWERSHARE', [200, 1250, 250, -1], '#VALUE!', 'pitch is -1'],
    ['LOWERSHARE', [200, 500, 300, 45], '#VALUE!', 'tips over the lower carrier'],
    ['LOWERSHARE', [200, 1250, null, 45], '#N/A', 'mass_height is not measured'],
    ['TEAMLIMIT', [4], '#N/A', ADVICE.team],
    ['TEAMLIMIT', [40], '#N/A', ADVICE.team],
    ['TEAMLIMIT', [2.5], '#VALUE!', 'handlers is 2.5'],
    ['TEAMLIMIT', [0], '#VALUE!', '0 may be an empty cell'],
    ['TEAMLIMIT', [2, 25.01], '#VALUE!', 'limit_each is 25.01'],
    ['TEAMLIMIT', [2, 0], '#VALUE!', 'limit_each is 0'],
    ['HANDLERS', [38], '#N/A', ADVICE.team],
    ['LIFTLIMIT', [99, 700, 500], '#VALUE!', 'reach is 99'],
    ['LIFTLIMIT', [300, 0, 500], '#VALUE!', 'height is 0'],
    ['LIFTLIMIT', [...LIFT, 0, 0], '#VALUE!', 'lifts_per_minute is 0'],
    ['LIFTLIMIT', [...LIFT, 0, 1, 8.01], '#VALUE!', 'hours is 8.01'],
    ['LIFTLIMIT', [...LIFT, 0, 1, 1, 'firm'], '#VALUE!', 'good, fair, poor'],
    ['LIFTINDEX', [20, 700, 700, 500], '#N/A', 'the recommended weight limit of such a lift is 0'],
    ['WORKRATE', [80, 20, 4, -1], '#VALUE!', 'grade is -1'],
    ['WORKRATE', [80, 20, 4, 25.1], '#VALUE!', 'grade is 25.1'],
    ['WORKRATE', [80, 20, 8.1], '#VALUE!', 'speed is 8.1'],
    ['WORKRATE', [80, 20, 0], '#VALUE!', 'speed is 0'],
    ['RESTTIME', [60, 600, 100, 105], '#VALUE!', 'resting is 105'],
    ['FLOORLOAD', [400, 100, 50], '#VALUE!', 'length is 100'],
    ['CODELOAD', ['billiard room'], '#N/A', 'no load for a billiard room is held for code EN'],
    ['CODELOAD', ['pool hall'], '#VALUE!', 'dwelling, sleeping room, billiard room, stairs'],
    ['CODELOAD', ['dwelling', 'FR'], '#VALUE!', 'EN, UK, US'],
    ['CODEPOINT', ['dwelling', 'US'], '#N/A', 'no concentrated load for a dwelling is held for code US'],
    ['FOOTLOAD', [400, 4, 0.2], '#VALUE!', 'worst_share is 0.2: allowed is 0.25 to 1'],
    ['FOOTLOAD', [400, 4, 1.1], '#VALUE!', 'worst_share is 1.1'],
    ['FOOTLOAD', [400, 3.5], '#VALUE!', 'feet is 3.5'],
    ['FOOTPRESSURE', [400, 4, 4], '#VALUE!', 'pad_side is 4'],
    ['JOIST', [4500, 500, 75, 200, 'C25', 0.5, 1.5], '#VALUE!', 'C14, C16, C18, C20, C22, C24, C27, C30'],
    ['JOIST', [7001, 500, 75, 200, 'C24', 0.5, 1.5], '#VALUE!', 'allowed is 5 to 35 depths'],
    ['JOIST', [999, 500, 75, 200, 'C24', 0.5, 1.5], '#VALUE!', 'allowed is 5 to 35 depths'],
    ['JOIST', [...JOIST, 2, 4500], '#VALUE!', 'point_at is 4500'],
    ['JOIST', [...JOIST, 2, 0], '#VALUE!', 'point_at is 0'],
    ['JOIST', [...JOIST, 2, null, 'brief'], '#VALUE!', 'permanent, long, medium, short'],
    ['JOIST', [4500, 500, 75, 200, 'C24', null, 1.5], '#N/A', 'dead is not measured'],
    ['JOISTFEET', [...JOIST, 1, 3300, 1250], '#VALUE!', 'not between the supports'],
    ['JOISTFEET', [...JOIST_FEET, 2.5], '#VALUE!', 'feet is 2.5'],
    ['FLIGHTLOAD', [120, 0, 3000, 800], '#VALUE!', 'crew is 0'],
    ['TREADLOAD', [90, 0], '#VALUE!', 'share is 0'],
    ['STANDING', [1980, 1100, 1000, 200, 250], '#VALUE!', 'width is 1000'],
    ['ROOMSPARE', [6, 4.5, 2540, 1270, 1473], '#VALUE!', 'room_length is 6'],
    ['PLAYROOM', [100, 50, 58], '#VALUE!', 'play_length is 100'],
    ['BUILDROOM', [2400, 1350, 2000, 1000, 0], '#VALUE!', 'write "0 mm" to mean none'],
    ['SLABMASS', [72, 36, 1], '#VALUE!', '300 to 6000 mm'],
    ['SLABMASS', [2000, 1000, 20, 0], '#VALUE!', 'density is 0'],
    ['DOORCLEAR', [762, 0], '#VALUE!', 'write "0 mm" to mean none'],
    ['DOORCLEAR', [762, 35, 12, 0, 44.9], '#VALUE!', 'open_angle is 44.9'],
    ['DOORCLEAR', [762, 35, 12, 0, 180.1], '#VALUE!', 'open_angle is 180.1'],
    ['DOORCLEAR', [762, 35, 12, 300, 45], '#VALUE!', 'leaves no clear width'],
  ])('%s %j: %s, %s', (id, given, code, text) => {
    const error = callInCells(id, ...(given as Cell[]))[0]![0];
    expect(error).toBeInstanceOf(HostError);
    expect((error as HostError).code).toBe(code);
    expect((error as HostError).message).toContain(text);
  });
});

describe('an argument at the edge of its range, or a plain 0', () => {
  test.each<[string, readonly Cell[]]>([
    ['LOWERSHARE', [200, 1250, 0, 0]],
    ['LOWERSHARE', [200, 1250, 250, 60]],
    ['TEAMLIMIT', [3, 25]],
    ['LIFTLIMIT', [100, '0 mm', '0 mm', 0, 0.2, 8, 'Good']],
    ['WORKRATE', [80, 0, 4, 0]],
    ['WORKRATE', [80, 20, 8, 25]],
    ['FOOTLOAD', [400, 4, 0.25]],
    ['FOOTLOAD', [400, 4, 1]],
    ['JOIST', [1000, 500, 75, 200, 'c24', 0, 0, 0]],
    ['JOIST', [7000, 500, 75, 200, 'C14', 0, 0, 0]],
    ['TREADLOAD', [90, '0 kg']],
    ['DOORCLEAR', [762, '0 mm', 0, 0, 45]],
    ['DOORCLEAR', [762, 35, 0, 0, 180]],
  ])('%s %j is answered', (id, given) => {
    expect(typeof callInCell(id, ...given)).toBe('number');
  });

  test('a limit of 0 is a plain answer where a multiplier is 0', () => {
    expect(callInCell('LIFTLIMIT', 631, 700, 500)).toBe(0);
    expect(callInCell('LIFTLIMIT', 300, 1751, 500)).toBe(0);
    expect(callInCell('LIFTLIMIT', 300, 700, 500, 0, 16)).toBe(0);
  });
});

describe('the working of each function', () => {
  test.each(OURS.map((f) => [f.id, f] as const))('%s: its last value is the result', (id, f) => {
    const given = f.example.arguments as Cell[];
    const expected = callInCell(id, ...given);
    // The same call again, with a notebook handed over after the arguments.
    const steps: WorkingStep[] = [];
    const withNotebook: NumberFunction = {
      ...f,
      compute: (named) => f.compute(named, (step) => steps.push(step)),
    };
    const call = hostFunction(withNotebook, (code, message) => new HostError(code, message));
    expect(call(...given.map((cell) => [[cell]]))[0]![0]).toBe(expected);
    expect(steps.length).toBeGreaterThan(id.startsWith('CODE') ? 0 : 1);
    expect(steps.at(-1)!.value).toBe(expected);
    for (const step of steps) expect(step.what).not.toBe('');
  });
});

describe('a range', () => {
  test('gives what its cells give, errors in their own places', () => {
    const masses = [[120], [null], [200], [37.5]];
    const pitches = [[0, 42, 61]];
    const grid = callInCells('LOWERSHARE', masses, 1500, 300, pitches);
    expect(grid).toHaveLength(4);
    masses.forEach(([mass], r) =>
      pitches[0]!.forEach((pitch, c) => {
        expect(grid[r]![c]).toEqual(callInCell('LOWERSHARE', mass as Cell, 1500, 300, pitch));
      }),
    );
  });

  test('lifts words too', () => {
    const loads = callInCells('CODELOAD', [['dwelling'], ['stairs']], [['EN', 'UK', 'US']]);
    expect(loads.map((row) => row.map((v) => Math.round((v as number) * 100) / 100))).toEqual([
      [2, 1.5, 1.92],
      [2, 1.5, 1.92],
    ]);
  });
});
