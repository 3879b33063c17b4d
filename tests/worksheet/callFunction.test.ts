import { HostError, callInCell, callInCells } from '../support/callInCells';

// The rules are the worksheet contract's own; the host behaviour behind them is in the Office Add-ins
// documentation, "Custom functions parameter options" and "Handle and return errors from your custom function".

const doorAndSlab = [762, 1981, 1830, 930, 25] as const;
const errorOf = (value: unknown): HostError => {
  expect(value).toBeInstanceOf(HostError);
  return value as HostError;
};

describe('one cell', () => {
  test('numbers and texts with units give the same', () => {
    const plain = callInCell('OPENING', ...doorAndSlab);
    expect(callInCell('OPENING', '76.2 cm', '1.981 m', '1830 mm', '930mm', '25 mm')).toBe(plain);
    expect(callInCell('OPENING', 762, 1981, 25, 1830, 930)).toBe(plain);
  });

  test('a missing measure is #N/A and named', () => {
    for (const blank of [null, undefined, '', '  ']) {
      const error = errorOf(callInCell('OPENING', 762, blank, 1830, 930, 25));
      expect([error.code, error.message]).toEqual(['#N/A', 'opening_height is not measured']);
    }
  });

  test.each<[unknown, string, string]>([
    [0, '#VALUE!', 'opening_width is 0: allowed is 100 to 20000 mm'],
    [0, '#VALUE!', '0 may be an empty cell'],
    [-762, '#VALUE!', 'opening_width is -762: allowed is 100 to 20000 mm'],
    [30, '#VALUE!', 'opening_width is 30: allowed is 100 to 20000 mm'],
    [20000.5, '#VALUE!', 'opening_width is 20000.5'],
    ['30', '#VALUE!', 'opening_width cannot be read from "30": a number in text needs its unit'],
    ['2 6', '#VALUE!', 'opening_width cannot be read from "2 6": '],
    ['76 furlong', '#VALUE!', 'that unit is not known here'],
    ['1,981 mm', '#VALUE!', 'a comma can mean two things'],
    ['wide', '#VALUE!', 'opening_width cannot be read from "wide"'],
    [true, '#VALUE!', 'opening_width cannot be read from TRUE'],
    [NaN, '#VALUE!', 'opening_width cannot be read from NaN'],
    [Infinity, '#VALUE!', 'opening_width cannot be read from Infinity'],
  ])('%p is refused: %s %s', (bad, code, text) => {
    const error = errorOf(callInCell('OPENING', bad as never, 1981, 1830, 930, 25));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });

  test('inches typed bare are caught on the piece too', () => {
    const error = errorOf(callInCell('OPENING', 762, 1981, 72, 36, 1));
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toContain('300 to 6000 mm');
  });

  test('the first bad argument in order decides the message', () => {
    expect(errorOf(callInCell('OPENING', null, 'x', 1, 2, 3)).message).toBe('opening_width is not measured');
    expect(errorOf(callInCell('OPENING', 762, 'x', null, 2, 3)).message).toContain('opening_height cannot');
  });

  test('an error value comes through as itself', () => {
    const error = errorOf(callInCell('OPENING', 762, new HostError('#DIV/0!'), null, 930, 25));
    expect(error.code).toBe('#DIV/0!');
    expect(errorOf(callInCell('OPENING', null, new HostError('#DIV/0!'), 1, 1, 1)).code).toBe('#N/A');
  });

  test('the bounds themselves are allowed', () => {
    expect(typeof callInCell('OPENING', 100, 20000, 300, 200, 10)).toBe('number');
    expect(typeof callInCell('OPENING', 100, 20000, 6000, 200, 10)).toBe('number');
    expect(errorOf(callInCell('OPENING', 99.999, 20000, 300, 200, 10)).code).toBe('#VALUE!');
    expect(errorOf(callInCell('OPENING', 100, 20000, 299.999, 200, 10)).code).toBe('#VALUE!');
    expect(errorOf(callInCell('OPENING', 100, 20000, 6000.001, 200, 10)).code).toBe('#VALUE!');
  });
});

