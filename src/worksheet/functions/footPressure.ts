import { footPressure as compute } from '../../core/floors/footPressure';
import { CAUTIONS } from '../../core/measures/cautions';
import { massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';
import { FEET, WORST_SHARE } from '../floorArguments';

export const footPressure = numberFunction({
  id: 'FOOTPRESSURE',
  group: 'Floors',
  summary: 'Pressure under a square pad at the worst foot of a table',
  arguments: [
    massOf('mass of the built table'),
    FEET,
    { name: 'pad_side', help: 'side of the square pad', quantity: 'length', least: 10, most: 1000 },
    WORST_SHARE,
  ],
  result: { meaning: 'pressure under the pad', unit: 'N/mm2' },
  source: 'load at the worst foot over the area of the pad, see FOOTLOAD',
  validity: 'a pad stiff enough to press evenly',
  caution: CAUTIONS.floors,
  example: {
    arguments: [400, 4, 100],
    result: 0.196133,
    within: 1e-9,
    source: '1.96133 kN over 10000 mm2 (standard gravity, CGPM 1901)',
  },
  compute: ({ mass, feet, padSide, worstShare }, working) =>
    compute({ mass, feet, padSide, worstShare }, working),
});
