import { numberFunction } from '../namedArguments';

export const toMm = numberFunction({
  id: 'TOMM',
  group: 'Measures and pieces',
  summary: 'A length as written, in mm',
  arguments: [{ name: 'measure', help: 'the length', quantity: 'length', least: 0 }],
  result: { meaning: 'the length', unit: 'mm' },
  source: '1 in = 25.4 mm exactly (international yard and pound agreement, 1959)',
  example: {
    arguments: ['2\' 6"'],
    result: 762,
    source: '30 in of 25.4 mm (international yard and pound agreement, 1959)',
  },
  compute: ({ measure }) => measure,
});
