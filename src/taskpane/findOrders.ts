import { cellText } from '../core/survey/table/cells';
import { columnOf } from './findRow';
import type { CellArea, SheetAccess, SheetTable } from './sheetAccess';

/** Rows of orders read. */
const MOST_ORDERS = 2000;

/**
 * Which build each survey orders: the first table with the columns Survey and Build in which every survey stands once,
 * and which is neither a route nor a list of pieces nor of verdicts.
 * @returns builds by survey, both as written
 */
export async function findOrders(
  access: SheetAccess,
  tables: readonly SheetTable[],
): Promise<ReadonlyMap<string, string>> {
  for (const { area } of tables) {
    const headers = (await access.read({ ...area, rows: 1 }))[0] ?? [];
    const survey = columnOf(headers, 'survey');
    const build = columnOf(headers, 'build');
    if (survey < 0 || build < 0 || OTHERS.some((name) => columnOf(headers, name) >= 0)) continue;
    const orders = await ordersBelow(access, area, survey, build);
    if (orders) return orders;
  }
  return new Map();
}

const OTHERS = ['stage', 'piece', 'verdict'];

async function ordersBelow(
  access: SheetAccess,
  area: CellArea,
  survey: number,
  build: number,
): Promise<ReadonlyMap<string, string> | undefined> {
  const rows = Math.min(area.rows - 1, MOST_ORDERS);
  if (rows < 1) return undefined;
  const orders = new Map<string, string>();
  for (const cells of await access.read({ ...area, row: area.row + 1, rows })) {
    const name = cellText(cells[survey]).trim();
    if (name === '') continue;
    if (orders.has(name)) return undefined;
    orders.set(name, cellText(cells[build]).trim());
  }
  return orders;
}
