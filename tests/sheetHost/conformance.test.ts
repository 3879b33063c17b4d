import {
  DESKTOP_MANNERS,
  WEB_MANNERS,
  type CellValue,
  type HostManners,
} from '../../src/sheetHost/hostValues';
import type { SheetWriter } from '../../src/sheetHost/workbookWriter';
import { METADATA, testBundle } from './fixtures/bundle';
import { opened, sheetWith, shown } from './fixtures/sheetWith';

/*
 * What Excel does with a custom function, line by line, and where that is written. A host stands in for Excel only as
 * far as it behaves alike. Sources are pages of the Office Add-ins documentation by title, threads of the repository
 * OfficeDev/office-js, and pages of Office support; 'assumed' has no document that we know of.
 */
const OPTIONS = 'Custom functions parameter options';
const ERRORS = 'Handle and return errors from your custom function';
const CODES = 'CustomFunctions.ErrorCode enum';
const METADATA_PAGE = 'Manually create JSON metadata for custom functions';
const SPILLS = 'Return multiple results from your custom function';

interface Line {
  readonly behaviour: string;
  readonly source: string;
  readonly cells?: readonly (readonly [address: string, value: string | number | boolean])[];
  readonly formulas?: readonly (readonly [address: string, formula: string])[];
  /** In A10, made to spill. */
  readonly spill: string;
  readonly shows: readonly (readonly [address: string, value: CellValue | CellValue[][]])[];
  readonly manners?: HostManners;
}

