import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { buildRoom as compute, WORKING_STRIP } from '../../core/room/buildRoom';
import { tableFunction } from '../namedArguments';

export const buildRoom = tableFunction({
  id: 'BUILDROOM',
  group: 'Room',
  summary: 'Clear floor, length and width, to lay out and build a table',
  arguments: [
    {
      name: 'table_length',
      help: 'length of the built table, outside',
      quantity: 'length',
      least: 300,
      most: 6000,
    },
    {
      name: 'table_width',
      help: 'width of the built table, outside',
      quantity: 'length',
      least: 300,
      most: 6000,
    },
    {
      name: 'laid_length',
      help: 'length of the largest piece laid down beside it',
      quantity: 'length',
      least: 300,
      most: 6000,
    },
    {
      name: 'laid_breadth',
      help: 'breadth of that piece',
      quantity: 'length',
      above: 0,
      most: 6000,
    },
    {
      name: 'strip',
      help: 'free floor to work on round table and piece',
      quantity: 'length',
      least: 0,
      most: 3000,
      optional: { default: WORKING_STRIP },
    },
  ],
  result: { meaning: 'the longer and the shorter side of the floor, side by side', unit: 'mm' },
  source:
    'a strip round the table, the piece flat along its side or its end, whichever takes the smaller floor; strip: ' +
    'common practice, no source',
  caution: CAUTIONS.room,
  example: {
    arguments: [2400, 1350, 2000, 1000],
    result: [[4150, 3600]],
    source: 'added up by hand: 1350 + 1000 + 3 x 600 and 2400 + 2 x 600',
  },
  compute: ({ tableLength, tableWidth, laidLength, laidBreadth, strip }) => {
    const floor = compute({ tableLength, tableWidth, laidLength, laidBreadth, strip });
    return found([[floor.length, floor.width]]);
  },
});
