import { radians } from '../../core/measures/angle';
import { lowerShare as compute } from '../../core/carrying/lowerShare';
import { CAUTIONS } from '../../core/measures/cautions';
import { massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const lowerShare = numberFunction({
  id: 'LOWERSHARE',
  group: 'Carrying',
  summary: 'What the lower of two carriers holds up on a slope',
  arguments: [
    massOf('mass of the piece'),
    {
      name: 'grip_spacing',
      help: 'distance between the two grips',
      quantity: 'length',
      least: 100,
      most: 6000,
    },
    {
      name: 'mass_height',
      help: 'centre of mass, square above the line of the grips and midway along it; negative below',
      quantity: 'length',
      least: -3000,
      most: 3000,
      plainZero: true,
    },
    {
      name: 'pitch',
      help: 'pitch of the line of the grips',
      quantity: 'angle',
      least: 0,
      most: 60,
      plainZero: true,
    },
  ],
  result: { meaning: 'mass on the lower carrier', unit: 'kg' },
  source: 'moments about the upper grip: mass (1/2 + mass_height / grip_spacing x tan(pitch))',
  validity: 'two carriers who lift straight up, standing or moving without jerks',
  caution: CAUTIONS.stairs,
  example: {
    arguments: [200, 1250, 250, 45],
    result: 140,
    within: 1e-9,
    source: 'Young & Freedman, University Physics, ch. 11: 1372 N at g = 9.8',
  },
  compute: ({ mass, gripSpacing, massHeight, pitch }, working) =>
    compute({ mass, gripSpacing, massHeight, pitch: radians(pitch) }, working),
});
