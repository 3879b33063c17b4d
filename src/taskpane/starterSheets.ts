import { CAUTIONS } from '../core/measures/cautions';
import { STAGE_NAMES } from '../core/stages/kinds';
import { columnLetters, type NewSheet, type WriteCell } from './sheetAccess';
import {
  markFormula,
  questionFormula,
  shownWhenAsked,
  WORKED_EXAMPLES,
  WORKING_ROWS,
  type WorkedExample,
} from '../worksheet/workedExamples';
import { exercisesSheet } from './exercisesSheet';
import { surveyFormSheet } from './surveyFormSheet';
import { ROUTE_HEADINGS } from '../core/survey/table/readHeaders';
import { JOBTIME_COLUMNS } from '../worksheet/functions/jobTime';
import { isRounded, notAllShown, shownCell } from '../worksheet/roundedFormulas';
import { VERDICT_COLUMNS } from '../worksheet/verdictTable';
import { PIECE_HEADINGS } from '../core/survey/table/readPieces';

/** What is taken already, in whatever case. */
export interface TakenNames {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
}

type Line = Readonly<Record<string, WriteCell>>;

// An invented house: front door, hall, straight stairs, a half landing, and the room above.
const EXAMPLE_ROUTE: readonly Line[] = [
  { Step: 1, Stage: 'door', Width: 805, Height: '1.98 m', Note: 'example: front door, leaf off' },
  { Step: 2, Stage: 'passage', Width: 1010, Height: 2400, Length: 3200, Note: 'example: hall' },
  {
    Step: 3,
    Stage: 'half landing',
    Width: 860,
    Well: 110,
    Depth: 900,
    Height: 2050,
    Rise: 190,
    Going: 240,
    'Over rail': 0,
    Ceiling: 2400,
    Way: 'up',
    Note: 'example: seven steps below, six above',
  },
  {
    Step: 4,
    Stage: 'corner',
    Width: '92 cm',
    'Width out': 880,
    Height: 2350,
    Turn: 90,
    Run: 1500,
    Note: 'example: top of the stairs',
  },
  { Step: 5, Stage: 'door', Width: `2' 5"`, Height: 1981, Note: 'example: games room door' },
  { Step: 6, Stage: 'room', Length: 5600, Width: 4300, Height: 2350, Note: 'example: games room' },
];

// Sizes and masses of the usual order; common practice, no source. The order is the firm's preference.
const EXAMPLE_PIECES: readonly (readonly WriteCell[])[] = [
  ['8 ft, slate in three (example)', 'Slate section', 1270, 800, 25, 71, 3],
  ['8 ft, slate in three (example)', 'Cabinet side', 2400, 300, 60, 22, 2],
  ['8 ft, slate in three (example)', 'Cabinet end', 1300, 300, 60, 12, 2],
  ['8 ft, slate in three (example)', 'Leg', 760, 180, 180, 11, 4],
  ['7 ft, one slate (example)', 'Slate', 1830, 930, 25, 119, 1],
  ['7 ft, one slate (example)', 'Cabinet side', 2080, 280, 55, 18, 2],
  ['7 ft, one slate (example)', 'Cabinet end', 1120, 280, 55, 10, 2],
  ['7 ft, one slate (example)', 'Leg', 760, 160, 160, 9, 4],
  ['6 ft, one slate (example)', 'Slate', 1560, 800, 20, 71, 1],
  ['6 ft, one slate (example)', 'Cabinet, built up', 1800, 1020, 420, 58, 1],
  ['6 ft, one slate (example)', 'Leg', 740, 150, 150, 8, 4],
];

/** The starter sheets, under names that are free. */
export function starterSheets(taken: TakenNames): NewSheet[] {
  const sheet = (wanted: string): string => freeName(wanted, taken.sheets, ' ');
  const route = freeName('CarryRoute', taken.tables, '');
  const pieces = freeName('CarryPieces', taken.tables, '');
  return [
    routeSheet(sheet('Route'), route),
    piecesSheet(sheet('Pieces'), pieces),
    quoteSheet(sheet('Quote'), route, pieces),
    workedSheet(sheet('Worked examples'), route, pieces),
    exercisesSheet(sheet('Exercises')),
    surveyFormSheet(sheet('Survey form')),
  ];
}

/** `wanted`, or with the first number from 2 that makes it free; case does not tell names apart. */
export function freeName(wanted: string, taken: readonly string[], join: string): string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  let name = wanted;
  for (let i = 2; used.has(name.toLowerCase()); i++) name = `${wanted}${join}${i}`;
  return name;
}

