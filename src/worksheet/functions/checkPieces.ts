import { found } from '../../core/measures/problem';
import { checkPieces as compute } from '../../core/survey/checks/checkPieces';
import { CHECK_RESULT_MEANING, CHECK_VALIDITY, checkedTable, PROBLEMS_HEADER } from '../checkedTable';
import { tableFunction } from '../namedArguments';

export const checkPieces = tableFunction({
  id: 'CHECKPIECES',
  group: 'Routes and surveys',
  summary: 'What is missing or looks wrong in each row of the pieces',
  arguments: [
    {
      name: 'pieces',
      help: 'a table with a header row: Build, Piece, Length, Breadth, Thickness, Mass, Count',
      quantity: 'range',
    },
  ],
  result: { meaning: CHECK_RESULT_MEANING, unit: '' },
  source:
    'mass against size: slate 2700 to 2950 kg/m3, Cardarelli, Materials Handbook; the rest common practice',
  validity: CHECK_VALIDITY,
  example: {
    // 1.83 x 0.93 x 0.025 m at 2850 kg/m3 is 121.3 kg, which is 267 lb.
    arguments: [
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['6 ft one-piece', 'slate', 1830, 930, 25, 267, 1],
        ['6 ft one-piece', 'legs', 760, 150, 150, 8, 4],
      ],
    ],
    result: [
      [PROBLEMS_HEADER],
      [
        'Check: Mass and sizes make 6275 kg/m3, and slate is 2700 to 2950; with Mass meant in lb it is 121.1 kg and they agree.',
      ],
      [''],
    ],
    source:
      'by hand: 267 / (1.83 x 0.93 x 0.025) is 6275 kg/m3, and 267 lb of 0.45359237 kg are 121.1 kg, 2846 kg/m3; slate 2700 to 2950 kg/m3: Cardarelli, Materials Handbook',
  },
  compute: ({ pieces }) => found(checkedTable(compute(pieces), pieces.length - 1)),
});
