import { FLIGHT_SOLVER } from '../../../src/core/stages/flight/flightSolver';
import { PASSAGE_SOLVER } from '../../../src/core/stages/passage/passageSolver';
import { raisedBy } from '../../../src/core/stages/lowPart';
import { sizesOfHold } from '../../../src/core/motion/hold';
import type { StagePassage } from '../../../src/core/motion/stagePassage';
import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { seededStream } from '../../../src/core/space/seededStream';
import { passesSection, roundedUp } from '../../support/sectionSearch';
import { sectionOf, type StairInSection } from '../../support/stairSection';
import { fitsAtSomeAngle, lowestPlace, type BlockedSection } from '../../support/besideBlock';
import { judge, openEnds, piece, route } from '../route/routeFixtures';

/**
 * A flight with a handrail on one side: what is too wide to go beside it is carried above it. `LOW=400 npx jest
 * tests/core/stages/lowPart` holds more flights against the search.
 */
const FLIGHTS = Number(process.env['LOW'] ?? 40);

const passagesOf = (measures: Parameters<typeof FLIGHT_SOLVER.passages>[0], box: PieceSize) =>
  FLIGHT_SOLVER.passages(measures, box, 'with leaning');

const flightOf = ({ headroom, ...rest }: Omit<StairInSection, 'width'>) => ({
  width: 1000,
  height: headroom,
  ...rest,
});

test('what is carried above a handrail passes under the ceilings at both ends, by a search in the upright section', () => {
  let shown = 0;
  for (let seed = 1; seed <= FLIGHTS; seed++) {
    const next = seededStream(seed);
    const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
    const lowHeight = b(100, 900);
    const upright = b(300, 1200);
    const headroom = upright + lowHeight + b(250, 700);
    const stair: Omit<StairInSection, 'width'> = {
      headroom,
      rise: b(150, 215),
      going: b(215, 290),
      risers: b(8, 14),
      // Low enough to decide in many: a ceiling over the foot or the head that the rail makes too low.
      footCeiling: upright + b(0, 2 * lowHeight) + b(0, 500),
      headCeiling: upright + b(0, 2 * lowHeight) + b(0, 500),
      footSpace: 5000,
      headSpace: 5000,
    };
    const wide = 700;
    const along = b(900, 2000);
    const box = sortedPiece(along, upright, wide);
    for (const { from, answer } of passagesOf({ ...flightOf(stair), lowWidth: 600, lowHeight }, box)) {
      const { along: u, across, upright: v } = sizesOfHold(box, from);
      if (across < 600 || answer.clearance < 0) continue;
      shown++;
      // What the grid rounds away is taken off: shown for a rectangle so much larger, it passes by itself.
      const off = 2 * Math.min(0, answer.clearance - roundedUp(u));
      const [p, q] = [u + off, v + off];
      const half = Math.hypot(p, q) / 2;
      const run = (stair.risers - 1) * stair.going;
      const passes = passesSection(sectionOf(stair, lowHeight), p, q, -half, run + half);
      if (!passes)
        throw new Error(`seed ${seed}: ${JSON.stringify({ stair, lowHeight, box, from, answer })}`);
    }
  }
  expect(shown).toBeGreaterThan(FLIGHTS / 4);
}, 300_000);

test('a handrail that leaves room beside it costs nothing but its width, and one over no floor is nowhere', () => {
  const stair = { ...openEnds, headroom: 2100, rise: 190, going: 240, risers: 12 };
  const box = sortedPiece(1500, 900, 300);
  const best = (lowWidth?: number): number =>
    Math.max(
      ...passagesOf(
        { ...flightOf(stair), ...(lowWidth === undefined ? {} : { lowWidth, lowHeight: 1000 }) },
        box,
      ).map(({ answer }) => answer.clearance),
    );
  // On edge beside it: (700 - 300) / 2; without it (1000 - 300) / 2 is more than the headroom leaves.
  expect(best(700)).toBeCloseTo((700 - 300) / 2, 9);
  expect(best()).toBeGreaterThan(best(700));
});

const bestOf = (passages: readonly StagePassage[]): number =>
  Math.max(...passages.map(({ answer }) => answer.clearance));
