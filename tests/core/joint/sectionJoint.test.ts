import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import { sectionJoint } from '../../../src/core/joint/sectionJoint';
import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { facingDoorFit } from '../../../src/core/stages/facingDoor/facingDoorFit';
import { block } from '../../support/jointBlock';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';
import { FRONT_STAIR } from '../../support/stairs';

const SCENES = Number(process.env['SCENES'] ?? 0);

/** The passages, each drawn and replayed in its scene. */
function replayed(given: JointBlock, piece: PieceSize, ask: Parameters<typeof sectionJoint>[2] = {}) {
  const passages = sectionJoint(given, piece, ask) ?? [];
  for (const passage of passages) {
    const shown = passage.shown();
    expect(shown).toBeDefined();
    if (!shown) continue;
    expect(shown.motionPadding).toBeGreaterThanOrEqual(passage.answer.clearance - 1e-9);
    const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding - 0.01, step: 20 });
    expect(worstPenetration).toBe(0);
  }
  return passages;
}

describe('rows in one line with a stair, seen from the side', () => {
  test.each(['up', 'down'] as const)(
    'a door that faces a stair, walked %s, leaves at least what the closed form does',
    (way) => {
      const next = seeded(way === 'up' ? 41 : 43);
      let compared = 0;
      for (let i = 0; compared < (SCENES || 4) && i < 5000; i++) {
        const end = next() < 0.5 ? 'foot' : 'head';
        const rise = 160 + 60 * next();
        const going = 210 + 80 * next();
        const headroom = 1900 + 300 * next();
        // Where the ceiling over the head is the lower of the two, or the flight's line reaches over the foot, models differ.
        const ceiling = headroom + rise + 10 + 400 * next();
        const space = 300 + 1500 * next();
        const doorHeight = 1900 + 200 * next();
        const piece = sortedPiece(1300 + 1200 * next(), 400 + 600 * next(), 20);
        const measures = {
          width: 900,
          height: headroom,
          rise,
          going,
          risers: 14,
          ...(end === 'foot'
            ? { footSpace: space, footCeiling: ceiling }
            : { headSpace: space, headCeiling: ceiling }),
        };
        const door: JointRow = { stage: 'door', measures: { width: 800, height: doorHeight, wall: 110 } };
        const flight: JointRow = { stage: 'flight', way, measures };
        const doorFirst = (end === 'foot') === (way === 'up');
        const given = doorFirst
          ? block([door, flight], { before: 'open' })
          : block([flight, door], { after: 'open' });
        const fit = facingDoorFit(
          {
            doorWidth: 800,
            doorHeight,
            wallThickness: 110,
            space,
            flightWidth: 900,
            headroom,
            rise,
            going,
            ceiling,
            end,
          },
          piece.length,
          piece.breadth,
        ).clearance;
        if (fit < 3 || fit > 250) continue;
        compared++;
        const level = replayed(given, piece, { from: ['LB'], atLeast: fit - 3, enough: fit + 30 }).filter(
          ({ answer }) => answer.pose === 'on edge',
        );
        expect(level.length).toBe(1);
        expect(level[0]!.answer.clearance).toBeGreaterThan(fit - 3.001);
      }
      expect(compared).toBe(SCENES || 4);
    },
  );

  test('seeded lines of rows: every motion is free by the independent replay', () => {
    const next = seeded(1618);
    let drawn = 0;
    for (let i = 0; drawn < (SCENES || 8) && i < 200; i++) {
      const width = () => 700 + 300 * next();
      const headroom = 1900 + 300 * next();
      const passage = (): JointRow => ({
        stage: 'passage',
        place: next(),
        measures: { width: width(), height: headroom + 300 * next(), length: 300 + 2500 * next() },
      });
      const door = (): JointRow => ({
        stage: 'door',
        place: next(),
        measures: { width: width(), height: 1900 + 250 * next(), wall: 60 + 100 * next() },
      });
      const flight = (): JointRow => ({
        stage: 'flight',
        way: next() < 0.5 ? 'up' : 'down',
        place: next(),
        measures: {
          width: width(),
          height: headroom,
          rise: 150 + 70 * next(),
          going: 200 + 100 * next(),
          risers: 2 + Math.floor(13 * next()),
          footCeiling: headroom + 500 * next(),
          headCeiling: headroom + 300 * next(),
          footSpace: 400 + 1200 * next(),
          headSpace: 400 + 1200 * next(),
        },
      });
      const lines = [
        () => [door(), flight(), door()],
        () => [passage(), flight(), passage(), door()],
        () => [door(), passage(), flight(), passage()],
        () => [passage(), door(), flight(), passage(), flight(), passage()],
      ];
      const rows = lines[i % lines.length]!();
      const piece = sortedPiece(1000 + 1200 * next(), 250 + 600 * next(), 20 + 200 * next());
      const given = block(rows, {
        before: next() < 0.5 ? 'open' : 'straight',
        after: next() < 0.5 ? 'open' : 'straight',
      });
      drawn += replayed(given, piece, { from: ['LB', 'LT'], atLeast: 0, enough: 40 }).length;
    }
    expect(drawn).toBeGreaterThanOrEqual(SCENES || 8);
  });

  // Through the open front door and up the stair, as every crew does it: an independent planner takes it with 25 mm of
  // padding (checked outside the project).
  test('the slate goes in at the front door, up the stair and into the room', () => {
    const rows: JointRow[] = [
      { stage: 'door', measures: { width: 770, height: 1981, wall: 110 } },
      {
        stage: 'flight',
        way: 'up',
        measures: {
          ...FRONT_STAIR,
          footSpace: 950,
          headCeiling: 2400,
          headSpace: 3500,
        },
      },
      { stage: 'passage', measures: { width: 900, height: 2400, length: 3500 } },
      { stage: 'door', measures: { width: 770, height: 1981, wall: 110 } },
      { stage: 'room', measures: { length: 4000, width: 4000, height: 2400 } },
    ];
    const passages = replayed(block(rows, { before: 'open' }), sortedPiece(1830, 930, 25), {
      atLeast: 25,
      enough: 30,
    });
    expect(passages.some(({ from }) => from === 'LB')).toBe(true);
    const [first] = passages;
    // It begins outside, before the door's plane, and ends one storey up.
    const motion = first!.shown()!.motion;
    expect(motion[0]!.at[0]).toBeLessThan(-915);
    expect(motion[motion.length - 1]!.at[2]).toBeGreaterThan(13 * 200);
  });

  test('three steps between low passages: a long panel is carried over them level', () => {
    const rows: JointRow[] = [
      { stage: 'passage', measures: { width: 900, height: 1500, length: 4000 } },
      {
        stage: 'flight',
        way: 'up',
        measures: {
          width: 900,
          height: 1500,
          rise: 170,
          going: 260,
          risers: 3,
          footCeiling: 1500,
          headCeiling: 1500,
        },
      },
      { stage: 'passage', measures: { width: 900, height: 1500, length: 4000 } },
    ];
    // Level over the three steps it needs its own height and theirs: 900 + 510 + 2c <= 1500 at the least.
    const passages = replayed(block(rows), sortedPiece(3000, 900, 40), { from: ['LB'], atLeast: 0 });
    expect(passages[0]!.answer.clearance).toBeGreaterThanOrEqual((1500 - 900 - 510) / 2 - 2.1);
  });

  test('a head too low for it stops it, and a turn is not its business', () => {
    const rows: JointRow[] = [
      { stage: 'door', measures: { width: 770, height: 900, wall: 110 } },
      {
        stage: 'flight',
        way: 'up',
        measures: {
          ...FRONT_STAIR,
          footSpace: 950,
        },
      },
    ];
    expect(
      sectionJoint(block(rows, { before: 'open' }), sortedPiece(1830, 930, 925), { atLeast: 0 }),
    ).toEqual([]);
    const corner: JointRow = {
      stage: 'corner',
      hand: 'left',
      measures: { width: 900, widthOut: 900, height: 2400 },
    };
    expect(sectionJoint(block([...rows, corner]), sortedPiece(1830, 930, 25))).toBeUndefined();
  });
});
