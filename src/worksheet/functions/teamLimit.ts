import { teamLimit as compute } from '../../core/carrying/teamLimit';
import { CAUTIONS } from '../../core/measures/cautions';
import { LIMIT_EACH } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const teamLimit = numberFunction({
  id: 'TEAMLIMIT',
  group: 'Carrying',
  summary: 'Mass that a team may handle by the guideline, on a level floor',
  arguments: [
    {
      name: 'handlers',
      help: 'how many; no factor is published above 3',
      quantity: 'count',
      least: 1,
      whole: true,
    },
    LIMIT_EACH,
  ],
  result: { meaning: 'the limit of the team', unit: 'kg' },
  source: 'HSE L23, team handling: 2/3 of the sum of the individual limits for two, 1/2 for three',
  validity: 'a level floor and good posture, to about 10 m without a rest; never stairs',
  caution: CAUTIONS.lifting,
  example: {
    arguments: [2, 25],
    result: 33.3,
    within: 0.05,
    source: 'public training notes based on HSE L23',
  },
  compute: ({ handlers, limitEach }, working) => compute({ handlers, limitEach }, working),
});
