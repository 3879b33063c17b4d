import { treadLoad as compute } from '../../core/floors/treadLoad';
import { CAUTIONS } from '../../core/measures/cautions';
import { BODY_MASS } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const treadLoad = numberFunction({
  id: 'TREADLOAD',
  group: 'Floors',
  summary: 'Carrier and share on one tread, to set beside CODEPOINT for stairs',
  arguments: [
    BODY_MASS,
    {
      name: 'share',
      help: 'what the carrier holds up, see LOWERSHARE; write "0 kg" for nothing',
      quantity: 'mass',
      least: 0,
      most: 5000,
    },
  ],
  result: { meaning: 'load on the tread', unit: 'kN' },
  source: 'weight of carrier and share, standard gravity 9.80665 m/s2',
  validity: 'standing still on one tread; a step down lands harder',
  caution: CAUTIONS.floors,
  example: {
    arguments: [90, 84],
    result: 1.7063571,
    within: 1e-9,
    source: '174 kg x 9.80665 m/s2 (standard gravity, CGPM 1901)',
  },
  compute: ({ bodyMass, share }, working) => compute({ bodyMass, share }, working),
});
