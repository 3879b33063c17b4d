import { sizesOfHold } from '../core/motion/hold';
import { Paper, mmText } from './paper';
import { box, type Point, type Points } from './plane';
import { degreesText, placeRectangle, type DrawnPiece, type StageView } from './stageView';

export interface SideDoorDrawn {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly wall: number;
  readonly passage: number;
  readonly ceiling: number;
  /** From the jamb nearer the closed end to that end; absent: open both ways. */
  readonly deadEnd?: number | undefined;
}

const WALL = 90;

/**
 * A door into a passage across it, in plan: the door's opening from x = 0 to its width in the wall below
 * y = 0, the passage above it, the closed end, where there is one, to the left.
 */
export function sideDoorView(m: SideDoorDrawn, piece: DrawnPiece | undefined): StageView {
  const paper = new Paper();
  const sizes = piece
    ? sizesOfHold(piece.size, piece.answer.hold ?? (piece.answer.pose === 'flat' ? 'LT' : 'LB'))
    : undefined;
  const onEnd = piece?.answer.pose === 'on end';
  const p = piece && sizes ? (onEnd ? piece.size.breadth : Math.max(sizes.along, sizes.across)) : 0;
  const q = piece && sizes ? (onEnd ? piece.size.thickness : Math.min(sizes.along, sizes.across)) : 0;
  const place = piece ? placeInDoorway(m, p, q, piece.answer.clearance) : undefined;

  let right = m.doorWidth + Math.max(500, 0.6 * m.passage);
  let back = m.wall + 500;
  if (place) {
    const reachX = (p * Math.sin(place.angle) + q * Math.cos(place.angle)) / 2;
    const reachY = (p * Math.cos(place.angle) + q * Math.sin(place.angle)) / 2;
    right = Math.max(right, place.centre[0] + reachX + 150);
    back = Math.max(back, reachY - place.centre[1] + 150);
  }
  const left = m.deadEnd === undefined ? -600 : -m.deadEnd;
  const leftFace: Points = [
    [0, -back],
    [0, 0],
    [left, 0],
  ];
  const rightFace: Points = [
    [m.doorWidth, -back],
    [m.doorWidth, 0],
    [right, 0],
  ];
  const farFace: Points = [
    [left, m.passage],
    [right, m.passage],
  ];
  const faces = [leftFace, rightFace, farFace];
  paper.wall(box(left, -m.wall, 0, 0));
  paper.wall(box(-WALL, -back, 0, -m.wall));
  paper.wall(box(m.doorWidth, -m.wall, right, 0));
  paper.wall(box(m.doorWidth, -back, m.doorWidth + WALL, -m.wall));
  paper.wall(box(left, m.passage, right, m.passage + WALL));
  if (m.deadEnd !== undefined) {
    const end: Points = [
      [left, 0],
      [left, m.passage],
    ];
    paper.wall(box(left - WALL, -m.wall, left, m.passage + WALL));
    faces.push(end);
    paper.line(end, 'face');
    paper.dimension([left, m.passage + WALL], [0, m.passage + WALL], 14, 'dead end', m.deadEnd);
  }
  for (const face of [leftFace, rightFace, farFace]) paper.line(face, 'face');
  paper.dimension([m.doorWidth, -back], [0, -back], 14, 'door width', m.doorWidth);
  paper.dimension([right, m.passage], [right, 0], 14, 'passage width', m.passage);
  paper.dimension([right, 0], [right, -m.wall], 14, 'wall thickness', m.wall);
  paper.note(`Door ${mmText(m.doorHeight)} high, passage ${mmText(m.ceiling)}: not seen in plan`);

  const title = 'Plan of a door into a passage across it';
  if (!piece || !place) return { paper, title, place: '', faces };
  const outline = placeRectangle(
    paper,
    place.centre,
    p,
    q,
    Math.PI / 2 - place.angle,
    piece.answer.clearance,
    faces,
  );
  paper.dimension(outline[0], outline[3], q < 150 ? -14 : -8, '', p);
  return {
    paper,
    title,
    place: `The piece, ${mmText(p)} x ${mmText(q)} mm in plan, has its long side at ${degreesText(place.angle)} to the way in`,
    outline,
    faces,
  };
}

/**
 * The place in the doorway where a level p x q, turning towards the open end, needs most of the passage: its
 * lower side on the near jamb's edge, its tail on the far side of the door, its head deepest in the passage.
 * Padded by the clearance, so that all of these are equally far from the piece itself.
 */
function placeInDoorway(
  m: SideDoorDrawn,
  pieceLong: number,
  pieceShort: number,
  clearance: number,
): { centre: Point; angle: number } {
  const p = Math.max(0, pieceLong + 2 * clearance);
  const q = Math.max(0, pieceShort + 2 * clearance);
  let deepest = -Infinity;
  let best: { centre: Point; angle: number } = { centre: [m.doorWidth / 2, 0], angle: 0.01 };
  const STEPS = 360;
  for (let i = 1; i < STEPS; i++) {
    const angle = (i * Math.PI) / 2 / STEPS;
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    // The left side lies on X . n = side, n = (cos, -sin) to the right of the long side (sin, cos).
    const side = m.doorWidth * cos - q;
    const tail = -(side * cos) / sin;
    const tailDepth = -side * sin + tail * cos;
    if (tailDepth > 0) continue;
    const depth = -side * sin + (tail + p) * cos;
    if (depth <= deepest) continue;
    deepest = depth;
    const along = tail + p / 2;
    const across = side + q / 2;
    best = { centre: [across * cos + along * sin, -across * sin + along * cos], angle };
  }
  return best;
}
