import {
  IN_CORNER,
  IN_FLIGHT_ARM,
  IN_PASSAGE,
  StairTurnPlaces,
  UPRIGHT,
  type StairTurnPlan,
} from '../../../../src/core/stages/stairTurn/turnedPlace';
import { TurnedThrough } from '../../../../src/core/stages/stairTurn/turnedThrough';
import { seeded } from '../../../support/parkMiller';

const RANGES = Number(process.env['RANGES'] ?? 60000);

/** A turn beside a flight that is mostly long, at times shorter than the piece. */
function seededPlan(next: () => number): StairTurnPlan {
  const headroom = 1800 + 600 * next();
  const [rise, going] = [150 + 90 * next(), 190 + 130 * next()];
  const risers = 2 + Math.floor(6 * next());
  return {
    end: next() < 0.5 ? 'head' : 'foot',
    flightWidth: 600 + 600 * next(),
    headroom,
    rise,
    going,
    straight: next() < 0.5 ? 0 : 900 * next(),
    passageWidth: 600 + 900 * next(),
    ceiling: headroom - 200 + 900 * next(),
    ...(next() < 0.3 ? { passageCeiling: 1900 + 500 * next() } : {}),
    overRail: 0,
    ...(next() < 0.3
      ? {
          short: {
            run: (risers - 1) * going,
            line: risers * going,
            reach: (risers - 1) * going + 700 + 600 * next(),
            ceiling: 2000 + 1500 * next(),
          },
        }
      : {}),
  };
}

test('what surely holds through a range of angles holds at each of them, looked at by itself', () => {
  const next = seeded(815);
  let [sure, asked] = [0, 0];
  const strays: unknown[] = [];
  for (let i = 0; i < RANGES; i++) {
    const places = new StairTurnPlaces(seededPlan(next));
    const box = { u: 300 + 2400 * next(), v: 20 + 900 * next(), q: 20 + 900 * next() };
    places.hold(box);
    const through = new TurnedThrough(places);
    through.hold(box);
    const inPlan = next() < 0.5;
    const wide = 0.08 * next() ** 2;
    const yaw = (Math.PI / 2 - wide) * next();
    const tilt = (Math.PI / 2 - wide) * (next() < 0.2 ? 0 : next() < 0.05 ? 1 : next());
    const yaws = [yaw, inPlan ? yaw + wide : yaw] as const;
    const tilts = [tilt, inPlan ? tilt : tilt + wide] as const;
    const cosine = (a: number): number => Math.max(Math.cos(a), 1e-12);
    const tangent = (a: number): number => Math.tan(Math.min(a, UPRIGHT));
    for (const way of [IN_FLIGHT_ARM, IN_CORNER, IN_PASSAGE]) {
      // Only where it stands at the ends is there something to find out.
      const ends = [0, 1].every((k) => (places.waysAt(yaws[k]!, tilts[k]!) & way) !== 0);
      if (!ends) continue;
      asked++;
      const holds = through.standsThroughout(
        way,
        cosine(yaws[0]),
        Math.sin(yaws[0]),
        cosine(yaws[1]),
        Math.sin(yaws[1]),
        Math.cos(tilts[0]),
        Math.sin(tilts[0]),
        tangent(tilts[0]),
        Math.cos(tilts[1]),
        Math.sin(tilts[1]),
        tangent(tilts[1]),
      );
      if (!holds) continue;
      sure++;
      for (let n = 0; n <= 12; n++) {
        const share = n / 12;
        const [a, t] = [
          yaws[0] + (yaws[1] - yaws[0]) * share,
          tilts[0] + (tilts[1] - tilts[0]) * share,
        ] as const;
        if ((places.waysAt(a, t) & way) === 0) strays.push({ a, t, way, plan: places.plan, box });
      }
    }
  }
  expect(strays).toEqual([]);
  expect(asked).toBeGreaterThan(RANGES / 100);
  // Else it would be of no use.
  expect(sure / asked).toBeGreaterThan(0.5);
});
