import { yawCutAtMost } from '../../support/cutsAtMost';
import { radians, RIGHT_ANGLE } from '../../../src/core/measures/angle';
import { centreCutBlocks } from '../../../src/core/geometry/proofs/centreCutBlocks';
import { halfLandingCutBlocks } from '../../../src/core/geometry/proofs/halfLandingCutBlocks';
import { ladderAtMost } from '../../../src/core/geometry/proofs/ladderAtMost';
import { quarterLandingCutBlocks } from '../../../src/core/geometry/proofs/quarterLandingCutBlocks';
import { paddedPiece, sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { findMotion } from '../../../src/core/space/findMotion';
import { SpaceChecker } from '../../../src/core/space/spaceChecker';
import type { SpaceTask } from '../../../src/core/space/spaceTask';
import { seededStream } from '../../../src/core/space/seededStream';
import { halfLandingWithMotion } from '../../../src/core/stages/landing/halfLanding';
import { quarterLandingWithMotion } from '../../../src/core/stages/landing/quarterLanding';
import type { SceneBox } from '../../../src/core/space/motion';
import type { AnswerWithMotion } from '../../../src/core/motion/stageAnswer';
import { widestMotion } from '../../../src/core/stages/landing/landingPassages';
import { winderStage } from '../../../src/core/stages/winder/winder';
import { replay } from '../../support/replayMotion';

/** More with SCENES=2000 npx jest tests/core/space/contradictions */
const SCENES = Number(process.env['SCENES'] ?? 300);
/** Seeds of scenes that once showed a contradiction are tried first, always. */
const KEPT_SEEDS: readonly number[] = [];
const seeds = [...KEPT_SEEDS, ...Array.from({ length: SCENES }, (_, i) => 1000 + i)];

type Q = [number, number, number, number];

function cornerScene(widthIn: number, widthOut: number, ceiling: number): SceneBox[] {
  const turn: Q = [1, 0, 0, 0];
  const far = 6000;
  return [
    { centre: [-100, far / 2, ceiling / 2], size: [200, far + 400, ceiling + 400], turn },
    { centre: [far / 2, -100, ceiling / 2], size: [far + 400, 200, ceiling + 400], turn },
    { centre: [far / 2, far / 2, -100], size: [far + 400, far + 400, 200], turn },
    { centre: [far / 2, far / 2, ceiling + 100], size: [far + 400, far + 400, 200], turn },
    {
      centre: [(widthIn + far) / 2, (widthOut + far) / 2, ceiling / 2],
      size: [far - widthIn, far - widthOut, ceiling + 400],
      turn,
    },
  ];
}

describe('random corners under a ceiling', () => {
  test('what is proved impossible is passed by no search, and what a search passes collides nowhere', () => {
    let found = 0;
    let excluded = 0;
    for (const seed of seeds) {
      const next = seededStream(seed);
      const piece = sortedPiece(700 + 1300 * next(), 250 + 700 * next(), 15 + 120 * next());
      const widthIn = piece.thickness + 150 + 700 * next();
      const widthOut = piece.thickness + 150 + 700 * next();
      const ceiling = piece.breadth + 30 + 500 * next();
      const ladder = ladderAtMost({ widthIn, widthOut, ceiling, turn: RIGHT_ANGLE }, piece);
      const atMost = Math.min(
        ladder,
        seed % 4 === 0 ? yawCutAtMost({ widthIn, widthOut, ceiling, turn: RIGHT_ANGLE }, piece) : Infinity,
        centreCutBlocks({ widthIn, widthOut, ceiling, turn: RIGHT_ANGLE }, piece) ? -1 : Infinity,
      );
      const R = Math.SQRT1_2;
      const away = 6000 - piece.length;
      const task: SpaceTask = {
        piece,
        scene: cornerScene(widthIn, widthOut, ceiling),
        least: [0, 0, 0],
        most: [6000, 6000, ceiling],
        // On edge along y, then on edge along x.
        start: { at: [widthIn / 2, away, ceiling / 2], turn: [0.5, 0.5, 0.5, 0.5] },
        goal: { at: [away, widthOut / 2, ceiling / 2], turn: [R, R, 0, 0] },
      };
      const { motion } = findMotion(task, { work: 6000, seed });
      if (atMost < 0) excluded++;
      if (motion === null) continue;
      found++;
      // It begins as it was asked to, and not in an attitude that looks alike; and each move as it is written is shown.
      expect(motion[0]!.turn).toEqual(task.start.turn.map((v) => expect.closeTo(v, 9) as number));
      const checker = new SpaceChecker(task.scene);
      checker.hold(piece);
      motion.slice(1).forEach((to, k) => {
        const [x, y] = [motion[k]!, to].map(({ at, turn }) => Float64Array.of(...at, ...turn));
        expect([seed, k, checker.moveFree(x!, 0, y!, 0)]).toEqual([seed, k, true]);
      });
      const seen = replay({ motion, scene: task.scene }, piece, { step: 12 });
      if (seen.collides || atMost < 0)
        throw new Error(`contradiction at seed ${seed}: ${JSON.stringify({ seen, atMost })}`);
    }
    expect(found).toBeGreaterThan(seeds.length / 4);
    expect(excluded).toBeGreaterThan(seeds.length / 50);
  });
});

describe('random stairs', () => {
  const check = (
    seed: number,
    shown: AnswerWithMotion,
    piece: PieceSize,
    blocked: (p: PieceSize) => boolean = () => false,
  ): void => {
    expect(shown.clearance).toBeGreaterThanOrEqual(-piece.length / 2);
    expect(shown.atMost).toBeGreaterThanOrEqual(shown.clearance);
    if (shown.motion.length === 0) return;
    if (blocked(paddedPiece(piece, shown.clearance - 1e-6)))
      throw new Error(
        `contradiction at seed ${seed}: a motion with ${shown.clearance} mm is proved impossible`,
      );
    const seen = replay(shown, paddedPiece(piece, shown.clearance), { step: 12 });
    if (seen.collides) throw new Error(`contradiction at seed ${seed}: ${JSON.stringify(seen)}`);
    expect(shown.motion.length).toBeGreaterThan(2);
  };

  test('every motion claimed on landings and winders is replayed without contact', () => {
    for (const seed of seeds.slice(0, Math.max(9, SCENES / 33))) {
      const next = seededStream(seed);
      const piece = sortedPiece(700 + 1300 * next(), 250 + 700 * next(), 15 + 120 * next());
      const flight = { headroom: 1800 + 600 * next(), rise: 160 + 50 * next(), going: 210 + 80 * next() };
      const overRail = next() < 0.4 ? 900 : 0;
      const ceiling = next() < 0.5 ? {} : { landingCeiling: 1800 + 900 * next() };
      const width = 650 + 400 * next();
      const slope = [flight.rise / flight.going, flight.rise / flight.going] as const;
      const over = { ...flight, slope, landingCeiling: ceiling.landingCeiling ?? flight.headroom };
      if (seed % 3 === 0) {
        const measures = {
          ...flight,
          ...ceiling,
          flightWidth: width,
          well: 200 * next(),
          landingDepth: 650 + 400 * next(),
          overRail,
        };
        const spine = [width, width + measures.well] as const;
        check(
          seed,
          halfLandingWithMotion(measures, piece),
          piece,
          (p) => overRail === 0 && halfLandingCutBlocks({ ...measures, ...over, spine }, p),
        );
      } else if (seed % 3 === 1) {
        const measures = { ...flight, ...ceiling, widthIn: width, widthOut: 650 + 400 * next(), overRail };
        check(
          seed,
          quarterLandingWithMotion(measures, piece),
          piece,
          (p) => overRail === 0 && quarterLandingCutBlocks({ ...measures, ...over }, p),
        );
      } else {
        check(
          seed,
          widestMotion(
            winderStage({ ...flight, width, turn: radians([45, 60, 90, 180][(next() * 4) | 0]!) }),
            piece,
          ),
          piece,
        );
      }
    }
  });
});