const LINES: readonly Line[] = [
  // Arguments
  {
    behaviour: 'a lone cell for a matrix parameter comes as one row of one cell',
    source: OPTIONS,
    cells: [['A1', 5]],
    spill: 'CARRY.SAY(A1)',
    shows: [['A10', '[[5]] | null | null']],
  },
  {
    behaviour: 'a constant for a matrix parameter comes as one row of one cell',
    source: 'assumed',
    spill: 'CARRY.SAY("a")',
    shows: [['A10', '[["a"]] | null | null']],
  },
  {
    behaviour: 'a range comes as a two-dimensional array, row by row',
    source: OPTIONS,
    cells: [
      ['A1', 1],
      ['B1', 2],
      ['A2', 3],
      ['B2', 4],
    ],
    spill: 'CARRY.SAY(A1:B2)',
    shows: [['A10', '[[1;2];[3;4]] | null | null']],
  },
  {
    behaviour: 'numbers, texts and logical values keep their types',
    source: METADATA_PAGE,
    cells: [
      ['A1', 1.5],
      ['B1', '2 ft'],
      ['C1', true],
    ],
    spill: 'CARRY.SAY(A1:C1)',
    shows: [['A10', '[[1.5;"2 ft";true]] | null | null']],
  },
  {
    behaviour: 'an optional argument left out at the end is null',
    source: OPTIONS,
    spill: 'CARRY.SAY(1,2)',
    shows: [['A10', '[[1]] | [[2]] | null']],
  },
  {
    behaviour: 'an optional argument left out between commas is null',
    source: OPTIONS,
    spill: 'CARRY.SAY(1,,3)',
    shows: [['A10', '[[1]] | null | [[3]]']],
  },
  {
    behaviour: 'an optional argument left out is undefined where the host hands it over so',
    source: 'assumed',
    spill: 'CARRY.SAY(1)',
    manners: { ...WEB_MANNERS, leftOut: undefined },
    shows: [['A10', '[[1]] | undefined | undefined']],
  },
  {
    behaviour: 'a lone empty cell comes as null on the web',
    source: 'OfficeDev/office-js issue 4702',
    spill: 'CARRY.SAY(A1)',
    shows: [['A10', '[[null]] | null | null']],
  },
  {
    behaviour: 'a lone empty cell comes as 0 on the desktop, unlike an argument left out',
    source: 'OfficeDev/office-js issue 4702',
    spill: 'CARRY.SAY(A1,,A1)',
    manners: DESKTOP_MANNERS,
    shows: [['A10', '[[0]] | null | [[0]]']],
  },
  {
    behaviour: 'an empty cell inside a range comes as 0 on the desktop',
    source: 'OfficeDev/office-js issues 1951 and 5262',
    cells: [['A1', 1]],
    spill: 'CARRY.SAY(A1:A2)',
    manners: DESKTOP_MANNERS,
    shows: [['A10', '[[1];[0]] | null | null']],
  },
  {
    behaviour: 'an empty cell inside a range comes as null on the web',
    source: 'assumed',
    cells: [['A1', 1]],
    spill: 'CARRY.SAY(A1:A2)',
    shows: [['A10', '[[1];[null]] | null | null']],
  },
  {
    behaviour: 'an empty cell inside a range comes as an empty text where the host hands it over so',
    source: 'assumed',
    cells: [['A1', 1]],
    spill: 'CARRY.SAY(A1:A2)',
    manners: { ...WEB_MANNERS, emptyInRange: '' },
    shows: [['A10', '[[1];[""]] | null | null']],
  },
  {
    behaviour: 'repeating arguments come as one list, each of them a two-dimensional array',
    source: OPTIONS,
    cells: [['A1', 7]],
    spill: 'CARRY.SAYALL(1,A1,2)',
    shows: [['A10', '[[1]] | [[[7]];[[2]]]']],
  },
  {
    behaviour: 'repeating arguments may be none at all',
    source: METADATA_PAGE,
    spill: 'CARRY.SAYALL(1)',
    shows: [['A10', '[[1]] | []']],
  },
  {
    behaviour: 'a scalar parameter gets the bare value',
    source: METADATA_PAGE,
    spill: 'CARRY.SAYONE(5)',
    shows: [['A10', '5']],
  },
  {
    behaviour: 'a text for a parameter of type number is #VALUE! without a call',
    source: 'assumed',
    spill: 'CARRY.SAYNUMBER("a")',
    shows: [['A10', { code: '#VALUE!' }]],
  },
  {
    behaviour: 'every function gets the invocation after its parameters',
    source: OPTIONS,
    spill: 'CARRY.INVOCATION()',
    shows: [['A10', '{"functionName":"INVOCATION"}']],
  },
  {
    behaviour: 'with requiresAddress the invocation names the sheet and the cell that calls',
    source: OPTIONS,
    spill: 'CARRY.WHERE()',
    shows: [['A10', 'A!A10']],
  },
  {
    behaviour: 'an error value in a cell reaches the function where allowErrorForDataTypeAny is true',
    source: METADATA_PAGE,
    formulas: [
      ['A1', '1/0'],
      ['A2', 'NA()'],
    ],
    spill: 'CARRY.SAY(A1:A2)',
    shows: [['A10', '[[error #DIV/0!];[error #N/A]] | null | null']],
  },
  {
    behaviour: 'the message of an error in a cell is not handed on to the next function',
    source: 'assumed',
    formulas: [['A1', 'CARRY.FAIL()']],
    spill: 'CARRY.EACH(A1)',
    shows: [['A10', { code: '#VALUE!', message: 'not above 0: error #N/A' }]],
  },
  // Results
  {
    behaviour: 'numbers, texts and logical values of a result stay what they are; null shows 0',
    source: 'OfficeDev/office-js issue 1503, by design',
    spill: 'CARRY.CELLS()',
    shows: [
      [
        'A10:B11',
        [
          [1.5, 'text'],
          [true, 0],
        ],
      ],
    ],
  },
  {
    behaviour: 'undefined shows 0, a number that is none #NUM!',
    source: 'assumed',
    spill: 'CARRY.CELLS()',
    shows: [['A12:B12', [[0, { code: '#NUM!' }]]]],
  },
  {
    behaviour: 'errors inside a result stand in their own cells',
    source: 'CustomFunctions.Error class',
    cells: [
      ['A1', 3],
      ['A2', -1],
      ['A3', 4],
    ],
    spill: 'CARRY.EACH(A1:A3)',
    shows: [['A10:A12', [[6], [{ code: '#VALUE!', message: 'not above 0: -1' }], [8]]]],
  },
  {
    behaviour: 'only #VALUE! and #N/A show a message',
    source: CODES,
    spill: 'CARRY.ERRORS()',
    shows: [
      [
        'A10:A14',
        [
          [{ code: '#VALUE!', message: 'why #VALUE!' }],
          [{ code: '#N/A', message: 'why #N/A' }],
          [{ code: '#DIV/0!' }],
          [{ code: '#NUM!' }],
          [{ code: '#NULL!' }],
        ],
      ],
    ],
  },
  {
    behaviour: 'the codes that are for input only come out as #VALUE!',
    source: `${CODES} (that they are no output; what comes instead is assumed)`,
    spill: 'CARRY.ERRORS()',
    shows: [['A15:A16', [[{ code: '#VALUE!' }], [{ code: '#VALUE!' }]]]],
  },
  {
    behaviour: 'an error that is thrown is the result, with its message',
    source: ERRORS,
    spill: 'CARRY.FAIL()',
    shows: [['A10', { code: '#N/A', message: 'no such thing' }]],
  },
  {
    behaviour: 'anything else that is thrown is #VALUE!',
    source: ERRORS,
    spill: 'CARRY.CRASH()',
    shows: [['A10', { code: '#VALUE!' }]],
  },
  {
    behaviour: 'rows of different lengths, and a flat list, are #VALUE!',
    source: 'assumed',
    formulas: [['B10', 'CARRY.FLAT()']],
    spill: 'CARRY.RAGGED()',
    shows: [['A10:B10', [[{ code: '#VALUE!' }, { code: '#VALUE!' }]]]],
  },
  {
    behaviour: 'a text longer than a cell holds is #VALUE!',
    source: 'Excel specifications and limits (the length; the error is assumed)',
    spill: 'CARRY.LONG()',
    shows: [['A10', { code: '#VALUE!' }]],
  },
  {
    behaviour: 'a text that looks like an error is a text',
    source: 'assumed',
    formulas: [['A1', 'ISERROR(A10)']],
    spill: 'CARRY.TEXTERROR()',
    shows: [
      ['A10', '#VALUE!'],
      ['A1', false],
    ],
  },
  // Spilling
  {
    behaviour: 'a result of many cells fills the cells below and beside',
    source: SPILLS,
    cells: [
      ['A1', 1],
      ['B1', 2],
      ['A2', 3],
      ['B2', 4],
    ],
    spill: 'CARRY.EACH(A1:B2)',
    shows: [
      [
        'A10:B11',
        [
          [2, 4],
          [6, 8],
        ],
      ],
    ],
  },
  {
    behaviour: 'a filled cell in the way makes it #SPILL! and nothing is overwritten',
    source: SPILLS,
    cells: [
      ['A1', 1],
      ['A2', 3],
      ['A11', 'in the way'],
    ],
    spill: 'CARRY.EACH(A1:A2)',
    shows: [['A10:A11', [[{ code: '#SPILL!' }], ['in the way']]]],
  },
  {
    behaviour: 'formulas read what was spilled, and what they give',
    source: 'Dynamic array formulas and spilled array behavior',
    cells: [
      ['A1', 1],
      ['A2', 3],
    ],
    formulas: [
      ['C1', 'SUM(A10:A11)'],
      ['C2', 'SUM(A10#)'],
      ['C3', 'C1+A11'],
    ],
    spill: 'CARRY.EACH(A1:A2)',
    shows: [['C1:C3', [[8], [8], [14]]]],
  },
  {
    behaviour: 'a function in a formula that does not spill gives the first cell of its result',
    source: 'Implicit intersection operator: @',
    cells: [
      ['A1', 1],
      ['A2', 3],
    ],
    formulas: [['C1', 'CARRY.EACH(A1:A2)']],
    spill: '1',
    shows: [['C1:C2', [[2], [null]]]],
  },
  // Names and counts
  {
    behaviour: 'a function that is not there shows #NAME?',
    source: 'How to correct a #NAME? error',
    spill: 'CARRY.NOSUCH(1)',
    shows: [['A10', { code: '#NAME?', message: 'there is no function CARRY.NOSUCH' }]],
  },
  {
    behaviour: 'a function that is described but not associated is not there',
    source: METADATA_PAGE,
    spill: 'CARRY.UNASSOCIATED()',
    shows: [['A10', { code: '#NAME?', message: 'there is no function CARRY.UNASSOCIATED' }]],
  },
  {
    behaviour: 'a function that is associated but not described is not there',
    source: METADATA_PAGE,
    spill: 'CARRY.UNDESCRIBED()',
    shows: [['A10', { code: '#NAME?', message: 'there is no function CARRY.UNDESCRIBED' }]],
  },
  {
    behaviour: 'too few or too many arguments in a file are #VALUE!',
    source: 'assumed',
    formulas: [
      ['A1', 'CARRY.SAY()'],
      ['A2', 'CARRY.SAY(1,2,3,4)'],
    ],
    spill: '1',
    shows: [['A1:A2', [[{ code: '#VALUE!' }], [{ code: '#VALUE!' }]]]],
  },
  {
    behaviour: 'names of functions are read without regard to case',
    source: 'assumed',
    spill: 'carry.say(1)',
    shows: [['A10', '[[1]] | null | null']],
  },
];