/** What leans past the low part, and not only in the way beside it or above it. */
const past = (passages: readonly StagePassage[]): StagePassage[] =>
  passages.filter(({ answer }) => answer.critical.words.includes('narrower below'));

/** A sheet that passes a radiator neither beside it nor level above it. */
const SHEET = sortedPiece(2300, 1900, 30);
const RADIATOR = { width: 800, height: 2000, lowWidth: 500, lowHeight: 700 } as const;
/** Leaning and raised, this one has a little more than upright beside its low part. */
const LOWER_SHEET = sortedPiece(2300, 1500, 30);
const HIGH = { width: 800, height: 2400, lowWidth: 400, lowHeight: 500 } as const;

describe('leaning past a part that is narrower below', () => {
  test('no angle and no place of a section, by trying, lets more through, on whichever side it stands', () => {
    let leant = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const next = seededStream(seed);
      const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
      const width = b(600, 900);
      const section: BlockedSection = {
        width,
        height: b(1900, 2300),
        lowWidth: b(width / 2, width - 50),
        lowHeight: b(300, 1000),
      };
      // Too high to stand beside the low part, or to stand level above it.
      const box = sortedPiece(3000, b(section.height - 300, section.height + 200), b(20, 150));
      const passages = PASSAGE_SOLVER.passages(section, box, 'with leaning');
      // Held with its length along the way, at whatever angle.
      const lengthwise = passages.filter(({ from }) => from.startsWith('L'));
      const best = bestOf(lengthwise);
      if (best >= 0 && bestOf(past(lengthwise)) >= best) leant++;
      const more = 2 * Math.max(0, best + 1);
      const larger = fitsAtSomeAngle(section, box.breadth + more, box.thickness + more, 0.5);
      expect([seed, larger]).toEqual([seed, false]);
      if (best >= 2)
        expect([
          seed,
          fitsAtSomeAngle(section, box.breadth + 2 * best - 4, box.thickness + 2 * best - 4, 0.1),
        ]).toEqual([seed, true]);
    }
    expect(leant).toBeGreaterThan(4);
  });

  test('what leans goes through, at no less raise than is said, by trying', () => {
    const passages = PASSAGE_SOLVER.passages(HIGH, LOWER_SHEET, 'with leaning');
    const leant = past(passages).find(({ from }) => from === 'LB');
    const { clearance, raise = 0 } = leant?.answer ?? { clearance: NaN };
    expect(clearance).toBeGreaterThan((400 - 30) / 2 + 1);
    const less = 2 * (clearance - 1);
    const lowest = lowestPlace(HIGH, 1500 + less, 30 + less, { step: 0.5, parts: 40 });
    // With 1 mm less a side it lies a little lower; the places tried stand 1 in 40 of the height left apart.
    expect(lowest).toBeGreaterThan(raise - 20);
    expect(lowest).toBeLessThan(raise + 20);
  });

  test('it asks for room to lean before and after, is said to lean, and proves no more than the whole way does', () => {
    const found = past(PASSAGE_SOLVER.passages(RADIATOR, SHEET, 'with leaning'));
    expect(found.length).toBeGreaterThan(0);
    const whole = PASSAGE_SOLVER.passages({ width: 800, height: 2000 }, SHEET, 'with leaning');
    for (const passage of PASSAGE_SOLVER.passages(RADIATOR, SHEET, 'with leaning')) {
      expect(passage.answer.atMost).toBe(whole[0]?.answer.atMost);
      expect(passage.answer.bound).toBe(whole[0]?.answer.bound);
    }
    for (const { answer, needsTurningRoom } of found)
      expect([answer.pose, needsTurningRoom]).toEqual(['leaning', true]);
    // By trying: the sheet stands between 60 and 80 degrees.
    expect(found.at(-1)?.answer.critical.words).toMatch(/^leaning (6|7)\d degrees over/);
  });

  test('what does not fit leaning is not said to lean', () => {
    const thick = sortedPiece(2300, 1900, 550);
    expect(past(PASSAGE_SOLVER.passages(RADIATOR, thick, 'with leaning'))).toEqual([]);
    expect(fitsAtSomeAngle(RADIATOR, 1900, 550, 0.1)).toBe(false);
  });

  test('a part as high as the ceiling leaves only its width, and one without its height may be as high', () => {
    const beside = { clearance: (500 - 30) / 2 };
    const low = sortedPiece(2300, 500, 30);
    for (const lowHeight of [2000, 2500, undefined]) {
      const passages = PASSAGE_SOLVER.passages({ ...RADIATOR, lowHeight }, low, 'with leaning');
      expect(bestOf(passages)).toBeCloseTo(beside.clearance, 6);
      expect(passages.every(({ answer }) => (answer.raise ?? 0) === 0)).toBe(true);
    }
  });

  // Square to a pitch of 45 degrees every plumb height is shorter by the cosine: the section is that of HIGH.
  const steep = {
    width: 800,
    height: HIGH.height * Math.SQRT2,
    rise: 220,
    going: 220,
    lowWidth: HIGH.lowWidth,
    lowHeight: HIGH.lowHeight * Math.SQRT2,
  };

  test('on a stair it leans square to the pitch, lengthwise alone, and is raised plumb', () => {
    const level = past(PASSAGE_SOLVER.passages(HIGH, LOWER_SHEET, 'with leaning'));
    const onStair = past(passagesOf(steep, LOWER_SHEET));
    // Crosswise its 2300 lean as well, where the floor is level.
    expect(level.some(({ from }) => !from.startsWith('L'))).toBe(true);
    expect(onStair.map(({ from }) => from).sort()).toEqual(['LB', 'LT']);
    for (const { from, answer } of onStair) {
      const same = level.find((passage) => passage.from === from)?.answer;
      expect(answer.clearance).toBeCloseTo(same?.clearance ?? NaN, 6);
      expect(answer.raise).toBeCloseTo((same?.raise ?? NaN) * Math.SQRT2, 3);
    }
  });

  test('what is carried above a low part is held up by its height, over what the way asks by itself', () => {
    const above = PASSAGE_SOLVER.passages(HIGH, LOWER_SHEET, 'with leaning').filter(
      ({ answer }) => answer.raise === HIGH.lowHeight,
    );
    // On edge above it: (2400 - 500 - 1500) / 2 under the ceiling.
    expect(
      above.find(({ from, answer }) => from === 'LB' && answer.pose === 'on edge')?.answer.clearance,
    ).toBe(200);
    const low = raisedBy([{ from: 'LB', to: 'LB', answer: { ...above[0]!.answer, raise: 40 } }], 60);
    expect(low[0]?.answer.raise).toBe(100);
    expect(raisedBy(above, 0)).toEqual(above);
  });

  test('with a measured end nothing is said to lean past a handrail', () => {
    expect(past(passagesOf(steep, LOWER_SHEET)).length).toBeGreaterThan(0);
    for (const end of ['footCeiling', 'footSpace', 'headCeiling', 'headSpace'])
      expect(past(passagesOf({ ...steep, [end]: 6000 }, LOWER_SHEET))).toEqual([]);
  });
});