describe('optional arguments', () => {
  const corner = [900, 900, 2400, 1830, 930, 25] as const;
  test('left out, blank or null is the default', () => {
    const square = callInCell('CORNER', ...corner, 90);
    for (const none of [undefined, null, '', ' ']) expect(callInCell('CORNER', ...corner, none)).toBe(square);
    expect(callInCell('CORNER', ...corner, '90 deg')).toBe(square);
  });

  test('a bare 0 is refused where it is no plain answer', () => {
    expect(errorOf(callInCell('CORNER', ...corner, 0)).message).toContain('0 may be an empty cell');
  });

  test('turns from 1 to 120 degrees', () => {
    expect(typeof callInCell('CORNER', ...corner, 1)).toBe('number');
    expect(typeof callInCell('CORNER', ...corner, 120)).toBe('number');
    for (const bad of [0.999, 120.001, -90]) {
      expect(errorOf(callInCell('CORNER', ...corner, bad)).message).toContain('1 to 120 degrees');
    }
  });
});

describe('what to use instead is said where a formula does not hold', () => {
  test.each<[string, unknown[], RegExp]>([
    ['WORKRATE', [80, 60, 4, -5], /grade is -5: .*not for going down or for stairs/],
    ['WORKRATE', [80, 60, 40], /speed is 40: .*for walking/],
    ['LIFTLIMIT', [400, 750, 500, 0, 1, 9], /hours is 9: .*beyond 8 hours/],
    ['CORNER', [900, 900, 2400, 1830, 930, 25, 180], /turn is 180: .*HALFLANDING/],
    ['JOIST', [4500, 400, 75, 200, 'C99', 0.5, 1.5], /grade cannot be read from "C99": .*C16.*C24/],
    ['TEAMLIMIT', [4], /no factor/],
  ])('%s %p', (id, given, message) => {
    expect(errorOf(callInCell(id, ...(given as never[]))).message).toMatch(message);
  });
});

describe('ranges', () => {
  const cellByCell = (a: unknown[], b: unknown[]) =>
    a.map((w) => b.map((h) => callInCell('OPENING', w as never, h as never, 1830, 930, 25)));

  test('ranges of one shape go together cell by cell', () => {
    const got = callInCells('OPENING', [[700], [762], [838]], [[1981], [1981], [2040]], 1830, 930, 25);
    expect(got).toEqual([
      [callInCell('OPENING', 700, 1981, 1830, 930, 25)],
      [callInCell('OPENING', 762, 1981, 1830, 930, 25)],
      [callInCell('OPENING', 838, 2040, 1830, 930, 25)],
    ]);
  });

  test('a column with a row makes a grid', () => {
    expect(callInCells('OPENING', [[700], [762]], [[1981, 2040, 2100]], 1830, 930, 25)).toEqual(
      cellByCell([700, 762], [1981, 2040, 2100]),
    );
  });

  test('a single row or column is repeated across a block', () => {
    const block = [
      [1981, 2040],
      [2100, 2200],
    ];
    const byColumn = callInCells('OPENING', [[700], [762]], block, 1830, 930, 25);
    expect(byColumn[1]![0]).toBe(callInCell('OPENING', 762, 2100, 1830, 930, 25));
    const byRow = callInCells('OPENING', [[700, 762]], block, 1830, 930, 25);
    expect(byRow[1]![0]).toBe(callInCell('OPENING', 700, 2100, 1830, 930, 25));
  });

  test('other shapes together are one #N/A that names them', () => {
    const error = errorOf(callInCell('OPENING', [[700], [762]], [[1981], [2040], [2100]], 1830, 930, 25));
    expect(error.code).toBe('#N/A');
    expect(error.message).toContain('opening_width 2 x 1 and opening_height 3 x 1');
  });

  test('a bad cell is an error in its own place and nowhere else', () => {
    const got = callInCells(
      'OPENING',
      [[700], [null], ['?'], [new HostError('#REF!')], [762]],
      1981,
      1830,
      930,
      25,
    );
    expect(got.map(([cell]) => (cell instanceof HostError ? cell.code : typeof cell))).toEqual([
      'number',
      '#N/A',
      '#VALUE!',
      '#REF!',
      'number',
    ]);
  });

  test('1,000 rows are one call and equal their cell calls', () => {
    const widths = Array.from({ length: 1000 }, (_, i) => [500 + i]);
    const got = callInCells('CORNER', widths, 900, 2400, 1830, 930, 25);
    expect(got).toHaveLength(1000);
    for (const i of [0, 1, 399, 998, 999]) {
      expect(got[i]![0]).toBe(callInCell('CORNER', 500 + i, 900, 2400, 1830, 930, 25));
    }
  });
});
