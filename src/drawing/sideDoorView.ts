import { mmText, Paper } from './paper';
import { box, type Points } from './plane';
import type { StageView } from './stageView';

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
export function sideDoorView(m: SideDoorDrawn): StageView {
  const paper = new Paper();
  const right = m.doorWidth + Math.max(500, 0.6 * m.passage);
  const back = m.wall + 500;
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
    paper.line(end, 'face');
    paper.dimension([left, m.passage + WALL], [0, m.passage + WALL], 14, 'dead end', m.deadEnd);
  }
  for (const face of [leftFace, rightFace, farFace]) paper.line(face, 'face');
  paper.dimension([m.doorWidth, -back], [0, -back], 14, 'door width', m.doorWidth);
  paper.dimension([right, m.passage], [right, 0], 14, 'passage width', m.passage);
  paper.dimension([right, 0], [right, -m.wall], 14, 'wall thickness', m.wall);
  paper.note(`Door ${mmText(m.doorHeight)} high, passage ${mmText(m.ceiling)}: not seen in plan`);

  return { paper, title: 'Plan of a door into a passage across it' };
}
