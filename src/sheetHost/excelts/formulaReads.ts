import { parse, tokenize } from '@cj-tech-master/excelts/formula';
import { columnOf, readAddress, SHEET_COLUMNS, SHEET_ROWS, type Block } from '../address';

/** A block of cells that a formula reads. */
export interface ReadBlock {
  /** In lower case. */
  readonly sheet: string;
  readonly block: Block;
}

/** A table as references see it; its block has all its rows. */
export interface ReadTable {
  readonly sheet: string;
  readonly block: Block;
  readonly columns: readonly string[];
  readonly header: boolean;
  readonly totals: boolean;
}

/** What a formula's references mean in this workbook. */
export interface ReadContext {
  readonly sheet: string;
  readonly row: number;
  /** '' names the table that the formula stands in. */
  table(name: string): ReadTable | undefined;
  /** The references of a defined name. */
  name(name: string): readonly string[];
}

export interface FormulaReads {
  readonly blocks: readonly ReadBlock[];
  /** It also reads cells that only its computation finds (INDIRECT, OFFSET). */
  readonly more: boolean;
}

// The kinds of the engine's syntax tree, which it exports as types only.
const CELL = 5;
const RANGE = 6;
const CALL = 9;
const NAME = 12;
const COLUMNS = 13;
const ROWS = 14;
const STRUCTURED = 15;

/** Whether the engine can read a formula; the reason when it cannot. */
export function syntaxFault(formula: string): string | undefined {
  try {
    parse(tokenize(formula));
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** The blocks that a formula names, as far as they can be told without computing it. */
export function formulaReads(formula: string, context: ReadContext): FormulaReads {
  const blocks: ReadBlock[] = [];
  let more = false;
  const seen = new Set<string>();

  const add = (sheet: string | undefined, block: Block | undefined) => {
    if (block) blocks.push({ sheet: (sheet ?? context.sheet).toLowerCase(), block });
  };
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) return value.forEach(visit);
    if (typeof value !== 'object' || value === null) return;
    const node = value as Record<string, unknown> & { type?: number; sheet?: string };
    const cell = (n: unknown) => {
      const { col, row } = n as { col: string; row: string };
      return `${col}${row}`;
    };
    switch (node.type) {
      case CELL:
        return add(node.sheet, readAddress(cell(node)));
      case RANGE:
        return add(node.sheet, readAddress(`${cell(node['start'])}:${cell(node['end'])}`));
      case COLUMNS: {
        const [a, b] = [columnOf(node['startCol'] as string), columnOf(node['endCol'] as string)];
        const column = Math.min(a, b);
        return add(node.sheet, { row: 0, column, rows: SHEET_ROWS, columns: Math.abs(a - b) + 1 });
      }
      case ROWS: {
        const [a, b] = [node['startRow'] as number, node['endRow'] as number];
        const row = Math.min(a, b) - 1;
        return add(node.sheet, { row, column: 0, rows: Math.abs(a - b) + 1, columns: SHEET_COLUMNS });
      }
      case STRUCTURED: {
        const table = context.table(node['tableName'] as string);
        const block =
          table && tablePart(table, node['columns'] as string[], node['specials'] as string[], context.row);
        return add(table?.sheet, block);
      }
      case NAME: {
        const name = String(node['name']).toLowerCase();
        if (seen.has(name)) return;
        seen.add(name);
        for (const reference of context.name(name)) visitText(reference);
        return;
      }
      case CALL:
        if (/^(?:_xlfn\.)?(?:INDIRECT|OFFSET)$/i.test(String(node['name']))) more = true;
        return visit(node['args']);
      default:
        Object.values(node).forEach(visit);
    }
  };
  const visitText = (text: string) => {
    // A formula that cannot be read is reported as such where it stands.
    if (syntaxFault(text) === undefined) visit(parse(tokenize(text)));
  };
  visitText(formula);
  return { blocks, more };
}

/** The block that a structured reference means: the data of its columns, unless it asks for other rows. */
function tablePart(
  { block, columns, header, totals }: ReadTable,
  named: readonly string[],
  specials: readonly string[],
  row: number,
): Block | undefined {
  const places = named.map((name) => columns.findIndex((c) => c.toLowerCase() === name.toLowerCase()));
  if (places.includes(-1)) return undefined;
  const first = places.length > 0 ? Math.min(...places) : 0;
  const last = places.length > 0 ? Math.max(...places) : block.columns - 1;
  const across = { column: block.column + first, columns: last - first + 1 };
  const asks = (what: string) => specials.some((s) => s.toLowerCase() === what);
  if (asks('#this row')) return { ...across, row, rows: 1 };
  const bottom = block.row + block.rows;
  const dataTop = block.row + (header ? 1 : 0);
  const dataBottom = bottom - (totals ? 1 : 0);
  const plain = specials.length === 0 || asks('#data');
  const top = asks('#all') || asks('#headers') ? block.row : plain ? dataTop : dataBottom;
  const end = asks('#all') || asks('#totals') ? bottom : plain ? dataBottom : dataTop;
  return { ...across, row: top, rows: end - top };
}

/** Whether two blocks share a cell. */
export const overlap = (a: Block, b: Block): boolean =>
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
