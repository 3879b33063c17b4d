import { footLoad as compute } from '../../core/floors/footLoad';
import { CAUTIONS } from '../../core/measures/cautions';
import { massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';
import { FEET, WORST_SHARE } from '../floorArguments';

export const footLoad = numberFunction({
  id: 'FOOTLOAD',
  group: 'Floors',
  summary: 'Load at the worst foot of a table',
  arguments: [massOf('mass of the built table'), FEET, WORST_SHARE],
  result: { meaning: 'load at the worst foot', unit: 'kN' },
  source: 'weight x share; a table rocks on two feet until it is levelled: common practice, no source',
  validity: 'a table at rest; people who sit or lean on it come on top',
  caution: CAUTIONS.floors,
  example: {
    arguments: [400, 4],
    result: 1.96133,
    within: 1e-9,
    source: 'half of 400 kg x 9.80665 m/s2 (standard gravity, CGPM 1901)',
  },
  compute: ({ mass, feet, worstShare }, working) => compute({ mass, feet, worstShare }, working),
});
