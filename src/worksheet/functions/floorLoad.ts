import { floorLoad as compute } from '../../core/floors/floorLoad';
import { CAUTIONS } from '../../core/measures/cautions';
import { massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const floorLoad = numberFunction({
  id: 'FLOORLOAD',
  group: 'Floors',
  summary: 'Weight of a table spread over its footprint or over a room',
  arguments: [
    massOf('what stands there'),
    { name: 'length', help: 'length of the footprint', quantity: 'length', least: 300, most: 20000 },
    { name: 'breadth', help: 'breadth of the footprint', quantity: 'length', least: 20, most: 20000 },
  ],
  result: { meaning: 'load over the footprint', unit: 'kN/m2' },
  source: 'weight over area, standard gravity 9.80665 m/s2',
  validity: 'an even spread; a table stands on feet, see FOOTLOAD and JOIST',
  caution: CAUTIONS.floors,
  example: {
    arguments: [400, 2000, 1000],
    result: 1.96133,
    within: 1e-9,
    source: '400 kg x 9.80665 m/s2 over 2 m2 (standard gravity, CGPM 1901)',
  },
  compute: ({ mass, length, breadth }, working) => compute({ mass, length, breadth }, working),
});