describe('a passage that is narrower near its floor', () => {
  const low = { width: 900, height: 2300, length: 700, lowWidth: 300, lowHeight: 900 } as const;
  const long = { width: 900, height: 2300, length: 4000 } as const;
  const corner = { width: 900, widthOut: 900, height: 2300 } as const;
  const between = (narrow: typeof low) =>
    route(['passage', long], ['corner', corner], ['passage', narrow], ['corner', corner], ['passage', long]);

  test('does not let more through between two turns than it does by itself', () => {
    // At least 350 thick: beside a radiator that leaves 300 there are 25 a side too little, above it 1400 are too low for
    // what stands on end, and turned level above it the 1700 are longer than the 900 between two turns.
    const through = judge(between(low), piece(1700, 450, 350), { tape: 0 });
    const alone = judge(route(['passage', low]), piece(1700, 450, 350), { tape: 0 });
    expect(through.clearance ?? -Infinity).toBeLessThanOrEqual(alone.clearance! + 1e-9);
    expect(through.verdict).toBe('no way found');
  });

  test('offers no more room to turn a piece over than is left beside its narrow part', () => {
    const spaces = PASSAGE_SOLVER.turningSpaces({ ...low, length: 3000 });
    expect(spaces?.before).toEqual({ along: 3000, across: 300, height: 2300 });
  });
});
