import { capital } from '../core/survey/words/capital';
import { found, refused, type Outcome } from '../core/measures/problem';
import type { Cell } from '../core/measures/readQuantity';
import type { Build, BuildPiece } from '../core/route/buildVerdict';
import { EXAMPLE_RATES, RATE_NAMES, SET_UP_OF, type JobRates, type RateName } from '../core/route/jobRates';
import type { Order } from '../core/route/judgeSurveys';
import { readPieces, type PieceRow } from '../core/survey/table/readPieces';
import { readRoute, type RouteRead } from '../core/survey/table/readRoute';
import type { StageRow } from '../core/survey/table/stageRow';
import { STAGE_NAMES } from '../core/stages/kinds';
import type { HeaderProblem } from '../core/survey/checks/surveyProblem';
import type { ArgumentDescription, Table } from './description';

export const ROUTE = {
  name: 'route',
  help: `a table with a header row, one row a step: Step, Stage (${STAGE_NAMES.join(', ')}) and the measures of each stage, columns found by name; a landing's Width is its lower flight's and Width out its upper's, whichever way it is carried`,
  quantity: 'range',
} as const satisfies ArgumentDescription;

export const ROUTES = {
  ...ROUTE,
  name: 'routes',
  help: 'as a route, with a column Survey that names the survey of each row; the rows of a survey may stand anywhere',
} as const satisfies ArgumentDescription;

export const PIECES = {
  name: 'pieces',
  help: "a table with a header row: Build, Piece, Length, Breadth, Thickness, Mass, Count; builds in the firm's order of preference",
  quantity: 'range',
} as const satisfies ArgumentDescription;

export const ALLOWANCE = {
  name: 'allowance',
  help: 'the clearance the firm insists on, a side: padding, blankets, knuckles',
  quantity: 'length',
  least: 0,
  most: 200,
  optional: { default: 25 },
} as const satisfies ArgumentDescription;

// The least rise and going that are read are 50 mm, and the tape is taken off them.
export const TAPE = {
  name: 'tape',
  help: 'how far off any one measure may be',
  quantity: 'length',
  least: 0,
  most: 40,
  optional: { default: 5 },
} as const satisfies ArgumentDescription;

/** The header row as it came; where it holds no words, its first cell. */
const headerWords = (table: Table): unknown =>
  (table[0] ?? []).filter((c) => typeof c === 'string').join(', ') || table[0]?.[0];

/** The first thing wrong with a table as a whole, as a refusal of its argument. Only what stops a reading. */
function refusedTable(
  argument: string,
  table: Table,
  problems: readonly HeaderProblem[],
  needed: readonly string[],
) {
  for (const problem of problems) {
    if (problem.kind === 'no rows') {
      return refused({
        kind: 'impossible',
        argument,
        got: headerWords(table),
        because: 'there are no rows below the headers',
      });
    }
    if (problem.kind === 'column missing' && needed.includes(problem.column)) {
      const near = problem.near === undefined ? '' : `; "${problem.near}" may be meant`;
      return refused({
        kind: 'impossible',
        argument,
        got: headerWords(table),
        because: `its header row has no column ${problem.column}${near}`,
      });
    }
  }
  return undefined;
}

/** Reads a table of routes. */
export function surveysOf(argument: string, table: Table): Outcome<RouteRead> {
  const read = readRoute(table);
  return refusedTable(argument, table, read.problems, ['Step', 'Stage']) ?? found(read);
}

/** A table that holds one survey, as read. */
export interface OneRoute {
  readonly read: RouteRead;
  /** In the order of the steps. */
  readonly rows: readonly StageRow[];
}

/** Reads a table that holds one survey into its rows, in the order of the steps. */
export function oneRoute(table: Table): Outcome<readonly StageRow[]> {
  const one = readOneRoute(table);
  return one.ok ? found(one.value.rows) : one;
}

/** Reads a table that holds one survey. */
export function readOneRoute(table: Table): Outcome<OneRoute> {
  const read = surveysOf('route', table);
  if (!read.ok) return read;
  const { surveys } = read.value;
  const [survey] = surveys;
  if (!survey || surveys.length > 1) {
    const names = surveys.map((survey) => survey.name || 'one without a name').join(', ');
    return refused({
      kind: 'impossible',
      argument: 'route',
      got: names,
      because: 'it holds more than one survey: give the rows of one, or use SURVEYS',
    });
  }
  return found({ read: read.value, rows: survey.rows });
}

