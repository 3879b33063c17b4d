import { flightLoad as compute } from '../../core/floors/flightLoad';
import { CAUTIONS } from '../../core/measures/cautions';
import { STAIR_WIDTH } from '../../core/stages/usualRanges';
import { opening } from '../arguments';
import { CREW_BODY_MASS, massOf } from '../carryArguments';
import { numberFunction } from '../namedArguments';

export const flightLoad = numberFunction({
  id: 'FLIGHTLOAD',
  group: 'Floors',
  summary: 'Piece and crew spread over the plan of a flight, to set beside CODELOAD for stairs',
  arguments: [
    massOf('mass of the piece'),
    {
      name: 'crew',
      help: 'people on the flight with it',
      quantity: 'count',
      least: 1,
      most: 20,
      whole: true,
    },
    {
      name: 'length',
      help: 'length of the flight in plan',
      quantity: 'length',
      least: 300,
      most: 20000,
    },
    opening('width', 'width of the flight', STAIR_WIDTH),
    CREW_BODY_MASS,
  ],
  result: { meaning: 'load on the flight', unit: 'kN/m2' },
  source:
    'weight of piece and crew over the plan area, standard gravity 9.80665 m/s2; 90 kg: common practice, no source',
  validity: 'all of them on one flight, at rest',
  caution: CAUTIONS.floors,
  example: {
    arguments: [120, 4, 3000, 800],
    result: 1.96133,
    within: 1e-9,
    source: '480 kg x 9.80665 m/s2 over 2.4 m2 (standard gravity, CGPM 1901)',
  },
  compute: ({ mass, crew, length, width, bodyMass }, working) =>
    compute({ mass, crew, length, width, bodyMass }, working),
});
