import { yawCutAtMost } from '../support/cutsAtMost';
import { RIGHT_ANGLE } from '../../src/core/measures/angle';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { centreCutBlocks } from '../../src/core/geometry/proofs/centreCutBlocks';
import { halfLandingCutBlocks } from '../../src/core/geometry/proofs/halfLandingCutBlocks';
import { ladderAtMost } from '../../src/core/geometry/proofs/ladderAtMost';
import { quarterLandingCutBlocks } from '../../src/core/geometry/proofs/quarterLandingCutBlocks';
import { findMotion } from '../../src/core/space/findMotion';
import { readScene, type SceneFile } from '../support/readScene';
import { halfLandingAnswer } from '../../src/core/stages/landing/halfLanding';
import { quarterLandingAnswer } from '../../src/core/stages/landing/quarterLanding';
import { widestMotion } from '../../src/core/stages/landing/landingPassages';
import { winderStage } from '../../src/core/stages/winder/winder';
import { sortedPiece } from '../../src/core/measures/piece';
import { halfOf, seededStair } from '../support/seededStair';
import type { Figure } from './figure';
import { seeded } from './seeded';

const SEEDS = 10;
/** Seeded cells of each kind. */
const CELLS = 60;
const SEED = 20261127;
/** Places looked at for one try: about the 10 s that the recorded planners had is 10 million. */
const WORK = 3_000_000;
const SLAB = { length: 1830, breadth: 930, thickness: 25 };
/** Critical width [mm] of the scenes' corner for the level slab. */
const CRITICAL = 664.6802;

const median = (xs: number[]): number => xs.sort((a, b) => a - b)[Math.floor(xs.length / 2)]!;

function timed(run: () => unknown): number {
  const from = performance.now();
  run();
  return performance.now() - from;
}

/** Width [mm] at which the crate's clearance by `corner` is 0 (regression only). */
const CRATE_CRITICAL = 530.33;

/** Scenes in space: median of ten seeds to a motion shown free on its whole way; and the proofs. */
export async function run(): Promise<Figure[]> {
  const figures: Figure[] = [];
  const goals: [string, number?][] = [
    ['corner-space-plus100', 20],
    ['corner-space-plus20', 20],
    ['half-landing-850', 50],
    ['half-landing-750', 100],
    ['half-landing-700', 500],
    ['half-landing-650', 2000],
    ['side-door-space'],
  ];
  for (const [name, goal] of goals) {
    const file = JSON.parse(
      readFileSync(path.join(__dirname, 'scenes', `${name}.json`), 'utf8'),
    ) as SceneFile;
    const task = readScene(file);
    let solved = 0;
    const times: number[] = [];
    for (let seed = 1; seed <= SEEDS; seed++) {
      times.push(
        timed(() => {
          if (findMotion(task, { work: WORK, seed }).motion !== null) solved++;
        }),
      );
    }
    const figure = {
      name: `${name}, motion found (${solved} of ${SEEDS} seeds)`,
      figure: median(times),
      unit: 'ms',
    };
    figures.push(goal === undefined ? figure : { ...figure, goal });
  }
  for (const below of [20, 100]) {
    const width = CRITICAL - below;
    let proved = 0;
    const times: number[] = [];
    for (let n = 0; n < SEEDS; n++) {
      times.push(
        timed(() => {
          const room = { widthIn: width, widthOut: width, ceiling: 1000, turn: RIGHT_ANGLE };
          const atMost = Math.min(ladderAtMost(room, SLAB), yawCutAtMost(room, SLAB));
          if (atMost < 0) proved++;
        }),
      );
    }
    figures.push({
      name: `corner ${below} mm below critical, ceiling 1000, proved impossible (${proved} of ${SEEDS})`,
      figure: median(times),
      unit: 'ms',
      goal: 20,
    });
  }
  figures.push(...centreCuts());
  figures.push(...cells());
  return figures;
}

/** Realistic landings and winding treads, one cell each, in processor time. */
function cells(): Figure[] {
  const next = seeded(SEED);
  const times: Record<string, number[]> = { 'half landing': [], 'quarter landing': [], winder: [] };
  for (let i = 0; i < CELLS; i++) {
    const drawn = seededStair(next, {
      ...{ width: [700, 350], other: [-50, 300], headroom: [1900, 450] },
      ...{ level: 0.4, notHigher: 0.4, lower: 0, higher: 600 },
    });
    const { width, stair, quarter } = drawn;
    const half = halfOf(drawn, next() < 0.5 ? 0 : 200 * next());
    const turn = RIGHT_ANGLE * (1 + Math.floor(2 * next()));
    const piece = sortedPiece(1400 + 1100 * next(), 700 + 550 * next(), 20 + 30 * next());
    times['half landing']?.push(processed(() => halfLandingAnswer(half, piece)));
    times['quarter landing']?.push(processed(() => quarterLandingAnswer(quarter, piece)));
    times['winder']?.push(processed(() => widestMotion(winderStage({ ...stair, width, turn }), piece)));
  }
  return Object.entries(times).flatMap(([name, all]) => {
    all.sort((a, b) => a - b);
    const share = (part: number): number =>
      all[Math.min(all.length - 1, Math.floor(part * all.length))] ?? NaN;
    return [
      { name: `${name}, ${CELLS} realistic cells: median`, figure: share(0.5), unit: 'ms', goal: 20 },
      { name: `${name}, ${CELLS} realistic cells: 9 of 10`, figure: share(0.9), unit: 'ms' },
      { name: `${name}, ${CELLS} realistic cells: worst`, figure: share(1), unit: 'ms', goal: 250 },
    ];
  });
}

/** Processor time of some work [ms]. */
function processed(work: () => unknown): number {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

/** The centre cut: a crate that may stand up, below the width at which it goes round on end; and landings. */
function centreCuts(): Figure[] {
  const crate = { length: 2000, breadth: 900, thickness: 300 };
  const board = { length: 2500, breadth: 1300, thickness: 30 };
  const stairs = { headroom: 2100, rise: 190, slope: [190 / 240, 190 / 240] as const, landingCeiling: 2100 };
  const corner = (width: number): boolean =>
    centreCutBlocks({ widthIn: width, widthOut: width, ceiling: 2400, turn: RIGHT_ANGLE }, crate);
  const half = { flightWidth: 700, well: 100, landingDepth: 700, spine: [700, 800] as const };
  const proofs: [string, () => boolean][] = [
    ['corner 2 mm below critical, the piece may stand up', () => corner(CRATE_CRITICAL - 2)],
    ['corner 20 mm below critical, the piece may stand up', () => corner(CRATE_CRITICAL - 20)],
    [
      'quarter landing 800 wide, 2500 x 1300 x 30',
      () => quarterLandingCutBlocks({ ...stairs, widthIn: 800, widthOut: 800 }, board),
    ],
    [
      'half landing 700 wide and deep, 2500 x 1300 x 30',
      () => halfLandingCutBlocks({ ...stairs, ...half }, board),
    ],
  ];
  return proofs.map(([name, proof]) => {
    let proved = 0;
    const times = Array.from({ length: SEEDS }, () => timed(() => void (proved += proof() ? 1 : 0)));
    return {
      name: `${name}, proved impossible by the centre cut (${proved} of ${SEEDS})`,
      figure: median(times),
      unit: 'ms',
    };
  });
}
