import { monthSummary } from '../../src/month/monthSummary';
import { decidingFirst } from '../../src/month/remeasureWords';
import { readMonth } from '../../src/month/readMonth';
import { sheetWith } from '../sheetHost/fixtures/sheetWith';

// The layout is our own: regression only.
test('prints one line a survey, its best verdict, deciding step and clearance', async () => {
  const host = await sheetWith((sheet) =>
    sheet.cell('A1', 'October').rows('B3', [
      ['Survey', 'Build', 'Verdict', 'Clearance', 'Step', 'Stage', 'Note'],
      ['S-1', '8 ft', 'tight', 12.4, 3, 'corner', null],
      ['S-1', '7 ft', 'goes', 31, 2, 'door', null],
      ['S-2', '8 ft', 'cannot go', -140.2, 4, 'half landing', null],
      ['S-3', '8 ft', 'not measured', null, 1, 'flight', null],
      [null, null, 'goes', 1, 1, 'below a gap', null],
    ]),
  );
  expect(monthSummary(readMonth(host))).toEqual([
    'Survey  Verdict       Deciding step   Clearance       Build',
    'S-1     goes          2 door          31 mm a side    7 ft',
    'S-2     cannot go     4 half landing  -141 mm a side  8 ft',
    'S-3     not measured  1 flight                        8 ft',
    '',
    '3 surveys: 1 goes, 0 goes as typed, but look first, 0 tight as measured, 0 tight, not measured enough, ' +
      '0 tight, needs a trial, 0 no way found, 1 not measured, 1 cannot go',
  ]);
});

test('lists what to measure again first and what to advise instead, the most urgent first', async () => {
  const host = await sheetWith((sheet) =>
    sheet.rows('A1', [
      ['Survey', 'Build', 'Verdict', 'Clearance', 'Step', 'Stage', 'Advise', 'Urgency'],
      ['S-1', '8 ft', 'tight', 12.4, 3, 'corner', '7 ft', 4.001],
      ['S-2', '8 ft', 'cannot go', -140.2, 4, 'half landing', 'none of the next builds', 9.002],
      ['S-3', '8 ft', 'not measured', null, 1, 'flight', 'measure first', 1.003],
      ['S-4', '8 ft', 'no way found', -3.04, 2, 'door', 'tight: 7 ft', 3.004],
      ['S-5', '8 ft', 'goes', 40, 2, 'door', 'as asked', 9.005],
    ]),
  );
  const { surveys, ...rest } = readMonth(host)!;
  const width = { step: 2, called: 'step 2', measure: 'Width', asMeasured: 700, needed: 766, why: 'because' };
  const missing = {
    step: 1,
    called: 'step 1',
    measure: 'Rise',
    asMeasured: undefined,
    needed: undefined,
    why: 'not given',
  };
  const explained = surveys.map((s) => {
    const lines = { 'S-3': [missing], 'S-4': [width], 'S-2': [width] }[s.survey];
    return lines ? { ...s, explanation: { remeasure: lines } } : s;
  });
  const lines = monthSummary({ surveys: explained, ...rest });
  expect(lines.slice(lines.indexOf('Measure again first:'))).toEqual([
    'Measure again first:',
    '  S-3  not measured  step 1: Rise: not given',
    '  S-4  no way found  step 2: Width 700 mm, needs 766 mm',
    '',
    'Advise instead:',
    '  S-4  no way found  with 8 ft  advise 7 ft: tight, a frame or template first',
    '  S-1  tight         with 8 ft  advise 7 ft: goes, space alone',
    '  S-2  cannot go     with 8 ft  advise none of the next builds goes, or is tight',
  ]);
});

test('what goes only as typed is listed, and what is tight as asked is not told to change', async () => {
  const host = await sheetWith((sheet) =>
    sheet.rows('A1', [
      ['Survey', 'Build', 'Verdict', 'Clearance', 'Step', 'Stage', 'Advise'],
      ['S-1', '8 ft', 'goes', 40, 3, 'door', 'as asked'],
      ['S-2', '8 ft', 'goes', 40, 2, 'door', 'as asked'],
      ['S-3', '8 ft', 'tight', 2, 1, 'door', 'as asked, if it passes the trial'],
    ]),
  );
  const { surveys, ...rest } = readMonth(host)!;
  const looked = surveys.map((s) =>
    s.survey === 'S-1' ? s : { ...s, toCheck: ['step 4: Step 3 is missing.', 'step 4: too.'] },
  );
  const lines = monthSummary({ surveys: looked, ...rest });
  expect(lines.slice(lines.indexOf('Goes as typed, but look at the survey first:'))).toEqual([
    'Goes as typed, but look at the survey first:',
    '  S-2  step 4: Step 3 is missing. (and 1 more)',
  ]);
});

test('the measure of the deciding step comes first, and those without a measure last', () => {
  const line = (step: number, measure: string, needed?: number) => ({
    step,
    called: `step ${step}`,
    measure,
    asMeasured: needed,
    needed,
    why: 'because',
  });
  const lines = [
    line(1, 'Height'),
    line(3, ''),
    line(2, 'Width', 800),
    line(3, 'Run'),
    line(3, 'Depth', 900),
  ];
  const ordered = decidingFirst(lines, '3').map(({ step, measure }) => `${step} ${measure}`);
  expect(ordered).toEqual(['3 Depth', '3 Run', '2 Width', '1 Height', '3 ']);
});

test('reads allowance and tape from the cells that have these names, else the usual ones', async () => {
  const rows = [
    ['Survey', 'Build', 'Verdict', 'Clearance', 'Step', 'Stage'],
    ['S-1', '8 ft', 'goes', 31, 2, 'door'],
  ];
  const named = await sheetWith((sheet, book) => {
    sheet.rows('A1', rows).cell('H1', 40).cell('H2', 8);
    book.name('Allowance', 'A!$H$1').name('Tape', 'A!$H$2');
  });
  expect(readMonth(named)).toMatchObject({ allowance: 40, tape: 8 });
  const unnamed = await sheetWith((sheet) => sheet.rows('A1', rows));
  expect(readMonth(unnamed)).toMatchObject({ allowance: 25, tape: 5 });
});

test('says so when the workbook has no such rows', async () => {
  const host = await sheetWith((sheet) => sheet.cell('A1', 'Survey'));
  expect(monthSummary(readMonth(host))).toEqual([
    'The workbook has no rows with Survey, Verdict, Clearance and Stage.',
  ]);
});
