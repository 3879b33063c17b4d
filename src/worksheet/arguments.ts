import type { Problem } from '../core/measures/problem';
import {
  DOOR_HEIGHT,
  DOOR_WIDTH,
  GOING as USUAL_GOING,
  HEADROOM as USUAL_HEADROOM,
  PASSAGE_WIDTH,
  RISE as USUAL_RISE,
} from '../core/stages/usualRanges';
import { meantAs } from '../core/survey/words/problemWords';
import type { ArgumentDescription } from './description';
import { LONGEST } from '../core/survey/table/readPieces';

export { LONGEST as PIECE_LENGTH_RANGE };

/** In which units a bare number would be the longer side of a piece. */
const pieceHint = (got: number): string =>
  meantAs(got, LONGEST) || 'a plain number is mm; write 72 in or 1.83 m otherwise';

/** Openings, passages and ceilings [mm]: inches or metres typed bare fall outside. */
const OPENING_RANGE = { least: 100, most: 20000 } as const;

type Usual = NonNullable<ArgumentDescription['usual']>;

/**
 * A measure of an opening, a passage or a ceiling.
 * @param usual what is ordinary: for a bare number that is refused, the unit that may be missing is told by it
 */
export const opening = <const Name extends string>(name: Name, help: string, usual: Usual = PASSAGE_WIDTH) =>
  ({ name, help, quantity: 'length', ...OPENING_RANGE, usual }) as const satisfies ArgumentDescription;

/** A door, and the wall that it stands in. */
export const DOOR_IN_WALL = [
  opening('door_width', 'clear width of the door', DOOR_WIDTH),
  opening('door_height', 'clear height of the door', DOOR_HEIGHT),
  {
    name: 'wall_thickness',
    help: 'thickness of the wall with its linings',
    quantity: 'length',
    least: 0,
    most: 2000,
    plainZero: true,
  },
] as const satisfies readonly ArgumentDescription[];

/** The three sizes of a piece, in any order; the longest is checked by `longestInRange`. */
export const PIECE_SIZES = [
  {
    name: 'length',
    help: "the piece's length; its three sizes may come in any order, the longest 300 to 6000",
    quantity: 'length',
    above: 0,
    most: LONGEST.most,
  },
  {
    name: 'breadth',
    help: "the piece's breadth",
    quantity: 'length',
    above: 0,
    most: LONGEST.most,
  },
  {
    name: 'thickness',
    help: "the piece's thickness",
    quantity: 'length',
    above: 0,
    most: LONGEST.most,
  },
] as const satisfies readonly ArgumentDescription[];

/** The turn of a corner. */
export const TURN = {
  name: 'turn',
  help: 'by how much the way turns; for more than 120 use HALFLANDING, or measure the passage',
  quantity: 'angle',
  least: 1,
  most: 120,
  optional: { default: 90 },
  beyond: 'for a half turn use HALFLANDING, or measure the passage',
} as const satisfies ArgumentDescription;

/** The two sides of one face of a piece, in any order. */
export const FACE_SIZES = [
  {
    name: 'face_length',
    help: 'one side of the face; the longer is 300 to 6000',
    quantity: 'length',
    above: 0,
    most: LONGEST.most,
  },
  {
    name: 'face_width',
    help: 'the other side of the face',
    quantity: 'length',
    above: 0,
    most: LONGEST.most,
  },
] as const satisfies readonly ArgumentDescription[];

/** The problem with a face whose longer side is too short to be one: inches or metres typed bare. */
export const faceTooShort = (longer: number): Problem => ({
  kind: 'out of range',
  argument: 'face_length',
  got: longer,
  allowed: `${LONGEST.least} to ${LONGEST.most} mm for the longer side of a face`,
  hint: pieceHint(longer),
});

/** The same for a piece's longest size. */
export const pieceTooShort = (longest: number): Problem => ({
  kind: 'out of range',
  argument: 'length',
  got: longest,
  allowed: `${LONGEST.least} to ${LONGEST.most} mm for the longest size of a piece`,
  hint: pieceHint(longest),
});

/** Rise and going of one step: inches typed bare fall outside. What is built anywhere lies well within. */
export const RISE = {
  name: 'rise',
  help: 'height of one step',
  quantity: 'length',
  least: 50,
  most: 1000,
  usual: USUAL_RISE,
} as const satisfies ArgumentDescription;

export const GOING = {
  name: 'going',
  help: 'depth of one step, nosing to nosing',
  quantity: 'length',
  least: 50,
  most: 1000,
  usual: USUAL_GOING,
} as const satisfies ArgumentDescription;

/** Headroom over a stair. */
export const HEADROOM = opening(
  'headroom',
  'clear height, measured plumb above the line of nosings',
  USUAL_HEADROOM,
);

/** Height above which the inner sides of a landing are clear air. */
export const OVER_RAIL = {
  name: 'over_rail',
  help: 'height above which the inner sides are clear air, as over a handrail; 0: walls',
  quantity: 'length',
  least: 0,
  most: 3000,
  plainZero: true,
  optional: { default: 0 },
} as const satisfies ArgumentDescription;
