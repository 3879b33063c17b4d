import { found, refused, type Problem } from '../../core/measures/problem';
import { checkRow as compute } from '../../core/survey/checks/checkRow';
import { problemText } from '../../core/survey/words/problemWords';
import { CHECK_VALIDITY } from '../checkedTable';
import { tableFunction } from '../namedArguments';
import { firstOf } from '../../core/lists/ends';

const notOneRow = (argument: string, rows: number): Problem => ({
  kind: 'impossible',
  argument,
  got: `${rows} rows`,
  because: 'it is one row; CHECKROUTE checks a whole route',
});

export const checkRow = tableFunction({
  id: 'CHECKROW',
  group: 'Routes and surveys',
  summary: 'What is missing or looks wrong in one row of a route',
  arguments: [
    { name: 'headers', help: 'the header row of the route', quantity: 'range' },
    { name: 'row', help: 'one row of the route, as wide as the headers', quantity: 'range' },
  ],
  result: {
    meaning:
      'the problems of the row, one below the other; empty when there is none; what begins with "Check:" is to be looked at, the rest keeps the row from being used',
    unit: '',
  },
  source:
    'the measures each stage needs; usual ranges: Approved Documents K and M, IRC R311.7, BS 4787, ISO 4190-1, common practice',
  validity: CHECK_VALIDITY,
  example: {
    arguments: [[['Step', 'Stage', 'Width', 'Height']], [[1, 'door', 76, 1981]]],
    result: [['Width cannot be taken: 76 was typed, and allowed is 100 to 20000 mm; 76 cm would be 760 mm.']],
    source:
      'the rules of this reference: openings are 100 to 20000 mm, and a refusal names the measure, what came and what is allowed; 76 cm are 760 mm, an ordinary door',
  },
  compute: ({ headers, row }) => {
    if (headers.length !== 1) return refused(notOneRow('headers', headers.length));
    if (row.length !== 1) return refused(notOneRow('row', row.length));
    const problems = compute(firstOf(headers), firstOf(row));
    return found(problems.length > 0 ? problems.map((problem) => [problemText(problem)]) : [['']]);
  },
});
