import { checkPieces } from '../../src/core/survey/checks/checkPieces';
import { checkRoute } from '../../src/core/survey/checks/checkRoute';
import { problemText } from '../../src/core/survey/words/problemWords';
import type { Cell } from '../../src/core/measures/readQuantity';
import { freeName, starterSheets } from '../../src/taskpane/starterSheets';
import type { NewSheet } from '../../src/taskpane/sheetAccess';
import { WORKED_EXAMPLES, WORKING_ROWS } from '../../src/worksheet/workedExamples';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { callInCells } from '../support/callInCells';
import { WORKED_ANSWERS } from '../support/workedAnswers';
import { STAGE_NAMES, stageNeeds } from '../../src/core/stages/kinds';
import { measureAtStage } from '../../src/core/survey/words/measureHeading';

const sheets = starterSheets({ sheets: ['Sheet1'], tables: [] });
const [route, pieces, quote, worked] = sheets as [NewSheet, NewSheet, NewSheet, NewSheet];

describe('names', () => {
  test('are free, whatever the case of those that are there', () => {
    const names = starterSheets({ sheets: ['ROUTE', 'route 2', 'Quote'], tables: ['carryroute'] });
    expect(names.map(({ name }) => name)).toEqual([
      'Route 3',
      'Pieces',
      'Quote 2',
      'Worked examples',
      'Exercises',
      'Survey form',
    ]);
    expect(names[0]!.tables[0]!.name).toBe('CarryRoute2');
    // Formulas follow the table that was made.
    expect(JSON.stringify(names[2])).toContain('CarryRoute2[#All]');
  });

  test('a free name is kept as it is', () => {
    expect(freeName('Route', ['Pieces'], ' ')).toBe('Route');
  });

  test('hold to what a host allows: 31 characters and none of \\ / ? * [ ] :', () => {
    // Excel, "Rename a worksheet".
    for (const { name } of sheets) expect(name).toMatch(/^[^\\/?*[\]:]{1,31}$/);
  });
});

describe('the example rows', () => {
  const cells = (sheet: NewSheet): readonly (readonly Cell[])[] =>
    sheet.tables[0]!.cells as readonly (readonly Cell[])[];

  test('of the route are what the checks want of a survey', () => {
    expect(
      checkRoute(cells(route))
        .filter((p) => p.severity !== 'question')
        .map(problemText),
    ).toEqual([]);
  });

  test('of the pieces are what the checks want of pieces', () => {
    expect(checkPieces(cells(pieces)).map(problemText)).toEqual([]);
  });

  test('are marked as examples, every one', () => {
    for (const row of cells(route).slice(1)) expect(String(row[row.length - 1])).toMatch(/^example/);
    for (const row of cells(pieces).slice(1)) expect(String(row[0])).toContain('(example)');
  });

  test('stages are chosen from a list of all stages, beside every row', () => {
    const [list] = route.lists;
    expect(list!.words).toEqual(STAGE_NAMES);
    expect(cells(route)[0]![list!.column]).toBe('Stage');
    expect(list!.rows).toBe(cells(route).length - 1);
    // Excel allows 255 characters in a typed list.
    expect(list!.words.join(',').length).toBeLessThanOrEqual(255);
  });
});

test('the quote prices person-hours, and no figure on it runs to nine places', () => {
  const at = (row: number, column: number): unknown =>
    quote.cells.find((cell) => cell.row === row && cell.column === column)?.value;
  expect([at(6, 0), at(6, 1)]).toEqual(['Rate, a person-hour (example)', 32]);
  expect(JSON.stringify(at(10, 1))).toContain('*B7+B8');
  const formatted = (row: number, column: number): boolean =>
    (quote.formats ?? []).some(
      (f) => row >= f.row && row < f.row + f.rows && column >= f.column && column < f.column + f.columns,
    );
  // A format rounds to the nearest: times are rounded up before they are shown, from where they spill.
  expect(JSON.stringify(at(13, 19))).toContain('CARRY.JOBTIME(');
  expect(at(14, 16)).toEqual({ formula: '=IF(ISNUMBER(W15),-INT(0.000000001-10*(W15))/10,W15&"")' });
  // So is a clearance, down: 24.96 beside "tight" is not 25.0.
  expect(JSON.stringify(at(13, 26))).toContain('CARRY.ADVISE(');
  expect(at(14, 2)).toEqual({ formula: '=IF(ISNUMBER(AC15),INT(10*(AC15)+0.000000001)/10,AC15&"")' });
  // What does not fit is not left out in silence.
  expect(JSON.stringify(at(54, 0))).toContain('Not all is shown');
  // Clearance, Heaviest kg, Carry min, Set-up min, Crew hours; and the price.
  for (const column of [2, 7, 14, 15, 16]) expect(formatted(14, column)).toBe(true);
  expect(formatted(10, 1)).toBe(true);
});

