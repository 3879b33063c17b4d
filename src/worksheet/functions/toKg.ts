import { numberFunction } from '../namedArguments';

export const toKg = numberFunction({
  id: 'TOKG',
  group: 'Measures and pieces',
  summary: 'A mass as written, in kg',
  arguments: [{ name: 'measure', help: 'the mass', quantity: 'mass', least: 0 }],
  result: { meaning: 'the mass', unit: 'kg' },
  source: '1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959)',
  example: {
    arguments: ['265 lb'],
    result: 120.20197805,
    within: 1e-9,
    source: '265 x 0.45359237 (international yard and pound agreement, 1959)',
  },
  compute: ({ measure }) => measure,
});
