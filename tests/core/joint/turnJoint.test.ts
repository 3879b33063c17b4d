import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import { solveJoint } from '../../../src/core/joint/solveJoint';
import { turnJoint } from '../../../src/core/joint/turnJoint';
import { sortedPiece } from '../../../src/core/measures/piece';
import { stairTurnAnswer } from '../../../src/core/stages/stairTurn/stairTurn';
import { block } from '../../support/jointBlock';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';
import { TURN_AT_HEAD } from '../../support/stairs';

const SCENES = Number(process.env['SCENES'] ?? 0);

function seededBlock(next: () => number): { readonly given: JointBlock; readonly stairFirst: boolean } {
  const w = () => 700 + 450 * next();
  const ceiling = 2150 + 350 * next();
  const hand = next() < 0.5 ? ('left' as const) : ('right' as const);
  const width = w();
  const stairFirst = next() < 0.5;
  const space = 1400 + 500 * next();
  const flight: JointRow = {
    stage: 'flight',
    way: next() < 0.5 ? 'up' : 'down',
    place: next(),
    measures: {
      width,
      height: 1950 + 250 * next(),
      rise: 155 + 60 * next(),
      going: 205 + 90 * next(),
      risers: 3 + Math.floor(12 * next()),
      footCeiling: ceiling,
      headCeiling: ceiling,
      ...(stairFirst && next() < 0.5 ? { footSpace: space, headSpace: space } : {}),
    },
  };
  const corner: JointRow = {
    stage: 'corner',
    hand,
    place: next(),
    measures: { width: w(), widthOut: w(), height: ceiling, ...(stairFirst ? {} : { run: 500 * next() }) },
  };
  const door: JointRow = {
    stage: 'side door',
    hand,
    measures: {
      width: 650 + 250 * next(),
      height: 1900 + 200 * next(),
      wall: 110,
      widthOut: width,
      ceiling,
      depth: 500 * next(),
    },
  };
  const passage: JointRow = {
    stage: 'passage',
    place: next(),
    measures: { width: w(), height: ceiling - 100 * next(), length: 1500 * next() },
  };
  const rows = stairFirst
    ? [flight, next() < 0.6 ? corner : door, ...(next() < 0.5 ? [passage] : [])]
    : [...(next() < 0.5 ? [passage] : []), corner, flight];
  return {
    given: block(rows, { [stairFirst ? 'after' : 'before']: next() < 0.3 ? 'open' : 'straight' }),
    stairFirst,
  };
}

describe('a turn at the end of a stair, as the rows stand', () => {
  test('seeded blocks: every motion is free in the one scene by the independent replay', () => {
    const next = seeded(299792);
    let [first, last] = [0, 0];
    for (let i = 0; Math.min(first, last) < (SCENES || 4) && i < 500; i++) {
      const { given, stairFirst } = seededBlock(next);
      const piece = sortedPiece(1200 + 1400 * next(), 250 + 600 * next(), 25 + 150 * next());
      const passages = turnJoint(given, piece, { atLeast: 0, enough: 60 }) ?? [];
      for (const passage of passages.slice(0, 2)) {
        const shown = passage.shown()!;
        expect(shown.motionPadding).toBeGreaterThanOrEqual(passage.answer.clearance - 1e-9);
        const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding, step: 25 });
        expect({ i, deep: worstPenetration > 0.11 ? worstPenetration : 0 }).toEqual({ i, deep: 0 });
        if (stairFirst) first++;
        else last++;
      }
    }
    expect(Math.min(first, last)).toBeGreaterThanOrEqual(SCENES || 4);
  });

  test('with the corner at the stair itself it is the function of that name', () => {
    const flight: JointRow = {
      stage: 'flight',
      way: 'up',
      measures: {
        ...TURN_AT_HEAD,
        headSpace: 1000,
      },
    };
    const corner: JointRow = {
      stage: 'corner',
      hand: 'left',
      measures: { width: 860, widthOut: 1000, height: 2400 },
    };
    const panel = sortedPiece(2640, 320, 40);
    const passages = turnJoint(block([flight, corner]), panel, { atLeast: 25 })!;
    const best = Math.max(...passages.map(({ answer }) => answer.clearance));
    const plan = {
      end: 'head' as const,
      flightWidth: 860,
      headroom: 2050,
      rise: 195,
      going: 240,
      straight: 0,
      passageWidth: 1000,
      ceiling: 2400,
      overRail: 0,
    };
    expect(best).toBeCloseTo(stairTurnAnswer(plan, panel).clearance, 0);
  });

  test('any of them: each block is solved by what deals with it, and a figure once enough ends the asking', () => {
    const panel = sortedPiece(2640, 320, 40);
    const flight = (more: JointRow['measures'] = {}): JointRow => ({
      stage: 'flight',
      way: 'up',
      measures: {
        ...TURN_AT_HEAD,
        footCeiling: 2400,
        ...more,
      },
    });
    const corner: JointRow = {
      stage: 'corner',
      hand: 'left',
      measures: { width: 860, widthOut: 1000, height: 2400 },
    };
    const side: JointRow = {
      stage: 'side door',
      hand: 'left',
      measures: { width: 760, height: 1981, wall: 110, widthOut: 860, ceiling: 2400, depth: 0 },
    };
    const door: JointRow = { stage: 'door', measures: { width: 770, height: 1981, wall: 110 } };
    const ask = { atLeast: 25, enough: 30, from: ['LB'] as const };
    const widest = (given: JointBlock): number =>
      Math.max(-Infinity, ...solveJoint(given, panel, ask).map(({ answer }) => answer.clearance));
    expect(widest(block([flight({ headSpace: 1000 }), corner]))).toBeGreaterThanOrEqual(25);
    expect(widest(block([flight({ headSpace: 1000 }), side], { after: 'open' }))).toBeGreaterThanOrEqual(25);
    expect(widest(block([door, flight({ footSpace: 950 })], { before: 'open' }))).toBeGreaterThanOrEqual(25);
    expect(
      widest(block([{ ...corner, measures: { width: 1600, widthOut: 1600, height: 2400 } }])),
    ).toBeGreaterThanOrEqual(25);
    expect(solveJoint(block([corner]), sortedPiece(4000, 900, 300), ask)).toEqual([]);
  });
});
