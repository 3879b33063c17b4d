import { paddedPiece, type PieceSize } from '../measures/piece';
import { turnOfAxes } from '../motion/attitude';
import { poseOfHold, sizesOfHold, type Hold } from '../motion/hold';
import { findMotion } from '../space/findMotion';
import type { KeyAttitude, Motion, SceneBox } from '../space/motion';
import { likeness, rotate } from '../space/quaternion';
import { centreAt, standBlock, type BlockEnd } from './blockEnds';
import { greatestShown } from './greatestShown';
import type { JointAsk, JointBlock, JointPassage } from './jointRow';
import { AXES, byAxis, type Vector } from '../space/vector';
import { closestAt } from '../motion/closest';

/** How it is held at both ends: as it mostly is where neither a plan nor a section is enough. */
const HOLDS: readonly Hold[] = ['LB', 'LT'];
/** Places that one search may look at: some 30 ms. */
const WORK = 25000;
/** How near the greatest padding has to be [mm]: each step is a search. */
const TOLERANCE = 10;
/** Padding that is of no more interest [mm a side]. */
const AMPLE = 120;
/** Kept off what it stands on at its ends [mm]. */
const OFF = 3;

/**
 * Rows that stand close, searched in space: for what is neither a plan nor a section nor a family. Any rows that can be
 * placed. The piece begins and ends in one way of being held; what lies between is found by a seeded search of bounded
 * work, and every move is certified over its whole way.
 *
 * Supposed: nothing but the block. That nothing is found proves nothing; and since it is a search, a larger space may
 * answer some mm less.
 */
export function spaceJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
  work: number = WORK,
): JointPassage[] | undefined {
  if (block.rows.length === 0) return undefined;
  const stood = standBlock(block, piece.length + 2 * AMPLE);
  const scene = [...stood.placed.solids.map(({ box }) => box), ...stood.closings];
  const { least, most } = boundsOf(scene, stood.ends);
  const [dx, dy, dz] = stood.origin;
  const passages: JointPassage[] = [];
  const lowestFloor = Math.min(
    ...stood.placed.placed.rows.flatMap(({ entry, exit }) => [entry.at[2], exit.at[2]]),
  );
  for (const hold of HOLDS) {
    if (ask.from && !ask.from.includes(hold)) continue;
    const ends = (padding: number): readonly [KeyAttitude, KeyAttitude] => [
      standing(stood.ends[0], piece, hold, padding, 'moved on'),
      standing(stood.ends[1], piece, hold, padding, 'moved on'),
    ];
    const find = (padding: number): Motion | undefined => {
      const padded = paddedPiece(piece, padding);
      if (Math.min(padded.length, padded.breadth, padded.thickness) <= 0) return undefined;
      const [start, goal] = ends(padding);
      const { motion } = findMotion({ piece, scene, least, most, start, goal }, { work, padding });
      if (!motion) return undefined;
      // Along a flight at an end it only slides.
      const [from, to] = stood.ends;
      const slid = (end: BlockEnd, key: KeyAttitude | undefined): Motion =>
        end.run > 0 && key ? [{ ...standing(end, piece, hold, padding, 'at the end'), turn: key.turn }] : [];
      const before = slid(from, motion[0]);
      const after = slid(to, motion[motion.length - 1]);
      return [...before, ...motion, ...after];
    };
    const shown = greatestShown({ tolerance: TOLERANCE, ...ask }, 0, AMPLE, find);
    if (!shown) continue;
    const answer = {
      clearance: shown.clearance,
      atMost: Infinity,
      pose: poseOfHold(hold),
      critical: closestAt('where the rows stand close', 'anything'),
      raise: raiseAtMost(paddedPiece(piece, shown.clearance), shown.by, lowestFloor),
    };
    passages.push({
      from: hold,
      to: hold,
      answer,
      shown: () => ({
        motion: shown.by.map(({ at, turn }) => ({ at: [at[0] - dx, at[1] - dy, at[2] - dz], turn })),
        scene: scene.map((box): SceneBox => ({
          ...box,
          centre: [box.centre[0] - dx, box.centre[1] - dy, box.centre[2] - dz],
        })),
        motionPadding: shown.clearance,
      }),
    });
  }
  return passages;
}

/**
 * More than how high a motion raises the padded piece above what is below it [mm]: its lowest corner above the lowest
 * floor, since what is below it is no lower. Between two places no corner is higher than the higher of them by more than
 * it turns.
 */
function raiseAtMost(piece: PieceSize, motion: Motion, lowestFloor: number): number {
  const radius = Math.hypot(piece.length, piece.breadth, piece.thickness) / 2;
  const lowest = ({ at, turn }: KeyAttitude): number =>
    at[2] -
    (piece.length * Math.abs(rotate(turn, [1, 0, 0])[2]) +
      piece.breadth * Math.abs(rotate(turn, [0, 1, 0])[2]) +
      piece.thickness * Math.abs(rotate(turn, [0, 0, 1])[2])) /
      2;
  let most = 0;
  motion.forEach((key, n) => {
    const before = motion[n - 1] ?? key;
    const turned = 2 * Math.acos(Math.min(1, Math.abs(likeness(key.turn, before.turn))));
    most = Math.max(most, Math.max(lowest(key), lowest(before)) + (turned * radius) / 2 - lowestFloor);
  });
  return most;
}

/** The piece at an end, just off what it rests on. */
function standing(
  end: BlockEnd,
  piece: PieceSize,
  hold: Hold,
  padding: number,
  moved: 'at the end' | 'moved on',
): KeyAttitude {
  const sizes = sizesOfHold(piece, hold);
  const [h, p] = [end.heading, end.pitch];
  const [ch, sh, cp, sp] = [Math.cos(h), Math.sin(h), Math.cos(p), Math.sin(p)];
  return {
    at: centreAt(end, sizes.along + 2 * padding, sizes.upright + 2 * (padding + OFF), moved),
    turn: turnOfAxes(hold, [ch * cp, sh * cp, sp], [-sh, ch, 0], [-ch * sp, -sh * sp, cp]),
  };
}

/** Where the centre may be: among what stands there, and where it begins and ends. */
function boundsOf(scene: readonly SceneBox[], ends: readonly BlockEnd[]) {
  const least: [number, number, number] = [Infinity, Infinity, Infinity];
  const most: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const take = (point: Vector, half: Vector): void => {
    for (const k of AXES) {
      least[k] = Math.min(least[k], point[k] - half[k]);
      most[k] = Math.max(most[k], point[k] + half[k]);
    }
  };
  for (const { centre, size, turn } of scene) {
    // What is as large as open ground bounds nothing.
    if (Math.max(...size) > 9500) continue;
    const halves = AXES.map((axis) =>
      rotate(
        turn,
        byAxis((k) => (k === axis ? size[k] / 2 : 0)),
      ),
    );
    take(
      centre,
      byAxis((k) => halves.reduce((sum, half) => sum + Math.abs(half[k]), 0)),
    );
  }
  for (const { at } of ends) take(at, [3500, 1500, 3000]);
  return { least, most };
}