/** Reads a table of pieces into the builds it holds, in the firm's order. */
export function buildsOf(table: Table): Outcome<readonly Build[]> {
  const { builds, problems } = readPieces(table);
  const needed = ['Build', 'Piece', 'Length', 'Breadth', 'Thickness'];
  return (
    refusedTable('pieces', table, problems, needed) ??
    found(builds.map(({ name, pieces }): Build => ({ name, pieces: pieces.map(pieceOf) })))
  );
}

const pieceOf = (row: PieceRow): BuildPiece => ({
  name: row.piece,
  size: row.size,
  problem: row.size === undefined ? sizeProblem(row) : undefined,
  mass: row.mass,
  count: row.count,
});

function sizeProblem(row: PieceRow): string {
  const refusal = row.refused.find((r) => r.measure !== 'mass' && r.measure !== 'count');
  if (refusal) return `${capital(refusal.measure)} cannot be taken: ${refusal.why}`;
  const missing = (['length', 'breadth', 'thickness'] as const).find((name) => row.sizes[name] === undefined);
  return `${capital(missing ?? 'length')} is not given`;
}

const cellWord = (cell: Cell): string =>
  typeof cell === 'object' || cell === undefined ? '' : String(cell).trim();

/** Reads the orders: two columns Survey and Build, with or without a header row, in either order with one. */
export function ordersOf(table: Table | undefined): Outcome<readonly Order[] | undefined> {
  if (table === undefined) return found(undefined);
  const headers = (table[0] ?? []).map((cell) => cellWord(cell).toLowerCase());
  const named = headers.includes('survey') && headers.includes('build');
  const [surveyAt, buildAt] = named
    ? ([headers.indexOf('survey'), headers.indexOf('build')] as const)
    : ([0, 1] as const);
  if (headers.length < 2) {
    return refused({
      kind: 'impossible',
      argument: 'orders',
      got: `${headers.length} column`,
      because: 'it has two columns, Survey and Build',
    });
  }
  const orders = table.slice(named ? 1 : 0).flatMap((cells): Order[] => {
    const survey = nameOf(cells[surveyAt]);
    const build = nameOf(cells[buildAt]);
    return survey === '' && build === '' ? [] : [{ survey, build }];
  });
  return found(orders);
}

// An empty cell can arrive as 0, and no survey or build is called that.
const nameOf = (cell: Cell): string => (cell === 0 ? '' : cellWord(cell));

/** No minutes at all, said so that it cannot be an empty cell that arrives as 0. */
const isNoMinutes = (cell: Cell): boolean => typeof cell === 'string' && /^\s*0\s*min\s*$/i.test(cell);

/** Reads rates, two columns: what, minutes. A rate that is not named keeps its example. */
export function ratesOf(table: Table | undefined): Outcome<JobRates> {
  const minutes: Record<RateName, number> = { ...EXAMPLE_RATES };
  const setUpOf = new Map<string, number>();
  const refuse = (got: unknown, because: string) =>
    refused({ kind: 'impossible', argument: 'rates', got, because });
  for (const [i, cells] of (table ?? []).entries()) {
    const what = nameOf(cells[0]);
    const value = isNoMinutes(cells[1]) ? 0 : cells[1];
    if (what === '') continue;
    const rate = RATE_NAMES.find((name) => name.toLowerCase() === what.toLowerCase());
    const build = what.toLowerCase().startsWith(SET_UP_OF.toLowerCase())
      ? what.slice(SET_UP_OF.length)
      : undefined;
    if (rate === undefined && build === undefined) {
      // A header row names no rate and has no figure.
      if (i === 0 && typeof value !== 'number') continue;
      return refuse(what, `it is no rate: use ${RATE_NAMES.join('; ')}; or "${SET_UP_OF}" and a build`);
    }
    if (cells[1] === 0)
      return refuse(0, `the minutes of "${what}": 0 may be an empty cell; write "0 min" if there are none`);
    if (typeof value !== 'number' || !(value >= 0) || !Number.isFinite(value)) {
      return refuse(value, `the minutes of "${what}" are a plain number above 0, or "0 min"`);
    }
    if (rate !== undefined) minutes[rate] = value;
    else if (build !== undefined) setUpOf.set(build.trim().toLowerCase(), value);
  }
  return found({ minutes, setUpOf });
}
