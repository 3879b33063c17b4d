import { radians } from '../../measures/angle';
import { rotate } from '../../space/quaternion';
import type { Ground, PlanSide } from '../../space/raiseOfMotion';
import { windingGrounds } from '../../stages/winder/winder';
import { treadsInTurn } from '../../stages/winder/winder';
import type { Placing } from './frame';
import type { PlacedRoute, PlacedRow, PlacedSolid } from './placedRoute';

/** What is below a piece on its way through placed rows: floors, lines of nosings, winding treads. */
export const groundsOf = ({ rows, solids }: PlacedRoute): Ground[] => [
  ...solids.filter(({ part }) => part === 'floor' || part === 'ground').map(topOf),
  ...rows.flatMap(onStair),
];

/** The upper face of a level slab, which may be turned about the plumb line. */
function topOf({ box: { centre, size, turn } }: PlacedSolid): Ground {
  const sides = [[1, 0] as const, [0, 1] as const].flatMap(([x, y]): PlanSide[] => {
    const [dx, dy] = rotate(turn, [x, y, 0]);
    const half = (x === 1 ? size[0] : size[1]) / 2;
    const at = dx * centre[0] + dy * centre[1];
    return [
      { x: dx, y: dy, from: at - half },
      { x: -dx, y: -dy, from: -at - half },
    ];
  });
  return { height: centre[2] + size[2] / 2, alongX: 0, alongY: 0, within: sides };
}

function onStair({ joint, placing }: PlacedRow): Ground[] {
  const { width = 0, rise = 1, going = 1, risers = 1, turn = 90, widthOut = width } = joint.measures;
  if (joint.stage === 'winder') {
    const treads = joint.measures.treads ?? treadsInTurn(radians(turn));
    const nosings: Ground = {
      ...{ height: rise, alongX: rise / going, alongY: 0 },
      within: rectangle(-going, 0, -width, 0),
    };
    const wedges = windingGrounds(radians(turn), treads, rise).map((ground) => ({
      ...ground,
      within: [...ground.within, ...withinOuterWalls(radians(turn), width, widthOut)],
    }));
    return [nosings, ...wedges].map((ground) => placedGround(placing, ground));
  }
  if (joint.stage !== 'flight' || risers < 2) return [];
  const nosings: Ground = {
    ...{ height: rise, alongX: rise / going, alongY: 0 },
    within: rectangle(0, (risers - 1) * going, -width / 2, width / 2),
  };
  return [placedGround(placing, nosings)];
}

const rectangle = (x0: number, x1: number, y0: number, y1: number): PlanSide[] => [
  { x: 1, y: 0, from: x0 },
  { x: -1, y: 0, from: -x1 },
  { x: 0, y: 1, from: y0 },
  { x: 0, y: -1, from: -y1 },
];

/** Up to the outer wall of the lower flight, and to that of the upper one. */
const withinOuterWalls = (turn: number, width: number, widthOut: number): PlanSide[] => [
  { x: 0, y: 1, from: -width },
  { x: -Math.sin(turn), y: Math.cos(turn), from: -widthOut },
];

/** A ground in other coordinates. */
function placedGround({ mirrored, turn, shift }: Placing, ground: Ground): Ground {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = (x: number, own: number): readonly [number, number] => {
    const y = mirrored ? -own : own;
    return [c * x - s * y, s * x + c * y];
  };
  const [alongX, alongY] = turned(ground.alongX, ground.alongY);
  return {
    height: ground.height + shift[2] - alongX * shift[0] - alongY * shift[1],
    alongX,
    alongY,
    within: ground.within.map((side) => {
      const [x, y] = turned(side.x, side.y);
      return { x, y, from: side.from + x * shift[0] + y * shift[1] };
    }),
  };
}
