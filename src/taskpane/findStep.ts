import { cellText } from '../core/survey/table/cells';
import type { Cell } from '../core/measures/readQuantity';
import { columnOf, isRouteHeader, stepColumn, type ResultRow } from './findRow';
import type { CellArea, SheetAccess, SheetTable } from './sheetAccess';

/** Where the step stands that a row of results speaks of, or why it is not known. */
export type StepSearch =
  | {
      readonly row: CellArea;
      readonly step: string;
      /** '' where the route names none. */
      readonly survey: string;
      /** The build that the row speaks of; '' where it names none. */
      readonly build: string;
    }
  | { readonly row: undefined; readonly why: string };

/** Sheets looked through where no table is a route, and rows of a route. */
const MOST_SHEETS = 40;
const MOST_ROWS = 10_000;
const HEADER_WITHIN = 20;

const no = (why: string): StepSearch => ({ row: undefined, why });

const key = (cell: Cell | string | undefined): string => cellText(cell).trim().toLowerCase();

/** Finds the row of a route that a row of ADVISE, VERDICT, STAGES or SURVEYS speaks of. */
export async function findStep(
  access: SheetAccess,
  tables: readonly SheetTable[],
  { header, headers, cells }: ResultRow,
): Promise<StepSearch> {
  const at = (column: number): string => cellText(cells[column]).trim();
  const named = (...names: string[]): string => at(Math.max(...names.map((name) => columnOf(headers, name))));
  const step = at(stepColumn(headers));
  const [stage, survey, build] = [named('stage'), named('survey'), named('build', 'build asked for')];
  if (step.toLowerCase() === 'route')
    return no('This row of results is on the whole route. The row of the step that decides is above it.');
  if (step === '') return no('This row of results names no step.');
  const formula = cellText((await access.contents({ ...header, rows: 1, columns: 1 }))[0]?.[0]);
  const found: Extract<StepSearch, { row: CellArea }>[] = [];
  for (const area of await routesOf(access, tables, formula)) {
    const [route = []] = await access.read({ ...area, rows: 1 });
    const rows = Math.min(area.rows - 1, MOST_ROWS);
    const below = rows > 0 ? await access.read({ ...area, row: area.row + 1, rows }) : [];
    const cellOf = (name: string, row: readonly Cell[]): Cell | undefined => row[columnOf(route, name)];
    below.forEach((row, i) => {
      if (key(cellOf('step', row)) !== key(step) || key(cellOf('stage', row)) !== key(stage)) return;
      const own = cellText(cellOf('survey', row)).trim();
      if (survey !== '' && key(own) !== key(survey)) return;
      found.push({ row: { ...area, row: area.row + 1 + i, rows: 1 }, step, survey: own, build });
    });
  }
  const [first] = found;
  const what = `step ${step}, ${stage}${survey === '' ? '' : `, of ${survey}`}`;
  if (!first) return no(`No route here has ${what}.`);
  return found.length === 1
    ? first
    : no(`${found.length} rows of routes are ${what}: select the one you mean.`);
}

/** The routes that a formula can have read: those that it names, else every one. */
async function routesOf(
  access: SheetAccess,
  tables: readonly SheetTable[],
  formula: string,
): Promise<readonly CellArea[]> {
  const routes: { readonly name: string; readonly area: CellArea }[] = [];
  for (const { name, area } of tables) {
    if (isRouteHeader((await access.read({ ...area, rows: 1 }))[0] ?? [])) routes.push({ name, area });
  }
  const words = new Set(formula.toLowerCase().match(/[\p{L}_][\p{L}\p{N}_.]*/gu) ?? []);
  const named = routes.filter(({ name }) => words.has(name.toLowerCase()));
  if (routes.length > 0) return (named.length > 0 ? named : routes).map(({ area }) => area);
  const areas: CellArea[] = [];
  for (const sheet of (await access.sheets()).slice(0, MOST_SHEETS)) {
    const used = await access.used(sheet);
    if (!used) continue;
    const top = await access.read({ ...used, rows: Math.min(used.rows, HEADER_WITHIN) });
    const at = top.findIndex(isRouteHeader);
    if (at >= 0) areas.push({ ...used, row: used.row + at, rows: used.rows - at });
  }
  return areas;
}
