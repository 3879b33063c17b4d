import { acrossHalfLanding } from '../core/geometry/landingModel';
import { cornerView } from './cornerView';
import { mmText, Paper } from './paper';
import type { bendShape } from './bendShape';
import { box, type Point, type Points } from './plane';
import { wideWinderView } from './wideWinderView';
import type { StageView } from './stageView';

export interface QuarterLandingDrawn {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly overRail?: number | undefined;
  readonly landingCeiling?: number | undefined;
}

export interface HalfLandingDrawn {
  readonly width: number;
  readonly well: number;
  readonly depth: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly overRail?: number | undefined;
  readonly landingCeiling?: number | undefined;
}

const WALL = 90;
/** Above this a wall faces the lower flight of a winder [degrees], as in the stage itself. */
const WIDE_TURN = 120;

/** A quarter landing in plan: the lower flight comes from below, the upper one leaves to the right. */
export function quarterLandingView(m: QuarterLandingDrawn): StageView {
  const view = cornerView(
    { widthIn: m.widthIn, widthOut: m.widthOut, turn: 90 },
    'Plan of a quarter landing',
    (paper, shape) => {
      for (let i = 0; i < 3; i++) {
        paper.line(
          [
            [0, -i * m.going],
            [m.widthIn, -i * m.going],
          ],
          'thin',
        );
        paper.line([shape.alongOut(i * m.going, 0), shape.alongOut(i * m.going, m.widthOut)], 'thin');
      }
      paper.label([m.widthIn / 2, -1.5 * m.going], 'up');
      paper.label(shape.alongOut(1.5 * m.going, m.widthOut / 2), 'up');
    },
  );
  noteHeights(view.paper, m);
  return view;
}

/** A winder in plan: treads drawn every 30 degrees, since their number is not among the measures. */
export function winderView(m: {
  readonly width: number;
  readonly headroom: number;
  readonly turn: number;
  readonly rise: number;
  readonly going: number;
}): StageView {
  const TREAD = 30;
  const view =
    m.turn > WIDE_TURN
      ? wideWinderView(m)
      : cornerView(
          { widthIn: m.width, widthOut: m.width, turn: m.turn },
          'Plan of a winder',
          (paper, shape) => drawWinders(paper, shape, m.turn, TREAD),
        );
  // Beyond a wide turn the treads share it equally, as in the stage itself.
  const each = m.turn > WIDE_TURN ? m.turn / Math.round(m.turn / TREAD) : TREAD;
  view.paper.note(`Turn ${mmText(m.turn)} degrees; treads drawn every ${mmText(each)} degrees`);
  noteHeights(view.paper, m);
  return view;
}

function drawWinders(paper: Paper, shape: ReturnType<typeof bendShape>, turn: number, tread: number): void {
  const { inner, outer } = shape;
  for (let degrees = 0; degrees <= turn + 1e-9; degrees += tread) {
    const angle = (degrees * Math.PI) / 180;
    const towards: Point = [-Math.cos(angle), Math.sin(angle)];
    // As far as the first outer wall in that direction.
    const toIn = towards[0] < -1e-9 ? inner[0] / -towards[0] : Infinity;
    const across = towards[0] * shape.normal[0] + towards[1] * shape.normal[1];
    const width = (outer[0] - inner[0]) * shape.normal[0] + (outer[1] - inner[1]) * shape.normal[1];
    const toOut = across > 1e-9 ? width / across : Infinity;
    const reach = Math.min(toIn, toOut);
    paper.line([inner, [inner[0] + reach * towards[0], inner[1] + reach * towards[1]]], 'thin');
  }
  paper.label([inner[0] / 2, -120], 'up');
}

/**
 * A half landing in plan: the landing above y = 0, the lower flight coming up on the left, the upper one
 * leaving downwards on the right, the well between them.
 */
export function halfLandingView(m: HalfLandingDrawn): StageView {
  const paper = new Paper();
  const across = acrossHalfLanding({ flightWidth: m.width, well: m.well });
  const stairs = 3 * m.going;
  const outer: Points = [
    [0, -stairs],
    [0, m.depth],
    [across, m.depth],
    [across, -stairs],
  ];
  const spine: Points = [
    [m.width, -stairs],
    [m.width, 0],
    [m.width + m.well, 0],
    [m.width + m.well, -stairs],
  ];
  paper.wall(box(-WALL, -stairs, 0, m.depth + WALL));
  paper.wall(box(across, -stairs, across + WALL, m.depth + WALL));
  paper.wall(box(0, m.depth, across, m.depth + WALL));
  const railed = (m.overRail ?? 0) > 0;
  if (!railed && m.well > 0) paper.wall(spine);
  paper.line(outer, 'face');
  paper.line(spine, railed ? 'chain' : 'face');
  for (let i = 0; i <= 3; i++) {
    const y = -i * m.going;
    paper.line(
      [
        [0, y],
        [m.width, y],
      ],
      'thin',
    );
    paper.line(
      [
        [m.width + m.well, y],
        [across, y],
      ],
      'thin',
    );
  }
  paper.label([m.width / 2, -1.5 * m.going], 'up');
  paper.label([m.width + m.well + m.width / 2, -1.5 * m.going], 'up');
  paper.dimension([m.width, -stairs], [0, -stairs], 14, 'flight width', m.width);
  paper.dimension([m.width + m.well, -stairs], [m.width, -stairs], 14, 'well', m.well);
  paper.dimension([-WALL, 0], [-WALL, m.depth], 14, 'landing depth', m.depth);

  noteHeights(paper, m);
  return { paper, title: 'Plan of a half landing' };
}

function noteHeights(
  paper: Paper,
  m: {
    readonly headroom: number;
    readonly rise: number;
    readonly going: number;
    readonly landingCeiling?: number | undefined;
    readonly overRail?: number | undefined;
  },
): void {
  const ceiling =
    m.landingCeiling === undefined ? '' : `, ceiling over the landing ${mmText(m.landingCeiling)}`;
  const { overRail = 0 } = m;
  const rail = overRail > 0 ? `, open above ${mmText(overRail)} (chain line)` : '';
  paper.note(`Headroom ${mmText(m.headroom)}${ceiling}: not seen in plan${rail}`);
  paper.note(`Steps: rise ${mmText(m.rise)}, going ${mmText(m.going)}`);
}
