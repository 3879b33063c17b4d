import { mmText, Paper } from './paper';
import { box, type Point, type Points } from './plane';
import type { StageView } from './stageView';
import { firstOf, lastOf } from '../core/lists/ends';

export interface FlightDrawn {
  readonly width: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly risers?: number | undefined;
  readonly footCeiling?: number | undefined;
  readonly footSpace?: number | undefined;
  readonly headCeiling?: number | undefined;
  readonly headSpace?: number | undefined;
}

const SLAB = 120;
/** Length along the pitch that is drawn where the risers are not counted [mm], and somewhat more. */
const DRAWN_LENGTH = 1800;

/**
 * A flight seen from the side, and beside it the section across the pitch. Foot and head are drawn where they were
 * measured.
 */
export function flightView(m: FlightDrawn): StageView {
  const paper = new Paper();
  const pitch = Math.atan2(m.rise, m.going);
  const channel = m.headroom * Math.cos(pitch);
  const steps = m.risers ?? Math.max(5, Math.ceil((DRAWN_LENGTH * Math.cos(pitch)) / m.going) + 3);
  const levels = flightLevels(m, steps);

  drawSteps(paper, m, steps, levels);
  drawDimensions(paper, m, levels);
  const risers = m.risers === undefined ? '; number of risers not given' : `, ${m.risers} risers`;
  paper.note(`Steps: rise ${mmText(m.rise)}, going ${mmText(m.going)}${risers}`);

  drawSection(paper, m.width, channel, levels);
  return { paper, title: 'Side view of a flight' };
}

/** The lines of the flight: the first riser stands at x = 0 on the lower floor, y = 0. */
function flightLevels(m: FlightDrawn, steps: number) {
  const { rise, going, headroom } = m;
  const nosing = (i: number): Point => [i * going, (i + 1) * rise];
  const top = steps * rise;
  const topX = (steps - 1) * going;
  const footEnd = -(m.footSpace ?? 700);
  const headEnd = topX + (m.headSpace ?? 700);
  const treads: Point[] = [
    [footEnd, 0],
    [0, 0],
  ];
  for (let i = 0; i < steps; i++) treads.push(nosing(i), [(i + 1) * going, (i + 1) * rise]);
  treads[treads.length - 1] = [headEnd, top];
  const over = (x: number): number => rise + (x * rise) / going + headroom;
  const trimmerX = m.footCeiling === undefined ? footEnd : ((m.footCeiling - rise - headroom) * going) / rise;
  const headX =
    m.headCeiling === undefined ? headEnd : ((top + m.headCeiling - rise - headroom) * going) / rise;
  const ceiling: Point[] = [];
  if (m.footCeiling !== undefined) ceiling.push([Math.min(footEnd, trimmerX), m.footCeiling]);
  ceiling.push([trimmerX, over(trimmerX)], [headX, over(headX)]);
  if (m.headCeiling !== undefined) ceiling.push([Math.max(headEnd, headX), top + m.headCeiling]);
  const nosings: Points = [
    [footEnd, 0],
    [-going, 0],
    [topX, top],
    [headEnd, top],
  ];
  return { nosing, top, topX, footEnd, headEnd, treads, ceiling, nosings, over, trimmerX, headX };
}

type Levels = ReturnType<typeof flightLevels>;

function drawSteps(paper: Paper, m: FlightDrawn, steps: number, levels: Levels): void {
  const { treads, ceiling, footEnd, headEnd, top, topX, nosing } = levels;
  const slope = SLAB / Math.cos(Math.atan2(m.rise, m.going));
  const under: Point[] = [
    [headEnd, top - SLAB],
    [topX + m.going / 2, top - SLAB],
    [m.going / 2 + (slope * m.going) / m.rise, -slope + m.rise / 2 + slope],
    [m.going / 2, -SLAB],
    [footEnd, -SLAB],
  ];
  paper.wall([...treads, ...under]);
  paper.wall([...ceiling, ...[...ceiling].reverse().map(([x, y]): Point => [x, y + SLAB])]);
  paper.line(treads, 'face');
  paper.line(ceiling, 'face');
  paper.line([nosing(0), nosing(steps - 1)], 'chain');
  if (m.footSpace !== undefined)
    paper.line(
      [
        [footEnd, 0],
        [footEnd, firstOf(ceiling)[1]],
      ],
      'face',
    );
  if (m.headSpace !== undefined) {
    paper.line(
      [
        [headEnd, top],
        [headEnd, lastOf(ceiling)[1]],
      ],
      'face',
    );
  }
}

function drawDimensions(paper: Paper, m: FlightDrawn, levels: Levels): void {
  const { top, topX, footEnd, headEnd, nosing, over } = levels;
  const middle = nosing(Math.max(1, Math.floor(topX / m.going) - 1));
  paper.dimension(middle, [middle[0], over(middle[0])], 0, 'headroom, plumb,', m.headroom);
  const second = nosing(1);
  paper.dimension([m.going, m.rise], [0, m.rise], 0, '', m.going);
  paper.dimension([second[0], m.rise], second, -10, '', m.rise);
  if (m.footCeiling !== undefined) {
    paper.dimension([footEnd, 0], [footEnd, m.footCeiling], 14, 'ceiling at the foot', m.footCeiling);
  }
  if (m.footSpace !== undefined) {
    paper.dimension([0, -SLAB], [footEnd, -SLAB], 14, 'space at the foot', m.footSpace);
  }
  if (m.headCeiling !== undefined) {
    paper.dimension([headEnd, top + m.headCeiling], [headEnd, top], 14, 'ceiling at the head', m.headCeiling);
  }
  if (m.headSpace !== undefined) {
    paper.dimension([headEnd, top - SLAB], [topX, top - SLAB], 14, 'space at the head', m.headSpace);
  }
}

function drawSection(paper: Paper, width: number, channel: number, levels: Levels): void {
  // Below the upper floor there is nothing: the section goes there.
  const right = Math.max(levels.headEnd, levels.topX + 200) + 450;
  const x = right - width;
  const y = Math.min(0, levels.top - SLAB - 900 - channel);
  const outline = box(x, y, x + width, y + channel);
  paper.wall(box(x - 80, y - 80, x, y + channel + 80));
  paper.wall(box(x + width, y - 80, x + width + 80, y + channel + 80));
  paper.wall(box(x, y - 80, x + width, y));
  paper.wall(box(x, y + channel, x + width, y + channel + 80));
  paper.outline(outline, 'face');
  paper.label([x + width / 2, y + channel + 80], 'across the pitch', 0, -9);
  paper.dimension([x + width, y - 80], [x, y - 80], 14, 'clear width', width);
  paper.dimension([x - 80, y], [x - 80, y + channel], 14, '', channel);
  paper.note(`Clear height square to the pitch ${mmText(channel)}`);
}
