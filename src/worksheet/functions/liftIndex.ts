import { radians } from '../../core/measures/angle';
import { liftIndex as compute } from '../../core/carrying/liftIndex';
import { CAUTIONS } from '../../core/measures/cautions';
import { LIFT, massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const liftIndex = numberFunction({
  id: 'LIFTINDEX',
  group: 'Carrying',
  summary: 'Load over its recommended weight limit; above 1 the lift is over the guidance',
  arguments: [massOf('what one person lifts'), ...LIFT],
  result: { meaning: 'load / limit', unit: '' },
  source: 'DHHS (NIOSH) 94-110, the revised lifting equation, lifting index',
  validity:
    'the lift at the van and the set-down; not carrying beyond a step or two, not unstable loads, never stairs',
  caution: CAUTIONS.lifting,
  example: {
    arguments: ['26 lb', '10 in', '22 in', '37 in', 0, 3, 1, 'fair'],
    result: 0.7,
    within: 0.1,
    source: 'DHHS (NIOSH) 94-110, example 4, origin, with multipliers rounded to 2 places',
  },
  compute: ({ mass, reach, height, travel, twist, liftsPerMinute, hours, grip }, working) =>
    compute({ mass, reach, height, travel, twist: radians(twist), liftsPerMinute, hours, grip }, working),
});
