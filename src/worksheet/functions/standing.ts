import { BODY_WIDTH, GRIP_LENGTH, standing as compute } from '../../core/carrying/standing';
import { CAUTIONS } from '../../core/measures/cautions';
import { STAIR_WIDTH } from '../../core/stages/usualRanges';
import { GOING, opening, PIECE_LENGTH_RANGE, RISE } from '../arguments';
import { numberFunction } from '../namedArguments';

export const standing = numberFunction({
  id: 'STANDING',
  group: 'Carrying',
  summary: 'How many people can stand and take hold of a piece on a flight; places, not what they may carry',
  arguments: [
    {
      name: 'length',
      help: 'length of the piece along the way it is carried',
      quantity: 'length',
      ...PIECE_LENGTH_RANGE,
    },
    {
      name: 'across',
      help: 'what the piece takes up across the way, as carried: its thickness when on edge',
      quantity: 'length',
      above: 0,
      most: PIECE_LENGTH_RANGE.most,
    },
    opening('width', 'clear width of the flight', STAIR_WIDTH),
    RISE,
    GOING,
    {
      name: 'grip_length',
      help: 'length of the piece that one carrier takes up',
      quantity: 'length',
      least: 300,
      most: 2000,
      optional: { default: GRIP_LENGTH },
    },
    {
      name: 'body_width',
      help: 'width that a carrier takes up beside the piece',
      quantity: 'length',
      least: 300,
      most: 1000,
      optional: { default: BODY_WIDTH },
    },
  ],
  result: { meaning: 'people, two of them at the ends', unit: '' },
  source:
    'one at each end; on each side with room for a body, carriers whole treads apart between the end grips; the ' +
    'lengths are common practice, no source',
  validity: 'a straight flight; no team factor is published above 3, and none for stairs',
  caution: CAUTIONS.stairs,
  example: {
    arguments: [1980, 60, 1000, 200, 250],
    result: 4,
    source:
      'counted by hand: 940 mm beside it, two sides; 780 mm between the ends, treads of 320.2 mm, one place a side',
  },
  compute: ({ length, across, width, rise, going, gripLength, bodyWidth }, working) =>
    compute({ length, across, width, rise, going, gripLength, bodyWidth }, working),
});
