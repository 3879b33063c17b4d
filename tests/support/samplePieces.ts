import type { Cell } from '../../src/core/measures/readQuantity';
import { SAMPLE_PIECES } from '../../src/sample/pieces';

/** The pieces of the sample as a table that a function is given, its headings first. */
export const PIECES_TABLE: readonly Cell[][] = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ...SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
];
