import { replySentences } from '../../core/customer/replySentences';
import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { stageBook } from '../../core/route/stageBook';
import { tapeOf } from '../../core/survey/table/stageRow';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, buildsOf, PIECES, readOneRoute, ROUTE, TAPE } from '../routeInputs';
import { ROUTE_MOTIONS, ROUTE_VALIDITY } from '../verdictTable';

const COLUMNS = ['About', 'Sentence'] as const;

export const reply = tableFunction({
  id: 'REPLY',
  group: 'Routes and surveys',
  summary: 'Sentences for the customer: what fits, what does not, what would change it, what it rests on',
  arguments: [ROUTE, PIECES, ALLOWANCE, TAPE],
  result: {
    meaning:
      `a header row and one row a sentence: ${COLUMNS.join(', ')}; the builds that fit first, after each other one the ` +
      'one measure that would change it, where there is one. It sends nothing: read it before anybody else does',
    unit: '',
  },
  source:
    'the verdicts of ADVISE, the first line of REMEASURE for one build, the first questions of QUESTIONS',
  motions: ROUTE_MOTIONS,
  validity: `${ROUTE_VALIDITY}; it names no price, no date and no crew`,
  caution: CAUTIONS.customer,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height'],
        [1, 'door', 820, 1981],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['Table in panels', 'panel', 1830, 700, 30, 20, 1],
        ['Table in one', 'cabinet', 1830, 900, 780, 60, 1],
      ],
    ],
    result: [
      [...COLUMNS],
      [
        'Fits',
        'Table in panels: by these measures all its pieces have room on the whole way, least of all at the door.',
      ],
      [
        'Fits narrowly',
        'Table in one: it can pass, but with less room than we want to see, least of all at the door with the cabinet. We would try it with a frame first.',
      ],
      [
        'What would change it',
        'Table in one: it would fit if the clear width of the door were 840 mm; 820 mm was noted. Please measure that once more.',
      ],
    ],
    source:
      'the panel leaves (820 - 30)/2; the cabinet on edge (820 - 780)/2 = 20 mm, and 780 + 2 x 25 of allowance + 2 x 5 of tape is 840 mm',
  },
  compute: ({ route, pieces, allowance, tape }) => {
    const read = readOneRoute(route);
    if (!read.ok) return read;
    const builds = buildsOf(pieces);
    if (!builds.ok) return builds;
    const { rows } = read.value;
    const book = stageBook(tapeOf(rows, tape));
    const sentences = replySentences({ read: read.value.read, rows, builds: builds.value, book, allowance });
    return found<TableCell[][]>([
      [...COLUMNS],
      ...sentences.map(({ about, sentence }): TableCell[] => [about, sentence]),
    ]);
  },
});
