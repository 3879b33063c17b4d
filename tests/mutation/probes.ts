import { doorIntoPassage, doorPassage } from '../../src/core/geometry/doorIntoPassage';
import { decidePassage } from '../../src/core/geometry/planar/decidePassage';
import { sortedPiece, type PieceSize } from '../../src/core/measures/piece';
import { ALL_HOLDS } from '../../src/core/motion/hold';
import type { StagePassage } from '../../src/core/motion/stagePassage';
import { deepProof } from '../../src/core/route/deepProof';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { verdictRank } from '../../src/core/route/verdict';
import type { StageName } from '../../src/core/stages/kinds';
import { facingDoorPassages } from '../../src/core/stages/facingDoor/facingDoor';
import { solverOf, type PlacedMeasures } from '../../src/core/stages/solvers';
import { seeded } from '../support/parkMiller';
import { randomRoute } from '../support/randomRoutes';
import { stageRow } from '../support/walkedRoute';

/**
 * What a change that no test notices does to figures: they are worked out with it and without it, in seeded scenes. It
 * is no test, for it compares the code with itself; it tells which survivors need one. Each figure is so turned that more
 * of it is the better verdict: a clearance, or a proof that refuses less; of proofs, that one claims more is told apart.
 */
export interface Figures {
  /** More is the better verdict. */
  readonly shown: readonly number[];
  /** Less is the stronger claim that nothing passes. */
  readonly proved: readonly number[];
}

type Probe = readonly [name: string, figures: () => Figures];

const NOTHING = -1e9;
const finite = (value: number): number => Math.max(NOTHING, Math.min(-NOTHING, value));

/** The best of each way in and out, leaned over or not. */
function shownOf(passages: readonly StagePassage[]): number[] {
  const best = new Array<number>(2 * ALL_HOLDS.length ** 2).fill(NOTHING);
  for (const { from, to, needsTurningRoom, answer } of passages) {
    const way = ALL_HOLDS.indexOf(from) * ALL_HOLDS.length + ALL_HOLDS.indexOf(to);
    const k = 2 * way + (needsTurningRoom ? 1 : 0);
    best[k] = Math.max(best[k] ?? NOTHING, finite(answer.clearance));
  }
  return best;
}

const figuresOf = (passages: readonly StagePassage[]): Figures => ({
  shown: shownOf(passages),
  proved: passages.map(({ answer }) => finite(answer.atMost)),
});

type Between = (lo: number, hi: number) => number;

const pieceOf = (b: Between): PieceSize =>
  sortedPiece(b(900, 2600), b(250, 1400), b(15, b(0, 1) < 0.6 ? 120 : 600));

/** Figures of so many scenes, each from its own seed. */
function scenes(count: number, one: (b: Between, n: number) => Figures): Figures {
  const all = Array.from({ length: count }, (_, n) => {
    const next = seeded(1000 + 7919 * n);
    return one((lo, hi) => lo + (hi - lo) * next(), n);
  });
  return { shown: all.flatMap(({ shown }) => shown), proved: all.flatMap(({ proved }) => proved) };
}

const stair = (b: Between) => ({ height: b(1850, 2300), rise: b(150, 220), going: b(210, 300) });

