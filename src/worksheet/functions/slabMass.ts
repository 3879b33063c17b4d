import { slabMass as compute, SLATE_DENSITY } from '../../core/measures/slabMass';
import { PIECE_SIZES } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';

export const slabMass = numberFunction({
  id: 'SLABMASS',
  group: 'Measures and pieces',
  summary: 'Mass of a plain slab; pockets and holes are not taken off',
  arguments: [
    ...PIECE_SIZES,
    {
      name: 'density',
      help: 'slate is 2700 to 2950',
      quantity: 'density',
      least: 300,
      most: 8000,
      optional: { default: SLATE_DENSITY },
    },
  ],
  result: { meaning: 'the mass', unit: 'kg' },
  source:
    'length x breadth x thickness x density; the default from 28 kN/m3, EN 1991-1-1 table A.2 (from memory), ' +
    'within 2700-2950 kg/m3 of Cardarelli, Materials Handbook',
  validity: 'a solid slab of one thickness',
  example: {
    arguments: [2000, 1000, 20],
    result: 114,
    within: 1e-9,
    source: '0.04 m3 of 2850 kg/m3',
  },
  compute: ({ length, breadth, thickness, density }, working) =>
    withPiece({ length, breadth, thickness }, (piece) => compute({ ...piece, density }, working)),
});
