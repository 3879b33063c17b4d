import type { Problem } from '../core/measures/problem';
import type { ReadFailure } from '../core/measures/readQuantity';

/** The two errors that show a message of ours in a cell. */
export type MessageCode = '#VALUE!' | '#N/A';

export interface Message {
  readonly code: MessageCode;
  readonly text: string;
}

const WHY: Readonly<Record<ReadFailure, string>> = {
  blank: '0 may be an empty cell; ',
  'no unit': 'a number in text needs its unit; ',
  'unknown unit': 'that unit is not known here; ',
  comma: 'a comma can mean two things, use a point or none; ',
  parts: 'the parts do not make one measure; ',
  'not a number': '',
  'hidden character': 'it holds an invisible character, type it again; ',
  unreadable: '',
};

/** Some builds of the host cut a message at about 255 characters (issue 4133 of office-js). */
export const LONGEST_MESSAGE = 250;

/** The words and the error code of a problem: the only place where either is decided. */
export function messageOf(problem: Problem): Message {
  return inSight(wordsOf(problem));
}

function wordsOf(problem: Problem): Message {
  switch (problem.kind) {
    case 'not measured':
      return { code: '#N/A', text: `${problem.argument} is not measured` };
    case 'not readable':
      return {
        code: '#VALUE!',
        text: `${problem.argument} cannot be read from ${shown(problem.got)}: ${WHY[problem.why ?? 'unreadable']}allowed is ${problem.allowed}`,
      };
    case 'out of range': {
      const hint = problem.hint ? `; ${problem.hint}` : '';
      return {
        code: '#VALUE!',
        text: `${problem.argument} is ${shown(problem.got)}: allowed is ${problem.allowed}${hint}`,
      };
    }
    case 'impossible':
      return {
        code: '#VALUE!',
        text: `${problem.argument} is ${shown(problem.got)}: ${problem.because}`,
      };
    case 'no answer':
      return { code: '#N/A', text: `${problem.because}: ${problem.instead}` };
  }
}

/** Messages about the call as a whole. */
export const CALL_MESSAGES = {
  shapes: (one: string, other: string): Message => ({
    code: '#N/A',
    text: `the ranges do not go together: ${one} and ${other}; give ranges of one shape, single cells, or one row and one column`,
  }),
  noCells: (argument: string): Message => ({
    code: '#N/A',
    text: `${argument} is a range without a cell; give ranges of one shape, single cells, or one row and one column`,
  }),
  manyCells: (argument: string, shape: string): Message => ({
    code: '#VALUE!',
    text: `${argument} is a range of ${shape}: allowed is a single cell`,
  }),
  tooLong: (rows: number, most: number): Message => ({
    code: '#VALUE!',
    text: `the result would be ${rows} rows long: allowed is ${most}; select the rows in use only`,
  }),
  stopped: {
    code: '#N/A',
    text: 'stopped in the pane before it was computed: enter the formula again, or recalculate',
  },
  unforeseen: (id: string): Message => ({
    code: '#VALUE!',
    text: `${id} could not be computed: this is a fault of the add-in; please report the arguments you gave`,
  }),
} as const;

/** What matters most stands first, so that what is cut off a long message is its end. */
function inSight({ code, text }: Message): Message {
  if (text.length <= LONGEST_MESSAGE) return { code, text };
  return { code, text: `${text.slice(0, text.lastIndexOf(' ', LONGEST_MESSAGE - 2))} …` };
}

/** A value as a person would quote it, cut to a length that fits a message. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${value.length > 40 ? `${value.slice(0, 40)}…` : value}"`;
  if (typeof value === 'number') return String(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (value === null || value === undefined) return 'nothing';
  return 'something that is no number';
}