const write = (line: Line) => (sheet: SheetWriter) => {
  for (const [address, value] of line.cells ?? []) sheet.cell(address, value);
  for (const [address, formula] of line.formulas ?? []) sheet.cell(address, { formula });
  sheet.spill('A10', line.spill);
};

test.each(LINES)('$behaviour [$source]', async (line) => {
  const host = await sheetWith(write(line), line.manners ? { manners: line.manners } : {});
  for (const [address, value] of line.shows)
    expect([address, shown(host, address)]).toEqual([address, value]);
});

test('an error value stops the call where allowErrorForDataTypeAny is not set [Manually create JSON metadata: the default is false; that the error itself is the result is assumed]', async () => {
  const bundle = testBundle({ functions: METADATA.functions });
  const host = await sheetWith((sheet) => sheet.cell('A1', { formula: 'CARRY.SAY(1/0)' }), {}, bundle);
  expect(shown(host, 'A1')).toEqual({ code: '#DIV/0!' });
});

test('registration says what is missing [Manually create JSON metadata]', () => {
  expect(testBundle().faults).toEqual([
    'nothing is associated with UNASSOCIATED',
    'UNDESCRIBED is associated but not described in functions.json',
  ]);
  expect(testBundle({}).faults[0]).toBe('functions.json has no list "functions"');
  const twice = { functions: [...METADATA.functions, METADATA.functions[0]] };
  expect(testBundle(twice).faults).toContain('SAY is described twice');
});

