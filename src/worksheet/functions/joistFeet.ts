import { joistFeet as compute } from '../../core/floors/joistFeet';
import { CAUTIONS } from '../../core/measures/cautions';
import { numberFunction } from '../namedArguments';
import { DURATION, JOIST_ARGUMENTS } from '../floorArguments';
import { JOIST_SOURCE, JOIST_VALIDITY } from '../joistWords';

export const joistFeet = numberFunction({
  id: 'JOISTFEET',
  group: 'Floors',
  summary: 'Use of a timber joist on which a row of feet stands, 1 = full',
  arguments: [
    ...JOIST_ARGUMENTS,
    {
      name: 'foot_load',
      help: 'load at each foot of the row, see FOOTLOAD',
      quantity: 'force',
      above: 0,
      most: 100,
    },
    {
      name: 'first_at',
      help: 'the first foot, from a support',
      quantity: 'length',
      above: 0,
      most: 12000,
    },
    {
      name: 'foot_spacing',
      help: 'from foot to foot along the joist',
      quantity: 'length',
      least: 100,
      most: 6000,
    },
    {
      name: 'feet',
      help: 'feet in the row that stands on this joist',
      quantity: 'count',
      least: 1,
      most: 12,
      whole: true,
      optional: { default: 2 },
    },
    DURATION,
  ],
  result: { meaning: 'the greatest of bending, shear and deflection', unit: '1 = full' },
  source: JOIST_SOURCE,
  validity: JOIST_VALIDITY,
  caution: CAUTIONS.floors,
  example: {
    arguments: [4500, 500, 75, 200, 'C24', 0, 0, 1, 1500, 1500],
    // Pa(3L^2 - 4a^2)/24EI, a = 1500, and 1.2 Pa/GA of shear, over span/300.
    result:
      ((1000 * 1500 * (3 * 4500 ** 2 - 4 * 1500 ** 2)) / (24 * 11000 * 5e7) +
        (1.2 * 1000 * 1500) / (690 * 15000)) /
      15,
    within: 1e-9,
    source: 'textbook: two equal loads at the thirds of a simple span, E and G of C24 in EN 338',
  },
  compute: (
    { span, spacing, breadth, depth, grade, dead, imposed, footLoad, firstAt, footSpacing, feet, duration },
    working,
  ) =>
    compute(
      {
        span,
        spacing,
        breadth,
        depth,
        grade,
        dead,
        imposed,
        footLoad,
        firstAt,
        footSpacing,
        feet,
        duration,
      },
      working,
    ),
});
