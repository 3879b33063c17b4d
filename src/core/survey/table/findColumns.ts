import type { Cell } from '../../measures/readQuantity';
import { nearestWord } from './nearestWord';
import { HEADER_ROW, type HeaderProblem } from '../checks/surveyProblem';

/** Where the columns of a table stand, and what is wrong with its headings. */
export interface FoundColumns {
  /** Where a column stands, from the left; more than once when its header is doubled. */
  readonly at: (heading: string) => readonly number[];
  readonly doubled: readonly HeaderProblem[];
  /** The problem with a column that is not there, with a header that may be it misspelt. */
  readonly missing: (heading: string) => HeaderProblem;
}

/** Case and spaces tell no two headings apart. */
const keyOf = (heading: string): string => heading.toLowerCase().replace(/\s+/g, '');

const NONE: readonly number[] = [];

/** Finds columns by their headings, in any order; headers that are none of ours are left alone. */
export function findColumns(headers: readonly Cell[], headings: readonly string[]): FoundColumns {
  const known = new Map(headings.map((heading) => [keyOf(heading), heading]));
  const places = new Map<string, number[]>();
  const others: string[] = [];
  headers.forEach((cell, i) => {
    if (typeof cell !== 'string' || cell.trim() === '') return;
    const heading = known.get(keyOf(cell));
    if (heading === undefined) {
      others.push(cell.trim());
      return;
    }
    const at = places.get(heading);
    if (at) at.push(i);
    else places.set(heading, [i]);
  });
  return {
    at: (heading) => places.get(heading) ?? NONE,
    doubled: [...places]
      .filter(([, at]) => at.length > 1)
      .map(([column, at]) => ({
        kind: 'column doubled',
        severity: 'error',
        rowIndex: HEADER_ROW,
        column,
        times: at.length,
      })),
    missing: (column) => {
      const near = others.find((other) => isNear(other, column, headings));
      return {
        kind: 'column missing',
        severity: 'error',
        rowIndex: HEADER_ROW,
        column,
        ...(near === undefined ? {} : { near }),
      };
    },
  };
}

/** A header that is a heading misspelt, or a heading with something in brackets after it. */
function isNear(header: string, column: string, headings: readonly string[]): boolean {
  const bare = header.replace(/[([].*$/, '');
  return (bare.trim() !== '' && keyOf(bare) === keyOf(column)) || nearestWord(bare, headings) === column;
}