test('a spill that becomes free fills its cells; one that shrinks leaves none behind [Dynamic array formulas and spilled array behavior]', async () => {
  const host = await sheetWith((sheet) => {
    sheet.cell('A1', 1).cell('A2', 2).cell('A3', 3).cell('B12', 'x');
    sheet.cell('C1', 3).spill('B10', 'CARRY.EACH(TAKE(A1:A3,C1))');
  });
  expect(shown(host, 'B10:B12')).toEqual([[{ code: '#SPILL!' }], [null], ['x']]);
  host.write('A', 11, 1, null);
  host.recalculate();
  expect(shown(host, 'B10:B12')).toEqual([[2], [4], [6]]);
  expect(host.spill('A', 11, 1)).toEqual({ row: 9, column: 1, rows: 3, columns: 1 });
  host.write('A', 0, 2, 2);
  host.recalculate();
  expect(shown(host, 'B10:B12')).toEqual([[2], [4], [null]]);
  host.write('A', 10, 1, 'typed into the spill');
  host.recalculate();
  expect(shown(host, 'B10:B12')).toEqual([[{ code: '#SPILL!' }], ['typed into the spill'], [null]]);
  expect(host.spill('A', 9, 1)).toBeUndefined();
});

test('a spill into a table, or from inside one, shows #SPILL! [#SPILL! error: table formula]', async () => {
  const host = await sheetWith((sheet) => {
    sheet.cell('A1', 1).cell('A2', 2);
    sheet.table({
      name: 'T',
      at: 'D4',
      columns: [{ name: 'x' }, { name: 'y' }],
      rows: [
        [null, null],
        [null, null],
      ],
    });
    sheet.spill('D3', 'CARRY.EACH(A1:A2)').spill('E5', 'CARRY.EACH(A1:A2)').spill('G5', 'CARRY.EACH(A1:A2)');
  });
  expect(shown(host, 'D3')).toEqual({ code: '#SPILL!' });
  expect(shown(host, 'E5:E6')).toEqual([[{ code: '#SPILL!' }], [null]]);
  expect(shown(host, 'G5:G6')).toEqual([[2], [4]]);
});

