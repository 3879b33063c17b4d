import { radians } from '../../core/measures/angle';
import { doorClear as compute } from '../../core/measures/doorClear';
import { DOOR_WIDTH } from '../../core/stages/usualRanges';
import { opening } from '../arguments';
import { numberFunction } from '../namedArguments';

export const doorClear = numberFunction({
  id: 'DOORCLEAR',
  group: 'Measures and pieces',
  summary: 'Clear width of a doorway with its door open, or with the leaf off',
  arguments: [
    opening('leaf_width', 'width of the leaf', DOOR_WIDTH),
    {
      name: 'leaf_thickness',
      help: 'thickness of the leaf',
      quantity: 'length',
      least: 0,
      most: 200,
      optional: { default: 35 },
    },
    {
      name: 'stop',
      help: 'how far each stop stands into the opening',
      quantity: 'length',
      least: 0,
      most: 200,
      plainZero: true,
      optional: { default: 12 },
    },
    {
      name: 'furniture',
      help: 'how far handle or bar stands off the leaf',
      quantity: 'length',
      least: 0,
      most: 500,
      optional: { default: 0 },
    },
    {
      name: 'open_angle',
      help: 'how far the door opens; 180: the leaf taken off',
      quantity: 'angle',
      least: 45,
      most: 180,
      optional: { default: 90 },
    },
  ],
  result: { meaning: 'the clear width', unit: 'mm' },
  source:
    'leaf less stop, leaf thickness and projecting furniture (Approved Document M), the leaf turned about its hinge',
  validity: 'one leaf, hinged in the plane of its frame; measure the opening itself where you can',
  example: {
    arguments: [762],
    result: 715,
    source: '762 - 12 - 35 (Approved Document M; leaf of BS 4787, from memory)',
  },
  compute: ({ leafWidth, leafThickness, stop, furniture, openAngle }, working) =>
    compute({ leafWidth, leafThickness, stop, furniture, openAngle: radians(openAngle) }, working),
});
