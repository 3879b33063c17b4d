/** What a cell can hold when it reaches us: the host's error values are objects with a code. */
export type Cell = number | string | boolean | null | undefined | CellError;

export interface CellError {
  readonly code: string;
  readonly message?: string;
}

/** Why a cell could not be read; the words are the worksheet's. */
export type ReadFailure =
  'blank' | 'no unit' | 'unknown unit' | 'comma' | 'parts' | 'not a number' | 'unreadable';

/** `bare`: came as a plain number, so a 0 may be an empty cell. */
export type ReadNumber =
  | { readonly ok: true; readonly value: number; readonly bare: boolean }
  | { readonly ok: false; readonly why: ReadFailure };

/** A unit in a compound such as feet and inches. `parts` order large to small. */
export interface Unit {
  readonly words: readonly string[];
  readonly factor: number;
  /** The smaller unit that may follow this one, and how many of it make one. */
  readonly then?: { readonly unit: string; readonly below: number };
}

const FAIL = (why: ReadFailure): ReadNumber => ({ ok: false, why });

const BLANK = /^\s*$/;

// A number as written: 12, 12.5, .5, 1/2, 12 1/2, with an optional sign.
const NUMBER = /^([+-]?)(?:(\d+)\s+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d*)?|\.\d+))/;
const WORD = /^(?:[a-z°²]+\.?|["'])/i;

/** Typographic quotes and primes, as phones and word processors write them, are the plain ones. */
function plainMarks(text: string): string {
  return text
    .replace(/''|[\u2033\u201c\u201d]/g, '"')
    .replace(/[\u2032\u2018\u2019]/g, "'")
    .replace(/\u00a0|\u202f/g, ' ')
    .replace(/\u00bd/g, ' 1/2')
    .replace(/\u00bc/g, ' 1/4')
    .replace(/\u00be/g, ' 3/4')
    .replace(/^\s*\u2212/, '-')
    .trim();
}

/**
 * Reads a cell as a number in a base unit: a plain number is taken to be in the base unit, a text must carry
 * units. Nothing is guessed: a text without a unit, an unknown unit, any comma, or a part without its unit
 * (`2' 6`) is refused.
 */
export function readQuantity(cell: Cell, units: readonly Unit[]): ReadNumber {
  if (typeof cell === 'number') {
    return Number.isFinite(cell) ? { ok: true, value: cell, bare: true } : FAIL('not a number');
  }
  if (cell === null || cell === undefined) return FAIL('blank');
  if (typeof cell !== 'string') return FAIL('not a number');
  if (BLANK.test(cell)) return FAIL('blank');
  if (cell.includes(',')) return FAIL('comma');
  return readText(plainMarks(cell), units);
}

function readText(text: string, units: readonly Unit[]): ReadNumber {
  let rest = text;
  let total = 0;
  let sign = 1;
  let expected: Unit['then'];
  let first = true;
  while (rest.length > 0) {
    const number = NUMBER.exec(rest);
    if (!number) return FAIL('unreadable');
    const amount = numberOf(number);
    if (!Number.isFinite(amount)) return FAIL('unreadable');
    if (first) sign = number[1] === '-' ? -1 : 1;
    else if (number[1]) return FAIL('parts');
    rest = rest.slice(number[0].length).trimStart();
    const word = WORD.exec(rest);
    if (!word) return FAIL(rest.length === 0 ? 'no unit' : 'unreadable');
    const unit = units.find((u) => u.words.includes(word[0].toLowerCase().replace(/\.$/, '')));
    if (!unit) return FAIL('unknown unit');
    if (!first && (!expected || !unit.words.includes(expected.unit) || amount >= expected.below)) {
      return FAIL('parts');
    }
    rest = rest.slice(word[0].length);
    // A larger part before a smaller one is whole: 2.5 ft 3 in is two ways of writing at once.
    if (rest.trim().length > 0 && !Number.isInteger(amount)) return FAIL('parts');
    // `2'-6"` joins its parts with a dash, which is no minus.
    rest = rest.replace(/^\s*-?\s*(?=[\d.])/, '').trimStart();
    total += amount * unit.factor;
    expected = unit.then;
    first = false;
  }
  return { ok: true, value: sign * total, bare: false };
}

function numberOf(match: RegExpExecArray): number {
  const [, , whole, top, bottom, halfTop, halfBottom, plain] = match;
  if (plain !== undefined) return Number(plain);
  if (halfTop !== undefined) return Number(halfTop) / Number(halfBottom);
  return Number(whole) + Number(top) / Number(bottom);
}
