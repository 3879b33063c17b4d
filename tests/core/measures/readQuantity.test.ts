import { readAngle } from '../../../src/core/measures/readAngle';
import { readLength } from '../../../src/core/measures/readLength';
import { readMass } from '../../../src/core/measures/readMass';

// 25.4 mm and 0.45359237 kg exactly: international yard and pound agreement, 1959.
describe('TOMM: lengths are read as people write them', () => {
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
    // The sign is that of the whole, not of its first part.
    ['-2 ft 6 in', -762],
    ["-2' 6", -762],
    ["2' 11", 889],
    ['2ft 6', 762],
    ["2' 6", 762],
    ["2' 6 1/2", 774.7],
    ['6-1/8"', 155.575],
    ['2\'-6-1/2"', 774.7],
    ['⅛ in', 3.175],
    ['6⅞"', 174.625],
    ['6 ⅔ in', (20 / 3) * 25.4],
    ['6 1⁄16 in', 6.0625 * 25.4],
    ['７６２ｍｍ', 762],
    ['２＇６＂', 762],
    ['2´ 6´´', 762],
    ['2` 6``', 762],
    ['2\u02b9 6\u02ba', 762],
    ['1\u00a0981 mm', 1981],
    ['1\u2009981 mm', 1981],
    ['1\u202f981 mm', 1981],
    ['12\u2009345.5 mm', 12345.5],
    ['6\u00a01/2 in', 165.1],
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
    ["2' 14", 'parts'],
    ['2 ft 6 cm', 'parts'],
    ['2 m 6', 'no unit'],
    ['1 981 mm', 'unreadable'],
    ['1\u2009981', 'no unit'],
    ['1\u2009981\u20095 mm', 'unreadable'],
    ['1，981 mm', 'comma'],
    ['760\u200b mm', 'hidden character'],
    ['\ufeff760 mm', 'hidden character'],
    ['7\u00ad60 mm', 'hidden character'],
    ['76 furlongs', 'unknown unit'],
    ['76 kg', 'unknown unit'],
    ['1,981 mm', 'comma'],
    ['0,76 m', 'comma'],
    ['6" 2\'', 'parts'],
    ['2\' 14"', 'parts'],
    ['2.5 ft 3 in', 'parts'],
    ['1 m 20 cm', 'parts'],
    // Twelve inches are another foot.
    ["2' 12", 'parts'],
    ['2 ft 12 in', 'parts'],
    ['2.5 ft 3', 'parts'],
    ['2 ft +6 in', 'parts'],
    ['2 ft -+6 in', 'unreadable'],
    ['2 ft +6 in', 'parts'],
    ['2 ft 12', 'parts'],
    ['2 ft 12 in', 'parts'],
    ['2.5 ft 3', 'parts'],
    ['about 760 mm', 'unreadable'],
    ['760 mm wide', 'unreadable'],
    ['1/0 in', 'unreadable'],
    ['6 17/16 in', 'unreadable'],
    ['6 4/4 in', 'unreadable'],
    [true, 'not a number'],
    [NaN, 'not a number'],
    [Infinity, 'not a number'],
    [{ code: '#N/A' }, 'not a number'],
  ])('%p is refused: %s', (cell, why) => {
    expect(readLength(cell as never)).toEqual({ ok: false, why });
  });

  // The inch is divided into halves down to sixteenths on every rule, and into thirds by builders.
  test.each([2, 3, 4, 8, 16])('every part of %d of an inch, alone and after a whole one', (parts) => {
    for (let top = 1; top < parts; top++) {
      expect(readLength(`${top}/${parts}"`)).toMatchObject({ ok: true });
      const read = readLength(`6 ${top}/${parts}"`);
      expect(read.ok && read.value).toBeCloseTo((6 + top / parts) * 25.4, 9);
    }
  });
  test.each(['⅛⅜⅝⅞', '⅓⅔', '⅙⅚', '½¼¾'])('fractions of one character: %s', (fractions) => {
    for (const fraction of fractions) {
      const [top, parts] = fraction.normalize('NFKC').split('\u2044').map(Number);
      const read = readLength(`6${fraction}"`);
      expect(read.ok && read.value).toBeCloseTo((6 + top! / parts!) * 25.4, 9);
    }
  });
  test('no length is minus nothing', () => {
    for (const cell of ['-0 mm', -0]) {
      const read = readLength(cell);
      expect(read.ok && Object.is(read.value, 0)).toBe(true);
    }
  });

  test('a plain number is marked bare, a text with a unit is not', () => {
    expect(readLength(0)).toEqual({ ok: true, value: 0, bare: true });
    expect(readLength('0 mm')).toEqual({ ok: true, value: 0, bare: false });
  });
});

describe('TOKG: masses, and angles', () => {
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
