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
import type { Figure } from './figure';

const SEEDS = 10;
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
  const flight = { headroom: 2100, rise: 190, going: 240 };
  const half = {
    ...flight,
    flightWidth: 850,
    well: 100,
    landingDepth: 850,
    overRail: 0,
    landingCeiling: 2400,
  };
  const quarter = { ...flight, widthIn: 850, widthOut: 850, overRail: 0 };
  figures.push(
    {
      name: 'half landing, one cell',
      figure: timed(() => halfLandingAnswer(half, SLAB)),
      unit: 'ms',
      goal: 1000,
    },
    {
      name: 'quarter landing, one cell',
      figure: timed(() => quarterLandingAnswer(quarter, SLAB)),
      unit: 'ms',
      goal: 1000,
    },
    {
      name: 'winder, one cell',
      figure: timed(() => widestMotion(winderStage({ ...flight, width: 850, turn: RIGHT_ANGLE }), SLAB)),
      unit: 'ms',
      goal: 1000,
    },
  );
  return figures;
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
