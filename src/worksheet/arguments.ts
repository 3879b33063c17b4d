import type { ArgumentDescription } from './description';

/** Openings, passages and ceilings [mm]: inches or metres typed bare fall outside. */
export const OPENING_RANGE = { least: 100, most: 20000 } as const;

/** A piece's longest size [mm]: inches typed bare fall outside. */
export const PIECE_LENGTH_RANGE = { least: 300, most: 6000 } as const;

/** A measure of an opening, a passage or a ceiling. */
export const opening = (name: string, help: string): ArgumentDescription => ({
  name,
  help,
  quantity: 'length',
  ...OPENING_RANGE,
});

/** The three sizes of a piece, in any order; the longest is checked by `longestInRange`. */
export const PIECE_SIZES: readonly ArgumentDescription[] = [
  {
    name: 'length',
    help: "the piece's length; its three sizes may come in any order, the longest 300 to 6000",
    quantity: 'length',
    above: 0,
    most: PIECE_LENGTH_RANGE.most,
  },
  {
    name: 'breadth',
    help: "the piece's breadth",
    quantity: 'length',
    above: 0,
    most: PIECE_LENGTH_RANGE.most,
  },
  {
    name: 'thickness',
    help: "the piece's thickness",
    quantity: 'length',
    above: 0,
    most: PIECE_LENGTH_RANGE.most,
  },
];

/** The turn of a corner. */
export const TURN: ArgumentDescription = {
  name: 'turn',
  help: 'by how much the way turns; for more than 120 use HALFLANDING, or measure the passage',
  quantity: 'angle',
  least: 1,
  most: 120,
  optional: { default: 90 },
};
