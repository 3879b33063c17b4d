import { workRate as compute } from '../../core/carrying/workRate';
import { CAUTIONS } from '../../core/measures/cautions';
import { BODY_MASS } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const workRate = numberFunction({
  id: 'WORKRATE',
  group: 'Carrying',
  summary: 'Metabolic rate of a person who walks with a load, level or uphill',
  arguments: [
    BODY_MASS,
    {
      name: 'load',
      help: 'what the person carries',
      quantity: 'mass',
      least: 0,
      most: 200,
      plainZero: true,
    },
    {
      name: 'speed',
      help: 'walking speed; the equation is for walking, not running',
      quantity: 'speed',
      above: 0,
      // People break into a run at 7 to 8 km/h: exercise textbooks, from memory.
      most: 8,
      beyond: 'the equation is for walking: time the carry instead',
    },
    {
      name: 'grade',
      help: 'rise of the way, 10 for 10 %; the equation does not hold downhill or on stairs',
      quantity: 'percent',
      least: 0,
      most: 25,
      optional: { default: 0 },
      beyond:
        'the equation is not for going down or for stairs: assess those by trial, with a competent person',
    },
    {
      name: 'terrain',
      help: 'terrain factor, 1 for a hard floor',
      quantity: 'ratio',
      least: 1,
      // Deep snow, the worst that is published, is about 4: from memory.
      most: 5,
      optional: { default: 1 },
    },
  ],
  result: { meaning: 'the metabolic rate', unit: 'W' },
  source:
    'Pandolf, Givoni & Goldman, J. Appl. Physiol. 43, 1977: 1.5 W + 2 (W + L)(L/W)^2 + n (W + L)(1.5 v^2 + 0.35 v G)',
  validity: 'walking on the level or uphill; not downhill, not stairs, not two people with one piece',
  caution: CAUTIONS.lifting,
  example: {
    arguments: [80, 0, 4],
    result: 268.1481,
    within: 0.0001,
    source: 'Pandolf et al. 1977: 3.842765 kcal/min, 4186.8 J/kcal',
  },
  compute: ({ bodyMass, load, speed, grade, terrain }, working) =>
    compute({ bodyMass, load, speed, grade, terrain }, working),
});
