import fc from 'fast-check';
import { verdictRank } from '../../../src/core/route/verdict';
import { effectOfMeasure } from '../../../src/core/route/tapeCase';
import type { MeasureName, StageMeasures } from '../../../src/core/stages/measures';
import type { StageName } from '../../../src/core/stages/kinds';
import type { StageRow } from '../../../src/core/survey/table/stageRow';
import { judge, openEnds, piece, route } from './routeFixtures';

/** How many random routes each property is held to: `PROPERTIES=1000 npx jest tests/core/route/routeProperties` is the campaign. */
const RUNS = Number(process.env['PROPERTIES'] ?? 60);

const mm = (min: number, max: number) => fc.integer({ min, max });

const stageOf = (stage: StageName, measures: Record<string, fc.Arbitrary<number>>) =>
  fc.record(measures).map((m): readonly [StageName, StageMeasures] => [stage, m]);

const anyStage = fc.oneof(
  stageOf('door', { width: mm(200, 1200), height: mm(700, 2400) }),
  stageOf('passage', { width: mm(300, 1500), height: mm(900, 2600), length: mm(1500, 6000) }),
  stageOf('corner', {
    width: mm(500, 1500),
    widthOut: mm(500, 1500),
    height: mm(900, 2600),
    run: mm(1000, 4000),
  }),
  stageOf('room', { length: mm(1500, 6000), width: mm(1500, 5000), height: mm(1800, 2600) }),
  fc
    .record({ width: mm(500, 1200), height: mm(1500, 2500), rise: mm(160, 220), going: mm(220, 300) })
    .map((m): readonly [StageName, StageMeasures] => ['flight', { ...m, risers: 12, ...openEnds }]),
);
const anyRoute = fc.array(anyStage, { minLength: 1, maxLength: 6 }).map((steps) => route(...steps));
const anyPiece = fc.tuple(mm(600, 2600), mm(200, 1300), mm(15, 700)).map(([l, b, t]) => piece(l, b, t));

/** The same route with one measure of one step a little worse for every piece. */
const worsened = fc
  .tuple(anyRoute, fc.nat(), fc.nat(), mm(1, 200))
  .map(([rows, whichStep, whichMeasure, by]): [StageRow[], StageRow[]] => {
    const at = whichStep % rows.length;
    const names = (Object.keys(rows[at]!.measures) as MeasureName[]).filter(
      (n) => effectOfMeasure(rows[at]!.stage!, n) === 'helps',
    );
    const name = names[whichMeasure % names.length]!;
    const worse = rows.map((row, i) =>
      i === at
        ? { ...row, measures: { ...row.measures, [name]: Math.max(60, row.measures[name]! - by) } }
        : row,
    );
    return [rows, worse];
  });

// no way found and cannot go stand on either side of a proof; both are worse than tight.
const rank = (rows: StageRow[], p: ReturnType<typeof piece>) => {
  const judged = judge(rows, p);
  return { rank: verdictRank(judged.verdict), clearance: judged.clearance ?? -Infinity };
};

test('shrinking a measure never improves a verdict', () => {
  fc.assert(
    fc.property(worsened, anyPiece, ([rows, worse], p) => {
      expect(rank(worse, p).rank).toBeGreaterThanOrEqual(rank(rows, p).rank);
    }),
    { seed: 4, numRuns: RUNS },
  );
});

test('a piece that lies inside another is never judged worse', () => {
  fc.assert(
    fc.property(anyRoute, anyPiece, fc.tuple(mm(0, 200), mm(0, 200), mm(0, 10)), (rows, p, less) => {
      const smaller = piece(p.length - less[0], p.breadth - Math.min(less[1], 150), p.thickness - less[2]);
      expect(rank(rows, smaller).rank).toBeLessThanOrEqual(rank(rows, p).rank);
    }),
    { seed: 5, numRuns: RUNS },
  );
});

test('a longer tape or a larger allowance never improves a verdict, unless a proof is lost', () => {
  fc.assert(
    fc.property(anyRoute, anyPiece, mm(0, 20), mm(0, 20), mm(0, 40), (rows, p, tape, more, allowance) => {
      const plain = judge(rows, p, { tape, allowance }).verdict;
      const wider = judge(rows, p, { tape: tape + more, allowance }).verdict;
      if (plain === 'cannot go') expect(['cannot go', 'no way found']).toContain(wider);
      else expect(verdictRank(wider)).toBeGreaterThanOrEqual(verdictRank(plain));
      const stricter = judge(rows, p, { tape, allowance: allowance + more }).verdict;
      expect(verdictRank(stricter)).toBeGreaterThanOrEqual(verdictRank(plain));
    }),
    { seed: 6, numRuns: RUNS },
  );
});

test('a route is never better than any of its steps alone, and its verdict is that of its worst step', () => {
  fc.assert(
    fc.property(anyRoute, anyPiece, (rows, p) => {
      const judged = judge(rows, p);
      const ranks = judged.steps.map((step) => verdictRank(step.verdict));
      expect(verdictRank(judged.verdict)).toBe(Math.max(...ranks));
      expect(verdictRank(judged.steps[judged.step]!.verdict)).toBe(verdictRank(judged.verdict));
      if (judged.verdict === 'goes' || judged.verdict === 'tight') {
        expect(Math.min(...judged.steps.map((s) => s.clearance!))).toBe(judged.clearance);
      }
    }),
    { seed: 7, numRuns: RUNS },
  );
});

test('what is shown never beats what is proved', () => {
  fc.assert(
    fc.property(anyRoute, anyPiece, (rows, p) => {
      const judged = judge(rows, p, { tape: 0 });
      for (const step of judged.steps) {
        if (step.verdict === 'cannot go') expect(step.clearance ?? -1).toBeLessThan(0);
      }
    }),
    { seed: 8, numRuns: RUNS },
  );
});