const TABLE_ROW = 2;

function routeSheet(name: string, table: string): NewSheet {
  const lines = EXAMPLE_ROUTE.map((line) =>
    ROUTE_HEADINGS.map((header): WriteCell => (header === 'Survey' ? 'Example' : (line[header] ?? null))),
  );
  const stage = ROUTE_HEADINGS.indexOf('Stage');
  return {
    name,
    cells: [
      {
        row: 0,
        column: 0,
        value:
          'One row a stage, from the kerb to the room. Plain numbers are mm; other units in text: 76 cm, 30 in. Write over the example rows.',
        bold: true,
      },
    ],
    tables: [{ name: table, row: TABLE_ROW, column: 0, cells: [[...ROUTE_HEADINGS], ...lines] }],
    lists: [{ row: TABLE_ROW + 1, column: stage, rows: lines.length, columns: 1, words: STAGE_NAMES }],
    widths: ROUTE_HEADINGS.map((header) =>
      header === 'Note' ? 34 : header === 'Stage' ? 16 : Math.max(8, header.length + 3),
    ),
  };
}

function piecesSheet(name: string, table: string): NewSheet {
  return {
    name,
    cells: [
      {
        row: 0,
        column: 0,
        value:
          'All pieces with the same Build are one way to supply a table, the one you would rather sell first. Sizes mm, masses kg.',
        bold: true,
      },
    ],
    tables: [{ name: table, row: TABLE_ROW, column: 0, cells: [[...PIECE_HEADINGS], ...EXAMPLE_PIECES] }],
    lists: [],
    widths: [32, 20, 10, 10, 11, 9, 8],
  };
}

/** Builds that a starter quote has room for. */
const SPILLED_ROWS = 40;
/** What spills on the quote: where it is shown and, not rounded, where it spills, in columns from 0. */
const QUOTED: readonly {
  readonly name: string;
  readonly columns: readonly string[];
  readonly shown: number;
  readonly beside: number;
}[] = [
  { name: 'ADVISE', columns: VERDICT_COLUMNS, shown: 0, beside: 26 },
  { name: 'JOBTIME', columns: JOBTIME_COLUMNS, shown: 13, beside: 19 },
];

function quoteSheet(name: string, route: string, pieces: string): NewSheet {
  const inputs: readonly (readonly [string, WriteCell])[] = [
    ['Allowance, mm a side', 25],
    ['Tape, mm', 5],
    ['Crew', 3],
    ['Of them, who stays to set up', 2],
    ['Rate, a person-hour (example)', 32],
    ['Call-out (example)', 60],
  ];
  const cells: NewSheet['cells'][number][] = [
    { row: 0, column: 0, value: 'Quote: change the figures in column B', bold: true },
  ];
  inputs.forEach(([label, value], i) => {
    cells.push({ row: 2 + i, column: 0, value: label }, { row: 2 + i, column: 1, value });
  });
  const TABLE = 13;
  const first = TABLE + 2;
  const tables = `${route}[#All], ${pieces}[#All]`;
  cells.push(
    { row: 8, column: 0, value: 'Table to advise', bold: true },
    { row: 8, column: 1, value: { formula: `=A${first}` } },
    { row: 9, column: 0, value: 'Its verdict' },
    { row: 9, column: 1, value: { formula: `=B${first}` } },
    { row: 10, column: 0, value: 'Price before materials (example)' },
    {
      row: 10,
      column: 1,
      value: {
        formula: `=IFERROR(INDEX(Q${first}:Q${first + SPILLED_ROWS},MATCH(B9,N${first}:N${first + SPILLED_ROWS},0))*B7+B8,"no time yet")`,
      },
    },
    { row: 11, column: 0, value: CAUTIONS.route },
    { row: 12, column: 0, value: CAUTIONS.stairs },
  );
  const given: Readonly<Record<string, string>> = { ADVISE: 'B3, B4', JOBTIME: 'B5, , B6' };
  const formats: { row: number; column: number; rows: number; columns: number; format: string }[] = [
    { row: 10, column: 1, rows: 1, columns: 1, format: '0.00' },
  ];
  for (const { name: called, columns, shown, beside } of QUOTED) {
    cells.push(
      { row: TABLE - 1, column: beside, value: `As ${called} gives it, not rounded` },
      {
        row: TABLE,
        column: beside,
        value: { formula: `=CARRY.${called}(${tables}, ${given[called] ?? ''})` },
        spills: true,
      },
    );
    const letters = columnLetters(beside);
    cells.push({
      row: TABLE + SPILLED_ROWS + 1,
      column: shown,
      value: { formula: `=${notAllShown(letters, TABLE + 2, SPILLED_ROWS)}` },
    });
    columns.forEach((heading, n) => {
      for (let row = TABLE; row <= TABLE + SPILLED_ROWS; row++) {
        const cell = `${columnLetters(beside + n)}${row + 1}`;
        cells.push({ row, column: shown + n, value: { formula: `=${shownCell(heading, cell, 1)}` } });
      }
      if (isRounded(heading))
        formats.push({ row: TABLE + 1, column: shown + n, rows: SPILLED_ROWS, columns: 1, format: '0.0' });
    });
  }
  return {
    name,
    cells,
    tables: [],
    lists: [],
    formats,
    widths: [34, 16, 11, 8, 14, 16, 11, 11, 30, 50, 40, 3, 3, 32, 11, 11, 11, 50],
  };
}

