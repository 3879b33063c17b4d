import { found, refused, type Outcome, type Problem } from '../../core/measures/problem';
import type { Cell } from '../../core/measures/readQuantity';
import { collectWorking, type WorkingStep } from '../../core/measures/working';
import type { FunctionDescription, NumberFunction, TableCell, TableFunction } from '../description';
import { messageOf } from '../messages';
import { camelCase, tableFunction } from '../namedArguments';
import { QUANTITIES } from '../quantities';
import { readArgument, type ArgumentValue } from '../readArgument';

const HEADER = ['What', 'Formula', 'Value', 'Unit', 'Source'] as const;

/**
 * Describes WORKING over the functions that it can show: every one with a single number as its result. The
 * steps are written by the very computation that gives the result.
 */
export function working(functions: readonly FunctionDescription[]): TableFunction {
  const shown = functions.filter((f): f is NumberFunction => f.kind === 'number');
  return tableFunction({
    id: 'WORKING',
    group: 'Routes and surveys',
    summary: 'The working of any function with one number as its result',
    arguments: [
      {
        name: 'function',
        help: 'name of the function, such as "CORNER"',
        quantity: 'choice',
        choices: shown.map((f) => f.id),
        prefix: 'CARRY.',
      },
      {
        name: 'arguments',
        help: "the function's arguments in its own order, single cells",
        quantity: 'range',
        repeating: true,
        optional: { default: null, meaning: 'the function takes none' },
      },
    ],
    result: {
      meaning:
        "rows What, Formula, Value, Unit, Source; the last value is the function's result; a refusal is a row Refused with the message that the function's error carries",
      unit: '',
    },
    source: 'the same computation that gives the result',
    validity: 'single cells only',
    example: {
      arguments: ['TOMM', '30 in'],
      result: [
        [...HEADER],
        ['measure', 'as given: 30 in', 762, 'mm', ''],
        [
          'the length',
          'TOMM(measure)',
          762,
          'mm',
          '1 in = 25.4 mm exactly (international yard and pound agreement, 1959)',
        ],
      ],
      within: 1e-9,
      source: '30 x 25.4 (international yard and pound agreement, 1959)',
    },
    compute: ({ function: id, arguments: given }) => {
      const description = shown.find((f) => f.id === id);
      // The word was read out of this very list.
      if (!description) throw new Error(`WORKING lists ${id} and does not know it`);
      return table(
        description,
        given.map((range) => range[0]?.[0]),
      );
    },
  });
}

function table(
  description: NumberFunction,
  cells: readonly Cell[],
): Outcome<readonly (readonly TableCell[])[]> {
  if (cells.length > description.arguments.length) {
    return refused({
      kind: 'impossible',
      argument: 'arguments',
      got: cells.length,
      because: `${description.id} takes ${description.arguments.length} arguments`,
    });
  }
  const rows: TableCell[][] = [[...HEADER]];
  const given: Record<string, ArgumentValue> = {};
  for (const [i, argument] of description.arguments.entries()) {
    const read = readArgument(argument, cells[i]);
    if (!read.ok) return found([...rows, refusedRow(read.problem)]);
    given[camelCase(argument.name)] = read.value;
    if (read.value === undefined) continue;
    const cell = cells[i];
    const left = cell === undefined || cell === null || (typeof cell === 'string' && cell.trim() === '');
    const { unit } = QUANTITIES[argument.quantity];
    const written = typeof cell === 'string' && unit !== '' ? `: ${cell.trim()}` : '';
    rows.push([argument.name, left ? 'left out: its default' : `as given${written}`, read.value, unit, '']);
  }
  if (description.caution) rows.push(['Caution', description.caution, '', '', '']);
  const { result, steps } = collectWorking((note) => description.compute(given, note));
  const outcome = typeof result === 'number' ? found(result) : result;
  if (!outcome.ok) return found([...rows, refusedRow(outcome.problem)]);
  rows.push(...steps.map(rowOf));
  if (steps.at(-1)?.value !== outcome.value) rows.push(rowOf(resultStep(description, outcome.value)));
  return found(rows);
}

/** Not every build of the host shows the message of an error, so here it stands in a cell. */
const refusedRow = (problem: Problem): TableCell[] => ['Refused', messageOf(problem).text, '', '', ''];

const rowOf = ({ what, formula, value, unit, source }: WorkingStep): TableCell[] => [
  what,
  formula,
  value,
  unit,
  source,
];

/** A function whose whole formula is its own name, such as a reading, has nothing to write but its result. */
const resultStep = (description: NumberFunction, value: number): WorkingStep => ({
  what: description.result.meaning,
  formula: `${description.id}(${description.arguments.map((a) => a.name).join(', ')})`,
  value,
  unit: description.result.unit,
  source: description.source,
});
