import { radians } from '../../core/measures/angle';
import { liftLimit as compute } from '../../core/carrying/liftLimit';
import { CAUTIONS } from '../../core/measures/cautions';
import { LIFT } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const liftLimit = numberFunction({
  id: 'LIFTLIMIT',
  group: 'Carrying',
  summary: 'Recommended weight limit of one two-handed lift, standing still',
  arguments: LIFT,
  result: { meaning: 'the recommended weight limit; 0 where a multiplier is 0', unit: 'kg' },
  source:
    'DHHS (NIOSH) 94-110, the revised lifting equation, metric, at full precision; in its tables 5 and 7 the ' +
    'zeros and the columns below 75 cm are from memory',
  validity:
    'the lift at the van and the set-down; not carrying beyond a step or two, not unstable loads, never stairs',
  caution: CAUTIONS.lifting,
  example: {
    // Example 4 of the manual at its origin: H 10, V 22, D 37 in, 3 lifts a minute, fair.
    arguments: ['10 in', '22 in', '37 in', 0, 3, 1, 'fair'],
    result: 15.83,
    within: 0.5,
    source: 'DHHS (NIOSH) 94-110, example 4, origin: 34.9 lb with multipliers rounded to 2 places',
  },
  compute: ({ reach, height, travel, twist, liftsPerMinute, hours, grip }, working) =>
    compute({ reach, height, travel, twist: radians(twist), liftsPerMinute, hours, grip }, working),
});
