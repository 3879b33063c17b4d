import type { Cell } from '../../src/core/measures/readQuantity';
import { callInCells } from '../support/callInCells';

const HEADERS: Cell[] = ['Step', 'Stage', 'Width', 'Height', 'Wall', 'Width out', 'Ceiling', 'Length'];
const SOUND: Cell[] = [1, 'door', 715, 1960];

describe('CHECKROW', () => {
  test('a sound row gives one empty cell', () => {
    expect(callInCells('CHECKROW', [HEADERS], [SOUND])).toEqual([['']]);
  });
  test('problems are spilled down, one a row', () => {
    const table = callInCells('CHECKROW', [HEADERS], [[1, 'side door', 762, 1960, null, 1000]]);
    expect(table.map((row) => row.length)).toEqual([1, 1, 1]);
    expect(table.map((row) => String(row[0]).split(' ').slice(0, 2).join(' '))).toEqual([
      'Wall is',
      'Ceiling is',
      'Check: Width',
    ]);
  });
  test('an error in a cell is told and does not become the result', () => {
    const [[text]] = callInCells('CHECKROW', [HEADERS], [[1, 'door', { code: '#DIV/0!' }, 1960]]) as [
      [string],
    ];
    expect(text).toContain('#DIV/0!');
  });
  test('more than one row is refused', () => {
    expect(callInCells('CHECKROW', [HEADERS], [SOUND, SOUND])).toMatchObject([[{ code: '#VALUE!' }]]);
    expect(callInCells('CHECKROW', [HEADERS, HEADERS], [SOUND])).toMatchObject([[{ code: '#VALUE!' }]]);
    expect(callInCells('CHECKROW', [HEADERS])).toMatchObject([[{ code: '#N/A' }]]);
  });
});

describe('CHECKROUTE', () => {
  const route: Cell[][] = [
    HEADERS,
    SOUND,
    ['', '', '', ''],
    [2, 'door', 762, 1981],
    [3, 'room', 4200, 2400, null, null, null, 5600],
  ];
  test('one text a row beside the route, its own header first', () => {
    const table = callInCells('CHECKROUTE', route);
    expect(table).toHaveLength(route.length);
    expect(table.map((row) => row.length)).toEqual([1, 1, 1, 1, 1]);
    expect([0, 1, 2, 4].map((i) => table[i]![0])).toEqual(['Problems', '', '', '']);
    expect(table[3]![0]).toMatch(/^Check: Width is 762 mm, which is a standard door leaf/);
  });
  test('what is wrong with the header row stands beside it', () => {
    const table = callInCells('CHECKROUTE', [
      ['Step', 'Stge'],
      [1, 'door'],
    ]);
    expect(table[0]![0]).toBe('Problems: There is no column Stage; is "Stge" meant for it?');
  });
});

test('CHECKPIECES gives one text a row beside the pieces', () => {
  const table = callInCells('CHECKPIECES', [
    ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
    ['one-piece', 'slate', 1830, 930, 25, 121, 1],
    [0, 0, 0, 0, 0, 0, 0],
    ['one-piece', 'legs', 760, 150, 150, 8, 0],
  ]);
  expect(table.map((row) => row[0])).toEqual([
    'Problems',
    '',
    '',
    'Check: Count is empty and is taken as 1.',
  ]);
});
