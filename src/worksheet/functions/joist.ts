import { joist as compute } from '../../core/floors/joist';
import { CAUTIONS } from '../../core/measures/cautions';
import { numberFunction } from '../namedArguments';
import { DURATION, JOIST_ARGUMENTS } from '../floorArguments';
import { JOIST_SOURCE, JOIST_VALIDITY } from '../joistWords';

export const joist = numberFunction({
  id: 'JOIST',
  group: 'Floors',
  summary: 'Use of a timber joist under even loads and one point load, 1 = full',
  arguments: [
    ...JOIST_ARGUMENTS,
    {
      name: 'point_load',
      help: 'a foot that stands on this joist, see FOOTLOAD',
      quantity: 'force',
      least: 0,
      most: 100,
      optional: { default: 0 },
    },
    {
      name: 'point_at',
      help: 'where it stands from a support, inside the span',
      quantity: 'length',
      above: 0,
      most: 12000,
      optional: { default: null, meaning: 'mid-span' },
    },
    DURATION,
  ],
  result: { meaning: 'the greatest of bending, shear and deflection', unit: '1 = full' },
  source: JOIST_SOURCE,
  validity: JOIST_VALIDITY,
  caution: CAUTIONS.floors,
  example: {
    arguments: [4500, 500, 75, 200, 'C24', 0.5, 1.5],
    result: 10.001 / 15,
    within: 0.0001,
    source:
      'Benoit, Legrand, Tastet, Calcul de structures en bois (2008), ex. 2.3.1: 10.001 mm, of span/300; its bending use is 0.45573',
  },
  compute: ({ span, spacing, breadth, depth, grade, dead, imposed, pointLoad, pointAt, duration }, working) =>
    compute({ span, spacing, breadth, depth, grade, dead, imposed, pointLoad, pointAt, duration }, working),
});
