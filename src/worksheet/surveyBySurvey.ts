import type { Cell } from '../core/measures/readQuantity';
import { cellText, saysNothing } from '../core/survey/table/cells';
import { readHeaders } from '../core/survey/table/readHeaders';
import type { PlainCells } from './calls/messages';
import type { SmallerCalls } from './calls/smallerCalls';
import type { Table } from './description';
import { ordersOf } from './routeInputs';

/** The most calls that one is made of: each carries the table of pieces. */
const MOST_CALLS = 100;

/** The rows of a survey as they stand. */
interface SurveyRows {
  readonly key: string;
  readonly rows: (readonly Cell[])[];
}

/** An order as written, with its place in the answer. */
interface Placed {
  readonly order: readonly [survey: string, build: string];
  readonly at: number;
}

/**
 * A call of SURVEYS as one for each survey: workers share them, and after a change only the survey that it is in is
 * judged again, since the others are asked as before.
 * @param values the arguments as the host gave them
 * @returns undefined where a table has to be read as a whole: surveys whose rows stand apart, rows without a name,
 * what is refused
 */
export function surveyBySurvey(values: readonly unknown[]): SmallerCalls | undefined {
  const [routes, pieces, orders, ...rest] = values;
  if (!isTable(routes) || !isTable(pieces)) return undefined;
  const surveys = rowsBySurvey(routes);
  if (!surveys) return undefined;
  if (orders === null || orders === undefined) {
    return surveys.length < 2
      ? undefined
      : {
          calls: inGroups(surveys).map((group) => [tableOf(routes, group), pieces, null, ...rest]),
          join: (answers) => refusalIn(answers) ?? [...headerOf(answers), ...answers.flatMap(bodyOf)],
        };
  }
  const placed = isTable(orders) ? ordersBySurvey(orders) : undefined;
  const wanted = surveys.filter(({ key }) => placed?.has(key));
  if (!placed || wanted.length < 2) return undefined;
  const groups = inGroups(wanted);
  const places = groups.map((group) => group.flatMap(({ key }) => placed.get(key) ?? []));
  // What no survey is called has no rows: it is answered beside the first.
  const known = new Set(wanted.map(({ key }) => key));
  for (const [key, unknown] of placed) if (!known.has(key)) places[0]?.push(...unknown);
  return {
    calls: groups.map((group, i) => {
      const asked = (places[i] ?? []).map(({ order }) => order);
      return [tableOf(routes, group), pieces, [['Survey', 'Build'], ...asked], ...rest];
    }),
    join: (answers) => {
      const refusal = refusalIn(answers);
      if (refusal) return refusal;
      const rows: PlainCells[number][] = [];
      for (const [i, answer] of answers.entries()) {
        for (const [j, row] of bodyOf(answer).entries()) {
          const place = places[i]?.[j];
          if (place) rows[place.at] = row;
        }
      }
      return [...headerOf(answers), ...rows];
    },
  };
}

const isTable = (value: unknown): value is Table => Array.isArray(value) && Array.isArray(value[0]);

/** The rows of each survey, in the order of their first; undefined where one is to be read among the others. */
function rowsBySurvey(table: Table): readonly SurveyRows[] | undefined {
  const { survey: at } = readHeaders(table[0] ?? []).columns;
  const [column] = at;
  if (column === undefined || at.length > 1) return undefined;
  const found = new Map<string, SurveyRows>();
  let last: SurveyRows | undefined;
  for (const row of table.slice(1)) {
    if (row.every(saysNothing)) continue;
    const key = keyOf(cellText(row[column]));
    if (key === '') return undefined;
    if (last?.key !== key) {
      if (found.has(key)) return undefined;
      last = { key, rows: [] };
      found.set(key, last);
    }
    last.rows.push(row);
  }
  return [...found.values()];
}

/** Undefined where they are refused. */
function ordersBySurvey(table: Table): ReadonlyMap<string, readonly Placed[]> | undefined {
  const orders = ordersOf(table);
  if (!orders.ok || !orders.value) return undefined;
  const found = new Map<string, Placed[]>();
  for (const [at, { survey, build }] of orders.value.entries()) {
    const key = keyOf(survey);
    const placed: Placed = { order: [survey, build], at };
    const known = found.get(key);
    if (known) known.push(placed);
    else found.set(key, [placed]);
  }
  return found;
}

const keyOf = (name: string): string => name.trim().toLowerCase();

/** Neighbours together, where there are more than so many calls. */
function inGroups(surveys: readonly SurveyRows[]): (readonly SurveyRows[])[] {
  const size = Math.ceil(surveys.length / MOST_CALLS);
  const groups: (readonly SurveyRows[])[] = [];
  for (let from = 0; from < surveys.length; from += size) groups.push(surveys.slice(from, from + size));
  return groups;
}

const tableOf = (routes: Table, group: readonly SurveyRows[]): Table => [
  routes[0] ?? [],
  ...group.flatMap(({ rows }) => rows),
];

/** What is refused is one cell, and the same in each call. */
const refusalIn = (answers: readonly PlainCells[]): PlainCells | undefined =>
  answers.find(([first]) => typeof first?.[0] === 'object');

const headerOf = (answers: readonly PlainCells[]): PlainCells => answers[0]?.slice(0, 1) ?? [];
const bodyOf = (answer: PlainCells): PlainCells => answer.slice(1);
