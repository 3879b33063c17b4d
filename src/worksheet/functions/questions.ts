import { customerQuestions } from '../../core/customer/customerQuestions';
import { found } from '../../core/measures/problem';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ROUTE, surveysOf } from '../routeInputs';

const COLUMNS = ['Survey', 'Step', 'Question', 'Why', 'Photo'] as const;

export const questions = tableFunction({
  id: 'QUESTIONS',
  group: 'Routes and surveys',
  summary: 'What to ask the customer, most useful first, in words that a customer understands',
  arguments: [
    {
      ...ROUTE,
      help: `${ROUTE.help}; a column Survey keeps many routes apart`,
    },
  ],
  result: {
    meaning:
      `a header row and one row a question: ${COLUMNS.join(', ')}; what is missing first, then what looks wrong, ` +
      'then what is supposed meanwhile, then what is taken at its worst. It sends nothing',
    unit: '',
  },
  source:
    'what CHECKROUTE finds, and the measures that a stage may have; how a thing is asked: common practice, no source',
  validity:
    'what the office can put right by itself, such as headings and the numbers of steps, is not asked: see CHECKROUTE',
  example: {
    arguments: [
      [
        ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Length'],
        ['A', 1, 'door', 762, 1981, null],
        ['A', 2, 'room', null, 2400, 5600],
      ],
    ],
    result: [
      [...COLUMNS],
      [
        'A',
        2,
        'How wide is the room?',
        'without it nobody can say whether the table gets through',
        'the room, from a corner',
      ],
      [
        'A',
        1,
        'Is 762 mm the width of the door itself or of the opening at the door? Please measure between the strip the door closes against and the open door.',
      ],
    ],
    source: 'a room needs its width; 762 mm is a leaf of BS 4787 (30 in), from memory',
  },
  compute: ({ route }) => {
    const read = surveysOf('route', route);
    if (!read.ok) return read;
    return found<TableCell[][]>([
      [...COLUMNS],
      ...customerQuestions(read.value).map((q): TableCell[] => [
        q.survey,
        q.step,
        q.question,
        q.why,
        q.photo,
      ]),
    ]);
  },
});