function workedSheet(name: string, route: string, pieces: string): NewSheet {
  const cells: NewSheet['cells'][number][] = [
    {
      row: 0,
      column: 0,
      value:
        'Work each one out and put your answer in the free cell, a number or one with its unit; then write yes to see the working. The pane shows the example that is selected in pictures.',
      bold: true,
    },
    { row: 1, column: 0, value: CAUTIONS.lifting },
  ];
  let top = 3;
  WORKED_EXAMPLES.forEach((example, i) => {
    cells.push(...exampleCells(example, i, top));
    top += example.workingRows ?? WORKING_ROWS;
  });
  cells.push(...routeExampleCells(top, route, pieces));
  return { name, cells, tables: [], lists: [], widths: [4, 34, 14, 18, 44, 44, 14, 12, 44] };
}

function exampleCells(example: WorkedExample, index: number, top: number): NewSheet['cells'][number][] {
  const givenAt = example.given.map((_, i) => `C${top + 2 + i}`);
  const cells: NewSheet['cells'][number][] = [
    { row: top, column: 0, value: index + 1, bold: true },
    { row: top, column: 1, value: { formula: `=${questionFormula(example, givenAt)}` }, bold: true },
  ];
  example.given.forEach(([label, value, unit], i) => {
    const named = unit === '' ? label : `${label}, ${unit}`;
    cells.push({ row: top + 1 + i, column: 1, value: named }, { row: top + 1 + i, column: 2, value });
  });
  const given = givenAt.join(', ');
  const answer = top + 1 + example.given.length;
  const cell = `C${answer + 1}`;
  const result = `CARRY.${example.id}(${given})`;
  cells.push(
    { row: answer, column: 1, value: `Your answer, ${example.unit}` },
    { row: answer, column: 3, value: { formula: `=${markFormula(cell, example, result)}` } },
    { row: answer + 1, column: 1, value: SHOW },
    {
      row: top + 1,
      column: 4,
      value: { formula: `=${shownWhenAsked(`C${answer + 2}`, `CARRY.WORKING("${example.id}", ${given})`)}` },
      spills: true,
    },
  );
  return cells;
}

const SHOW = 'Show the working? yes, or empty';

/** The last question takes the whole route of the Route sheet. */
function routeExampleCells(top: number, route: string, pieces: string): NewSheet['cells'][number][] {
  const advise = `CARRY.ADVISE(${route}[#All], ${pieces}[#All])`;
  const cell = `C${top + 2}`;
  return [
    { row: top, column: 0, value: WORKED_EXAMPLES.length + 1, bold: true },
    {
      row: top,
      column: 1,
      value: 'Which Build of the Pieces sheet goes best along the Route sheet?',
      bold: true,
    },
    { row: top + 1, column: 1, value: 'Your answer, a Build in full' },
    {
      row: top + 1,
      column: 3,
      value: {
        formula: `=IF(${cell}="","write it in ${cell}",IF(LOWER(TRIM(${cell}))=LOWER(INDEX(${advise},2,1)),"right","not yet"))`,
      },
    },
    { row: top + 2, column: 1, value: SHOW },
    {
      row: top + 1,
      column: 4,
      value: { formula: `=${shownWhenAsked(`C${top + 3}`, advise)}` },
      spills: true,
    },
  ];
}
