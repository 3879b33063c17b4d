import { radians } from '../../core/measures/angle';
import { refused } from '../../core/measures/problem';
import { cornerLength as longestRoundCorner } from '../../core/stages/corner/cornerLength';
import { opening, PIECE_LENGTH_RANGE, TURN } from '../arguments';
import { numberFunction } from '../namedArguments';
import { SPACE_CAUTION } from '../clearanceWords';

export const cornerLength = numberFunction({
  id: 'CORNERLENGTH',
  group: 'Clearance',
  summary: 'Length of the longest level piece that turns a corner',
  arguments: [
    opening('width_in', 'clear width of the way to the corner'),
    opening('width_out', 'clear width of the way after it'),
    {
      name: 'thickness',
      help: 'size of the piece across its length in plan',
      quantity: 'length',
      above: 0,
      most: PIECE_LENGTH_RANGE.most,
    },
    TURN,
  ],
  result: { meaning: 'the longest length that passes with no padding, crabwise included', unit: 'mm' },
  source: 'Moretti, College Math. J. 33(3), 2002, 196-200',
  motions: 'level, turning with the corner or crabwise',
  validity: 'two straight ways longer than the piece, full-height walls, an upright inner corner',
  caution: SPACE_CAUTION,
  example: {
    arguments: [8000, 3000, 1000],
    result: 12856.32,
    within: 0.01,
    source: 'Moretti 2002, corridors 8 and 3, couch 1 wide; the least over the angle is 12.85632',
  },
  compute: ({ widthIn, widthOut, thickness, turn }, working) => {
    const narrower = Math.min(widthIn, widthOut);
    if (thickness > narrower) {
      return refused({
        kind: 'no answer',
        because: `a piece ${thickness} mm thick does not enter a way ${narrower} mm wide`,
        instead: 'give the size that lies across the way',
      });
    }
    return longestRoundCorner({ widthIn, widthOut, turn: radians(turn), thickness }, working);
  },
});
