import { mmText, Paper } from './paper';
import { box, type Points } from './plane';
import type { StageView } from './stageView';

const WALL = 90;

/** A room in plan. */
export function roomView(m: {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}): StageView {
  const paper = new Paper();
  const walls = box(0, 0, m.length, m.width);
  drawBox(paper, m.length, m.width);
  paper.outline(walls, 'face');
  paper.dimension([m.length, 0], [0, 0], 24, 'length', m.length);
  paper.dimension([0, 0], [0, m.width], 24, 'width', m.width);
  paper.note(`Ceiling ${mmText(m.height)}: not seen in plan`);
  return { paper, title: 'Plan of a room' };
}

/** A lift car in plan: the door in the middle of the lower wall. */
export function liftView(m: {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly carWidth: number;
  readonly carDepth: number;
  readonly carHeight: number;
}): StageView {
  const paper = new Paper();
  const left = (m.carWidth - m.doorWidth) / 2;
  const right = left + m.doorWidth;
  paper.wall(box(-WALL, -WALL, 0, m.carDepth + WALL));
  paper.wall(box(m.carWidth, -WALL, m.carWidth + WALL, m.carDepth + WALL));
  paper.wall(box(0, m.carDepth, m.carWidth, m.carDepth + WALL));
  paper.wall(box(0, -WALL, left, 0));
  paper.wall(box(right, -WALL, m.carWidth, 0));
  const car: Points = [
    [left, 0],
    [0, 0],
    [0, m.carDepth],
    [m.carWidth, m.carDepth],
    [m.carWidth, 0],
    [right, 0],
  ];
  paper.line(car, 'face');
  paper.line(
    [
      [left, -WALL / 2],
      [right, -WALL / 2],
    ],
    'edge',
  );
  paper.dimension([right, -WALL], [left, -WALL], 14, 'door width', m.doorWidth);
  paper.dimension([0, m.carDepth + WALL], [m.carWidth, m.carDepth + WALL], 14, 'car width', m.carWidth);
  paper.dimension([-WALL, 0], [-WALL, m.carDepth], 14, 'car depth', m.carDepth);
  paper.note(`Door ${mmText(m.doorHeight)} high, car ${mmText(m.carHeight)}: not seen in plan`);
  return { paper, title: 'Plan of a lift car' };
}

function drawBox(paper: Paper, width: number, depth: number): void {
  paper.wall(box(-WALL, -WALL, 0, depth + WALL));
  paper.wall(box(width, -WALL, width + WALL, depth + WALL));
  paper.wall(box(0, depth, width, depth + WALL));
  paper.wall(box(0, -WALL, width, 0));
}
