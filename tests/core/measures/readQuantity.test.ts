import { readAngle } from '../../../src/core/measures/readAngle';
import { readLength } from '../../../src/core/measures/readLength';
import { readMass } from '../../../src/core/measures/readMass';

// 25.4 mm and 0.45359237 kg exactly: international yard and pound agreement, 1959.
describe('lengths are read as people write them', () => {
  test.each<[string | number, number]>([
    [760, 760],
    ['76 cm', 760],
    ['0.76 m', 760],
    ['.76m', 760],
    ['760mm', 760],
    ['760 MM', 760],
    ['30 in', 762],
    ['30 in.', 762],
    ['30"', 762],
    ['2\' 6"', 762],
    ['2′ 6″', 762],
    ['2’6”', 762],
    ["2' 6''", 762],
    ["2'", 609.6],
    ['2.5 ft', 762],
    ['2 ft 6 1/2 in', 774.7],
    ['2\'-6 1/2"', 774.7],
    ['2\' - 6 1/2"', 774.7],
    ['6½"', 165.1],
    ['1/2 in', 12.7],
    ['  78 in ', 1981.2],
    ['0 mm', 0],
    ['-5 mm', -5],
  ])('%p is %p mm', (cell, mm) => {
    const read = readLength(cell);
    expect(read.ok && read.value).toBeCloseTo(mm, 9);
  });

  test.each<[unknown, string]>([
    [null, 'blank'],
    [undefined, 'blank'],
    ['', 'blank'],
    ['   ', 'blank'],
    ['760', 'no unit'],
    ["2' 6", 'no unit'],
    ['2 ft 6', 'no unit'],
    ['76 furlongs', 'unknown unit'],
    ['76 kg', 'unknown unit'],
    ['1,981 mm', 'comma'],
    ['0,76 m', 'comma'],
    ['6" 2\'', 'parts'],
    ['2\' 14"', 'parts'],
    ['2.5 ft 3 in', 'parts'],
    ['1 m 20 cm', 'parts'],
    ['2 ft -+6 in', 'unreadable'],
    ['about 760 mm', 'unreadable'],
    ['760 mm wide', 'unreadable'],
    ['1/0 in', 'unreadable'],
    [true, 'not a number'],
    [NaN, 'not a number'],
    [Infinity, 'not a number'],
    [{ code: '#N/A' }, 'not a number'],
  ])('%p is refused: %s', (cell, why) => {
    expect(readLength(cell as never)).toEqual({ ok: false, why });
  });

  test('a plain number is marked bare, a text with a unit is not', () => {
    expect(readLength(0)).toEqual({ ok: true, value: 0, bare: true });
    expect(readLength('0 mm')).toEqual({ ok: true, value: 0, bare: false });
  });
});

describe('masses and angles', () => {
  test.each<[string, number]>([
    ['265 lb', 120.20197805],
    ['18 st 12 lb', 119.748386],
    ['120kg', 120],
    ['0.12 t', 120],
    ['4 lb 8 oz', 2.041165665],
  ])('%p is %p kg', (cell, kg) => {
    const read = readMass(cell);
    expect(read.ok && read.value).toBeCloseTo(kg, 6);
  });

  test('a mass in stone must name its pounds', () => {
    expect(readMass('18 st 12')).toEqual({ ok: false, why: 'no unit' });
  });

  test('angles', () => {
    expect(readAngle('42 deg')).toEqual({ ok: true, value: 42, bare: false });
    expect(readAngle('42°')).toEqual({ ok: true, value: 42, bare: false });
    expect(readAngle('42 mm')).toEqual({ ok: false, why: 'unknown unit' });
  });
});