const CLOSED: Readonly<Partial<Record<StageName, (b: Between, n: number) => PlacedMeasures>>> = {
  door: (b) => ({ width: b(500, 1000), height: b(1850, 2300) }),
  corner: (b, n) => ({
    width: b(450, 1300),
    widthOut: b(450, 1300),
    height: b(700, 2600),
    ...(n % 2 === 0 ? {} : { turn: b(10, 170) }),
  }),
  'side door': (b, n) => ({
    width: b(550, 1000),
    height: b(1800, 2200),
    wall: n % 5 === 0 ? 0 : b(20, 400),
    widthOut: b(600, 1500),
    ceiling: b(2200, 2600),
    ...(n % 3 === 0 ? { depth: b(0, 900) } : {}),
    ...(n % 4 === 0 ? { approachWidth: b(1000, 3000) } : {}),
  }),
  flight: (b, n) => ({
    ...stair(b),
    width: b(600, 1200),
    ...(n % 2 === 0
      ? {
          risers: Math.round(b(2, 16)),
          footCeiling: b(1900, 2900),
          footSpace: b(700, 3000),
          headCeiling: b(1900, 2700),
          headSpace: b(700, 3000),
        }
      : {}),
  }),
  lift: (b) => ({
    width: b(700, 1100),
    height: b(1900, 2200),
    widthOut: b(900, 1800),
    depth: b(1000, 2400),
    ceiling: b(2100, 2500),
  }),
  room: (b) => ({ width: b(900, 3000), length: b(900, 3000), height: b(1900, 2600) }),
  ramp: (b) => ({ width: b(700, 1300), height: b(1900, 2400), rise: b(100, 800), length: b(1500, 6000) }),
};

const closed = Object.entries(CLOSED).map(([stage, measures]): Probe => [
  stage,
  () =>
    scenes(stage === 'side door' || stage === 'lift' ? 24 : 120, (b, n) => {
      const solver = solverOf(stage as StageName);
      if (solver.solvedBy !== 'closed form') throw new Error(`${stage} is searched`);
      return figuresOf(solver.passages(measures(b, n), pieceOf(b), 'with leaning'));
    }),
]);

const LANDINGS: Readonly<Partial<Record<StageName, (b: Between, n: number) => PlacedMeasures>>> = {
  'quarter landing': (b) => ({
    ...stair(b),
    width: b(600, 1200),
    widthOut: b(600, 1200),
    ceiling: b(1900, 2600),
  }),
  'half landing': (b) => ({
    ...stair(b),
    width: b(600, 1200),
    depth: b(600, 1300),
    well: b(0, 300),
    ceiling: b(1900, 2600),
  }),
};

/** What is proved of landings; their motions are searched, and another probe would tell of the search alone. */
const proofs = Object.entries(LANDINGS).flatMap(([stage, measures]): Probe[] => {
  const solver = solverOf(stage as StageName);
  if (solver.solvedBy === 'closed form') throw new Error(`${stage} is not searched`);
  return [
    [
      `${stage}, quick proofs`,
      () =>
        scenes(60, (b, n) => ({
          shown: [],
          proved: [finite(solver.searched(measures(b, n)).proved(pieceOf(b)).atMost)],
        })),
    ],
    [
      `${stage}, deep proofs`,
      () =>
        scenes(12, (b, n) => {
          const size = sortedPiece(b(1500, 2600), b(700, 1400), b(20, 60));
          return {
            shown: [],
            proved: [deepProof(stage as StageName, measures(b, n), 5, size) === undefined ? 1 : 0],
          };
        }),
    ],
  ];
});

/** What a long proof refuses, in stages where it may: pieces that all but stick. */
const DEEP: Readonly<
  Partial<
    Record<
      StageName,
      { readonly count: number; readonly of: (b: Between, n: number) => readonly [PlacedMeasures, PieceSize] }
    >
  >
