import { restTime as compute } from '../../core/carrying/restTime';
import { CAUTIONS } from '../../core/measures/cautions';
import { numberFunction } from '../namedArguments';

export const restTime = numberFunction({
  id: 'RESTTIME',
  group: 'Carrying',
  summary: 'Minutes of rest within a spell of work and rest together',
  arguments: [
    { name: 'minutes', help: 'work and rest together', quantity: 'minutes', above: 0, most: 1440 },
    { name: 'work_rate', help: 'metabolic rate while working', quantity: 'power', above: 0, most: 3000 },
    {
      name: 'limit',
      help: 'rate that can be kept up all day',
      quantity: 'power',
      above: 0,
      most: 2000,
      optional: { default: 350 },
    },
    {
      name: 'resting',
      help: 'rate while resting, below the limit',
      quantity: 'power',
      above: 0,
      most: 1000,
      optional: { default: 105 },
    },
  ],
  result: { meaning: 'minutes of rest; 0 within the limit', unit: 'min' },
  source: "Murrell's form in engineering handbooks: T (M - limit) / (M - resting)",
  validity: 'steady work by a fit adult in ordinary heat; heat, stairs and age ask for more',
  caution: CAUTIONS.lifting,
  example: {
    arguments: [60, 600, 350, 100],
    result: 30,
    source: "Murrell's form in engineering handbooks",
  },
  compute: ({ minutes, workRate, limit, resting }, working) =>
    compute({ minutes, workRate, limit, resting }, working),
});
