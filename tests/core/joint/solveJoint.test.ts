import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import { planJoint } from '../../../src/core/joint/planJoint';
import { solveJoint } from '../../../src/core/joint/solveJoint';
import { turnJoint } from '../../../src/core/joint/turnJoint';
import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';

const SCENES = Number(process.env['SCENES'] ?? 0);

/** Rows of every kind with measures as odd as they may be, absent ones among them. */
function seededRow(next: () => number): JointRow {
  const one = <T>(values: readonly T[]): T => values[Math.floor(next() * values.length)]!;
  const w = () => one([500, 650, 800, 900, 1050, 1400, 3000]) * (0.9 + 0.2 * next());
  const h = () => one([600, 1200, 1900, 2100, 2400, 3000]);
  const maybe = <T extends object>(more: T): T | object => (next() < 0.5 ? more : {});
  const place = next() < 0.5 ? { place: one([0, 0.3, 1]) } : {};
  const hand = { hand: one(['left', 'right'] as const) };
  switch (one(['door', 'passage', 'corner', 'side door', 'flight', 'room'] as const)) {
    case 'door':
      return {
        stage: 'door',
        ...place,
        measures: { width: w(), height: h(), ...maybe({ wall: one([0, 100, 300]) }) },
      };
    case 'passage':
      return {
        stage: 'passage',
        ...place,
        measures: { width: w(), height: h(), length: one([0, 50, 300, 1500, 5000]) },
      };
    case 'corner':
      return {
        stage: 'corner',
        ...hand,
        ...place,
        measures: {
          width: w(),
          widthOut: w(),
          height: h(),
          turn: one([90, 90, 90, 30, 60, 120]),
          ...maybe({ run: one([0, 50, 700]) }),
        },
      };
    case 'side door':
      return {
        stage: 'side door',
        ...hand,
        ...place,
        measures: {
          width: w(),
          height: h(),
          wall: one([0, 110, 400]),
          widthOut: w(),
          ceiling: h(),
          ...maybe({ depth: one([0, 100, 2000]) }),
        },
      };
    case 'flight':
      return {
        stage: 'flight',
        way: one(['up', 'down'] as const),
        ...place,
        measures: {
          width: w(),
          height: h(),
          rise: one([150, 200, 250]),
          going: one([200, 250, 320]),
          risers: one([1, 2, 3, 8, 14]),
          ...maybe({ footCeiling: h() }),
          ...maybe({ headCeiling: h() }),
          ...maybe({ footSpace: one([0, 300, 900, 2500]) }),
          ...maybe({ headSpace: one([0, 300, 900, 2500]) }),
        },
      };
    case 'room':
      return { stage: 'room', measures: { length: 3 * w(), width: 3 * w(), height: h() } };
  }
}

function free(shown: ReturnType<ReturnType<typeof solveJoint>[number]['shown']>, piece: PieceSize): void {
  expect(shown).toBeDefined();
  if (!shown) return;
  const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding - 0.02, step: 30 });
  expect(worstPenetration).toBeLessThan(0.6);
}

test('blocks of rows as odd as they may be: nothing throws, and what is shown is free', () => {
  const next = seeded(1055);
  let shown = 0;
  for (let i = 0; i < (SCENES || 60); i++) {
    const rows = Array.from({ length: 1 + Math.floor(4 * next()) }, () => seededRow(next));
    const ends = () => (next() < 0.5 ? 'straight' : 'open');
    const block: JointBlock = { rows, before: ends(), after: ends() };
    const piece = sortedPiece(500 + 2100 * next(), 200 + 700 * next(), 5 + 295 * next());
    const [first] = solveJoint(block, piece, { atLeast: 0, enough: 30, from: ['LB'] });
    if (!first) continue;
    shown++;
    free(first.shown(), piece);
  }
  expect(shown).toBeGreaterThan((SCENES || 60) / 4);
});

test('walls as thin as a face, turned a quarter, hold from outdoors', () => {
  const rows: JointRow[] = [
    { stage: 'door', measures: { width: 999.2, height: 600, wall: 0 } },
    { stage: 'passage', place: 0, measures: { width: 915.9, height: 2100, length: 50 } },
    {
      stage: 'corner',
      hand: 'right',
      place: 0.3,
      measures: { width: 2827.9, widthOut: 878.6, height: 2100, run: 0 },
    },
    { stage: 'room', place: 1, measures: { length: 8465.2, width: 2275.7, height: 3000 } },
  ];
  const piece = sortedPiece(1900, 500, 40);
  const block: JointBlock = { rows, before: 'open', after: 'open' };
  for (const passage of planJoint(block, piece, { atLeast: 0, enough: 30, from: ['LB'] }) ?? [])
    free(passage.shown(), piece);
});

test('a ceiling at the foot lower than the headroom holds where the piece comes down under it', () => {
  const rows: JointRow[] = [
    {
      stage: 'flight',
      way: 'down',
      measures: { width: 1073, height: 1900, rise: 200, going: 250, risers: 3, footCeiling: 600 },
    },
    { stage: 'corner', hand: 'left', measures: { width: 1133, widthOut: 690, height: 3000 } },
  ];
  const piece = sortedPiece(500, 300, 200);
  const block: JointBlock = { rows, before: 'straight', after: 'straight' };
  for (const passage of turnJoint(block, piece, { atLeast: -20, enough: 30 }) ?? [])
    free(passage.shown(), piece);
});