> = {
  corner: {
    count: 14,
    of: (b, n) => [
      {
        width: b(600, 1100),
        widthOut: b(600, 1100),
        height: b(900, 2400),
        ...(n % 2 ? { turn: b(40, 140) } : {}),
      },
      sortedPiece(b(1700, 2600), b(700, 1400), b(20, 60)),
    ],
  },
  flight: {
    count: 14,
    of: (b) => [
      {
        ...stair(b),
        width: b(500, 900),
        risers: Math.round(b(8, 15)),
        footCeiling: b(1900, 2500),
        footSpace: b(600, 1500),
        headCeiling: b(1900, 2400),
        headSpace: b(600, 1500),
      },
      sortedPiece(b(1800, 2800), b(1000, 2100), b(20, 300)),
    ],
  },
  winder: {
    count: 12,
    of: (b, n) => [
      {
        ...stair(b),
        width: b(600, 900),
        turn: n % 2 ? 90 : b(45, 180),
        treads: Math.round(b(2, 6)),
        ...(n % 3 ? {} : { widthOut: b(600, 900) }),
      },
      sortedPiece(b(1700, 3000), b(900, 1900), b(20, 200)),
    ],
  },
  'side door': {
    count: 20,
    of: (b, n) => [
      {
        width: b(550, 850),
        height: b(1800, 2100),
        wall: b(20, 300),
        widthOut: b(600, 1100),
        ceiling: b(2100, 2500),
        ...(n % 2 ? { approachWidth: b(900, 1500) } : {}),
      },
      sortedPiece(b(1900, 3000), b(900, 1900), b(20, 120)),
    ],
  },
  lift: {
    count: 20,
    of: (b) => [
      {
        width: b(700, 1000),
        height: b(1900, 2100),
        widthOut: b(900, 1500),
        depth: b(1000, 1700),
        ceiling: b(2050, 2400),
      },
      sortedPiece(b(1700, 2900), b(800, 1900), b(20, 120)),
    ],
  },
  room: {
    count: 20,
    of: (b) => [
      { width: b(900, 2000), length: b(900, 2000), height: b(1900, 2400) },
      sortedPiece(b(1900, 3200), b(900, 2300), b(20, 200)),
    ],
  },
};

const deep = Object.entries(DEEP).map(([stage, { count, of }]): Probe => [
  `${stage}, deep proofs`,
  () =>
    scenes(count, (b, n) => {
      const [measures, size] = of(b, n);
      return { shown: [], proved: [deepProof(stage as StageName, measures, 5, size) === undefined ? 1 : 0] };
    }),
]);

/** What the planner itself decides, near to where it changes. */
const planar: Probe = [
  'planner',
  () =>
    scenes(20, (b, n) => {
      const plan = {
        door: b(550, 1000),
        wall: n % 4 ? b(20, 400) : 0,
        approach: b(1000, 1500),
        passage: b(400, 1300),
        ...(n % 3 ? {} : { deadEnd: b(0, 1200) }),
      };
      const [p, q] = [b(1200, 2200), b(20, 300)];
      const { clearance } = doorIntoPassage(p, q, plan);
      const verdicts = [-4, 4].map((off) => {
        const [long, short] = [p + 2 * (clearance + off), q + 2 * (clearance + off)];
        const { world, start, goal } = doorPassage(long, Math.max(0, short), plan);
        return decidePassage(world, long, Math.max(0, short), start, goal).verdict;
      });
      return {
        shown: verdicts.map((verdict) => (verdict === 'passes' ? 1 : 0)),
        proved: verdicts.map((verdict) => (verdict === 'blocked' ? 0 : 1)),
      };
    }),
];

const facing: Probe = [
  'door that faces a stair',
  () =>
    scenes(40, (b, n) =>
      figuresOf(
        facingDoorPassages(
          {
            doorWidth: b(600, 1000),
            doorHeight: b(1900, 2200),
            wallThickness: b(0, 300),
            space: b(0, 2200),
            flightWidth: b(650, 1100),
            headroom: b(1850, 2300),
            rise: b(150, 230),
            going: b(200, 310),
            ceiling: b(2000, 2900),
            end: n % 2 === 0 ? 'foot' : 'head',
          },
          pieceOf(b),
        ),
      ),
    ),
];

const routes: Probe = [
  'routes',
  () =>
    scenes(70, (_, n) => {
      const { rows, piece } = randomRoute(n + 1);
      const book = stageBook(5, 0);
      const { verdict, clearance = NOTHING } = judgeRoute(
        prepareRoute(rows.map(stageRow), book),
        piece,
        book,
        25,
      ).finding;
      return {
        shown: [finite(clearance), -verdictRank(verdict)],
        proved: [verdict === 'cannot go' ? 0 : 1],
      };
    }),
];

/** By room. */
export const PROBES: Readonly<Record<string, readonly Probe[]>> = {
  geometry: [...closed, facing, ...proofs, ...deep, planar],
  route: [routes],
  joint: [routes],
  space: [routes, ...closed],
};
