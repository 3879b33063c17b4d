import type { PieceSize } from '../../src/core/measures/piece';
import type { AnswerWithMotion } from '../../src/core/motion/stageAnswer';
import { block, type NamedBox } from '../../src/core/stages/landing/namedBoxes';
import { stairTurnWays } from '../../src/core/stages/stairTurn/stairTurn';
import { stairTurnMotion } from '../../src/core/stages/stairTurn/stairTurnMotion';
import type { StairTurnPlan } from '../../src/core/stages/stairTurn/turnedPlace';

/** How thick the line of nosings and the flight's ceiling are drawn [mm]: the ceiling would jut out over the floor. */
const THICK = 200;
const THIN = 0.5;

/** The best answer with its motion, from the flight into the passage, and the scene (`stairTurnMotion`). */
export function stairTurnWithMotion(
  plan: StairTurnPlan,
  piece: PieceSize,
): AnswerWithMotion & { readonly motionPadding: number } {
  const ways = stairTurnWays(plan, piece, 'best');
  const best = ways.reduce((one, other) =>
    other.passage.answer.clearance > one.passage.answer.clearance ? other : one,
  );
  const motionPadding = best.passage.answer.clearance;
  return {
    ...best.passage.answer,
    motion: stairTurnMotion(plan, piece, best.hold, best.fit),
    scene: stairTurnScene(plan, piece).map(({ box }) => box),
    motionPadding,
  };
}

/** The turn as boxes, in the motion's coordinates, long enough for the piece. */
function stairTurnScene(plan: StairTurnPlan, piece: PieceSize): NamedBox[] {
  const { end, flightWidth: w, passageWidth, straight, headroom, rise, going, ceiling, overRail } = plan;
  const depth = straight + passageWidth;
  const slope = rise / going;
  const reach = 2 * Math.hypot(piece.length, piece.breadth, piece.thickness) + 1500;
  const far = slope * reach + Math.max(headroom, ceiling) + rise + 1000;
  const open = overRail > 0;
  const side = open ? w + reach : w;
  const up = end === 'foot';
  const first = up ? rise : 0;
  const boxes: NamedBox[] = [
    block('the floor', [0, -200, -200], [depth + 200, w + reach, 0]),
    block('the ceiling over the floor', [0, -200, ceiling], [depth + 200, w + reach, ceiling + 1000]),
    block('the outer wall', [-reach, -200, -far], [depth + 200, 0, far]),
    block('the wall facing the flight', [depth, -200, -far], [depth + 200, w + reach, far]),
    plate('the nosings of the flight', first, up ? -slope : slope, -THICK, reach, side),
    plate('the ceiling over the flight', first + headroom, up ? -slope : slope, THIN, reach, side),
    block('the ceiling over the flight', [-1, 0, first + headroom + (up ? slope : 0)], [0, side, far]),
  ];
  const { passageCeiling = ceiling } = plan;
  if (passageCeiling < ceiling) {
    boxes.push(block('the head of the way on', [straight, w, passageCeiling], [depth, w + reach, ceiling]));
  }
  if (up) boxes.push(block('the first riser', [-1, 0, -far], [0, side, rise]));
  if (open) {
    const top = up ? first + overRail : overRail;
    // Steps of a rail that rises with the flight; level over one that falls.
    const count = up ? 40 : 1;
    for (let i = 0; i < count; i++) {
      const [from, to] = [(-reach * (i + 1)) / count, (-reach * i) / count];
      const height = up ? top + slope * ((reach * i) / count) : top;
      boxes.push(block('the handrail', [from, w, -far], [to, w + reach, height]));
    }
    if (straight > 0) boxes.push(block('the handrail', [0, w, -far], [straight, w + reach, top]));
  } else boxes.push(block('the inner corner', [-reach, w, -far], [straight, w + reach, far]));
  return boxes;
}

/** A plate over the flight, x < 0, one face on the line through (0, height), as thick as said on its other side, upward. */
function plate(
  name: string,
  height: number,
  slope: number,
  thick: number,
  reach: number,
  side: number,
): NamedBox {
  const angle = Math.atan(slope);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const long = reach / c;
  return {
    name,
    box: {
      centre: [-reach / 2 - (s * thick) / 2, side / 2, height - (slope * reach) / 2 + (c * thick) / 2],
      size: [long, side, Math.abs(thick)],
      turn: [Math.cos(angle / 2), 0, -Math.sin(angle / 2), 0],
    },
  };
}
