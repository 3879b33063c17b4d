import { handlers as compute } from '../../core/carrying/handlers';
import { CAUTIONS } from '../../core/measures/cautions';
import { LIMIT_EACH, massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const handlers = numberFunction({
  id: 'HANDLERS',
  group: 'Carrying',
  summary: 'Fewest handlers within the guideline, on a level floor',
  arguments: [massOf('mass of the piece'), LIMIT_EACH],
  result: { meaning: 'how many handlers, 1 to 3', unit: '' },
  source: 'HSE L23, team handling: the first team whose limit is at least the mass',
  validity: 'a level floor and good posture, to about 10 m without a rest; never stairs',
  caution: CAUTIONS.lifting,
  example: {
    arguments: [33.3],
    result: 2,
    source: 'public training notes based on HSE L23: two of 25 kg may take 33.3 kg',
  },
  compute: ({ mass, limitEach }, working) => compute({ mass, limitEach }, working),
});
