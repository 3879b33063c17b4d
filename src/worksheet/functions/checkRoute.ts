import { found } from '../../core/measures/problem';
import { checkRoute as compute } from '../../core/survey/checks/checkRoute';
import { CHECK_RESULT_MEANING, CHECK_VALIDITY, checkedTable, PROBLEMS_HEADER } from '../checkedTable';
import { tableFunction } from '../namedArguments';

export const checkRoute = tableFunction({
  id: 'CHECKROUTE',
  group: 'Routes and surveys',
  summary: 'What is missing or looks wrong in each row of a route, or of many',
  arguments: [
    {
      name: 'route',
      help: 'a table with a header row, one row a step; a column Survey keeps many routes apart, and their rows may stand anywhere',
      quantity: 'range',
    },
  ],
  result: { meaning: CHECK_RESULT_MEANING, unit: '' },
  source:
    'the measures each stage needs; usual ranges: Approved Documents K and M, IRC R311.7, BS 4787, ISO 4190-1, common practice',
  validity: CHECK_VALIDITY,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height', 'Length'],
        [1, 'door', 715, 1960, null],
        [2, 'pasage', 900, 2300, null],
        [3, 'room', 4200, 2400, 5600],
      ],
    ],
    result: [[PROBLEMS_HEADER], [''], ['"pasage" is no stage known here; is passage meant?'], ['']],
    source:
      'the list of stages in this reference: "pasage" is none of them, and one letter more makes it one; the other rows have all that their stages need',
  },
  compute: ({ route }) => found(checkedTable(compute(route), route.length - 1)),
});
