import { CONDITIONS } from '../../geometry/proofs/conditions';
import { bracket } from '../../geometry/rootFinding';
import { passageNeeded } from '../../geometry/doorIntoPassage';
import type { PieceSize } from '../../measures/piece';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import type { SideDoorMeasures } from './sideDoorMeasures';

/**
 * Greatest padding with which a box can come out of a door into a passage by any motion whatever: it passes
 * the door, and the cross-section of the passage; and under one flat ceiling H, over the approach too, its
 * longest diagonal D never shows less than sqrt(D^2 - H^2) in plan, so that a rod of that length has to come
 * out. For a rod longer than the door is wide `passageNeeded` is necessary: it has to leave the approach at
 * an angle at which it fits beside the near jamb, and from there on the form holds at every angle down to
 * one at which it stands in the passage.
 * @source section of a box; ladder under a ceiling; passageNeeded with no thickness; rounded outward
 */
export function sideDoorAtMost(measures: SideDoorMeasures, piece: PieceSize): ProvedBound {
  const { doorWidth, doorHeight, wallThickness, passageWidth, ceiling } = measures;
  const door = openingAtMost({ width: doorWidth, height: doorHeight }, piece, 'the door');
  const passage = openingAtMost({ width: passageWidth, height: ceiling }, piece, 'the passage');
  let best = door.atMost <= passage.atMost ? door : passage;
  const plan = {
    door: doorWidth,
    wall: wallThickness,
    approach: Math.max(doorWidth, measures.approachWidth ?? doorWidth),
    passage: passageWidth,
  };
  const { length, breadth, thickness } = piece;
  // Both sides of the comparison err by far less than this [mm].
  const OUTWARD = 1e-5;
  const blocked = (c: number): boolean => {
    const l = Math.max(0, length + 2 * c);
    const b = Math.max(0, breadth + 2 * c);
    const t = Math.max(0, thickness + 2 * c);
    const rod = Math.sqrt(Math.max(0, l * l + b * b + t * t - ceiling * ceiling)) - OUTWARD;
    return rod > doorWidth && passageNeeded(rod, 0, plan) > passageWidth + OUTWARD;
  };
  if (blocked(best.atMost)) {
    const atMost = bracket(best.atMost, -length / 2, blocked, 1e-3).holds;
    best = {
      atMost,
      bound: CONDITIONS.outOfDoor,
    };
  }
  return best;
}
