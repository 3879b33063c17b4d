import { rectangleRoundCorner } from '../core/geometry/rectangleRoundCorner';
import { rectangleThroughOpening } from '../core/geometry/rectangleThroughOpening';
import { mmText, Paper } from './paper';
import { placeInBend } from './placeInBend';
import { type Corners, box, type Point, type Points } from './plane';
import { degreesText, placeRectangle, sectionOf, type DrawnPiece, type StageView } from './stageView';
import { shownDown } from '../core/measures/shown';

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

/** Where on the flight the piece is closest. */
type Part = 'foot' | 'straight' | 'head';

const SLAB = 120;

/**
 * A flight seen from the side, with the piece where it is closest: at the foot, on the straight part or at the
 * head; and beside it the section across the pitch. Foot and head are drawn where they were measured.
 */
export function flightView(m: FlightDrawn, piece: DrawnPiece | undefined): StageView {
  const paper = new Paper();
  const pitch = Math.atan2(m.rise, m.going);
  const channel = m.headroom * Math.cos(pitch);
  const section = piece ? sectionInChannel(m.width, channel, piece) : undefined;
  const length = piece?.size.length ?? 1800;
  const part = piece && section ? closestPart(m, channel, pitch, length, section.height) : 'straight';
  const steps = m.risers ?? Math.max(5, Math.ceil((length * Math.cos(pitch)) / m.going) + 3);
  const levels = flightLevels(m, steps);

  drawSteps(paper, m, steps, levels);
  drawDimensions(paper, m, levels, part);
  const risers = m.risers === undefined ? '; number of risers not given' : `, ${m.risers} risers`;
  paper.note(`Steps: rise ${mmText(m.rise)}, going ${mmText(m.going)}${risers}`);

  let place = '';
  let outline: Corners | undefined;
  const faces = [levels.treads, levels.ceiling];
  if (piece && section) {
    const at = placeOnFlight(m, part, levels, channel, pitch, length, section.height);
    // The line of nosings is what the piece must clear, not the treads below it.
    const clear = [levels.nosings, levels.ceiling];
    outline = placeRectangle(
      paper,
      at.centre,
      length,
      section.height,
      at.angle,
      piece.answer.clearance,
      clear,
    );
    paper.dimension(outline[2], outline[1], 9, '', length);
    place =
      `The piece, ${mmText(length)} mm long and ${mmText(section.height)} mm high as seen from the side, ` +
      `stands at ${degreesText(at.angle)} ${WHERE[part]}`;
    drawSection(paper, m.width, channel, piece, section, levels);
    place += `; across the pitch the clear section is ${mmText(m.width)} x ${shownDown(channel)} mm`;
    if (section.angle > 0) place += `, the piece's own turned by ${degreesText(section.angle)} in it`;
  }
  return {
    paper,
    title: 'Side view of a flight',
    place,
    faces,
    ...(outline ? { outline } : {}),
  };
}

const WHERE: Readonly<Record<Part, string>> = {
  foot: 'at the foot, under the edge of the opening',
  straight: 'on the straight part',
  head: 'at the head, over the top nosing',
};

/** How the piece's section lies in the clear section across the pitch. */
function sectionInChannel(width: number, channel: number, piece: DrawnPiece) {
  const { across, upright } = sectionOf(piece);
  const fit = rectangleThroughOpening(width, channel, across, upright);
  const leaning = piece.answer.pose === 'leaning' && fit.angle > 0;
  const upAlong = channel >= width === upright >= across;
  const angle = leaning ? (upAlong ? fit.angle : Math.PI / 2 - fit.angle) : 0;
  const height = across * Math.sin(angle) + upright * Math.cos(angle);
  return { across, upright, angle, height };
}

function closestPart(m: FlightDrawn, channel: number, pitch: number, length: number, height: number): Part {
  const bend = (ceiling: number | undefined): number =>
    ceiling === undefined
      ? Infinity
      : rectangleRoundCorner(length, height, ceiling, channel, pitch).clearance;
  const straight = (channel - height) / 2;
  const foot = bend(m.footCeiling);
  const head = bend(m.headCeiling);
  if (foot < straight - 0.01 && foot <= head) return 'foot';
  return head < straight - 0.01 ? 'head' : 'straight';
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
        [footEnd, ceiling[0]![1]],
      ],
      'face',
    );
  if (m.headSpace !== undefined) {
    paper.line(
      [
        [headEnd, top],
        [headEnd, ceiling[ceiling.length - 1]![1]],
      ],
      'face',
    );
  }
}

function drawDimensions(paper: Paper, m: FlightDrawn, levels: Levels, part: Part): void {
  const { top, topX, footEnd, headEnd, nosing, over } = levels;
  // Away from the piece, which may be at the head.
  const steps = Math.floor(topX / m.going);
  const middle = nosing(Math.max(1, part === 'head' ? Math.floor(steps / 3) : steps - 1));
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

function placeOnFlight(
  m: FlightDrawn,
  part: Part,
  levels: Levels,
  channel: number,
  pitch: number,
  length: number,
  height: number,
): { centre: Point; angle: number } {
  if (part === 'foot') {
    // The bend with the floor as outer wall and the trimmer as inner corner: its y runs along the floor.
    const { centre, angle } = placeInBend(length, height, m.footCeiling!, channel, pitch);
    return { centre: [levels.trimmerX + centre[1], centre[0]], angle };
  }
  if (part === 'head') {
    // Seen from the head backwards: the ceiling is the outer wall, the top nosing the inner corner.
    const { centre, angle } = placeInBend(length, height, m.headCeiling!, channel, pitch);
    return { centre: [levels.topX - centre[1], levels.top + m.headCeiling! - centre[0]], angle };
  }
  const x = levels.topX / 2;
  const middle = m.headroom / 2;
  return { centre: [x, m.rise + (x * m.rise) / m.going + middle], angle: pitch };
}

function drawSection(
  paper: Paper,
  width: number,
  channel: number,
  piece: DrawnPiece,
  section: ReturnType<typeof sectionInChannel>,
  levels: Levels,
): void {
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
  paper.dimension([x - 80, y], [x - 80, y + channel], 14, 'clear height square to the pitch', channel);
  placeRectangle(
    paper,
    [x + width / 2, y + channel / 2],
    section.across,
    section.upright,
    section.angle,
    piece.answer.clearance,
    [outline],
  );
}