test('typed formulas spill, and are refused when they cannot be read or have a wrong count of arguments [assumed: as entry in the formula line]', async () => {
  const host = await sheetWith((sheet) => sheet.cell('A1', 1).cell('A2', 2));
  expect(host.write('A', 9, 0, { formula: '=CARRY.EACH(A1:A2)' })).toEqual({ ok: true });
  host.recalculate();
  expect(shown(host, 'A10:A11')).toEqual([[2], [4]]);
  expect(host.formula('A', 9, 0)).toBe('=CARRY.EACH(A1:A2)');
  expect(host.write('A', 0, 0, { formula: '=CARRY.EACH(A1' })).toMatchObject({ ok: false });
  expect(host.write('A', 0, 0, { formula: '=CARRY.SAY()' })).toEqual({
    ok: false,
    reason: 'too few arguments for SAY',
  });
  expect(host.write('A', 0, 0, { formula: '=1+CARRY.SAY(1,2,3,(4,5))' })).toEqual({
    ok: false,
    reason: 'too many arguments for SAY',
  });
  expect(shown(host, 'A1')).toBe(1);
});

test('a circular formula shows 0 and is reported [Remove or allow a circular reference]', async () => {
  const host = await sheetWith((sheet, book) => {
    sheet
      .cell('A1', { formula: 'B1+1' })
      .cell('B1', { formula: 'SUM(C1:C3)' })
      .cell('C2', { formula: 'start' });
    sheet.cell('D1', { formula: 'A1+5' });
    book.name('start', 'A!$A$1');
  });
  const { circular } = host.recalculate();
  expect(circular.map((c) => [c.sheet, c.row, c.column]).sort()).toEqual([
    ['A', 0, 0],
    ['A', 0, 1],
    ['A', 1, 2],
  ]);
  expect(shown(host, 'A1:D1')).toEqual([[0, 0, null, 5]]);
});

test('columns of a table that read one another, its totals and whole-column sums are no circles [assumed]', async () => {
  const host = await sheetWith((sheet) => {
    sheet.table({
      name: 'T',
      at: 'A1',
      columns: [
        { name: 'x' },
        { name: 'twice', formula: '[@x]*2' },
        { name: 'share', formula: '[@twice]/SUM(T[twice])' },
      ],
      rows: [[1], [3]],
    });
    sheet.cell('E1', { formula: 'SUM(C:C)' }).cell('F2', { formula: 'SUM(2:2)' });
  });
  const { circular } = host.recalculate();
  expect(circular.map((c) => [c.row, c.column])).toEqual([[1, 5]]);
  expect(shown(host, 'A2:C3')).toEqual([
    [1, 2, 0.25],
    [3, 6, 0.75],
  ]);
  expect(shown(host, 'E1')).toBe(1);
});

test('a value that was saved for a function that is gone does not stay [How to correct a #NAME? error]', async () => {
  const first = await sheetWith((sheet) => sheet.cell('A1', { formula: 'CARRY.SAY(1)' }));
  expect(shown(first, 'A1')).toBe('[[1]] | null | null');
  const again = await opened((await first.save()).bytes);
  expect(shown(again, 'A1')).toBe('[[1]] | null | null');
  again.recalculate();
  expect(shown(again, 'A1')).toMatchObject({ code: '#NAME?' });
});

test('a function is not called again while its arguments stay the same [Manually create JSON metadata: not volatile]', async () => {
  const host = await sheetWith((sheet) =>
    sheet.cell('A1', 5).cell('B1', { formula: 'CARRY.COUNTCALLS(A1)' }),
  );
  expect(shown(host, 'B1')).toBe(1);
  host.recalculate();
  expect(shown(host, 'B1')).toBe(1);
  host.write('A', 0, 0, 6);
  host.recalculate();
  expect(shown(host, 'B1')).toBe(2);
});
