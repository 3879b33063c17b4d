import type { Cell } from '../../src/core/measures/readQuantity';
import { callInParts, type HostArgument } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { cutToUsed, MOST_ROWS } from '../../src/worksheet/usedRows';
import { callInCells, HostError } from '../support/callInCells';

/** Rows of a whole column ("Excel specifications and limits"). */
const WHOLE_COLUMN = 1048576;

/** A column that begins with these cells and goes on empty; one array stands for all empty rows. */
function column(cells: readonly Cell[], rows: number, empty: Cell): Cell[][] {
  const nothing: Cell[] = [empty];
  const whole = new Array<Cell[]>(rows).fill(nothing);
  cells.forEach((cell, i) => (whole[i] = [cell]));
  return whole;
}

/** A table of these rows in whole columns. */
function columns(rows: readonly (readonly Cell[])[], empty: Cell): Cell[][] {
  const nothing = rows[0]!.map(() => empty);
  const whole = new Array<Cell[]>(WHOLE_COLUMN).fill(nothing);
  rows.forEach((row, i) => (whole[i] = [...row]));
  return whole;
}

describe.each<[string, Cell]>([
  ['null', null],
  ['an empty text', ''],
  ['0', 0],
])('whole columns whose empty cells are %s', (_name, empty) => {
  test('give as many results as there are rows in use', () => {
    const measures = column(['30 in', 900, '1 m'], WHOLE_COLUMN, empty);
    expect(callInCells('TOMM', measures)).toEqual([[762], [900], [1000]]);
  });

  test('are cut to the last row in use in any of them', () => {
    const rises = column([180, 190], WHOLE_COLUMN, empty);
    const goings = column([250, 240, 230], WHOLE_COLUMN, empty);
    const angles = callInCells('PITCH', rises, goings);
    expect(angles).toHaveLength(3);
    expect(angles[1]![0]).toBeCloseTo((Math.atan(190 / 240) * 180) / Math.PI, 9);
    expect(angles[2]![0]).toBeInstanceOf(HostError);
  });

  test('hold tables as well as the rows in use do', () => {
    const route = [
      ['Survey', 'Step', 'Stage', 'Width', 'Height'],
      ['Mill House', 1, 'door', 125, 1981],
    ];
    const pieces = [
      ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
      ['one-piece', 'slate', 1830, 930, 25, 121, 1],
    ];
    expect(callInCells('SURVEYS', columns(route, empty), columns(pieces, empty))).toEqual(
      callInCells('SURVEYS', route, pieces),
    );
    expect(callInCells('CHECKROUTE', columns(route, empty))).toHaveLength(2);
  });

  test('without anything in them are one empty cell', () => {
    expect(callInCells('TOMM', column([], WHOLE_COLUMN, empty))).toHaveLength(1);
  });
});

/** How many parts a call has: one after so many rows that it computes, whatever machine it runs on. */
function partsOf(id: string, ...values: readonly HostArgument[]): number {
  const description = FUNCTIONS.find((f) => f.id === id)!;
  const call = callInParts(description, (code, message) => new HostError(code, message));
  let parts = 0;
  for (const part of { [Symbol.iterator]: () => call(values) }) parts += part.of > 0 ? 1 : 0;
  return parts;
}

test('of a whole column only the rows in use are computed', () => {
  const lengths = ['30 in', 900, '1 m'];
  expect(partsOf('TOMM', column(lengths, WHOLE_COLUMN, null))).toBe(
    partsOf('TOMM', column(lengths, 3, null)),
  );
  // Many cells that are in use have parts of their own.
  expect(partsOf('TOMM', column([], MOST_ROWS, 900))).toBeGreaterThan(2);
  const route = [
    ['Survey', 'Step', 'Stage', 'Width', 'Height'],
    ['Mill House', 1, 'door', 125, 1981],
    ['Quay 4', 1, 'door', 225, 1981],
  ];
  const pieces = [
    ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
    ['one-piece', 'slate', 1830, 930, 25, 121, 1],
  ];
  const whole = partsOf('SURVEYS', columns(route, null), columns(pieces, null));
  expect(whole).toBe(partsOf('SURVEYS', route, pieces));
  expect(whole).toBeGreaterThanOrEqual(2);
});

test('a shorter range keeps its shape, empty rows and all', () => {
  expect(callInCells('TOMM', column([900], 2000, null))).toHaveLength(2000);
  expect(cutToUsed([column([900], MOST_ROWS, null)])[0]).toHaveLength(MOST_ROWS);
  expect(cutToUsed([column([900], MOST_ROWS + 1, null)])[0]).toHaveLength(1);
});

test('above the limit a 0 that may be a figure is not cut off', () => {
  expect(cutToUsed([column([900, 0, 0], MOST_ROWS + 1, null)])[0]).toHaveLength(3);
  expect(cutToUsed([column([900], MOST_ROWS + 1, 0)])[0]).toHaveLength(MOST_ROWS + 1);
});

test('a longer result is one error, which says to select the rows in use', () => {
  const filled = column([], MOST_ROWS + 1, 900);
  const one = callInCells('TOMM', filled);
  expect(one).toEqual([[expect.any(HostError)]]);
  expect((one[0]![0] as HostError).message).toBe(
    'the result would be 100001 rows long: allowed is 100000; select the rows in use only',
  );
  expect((one[0]![0] as HostError).code).toBe('#VALUE!');
});
