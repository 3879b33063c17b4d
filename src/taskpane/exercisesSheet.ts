import { CAUTIONS } from '../core/measures/cautions';
import {
  markFormula,
  questionFormula,
  shownWhenAsked,
  variedFormula,
  WORKED_EXAMPLES,
} from '../worksheet/workedExamples';
import { columnLetters, type NewSheet } from './sheetAccess';

const SEED = '$C$3';
const SHOW = '$C$4';
const FIRST_ROW = 6;
/** Where the numbers of an exercise stand, behind its answer. */
const GIVEN_COLUMN = 7;

/** Those with a number that can be varied. */
const VARIED = WORKED_EXAMPLES.filter(({ given }) =>
  given.some(([, value]) => variedFormula(value, SEED, 1) !== undefined),
);

/**
 * Exercises with numbers from a seed: another seed makes others, the same seed the same ones for everybody. The answers
 * are only shown once they are asked for.
 */
export function exercisesSheet(name: string): NewSheet {
  const cells: NewSheet['cells'][number][] = [
    {
      row: 0,
      column: 0,
      value: 'Exercises: the same seed gives everybody the same numbers, another seed gives others.',
      bold: true,
    },
    { row: 1, column: 0, value: CAUTIONS.lifting },
    { row: 2, column: 1, value: 'Seed, a whole number' },
    { row: 2, column: 2, value: 7 },
    { row: 3, column: 1, value: 'Show the answers? yes, or empty' },
    ...['No.', 'Exercise', 'Your answer', 'Unit', 'Marked', 'Answer', '', 'What is given'].map(
      (value, column) => ({ row: FIRST_ROW - 1, column, value, bold: true }),
    ),
  ];
  let varied = 0;
  VARIED.forEach((example, i) => {
    const row = FIRST_ROW + i;
    const givenAt = example.given.map((_, k) => `${columnLetters(GIVEN_COLUMN + k)}${row + 1}`);
    const result = `CARRY.${example.id}(${givenAt.join(', ')})`;
    const places = Math.max(0, Math.ceil(-Math.log10(example.tolerance)));
    cells.push(
      { row, column: 0, value: i + 1 },
      { row, column: 1, value: { formula: `=${questionFormula(example, givenAt)}` } },
      { row, column: 3, value: example.unit },
      { row, column: 4, value: { formula: `=${markFormula(`C${row + 1}`, example, result)}` } },
      { row, column: 5, value: { formula: `=${shownWhenAsked(SHOW, `ROUND(${result},${places})`)}` } },
    );
    example.given.forEach(([, value], k) => {
      const formula = variedFormula(value, SEED, ++varied);
      cells.push({
        row,
        column: GIVEN_COLUMN + k,
        value: formula === undefined ? value : { formula: `=${formula}` },
      });
    });
  });
  return { name, cells, tables: [], lists: [], widths: [6, 130, 14, 12, 26, 24, 3, 9, 9, 9, 9, 9, 9, 9, 9] };
}