test('no cell is written twice, and none lies in a table', () => {
  for (const sheet of sheets) {
    const places = sheet.cells.map(({ row, column }) => `${row},${column}`);
    expect(new Set(places).size).toBe(places.length);
    for (const { row, column, cells } of sheet.tables) {
      const inside = sheet.cells.filter(
        (cell) =>
          cell.row >= row &&
          cell.row < row + cells.length &&
          cell.column >= column &&
          cell.column < column + cells[0]!.length,
      );
      expect(inside).toEqual([]);
      expect(new Set(cells.map((line) => line.length)).size).toBe(1);
    }
  }
});

test('the quote sheet keeps the cautions in sight', () => {
  const texts = quote.cells.map(({ value }) => value).join('\n');
  expect(texts).toContain('"Goes" is about space alone');
  expect(texts).toContain('written assessment');
});

describe('worked examples', () => {
  test('there are at least 12, each question once', () => {
    expect(new Set(WORKED_EXAMPLES.map(({ question }) => question)).size).toBeGreaterThanOrEqual(12);
  });

  test.each(WORKED_EXAMPLES.map((example) => [example.id, example] as const))(
    '%s answers what is worked out by hand, and its working fits beside the question',
    (id, { title, given, workingRows = WORKING_ROWS }) => {
      const description = FUNCTIONS.find((f) => f.id === id);
      if (description?.kind !== 'number') throw new Error(`${id} is no function with one number`);
      const least = description.arguments.filter(({ optional }) => !optional).length;
      expect(given.length).toBeGreaterThanOrEqual(least);
      expect(given.length).toBeLessThanOrEqual(description.arguments.length);
      const values = given.map(([, value]) => value);
      // The scan of the slanted face stops 0.002 mm short of the best turn.
      expect(Math.abs((callInCells(id, ...values)[0]![0] as number) - WORKED_ANSWERS[title]!)).toBeLessThan(
        0.002,
      );
      // The rows kept for it, less the question and a gap below.
      expect(callInCells('WORKING', id, ...values).length).toBeLessThanOrEqual(workingRows - 2);
    },
  );

  test('every formula names a function that there is', () => {
    const used = JSON.stringify(sheets)
      .match(/CARRY\.[A-Z]+/g)!
      .map((name) => name.slice(6));
    const known = FUNCTIONS.map(({ id }) => id);
    expect(used.filter((name) => !known.includes(name))).toEqual([]);
    expect(worked.cells.length).toBeGreaterThan(60);
  });
});

describe('exercises', () => {
  const exercises = sheets[4]!;
  const at = (row: number, column: number): Cell => {
    const value = exercises.cells.find((cell) => cell.row === row && cell.column === column)?.value;
    return value as Cell;
  };
  const rows = [...new Set(exercises.cells.map(({ row }) => row))].filter((row) => row >= 6);

  /** The number that a formula of a seed gives, worked out as its operators read. */
  const given = (cell: Cell, seed: number): Cell => {
    const formula = (cell as { formula?: string } | null)?.formula;
    if (formula === undefined) return cell;
    const parts = /^=(\d+)\+(\d+)\*INT\(MOD\(ABS\(\$C\$3\)\*(\d+)\+(\d+),(\d+)\)\/(\d+)\*(\d+)\)$/.exec(
      formula,
    );
    const [low, step, factor, more, modulus, , count] = parts!.slice(1).map(Number) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return low + step * Math.floor((((seed * factor + more) % modulus) / modulus) * count);
  };

  test('another seed makes other numbers, and every seed numbers that their function takes', () => {
    expect(rows.length).toBeGreaterThan(12);
    const all = new Set<string>();
    for (const seed of [0, 1, 7, 12, 99, 2026]) {
      const numbers = rows.map((row) => {
        const { formula } = at(row, 5) as unknown as { formula: string };
        const id = /CARRY\.([A-Z]+)/.exec(formula)![1]!;
        const count = /CARRY\.[A-Z]+\(([^)]*)\)/.exec(formula)![1]!.split(',').length;
        const values = Array.from({ length: count }, (_, k) => given(at(row, 7 + k), seed));
        expect([id, values, typeof callInCells(id, ...(values as number[]))[0]![0]]).toEqual([
          id,
          values,
          'number',
        ]);
        return values.join(' ');
      });
      all.add(numbers.join('; '));
    }
    expect(all.size).toBe(6);
  });

  test('no answer is shown before it is asked for', () => {
    for (const row of rows) expect(JSON.stringify(at(row, 5))).toContain('write yes in C4 to see it');
  });
});

test('the survey form asks for every measure that a stage needs, by its column', () => {
  const form = sheets[5]!;
  const columns = form.cells.filter(({ column }) => column === 2).map(({ value }) => value);
  for (const stage of STAGE_NAMES) {
    for (const need of stageNeeds(stage).needs) expect(columns).toContain(measureAtStage(need, stage));
  }
});
