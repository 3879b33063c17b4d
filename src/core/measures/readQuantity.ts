/** What a cell can hold when it reaches us: the host's error values are objects with a code. */
export type Cell = number | string | boolean | null | undefined | CellError;

/** A cell's error value, by its code, such as `#N/A`. */
export interface CellError {
  readonly code: string;
  readonly message?: string;
}

/** Why a cell could not be read; the words are the worksheet's. */
export type ReadFailure =
  | 'blank'
  | 'no unit'
  | 'unknown unit'
  | 'comma'
  | 'parts'
  | 'not a number'
  | 'hidden character'
  | 'unreadable';

/** `bare`: came as a plain number, so a 0 may be an empty cell. */
export type ReadNumber =
  | { readonly ok: true; readonly value: number; readonly bare: boolean }
  | { readonly ok: false; readonly why: ReadFailure };

/** A unit in a compound such as feet and inches. `parts` order large to small. */
export interface Unit {
  readonly words: readonly string[];
  readonly factor: number;
  /**
   * The smaller unit that may follow this one, and how many of it make one. `understood`: people leave its word out
   * after this one (`2 ft 6`), and it can mean nothing else.
   */
  readonly then?: { readonly unit: string; readonly below: number; readonly understood?: true };
}

const FAIL = (why: ReadFailure): ReadNumber => ({ ok: false, why });

const BLANK = /^\s*$/;

// A number as written: 12, 12.5, .5, 1/2, 12 1/2, 12-1/2, with an optional sign.
const NUMBER = /^([+-]?)(?:(\d+)(?:\s+|\s*-\s*)(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d*)?|\.\d+))/;
const WORD = /^(?:[a-z°²]+\.?|["'])/i;

/** Spaces that do not break, or are thin: printers put them between thousands, and so do phones. */
const HARD_SPACES = '\u00a0\u2007\u2009\u202f';
const THOUSANDS = new RegExp(`(?<![\\d.])\\d{1,3}(?:[${HARD_SPACES}]\\d{3})+(?![\\d/\u2044])`, 'g');
const HARD_SPACE = new RegExp(`[${HARD_SPACES}]`, 'g');

/** Fractions that are one character, and digits as wide as an ideograph. */
const COMPOSED = /[\u00bc-\u00be\u2150-\u215e]/g;
const WIDE = /[\uff01-\uff5e]/g;

/** What takes no room on the screen, so that nobody sees why a text is not read. */
const HIDDEN = /[\u00ad\u200b-\u200f\u2060-\u2064\ufeff]/;

/** Quotes, primes, accents, fractions, digits and spaces, as phones and word processors write them, are the plain ones. */
function plainMarks(text: string): string {
  return text
    .replace(WIDE, (wide) => wide.normalize('NFKC'))
    .replace(THOUSANDS, (digits) => digits.replace(HARD_SPACE, ''))
    .replace(HARD_SPACE, ' ')
    .replace(COMPOSED, (fraction) => ` ${fraction.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(/[\u2032\u2018\u2019\u00b4\u0060\u02b9\u02bc]/g, "'")
    .replace(/''|[\u2033\u201c\u201d\u02ba]/g, '"')
    .replace(/[\u2010-\u2013]/g, '-')
    .replace(/^\s*\u2212/, '-')
    .trim();
}

/**
 * Reads a cell as a number in a base unit: a plain number is taken to be in the base unit, a text must carry
 * units. Nothing is guessed: a text without a unit, an unknown unit, any comma, or a part without its unit is refused,
 * unless it can mean but one (`2 ft 6`).
 */
export function readQuantity(cell: Cell, units: readonly Unit[]): ReadNumber {
  if (typeof cell === 'number') {
    return Number.isFinite(cell) ? { ok: true, value: cell + 0, bare: true } : FAIL('not a number');
  }
  if (cell === null || cell === undefined) return FAIL('blank');
  if (typeof cell !== 'string') return FAIL('not a number');
  if (BLANK.test(cell)) return FAIL('blank');
  if (HIDDEN.test(cell)) return FAIL('hidden character');
  const text = plainMarks(cell);
  if (text.includes(',')) return FAIL('comma');
  return readText(text, units);
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
    if (rest.length === 0 && expected?.understood) {
      if (amount >= expected.below) return FAIL('parts');
      const understood = units.find((u) => u.words.includes(expected?.unit ?? ''));
      return understood ? measured(sign * (total + amount * understood.factor)) : FAIL('no unit');
    }
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
  return measured(sign * total);
}

/** A minus before a 0 says nothing. */
const measured = (value: number): ReadNumber => ({ ok: true, value: value + 0, bare: false });

function numberOf(match: RegExpExecArray): number {
  const [, , whole, top, bottom, halfTop, halfBottom, plain] = match;
  if (plain !== undefined) return Number(plain);
  if (halfTop !== undefined) return Number(halfTop) / Number(halfBottom);
  // `6 17/16` is no way to write anything: one of the three was mistyped.
  return Number(top) < Number(bottom) ? Number(whole) + Number(top) / Number(bottom) : NaN;
}
