import { addressOf, columnLetters } from '../../src/taskpane/sheetAccess';

test('column letters carry on after Z as a sheet does', () => {
  // Excel's columns: Z is the 26th, AA the 27th, XFD the 16,384th and last (Excel specifications and limits).
  expect([0, 25, 26, 701, 702, 16383].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA', 'XFD']);
});

test('an address names one cell once, and quotes a sheet that needs it', () => {
  const cell = { row: 4, column: 22, rows: 1, columns: 1 };
  expect(addressOf({ sheet: 'Route', ...cell })).toBe('Route!W5');
  expect(addressOf({ sheet: "Mill's route 2", ...cell, columns: 2 })).toBe("'Mill''s route 2'!W5:X5");
});
