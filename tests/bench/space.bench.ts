import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ladderAtMost } from '../../src/core/geometry/proofs/ladderAtMost';
import { yawCutAtMost } from '../../src/core/geometry/proofs/yawCutAtMost';
import { findMotion } from '../../src/core/space/findMotion';
import { readScene, type SceneFile } from '../../src/core/space/readScene';
import { halfLandingAnswer } from '../../src/core/stages/halfLanding';
import { quarterLandingAnswer } from '../../src/core/stages/quarterLanding';
import { winderAnswer } from '../../src/core/stages/winder';
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
          const ladder = ladderAtMost(width, width, 1000, 90, SLAB);
          const atMost = Math.min(ladder, yawCutAtMost(width, width, 1000, 90, SLAB));
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
      figure: timed(() => winderAnswer({ ...flight, width: 850, turn: 90 }, SLAB)),
      unit: 'ms',
      goal: 1000,
    },
  );
  return figures;
}
