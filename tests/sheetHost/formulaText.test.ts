import { shownFormula, storedFormula } from '../../src/sheetHost/formulaText';

// Stored forms: [MS-XLSX] 2.2.2 Formulas (future functions, _xlpm. parameters) and the Office support page "Issue:
// An _xlfn. prefix is displayed in front of a formula"; `_xldudf_` as Excel was seen to store custom functions;
// `#This Row`: Office support, "Using structured references with Excel tables".
const PAIRS: readonly (readonly [shown: string, stored: string])[] = [
  ['CARRY.PITCH(190,240)', '_xldudf_CARRY_PITCH(190,240)'],
  [
    '1+CARRY.SLABMASS(A1,CARRY.TOMM("2\'")*2,B$3)',
    '1+_xldudf_CARRY_SLABMASS(A1,_xldudf_CARRY_TOMM("2\'")*2,B$3)',
  ],
  ['TEXTJOIN(", ",TRUE,A1:A3)', '_xlfn.TEXTJOIN(", ",TRUE,A1:A3)'],
  ['FILTER(A1:A3,B1:B3>2)', '_xlfn._xlws.FILTER(A1:A3,B1:B3>2)'],
  ['LET(x,A1,y,x+1,x*y)+x', '_xlfn.LET(_xlpm.x,A1,_xlpm.y,_xlpm.x+1,_xlpm.x*_xlpm.y)+x'],
  ['SUM(A8#)', 'SUM(_xlfn.ANCHORARRAY(A8))'],
  ["SUM('Route 2'!A8#)", "SUM(_xlfn.ANCHORARRAY('Route 2'!A8))"],
  ['SUM(Route[Width])', 'SUM(Route[Width])'],
  ['Route[@Width]*2', 'Route[[#This Row],[Width]]*2'],
  ['Route[@[Width out]]', 'Route[[#This Row],[Width out]]'],
  ['IF("FILTER(x)"="[@a]",1,2)', 'IF("FILTER(x)"="[@a]",1,2)'],
  ["'It''s CARRY.X(1)'!B2", "'It''s CARRY.X(1)'!B2"],
];

test.each(PAIRS)('%s is stored as %s and shown again', (shown, stored) => {
  expect(storedFormula(`=${shown}`)).toBe(stored);
  expect(shownFormula(stored)).toBe(shown);
});

test('[@Column] inside a table is stored with the name of the table', () => {
  expect(storedFormula('=[@Width]*[@[Width out]]', 'Route')).toBe(
    'Route[[#This Row],[Width]]*Route[[#This Row],[Width out]]',
  );
});

test('lower case names of functions are stored in capitals where they get a prefix', () => {
  expect(storedFormula('carry.pitch(1,2)+textjoin(A1)')).toBe('_xldudf_CARRY_PITCH(1,2)+_xlfn.TEXTJOIN(A1)');
});
