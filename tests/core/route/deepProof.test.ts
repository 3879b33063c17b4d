import { RIGHT_ANGLE } from '../../../src/core/measures/angle';
import { deepProof } from '../../../src/core/route/deepProof';
import { corner } from '../../../src/core/stages/corner/corner';
import { sortedPiece } from '../../../src/core/measures/piece';
import { judge, route } from './routeFixtures';

const crate = sortedPiece(2000, 900, 300);
const board = sortedPiece(2500, 1300, 30);
const narrow = sortedPiece(2500, 700, 30);
const stairs = { height: 2100, ceiling: 2100, rise: 190, going: 240 };

describe('the reason says by which proof it cannot go', () => {
  test('a corner under a low ceiling: an angle at which it stands nowhere', () => {
    expect(
      deepProof('corner', { width: 650, widthOut: 650, height: 1000 }, 5, sortedPiece(1830, 930, 25)),
    ).toBe('under this ceiling it cannot stand up, and at one angle on either way round it stands nowhere');
  });

  test('a corner under a high ceiling: its middle cannot cross', () => {
    const measures = { width: 500, widthOut: 500, height: 2400 };
    expect(deepProof('corner', measures, 5, crate)).toBe(
      'its middle cannot cross from the inner corner to the outer walls, however it is turned',
    );
    const arm = (length: number) => ['passage', { width: 500, height: 2400, length }] as const;
    const between = (length: number) => route(arm(length), ['corner', measures], arm(length));
    const judged = judge(between(3000), crate);
    expect(judged.verdict).toBe('cannot go');
    expect(judged.reason).toContain('its middle cannot cross from the inner corner');
    // The cut supposes each arm as far as half the diagonal of the piece: sqrt(2000^2 + 900^2 + 300^2) / 2 = 1107.
    expect(judge(between(1120), crate).verdict).toBe('cannot go');
    expect(judge(between(1090), crate).verdict).toBe('no way found');
    // Where the arms open out at once nothing is proved.
    expect(judge(route(['corner', measures]), crate).verdict).toBe('no way found');
  });

  test('the tape is allowed for: what it could save is not proved', () => {
    // The widest corner that the motion does not pass: with 5 mm more it passes.
    let width = 500;
    const clearance = (w: number): number =>
      corner({ widthIn: w, widthOut: w, ceiling: 2400, turn: RIGHT_ANGLE }, crate).clearance;
    while (clearance(width) < 0) width += 1;
    const measures = { width: width - 3, widthOut: width - 3, height: 2400 };
    expect(deepProof('corner', measures, 0, crate)).toBeDefined();
    expect(deepProof('corner', measures, 5, crate)).toBeUndefined();
  });

  test('a quarter landing', () => {
    const measures = { ...stairs, width: 800, widthOut: 800 };
    const reason =
      'its middle cannot cross the landing from the inner corner to the outer walls, however it is turned';
    expect(deepProof('quarter landing', measures, 5, board)).toBe(reason);
    const judged = judge(route(['quarter landing', measures]), board);
    expect(judged.verdict).toBe('cannot go');
    expect(judged.reason).toContain(reason);
    // Air above a handrail, or a flight wide enough, and nothing is proved.
    expect(deepProof('quarter landing', { ...measures, overRail: 900 }, 5, board)).toBeUndefined();
    expect(
      deepProof('quarter landing', { ...measures, width: 1100, widthOut: 1100 }, 5, board),
    ).toBeUndefined();
    const unmeasured = { height: 2100, rise: 190, going: 240, width: 800, widthOut: 800 };
    // The landing alone as high as a house: a narrower board stands up there.
    expect(deepProof('quarter landing', { ...measures, ceiling: 4000 }, 5, narrow)).toBeUndefined();
    expect(deepProof('quarter landing', unmeasured, 5, board)).toBe(
      `${reason}, the ceiling there being no higher than the headroom`,
    );
  });

  test('a half landing', () => {
    const measures = { ...stairs, width: 800, well: 100, depth: 800 };
    const reason =
      'its middle cannot cross the landing from the end of the spine to the outer walls, however it is turned';
    expect(deepProof('half landing', measures, 5, board)).toBe(reason);
    expect(deepProof('half landing', { ...measures, overRail: 900 }, 5, board)).toBeUndefined();
    expect(deepProof('half landing', { ...measures, width: 1100, depth: 1400 }, 5, board)).toBeUndefined();
    expect(deepProof('half landing', { ...measures, ceiling: 4000 }, 5, narrow)).toBeUndefined();
    // So thin a spine may be anywhere within the tape, so that nothing is built on it.
    expect(deepProof('half landing', { ...measures, well: 10 }, 5, board)).toBeUndefined();
    expect(deepProof('half landing', { ...measures, well: 10 }, 1, board)).toBe(reason);
  });

  test('winding treads that were counted, between two flights of which they are the turn', () => {
    const stair = { height: 2100, rise: 190, going: 240, width: 700 };
    const winder = { ...stair, turn: 90, treads: 3 };
    const reason =
      'its middle cannot cross the winding treads from the inner edge to the outer walls, however it is turned';
    expect(deepProof('winder', winder, 5, board)).toBe(reason);
    expect(deepProof('winder', { ...winder, width: 1300 }, 5, board)).toBeUndefined();
    // Treads that were not counted may lie anyhow.
    expect(deepProof('winder', { ...stair, turn: 90 }, 5, board)).toBeUndefined();
    const flight = ['flight', { ...stair, risers: 30 }] as const;
    const judged = judge(route(flight, ['winder', winder], flight), board);
    expect(judged.verdict).toBe('cannot go');
    expect(judged.reason).toContain(reason);
    // Beside a floor, of which nothing is known, nothing is proved.
    const floor = ['passage', { width: 700, height: 2100, length: 4000 }] as const;
    expect(judge(route(floor, ['winder', winder], flight), board).verdict).toBe('no way found');
  });

  test('a lift: inside the car, and through its door', () => {
    const lift = { width: 800, height: 2000, widthOut: 1100, depth: 1400, ceiling: 2200 };
    expect(deepProof('lift', lift, 5, sortedPiece(2300, 1500, 40))).toBe('it fits in the car in no attitude');
    const low = { ...lift, height: 1200, widthOut: 1400, depth: 2000 };
    expect(deepProof('lift', low, 5, sortedPiece(1900, 1300, 600))).toBe(
      "its middle cannot cross the opening of the lift's door, however it is turned",
    );
    expect(deepProof('lift', lift, 5, sortedPiece(1800, 700, 40))).toBeUndefined();
  });

  test('a side door', () => {
    const door = { width: 700, height: 1950, wall: 100, widthOut: 800, ceiling: 2200 };
    expect(deepProof('side door', door, 5, sortedPiece(2500, 1250, 40))).toBe(
      'its middle cannot cross the opening of the door from the passage, however it is turned',
    );
    expect(
      deepProof('side door', { ...door, widthOut: 1800 }, 5, sortedPiece(2500, 1250, 40)),
    ).toBeUndefined();
  });

  test('a flight: with the walls that face its ends by itself, without them in a route', () => {
    const flight = {
      width: 700,
      height: 2000,
      rise: 190,
      going: 240,
      risers: 14,
      footCeiling: 2050,
      footSpace: 700,
    };
    const piece = sortedPiece(2400, 1200, 40);
    const reason =
      'its middle cannot cross the upright plane through one of the nosings, however it is turned';
    expect(deepProof('flight', flight, 5, piece)).toBe(reason);
    expect(deepProof('flight', { ...flight, endsOpen: true }, 5, piece)).toBeUndefined();
    // A ramp or a single step is solved as treads that it does not have.
    expect(deepProof('flight', { ...flight, noTreads: true }, 5, piece)).toBeUndefined();
  });

  test('of winders whose treads were not counted, and of passages, it knows nothing', () => {
    expect(deepProof('winder', { ...stairs, width: 300, turn: 90 }, 5, board)).toBeUndefined();
    expect(deepProof('passage', { width: 300, height: 300 }, 5, board)).toBeUndefined();
  });
});
