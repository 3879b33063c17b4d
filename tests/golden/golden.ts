import { readFileSync } from 'node:fs';
import path from 'node:path';
import { VERDICTS, type Verdict } from '../../src/core/route/verdict';
import { readTable } from '../../src/month/readMonth';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { isCellError } from '../../src/sheetHost/hostValues';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import type { HostCell } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { callInCells, type Given } from '../support/callInCells';

/** What a version of the add-in answers, as later ones are held against it. Written by `npm run golden` alone. */
export interface Contract {
  /** Each function with its arguments in order, `?` behind those that may be left out, and what its example gives. */
  readonly functions: Readonly<
    Record<string, { readonly arguments: string[]; readonly gives: GoldenCell[][] }>
  >;
}
export type GoldenCell = string | number | boolean | null;

/** One survey of the sample month. */
export interface GoldenVerdict {
  readonly survey: string;
  readonly build: string;
  readonly verdict: Verdict;
  /** [mm a side]; null where there is none. */
  readonly clearance: number | null;
}

export const FOLDER = __dirname;
export const CONTRACT = path.join(FOLDER, 'contract.json');
export const MONTH = path.join(FOLDER, 'month.json');
export const BOOK = path.join(FOLDER, 'book.xlsx');

export const readGolden = <T>(file: string): T => JSON.parse(readFileSync(file, 'utf8')) as T;

/** A number as far as every machine computes the same. */
const settled = (value: number): number => Number(value.toPrecision(9));

const goldenCell = (cell: HostCell): GoldenCell =>
  typeof cell === 'number' ? settled(cell) : isCellError(cell) ? `${cell.code} ${cell.message ?? ''}` : cell;

/** The contract of this version. */
export function contractNow(): Contract {
  return {
    functions: Object.fromEntries(
      FUNCTIONS.map((f) => [
        f.id,
        {
          arguments: f.arguments.map((a) => `${a.name}${a.optional ? '?' : ''}${a.repeating ? '…' : ''}`),
          gives: callInCells(f.id, ...(f.example.arguments as Given[])).map((row) => row.map(goldenCell)),
        },
      ]),
    ),
  };
}

/** The verdicts on the sample month by this version, without a workbook's formulas between. */
export async function monthNow(): Promise<GoldenVerdict[]> {
  const opened = await openWorkbook(await sampleWorkbook());
  if (!opened.ok) throw new Error(opened.reason);
  const table = (...headings: string[]): Given => {
    const found = readTable(opened.host, headings);
    if (!found) throw new Error(`the sample month has no table with ${headings.join(', ')}`);
    return found;
  };
  const orders = table('Survey', 'Build', 'Customer');
  const answered = callInCells(
    'SURVEYS',
    table('Survey', 'Step', 'Stage'),
    table('Build', 'Piece', 'Length'),
    orders,
  );
  const [headings = [], ...rows] = answered;
  const column = (name: string): number => {
    const at = headings.indexOf(name);
    if (at < 0) throw new Error(`SURVEYS has no column ${name}`);
    return at;
  };
  const [survey, build, verdict, clearance] = ['Survey', 'Build', 'Verdict', 'Clearance'].map(column) as [
    number,
    number,
    number,
    number,
  ];
  return rows.map((row) => ({
    survey: String(row[survey]),
    build: String(row[build]),
    verdict: String(row[verdict]) as Verdict,
    clearance: typeof row[clearance] === 'number' ? Number(row[clearance].toFixed(1)) : null,
  }));
}

/** How far a figure may fall without being less: what is shown is rounded to the careful side [mm]. */
const HAIR = 0.11;

/**
 * In what a later version says less than an earlier one, in a sentence; undefined where it says as much or more. A
 * search may find more and a proof may be found; what was shown or proved may not be lost.
 */
export function lessThanBefore(before: GoldenVerdict, now: GoldenVerdict | undefined): string | undefined {
  const name = `${before.survey}, ${before.build}`;
  if (!now) return `${name} is no longer judged`;
  const changed = `${name} was ${before.verdict} and is ${now.verdict}`;
  const rank = (verdict: Verdict): number => VERDICTS.indexOf(verdict);
  switch (before.verdict) {
    case 'goes':
    case 'tight':
      if (rank(now.verdict) > rank(before.verdict)) return changed;
      if (
        before.clearance !== null &&
        !(now.clearance !== null && now.clearance >= before.clearance - HAIR)
      ) {
        return `${name} had ${before.clearance} mm a side and has ${now.clearance ?? 'none'}`;
      }
      return undefined;
    case 'cannot go':
      return now.verdict === 'cannot go' ? undefined : changed;
    case 'no way found':
      return now.verdict === 'not measured' ? changed : undefined;
    case 'not measured':
      return undefined;
  }
}
