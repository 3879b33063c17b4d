import { rectangleThroughOpening } from '../core/geometry/rectangleThroughOpening';
import { Paper, mmText } from './paper';
import { type Corners, box, type Points } from './plane';
import { degreesText, placeRectangle, sectionOf, type DrawnPiece, type StageView } from './stageView';

/** An opening or a passage seen along the way: the section of the piece in it. */
export function openingView(
  width: number,
  height: number,
  piece: DrawnPiece | undefined,
  what: 'door' | 'passage',
): StageView {
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

  const faces = [sides, floor];
  let outline: Corners | undefined;
  let place = '';
  if (piece) {
    const { across, upright } = sectionOf(piece);
    const { clearance, pose } = piece.answer;
    const fit = rectangleThroughOpening(width, height, across, upright);
    const leaning = pose === 'leaning' && fit.angle > 0;
    // The fit's angle is between the long sides; here it is wanted from the floor.
    const upAlong = height >= width === upright >= across;
    const angle = leaning ? (upAlong ? fit.angle : Math.PI / 2 - fit.angle) : 0;
    const lifted = Math.max(0, Math.min(clearance, (height - upright) / 2));
    outline = placeRectangle(
      paper,
      [width / 2, leaning ? height / 2 : lifted + upright / 2],
      across,
      upright,
      angle,
      clearance,
      faces,
    );
    const corner = outline[1];
    paper.dimension(outline[1], outline[0], upright > across ? 12 : -12, '', upright);
    paper.dimension(outline[2], corner, 12, '', across);
    place =
      `The piece's section, ${mmText(across)} mm across and ${mmText(upright)} mm upright, is in the middle` +
      (leaning ? `, turned by ${degreesText(angle)}` : '');
  }
  return {
    paper,
    title: `Front view of a ${what}`,
    place,
    faces,
    ...(outline ? { outline } : {}),
  };
}
