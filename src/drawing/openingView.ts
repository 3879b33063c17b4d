import { Paper } from './paper';
import { box, type Points } from './plane';
import type { StageView } from './stageView';

/** An opening or a passage seen along the way. */
export function openingView(width: number, height: number, what: 'door' | 'passage'): StageView {
  const paper = new Paper();
  const jamb = Math.max(60, 0.12 * width);
  const head = Math.max(60, 0.06 * height);
  paper.wall(box(-jamb, 0, 0, height + head));
  paper.wall(box(width, 0, width + jamb, height + head));
  paper.wall(box(0, height, width, height + head));
  paper.wall(box(-jamb, -head / 2, width + jamb, 0));
  const sides: Points = [
    [0, 0],
    [0, height],
    [width, height],
    [width, 0],
  ];
  const floor: Points = [
    [-jamb, 0],
    [width + jamb, 0],
  ];
  paper.line(sides, 'face');
  paper.line(floor, 'face');
  paper.dimension([width, -head / 2], [0, -head / 2], 14, 'clear width', width);
  paper.dimension([-jamb, 0], [-jamb, height], 14, 'clear height', height);

  return { paper, title: `Front view of a ${what}` };
}
