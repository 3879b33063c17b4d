import { radians } from '../../../../src/core/measures/angle';
import { sortedPiece } from '../../../../src/core/measures/piece';
import { centreCutBlocks } from '../../../../src/core/geometry/proofs/centreCutBlocks';
import { flightCutBlocks } from '../../../../src/core/geometry/proofs/flightCutBlocks';
import { halfLandingCutBlocks } from '../../../../src/core/geometry/proofs/halfLandingCutBlocks';
import { liftCutBlocks } from '../../../../src/core/geometry/proofs/liftCutBlocks';
import { quarterLandingCutBlocks } from '../../../../src/core/geometry/proofs/quarterLandingCutBlocks';
import { sideDoorCutBlocks } from '../../../../src/core/geometry/proofs/sideDoorCutBlocks';
import { winderCutBlocks } from '../../../../src/core/geometry/proofs/winderCutBlocks';
import { seededStream } from '../../../../src/core/space/seededStream';
import { WIDE_TURN } from '../../../../src/core/stages/winder/winder';

/*
 * What passes by a motion that needs no computation: a post carried upright down the middle of the way, a little lower
 * than the least height anywhere on it; on a flight a board on edge along the pitch. No proof may refuse it, whatever
 * the measures. The ways are narrow, so that it may not lean for want of height: a floor or a ceiling a few steps off
 * is seen.
 */

const next = seededStream(51);
const between = (lo: number, hi: number): number => lo + (hi - lo) * next();
const post = (height: number) => sortedPiece(height, 10, 8);
/** A proof gives up where its cells run out: then it says nothing, and is no test. */
const SCENES = Array.from({ length: 40 }, (_, n) => n);

const stair = () => ({ headroom: between(1850, 2300), rise: between(150, 220), going: between(210, 300) });
/**
 * Over any place of 10 mm on a stair, so far from the inner edge, the tread is at most a rise above the line of nosings behind it, and the ceiling the
 * headroom above that line, or one rise less just beyond a nosing.
 */
const onStairs = ({ headroom, rise }: { headroom: number; rise: number }): number => headroom - 2 * rise;

test('no cut refuses a post on winding treads', () => {
  for (const n of SCENES) {
    const m = stair();
    const width = between(160, 300);
    const turn = radians(between(90, 180));
    const slope = m.rise / m.going;
    const built = {
      width,
      widthOut: n % 3 ? width : between(160, 300),
      headroom: m.headroom,
      rise: [m.rise, m.rise],
      slope: [slope, slope],
      turn,
      treads: Math.round(between(2, 6)),
      facingWall: turn > WIDE_TURN,
      lowerOpen: n % 4 === 0,
    } as const;
    expect({ n, built, refused: winderCutBlocks(built, post(onStairs(m))) }).toMatchObject({
      refused: false,
    });
  }
});

test('no cut refuses a post on a flight with low ceilings at its ends, or a board on edge along the pitch', () => {
  for (const n of SCENES) {
    const m = stair();
    const ends = {
      footCeiling: between(1850, 2400),
      headCeiling: between(1850, 2400),
      footSpace: between(100, 1500),
      headSpace: between(100, 1500),
    };
    const built = { ...m, width: between(500, 1000), risers: Math.round(between(2, 15)) };
    const height = onStairs({ ...m, headroom: Math.min(m.headroom, ends.footCeiling, ends.headCeiling) });
    expect({ n, refused: flightCutBlocks({ ...built, ...ends }, post(height)) }).toMatchObject({
      refused: false,
    });
    const open = { footCeiling: Infinity, headCeiling: Infinity, footSpace: Infinity, headSpace: Infinity };
    const square = m.headroom * Math.cos(Math.atan2(m.rise, m.going));
    const board = sortedPiece(between(1800, 3000), square - 1, 20);
    const long = { ...built, risers: 40 };
    expect({ n, refused: flightCutBlocks({ ...long, ...open }, board) }).toMatchObject({ refused: false });
  }
});

test('no cut refuses a post on a landing', () => {
  for (const n of SCENES) {
    const m = stair();
    const landingCeiling = between(1850, 2500);
    const height = onStairs({ ...m, headroom: Math.min(m.headroom, landingCeiling + m.rise) });
    const built = {
      ...m,
      landingCeiling,
      slope: [m.rise / m.going, m.rise / m.going] as const,
      lowerOpen: n % 4 === 0,
    };
    const flightWidth = between(160, 300);
    const well = n % 3 ? between(0, 300) : 0;
    const half = { ...built, flightWidth, well, landingDepth: between(160, 300) };
    const spine = [flightWidth, flightWidth + well] as const;
    const quarter = { ...built, widthIn: flightWidth, widthOut: between(160, 300) };
    expect({
      n,
      half: halfLandingCutBlocks({ ...half, spine }, post(height)),
      quarter: quarterLandingCutBlocks(quarter, post(height)),
    }).toMatchObject({ half: false, quarter: false });
  }
});

test('no cut refuses a post at a corner, out of a side door or into a lift', () => {
  for (const n of SCENES) {
    const [ceiling, doorHeight] = [between(1900, 2600), between(1800, 2300)];
    const least = Math.min(ceiling, doorHeight) - 1;
    const [widthIn, widthOut, doorWidth] = [between(400, 1300), between(400, 1300), between(400, 1000)];
    const turn = radians(n % 2 ? 90 : between(20, 160));
    const door = {
      doorWidth,
      doorHeight,
      wallThickness: n % 5 ? between(20, 400) : 0,
      passageWidth: widthOut,
      ceiling,
    };
    const approachWidth = n % 3 ? doorWidth : between(1000, 2000);
    const lift = { doorWidth, doorHeight, carWidth: widthIn, carDepth: widthOut, carHeight: ceiling };
    expect({
      n,
      corner: centreCutBlocks({ widthIn, widthOut, ceiling, turn }, post(ceiling - 1)),
      door: sideDoorCutBlocks({ ...door, approachWidth }, post(least)),
      lift: liftCutBlocks(lift, post(least)),
    }).toMatchObject({ corner: false, door: false, lift: false });
  }
});
