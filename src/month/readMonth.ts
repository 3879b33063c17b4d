import { VERDICTS } from '../core/route/verdict';
import type { Cell } from '../core/measures/readQuantity';
import { ALLOWANCE, TAPE } from '../worksheet/routeInputs';
import { readAddress } from '../sheetHost/address';
import { findRows, type NamedRow } from '../sheetHost/findRows';
import { isCellError, type CellValue } from '../sheetHost/hostValues';
import { surveyOfCells, type Month, type MonthSurvey } from './month';
import type { SheetHost } from '../sheetHost/sheetHost';

/**
 * Reads the month out of a recalculated workbook: the rows with Survey, Verdict, Clearance and Stage, of each
 * survey the best, and what the columns beside them and the orders say of it.
 * @returns undefined when no sheet has such rows
 */
export function readMonth(host: SheetHost): Month | undefined {
  const rows = findRows(host, ['Survey', 'Verdict', 'Clearance', 'Stage']);
  if (!rows) return undefined;
  const best = new Map<string, NamedRow>();
  for (const row of rows) {
    const survey = text(row, 'survey');
    const held = best.get(survey);
    if (!held || rank(row) < rank(held)) best.set(survey, row);
  }
  const orders = new Map<string, NamedRow>();
  for (const order of findRows(host, ['Survey', 'Build', 'Customer']) ?? []) {
    orders.set(text(order, 'survey'), order);
  }
  const advice = new Map<string, NamedRow>();
  for (const row of findRows(host, ['Survey', 'Advise', 'Next step']) ?? []) {
    advice.set(text(row, 'survey'), row);
  }
  return {
    surveys: [...best].map(([survey, row]) =>
      surveyOf(survey, row, orders.get(survey), advice.get(survey) ?? row),
    ),
    allowance: named(host, 'Allowance') ?? Number(ALLOWANCE.optional?.default),
    tape: named(host, 'Tape') ?? Number(TAPE.optional?.default),
  };
}

/** The table of the workbook whose header row has all the columns named, with its header row. */
export function readTable(host: SheetHost, columns: readonly string[]): Cell[][] | undefined {
  for (const { sheet, block } of host.tables()) {
    const cells = host.read(sheet, block);
    const names = (cells[0] ?? []).map((cell) => (typeof cell === 'string' ? cell.trim().toLowerCase() : ''));
    if (columns.every((column) => names.includes(column.toLowerCase()))) return cells;
  }
  return undefined;
}

function surveyOf(survey: string, row: NamedRow, order: NamedRow | undefined, advice: NamedRow): MonthSurvey {
  return surveyOfCells({
    survey,
    customer: order ? text(order, 'customer') : '',
    place: order ? text(order, 'place') : '',
    ...(order && text(order, 'day') !== '' ? { day: text(order, 'day') } : {}),
    build: text(row, 'build'),
    verdict: text(row, 'verdict'),
    clearance: number(row, 'clearance'),
    step: text(row, 'step'),
    stage: text(row, 'stage'),
    piece: text(row, 'piece'),
    pose: text(row, 'pose'),
    heaviest: number(row, 'heaviest kg'),
    carry: text(row, 'carry'),
    reason: text(row, 'reason'),
    caution: text(row, 'caution'),
    advise: text(advice, 'advise'),
    nextStep: text(advice, 'next step'),
    urgency: number(row, 'urgency'),
  });
}

function rank(row: NamedRow): number {
  const at = (VERDICTS as readonly CellValue[]).indexOf(row.get('verdict') ?? null);
  return at < 0 ? VERDICTS.length : at;
}

function text(row: NamedRow, column: string): string {
  const value = row.get(column) ?? null;
  if (value === null) return '';
  if (isCellError(value)) return value.message === undefined ? value.code : `${value.code} ${value.message}`;
  return String(value);
}

function number(row: NamedRow, column: string): number | undefined {
  const value = row.get(column);
  return typeof value === 'number' ? value : undefined;
}

/** The number in the cell that has a name. */
function named(host: SheetHost, name: string): number | undefined {
  const found = host.names().find((n) => n.name.toLowerCase() === name.toLowerCase());
  const [, sheet, address] = /^=?'?(.*?)'?!(.*)$/.exec(found?.refersTo ?? '') ?? [];
  const block = address === undefined ? undefined : readAddress(address);
  if (sheet === undefined || !block) return undefined;
  const value = host.value(sheet.replace(/''/g, "'"), block.row, block.column);
  return typeof value === 'number' ? value : undefined;
}
