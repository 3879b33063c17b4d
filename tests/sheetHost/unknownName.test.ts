import { sheetWith, shown } from './fixtures/sheetWith';

/** By meaning: the words are for the person who typed the formula. */
test.each([
  ['CARRY.SAI(1)', 'there is no function CARRY.SAI; is CARRY.SAY meant?'],
  ['SAY(1)', 'there is no function SAY; is CARRY.SAY meant?'],
  ['SUM(1,VLOKUP(2,A1:A3,1))', 'there is no function VLOKUP'],
  ['Alowance*2', 'nothing here is called Alowance; is Allowance meant?'],
  ['IF(A1=goes,1,0)', 'nothing here is called goes; a text stands in quotes: "goes"'],
])('%s shows #NAME? and names what nothing is called by', async (formula, message) => {
  const host = await sheetWith((sheet, book) => {
    sheet.cell('A1', 25).spill('A10', formula);
    book.name('Allowance', 'A!$A$1');
  });
  expect(shown(host, 'A10')).toEqual({ code: '#NAME?', message });
});

test('what is known is not named: functions, names, tables, columns, LET, errors, texts', async () => {
  const host = await sheetWith((sheet, book) => {
    sheet.table({ name: 'Route', at: 'A1', columns: [{ name: 'Width' }], rows: [[760], [800]] });
    book.name('Allowance', 'A!$A$2');
    const known =
      'LET(x,Allowance,x)+SUM(Route[Width])+SUM($A$2:$A$3)+COUNTA(A:A)+IF(TRUE,1,"goes")+IFERROR(#N/A,0)';
    sheet.cell('E5', { formula: `${known}+Mising` });
    sheet.cell('E6', { formula: 'E5+1' });
  });
  expect(shown(host, 'E5')).toMatchObject({
    message: expect.stringContaining('nothing here is called Mising'),
  });
  // The cell that only reads it has nothing unknown of its own.
  expect(shown(host, 'E6')).toEqual({ code: '#NAME?' });
});
