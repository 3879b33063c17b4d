import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { judgeRoute } from '../../../src/core/route/judgeRoute';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { flightPassages } from '../../../src/core/stages/flight/flightPassages';
import { stageBook } from '../../../src/core/route/stageBook';
import { seededStream } from '../../../src/core/space/seededStream';
import { passesSection, roundedUp } from '../../support/sectionSearch';
import { sectionOf, type StairInSection as Stair } from '../../support/stairSection';
import { route } from './routeFixtures';

/**
 * What is called impossible on a flight is searched for in the upright section of buildings that its survey allows: a
 * few risers or more, and the ends not measured, so that the ceiling over the foot may be anything from the headroom up
 * ("not measured: over every value"; the ceiling over a foot not given: from the headroom up). The search goes through
 * every place and angle on a grid.
 * `FLIGHTS=400 npx jest tests/core/route/shutFlights` runs the campaign.
 */
const FLIGHTS = Number(process.env['FLIGHTS'] ?? 18);

/** Whether the piece is seen to pass in some hold, with some millimetres to spare for the grid. */
function passes(s: Stair, piece: PieceSize): boolean {
  const sides = [piece.length, piece.breadth, piece.thickness];
  const way = sectionOf(s);
  return [0, 1, 2].some((k) => {
    const [across] = sides.splice(k, 1);
    const [u, v] = [sides[0]!, sides[1]!];
    sides.splice(k, 0, across!);
    if (across! > s.width) return false;
    const off = 2 * roundedUp(u);
    const half = Math.hypot(u + off, v + off) / 2;
    return passesSection(way, u + off, v + off, -half, (s.risers - 1) * s.going + half);
  });
}

test('no flight that is called impossible is passed in any building that its survey allows', () => {
  const attacked = [0, 0];
  for (let seed = 1; seed <= FLIGHTS; seed++) {
    const next = seededStream(seed);
    const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
    const headroom = b(1850, 2100);
    const told = {
      width: b(650, 1000),
      height: headroom,
      rise: b(150, 215),
      going: b(215, 290),
      risers: b(2, 14),
    };
    const given = {
      ...(next() < 0.7 ? { footCeiling: headroom + b(0, 900) } : {}),
      ...(next() < 0.4 ? { headCeiling: headroom + b(0, 1500) } : {}),
      ...(next() < 0.4 ? { footSpace: 6000 } : {}),
      ...(next() < 0.4 ? { headSpace: 6000 } : {}),
    };
    const beside =
      next() < 0.5 ? (['door', { width: told.width, height: 4000, wall: 100 }] as const) : undefined;
    const survey = route(...(beside ? [beside] : []), ['flight', { ...told, ...given }]);
    const stair: Stair = {
      width: told.width,
      headroom,
      rise: told.rise,
      going: told.going,
      risers: told.risers,
      footCeiling: given.footCeiling ?? headroom + (next() < 0.5 ? b(0, 1500) : b(1500, 6000)),
      headCeiling: given.headCeiling ?? headroom + (next() < 0.5 ? b(0, 1500) : b(1500, 6000)),
      footSpace: 6000,
      headSpace: 6000,
    };
    const [along, thick] = [b(1800, 4200), b(20, 300)];
    const book = stageBook(0);
    const prepared = prepareRoute(survey, book);
    const { width, rise, going, risers } = told;
    const claims = [
      (piece: PieceSize) => judgeRoute(prepared, piece, book, 25).finding.verdict === 'cannot go',
      // The row by itself.
      (piece: PieceSize) =>
        flightPassages({ width, headroom, rise, going }, piece, { risers, ...given }).some(
          ({ answer }) => answer.atMost < 0,
        ),
    ];
    for (const [n, claimed] of claims.entries()) {
      // The least breadth that is called impossible.
      let least = 900;
      while (least <= 3600 && !claimed(sortedPiece(along, least, thick))) least += 90;
      if (least > 3600) continue;
      attacked[n]!++;
      if (passes(stair, sortedPiece(along, least, thick)))
        throw new Error(
          `seed ${seed}, claim ${n}: ${JSON.stringify({ stair, given, along, least, thick })} passes`,
        );
    }
  }
  if (process.env['FLIGHTS'] !== undefined) console.log({ attacked });
  for (const many of attacked) expect(many).toBeGreaterThan(FLIGHTS / 10);
}, 600_000);

test('the search finds what passes, and nothing where less is left than the piece is high', () => {
  const stair: Stair = {
    width: 900,
    headroom: 2000,
    rise: 180,
    going: 250,
    risers: 10,
    footCeiling: 2400,
    headCeiling: 2400,
    footSpace: 6000,
    headSpace: 6000,
  };
  // Along the pitch the clear height square to it is 2000 cos(atan(180 / 250)) = 1623 (trigonometry).
  expect(passes(stair, sortedPiece(2400, 1450, 30))).toBe(true);
  expect(passes(stair, sortedPiece(2400, 1640, 30))).toBe(false);
  // With the ceiling over the foot above the upper one all the way, 10 risers up: nothing slopes there.
  expect(passes({ ...stair, footCeiling: 5000, headCeiling: 3200 }, sortedPiece(2400, 1640, 30))).toBe(true);
});
