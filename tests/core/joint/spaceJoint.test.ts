import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import { spaceJoint } from '../../../src/core/joint/spaceJoint';
import { sortedPiece } from '../../../src/core/measures/piece';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';

const SCENES = Number(process.env['SCENES'] ?? 0);

describe('rows that stand close, searched in space', () => {
  test('what it finds is free by the independent replay, and begins and ends where the block does', () => {
    const next = seeded(808);
    let found = 0;
    for (let i = 0; found < (SCENES || 4) && i < 60; i++) {
      const flight: JointRow = {
        stage: 'flight',
        way: next() < 0.5 ? 'up' : 'down',
        measures: {
          width: 800 + 200 * next(),
          height: 2000 + 200 * next(),
          rise: 170 + 30 * next(),
          going: 220 + 40 * next(),
          risers: 12,
          footCeiling: 2400,
          headCeiling: 2400,
        },
      };
      const turn: JointRow =
        next() < 0.5
          ? {
              stage: 'corner',
              hand: next() < 0.5 ? 'left' : 'right',
              measures: { width: 1000, widthOut: 1100, height: 2400 },
            }
          : {
              stage: 'side door',
              hand: next() < 0.5 ? 'left' : 'right',
              measures: { width: 800, height: 2000, wall: 110, widthOut: 1000, ceiling: 2400, depth: 200 },
            };
      const block: JointBlock = {
        rows: [flight, turn],
        before: 'straight',
        after: next() < 0.5 ? 'open' : 'straight',
      };
      const piece = sortedPiece(1200 + 600 * next(), 250 + 200 * next(), 30 + 60 * next());
      for (const passage of spaceJoint(block, piece, { atLeast: 10, enough: 10, from: ['LB'] }) ?? []) {
        found++;
        const shown = passage.shown()!;
        const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding, step: 20 });
        expect({ i, worstPenetration }).toEqual({ i, worstPenetration: 0 });
        // It lies wholly on the flight, and at last beyond the turn.
        expect(shown.motion[0]!.at[0]).toBeLessThan(12 * 260 - piece.length / 2);
        const last = shown.motion[shown.motion.length - 1]!.at;
        expect(Math.abs(last[1])).toBeGreaterThan(500);
      }
    }
    expect(found).toBeGreaterThanOrEqual(SCENES || 4);
  });

  test('no chance: the same answer again', () => {
    const rows: JointRow[] = [
      { stage: 'corner', hand: 'left', measures: { width: 1000, widthOut: 1000, height: 2400 } },
      { stage: 'corner', hand: 'right', measures: { width: 1000, widthOut: 1000, height: 2400 } },
    ];
    const block: JointBlock = { rows, before: 'straight', after: 'straight' };
    const answers = [0, 1].map(() =>
      spaceJoint(block, sortedPiece(800, 400, 100), { atLeast: 0, enough: 20 }),
    );
    expect(answers[0]!.length).toBeGreaterThan(0);
    expect(answers[0]!.map((p) => p.answer)).toEqual(answers[1]!.map((p) => p.answer));
  });
});
