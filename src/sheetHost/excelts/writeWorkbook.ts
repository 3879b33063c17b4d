import { Workbook, type Cell, type Worksheet } from '@cj-tech-master/excelts';
import { cellAddress, readAddress, type Block } from '../address';
import { storedFormula } from '../formulaText';
import type {
  CellStyle,
  ConditionStyle,
  PrintSetUp,
  SheetDescription,
  WorkbookWriter,
  WriterTable,
  WriterValue,
} from '../workbookWriter';

/**
 * The bytes of the .xlsx that a writer describes. Formulas have no results yet.
 * Throws a RangeError for a description that makes no workbook: that is a mistake of ours, not of a user.
 */
export async function writeWorkbook(description: WorkbookWriter): Promise<Uint8Array> {
  const workbook = new Workbook();
  // Otherwise every run would differ by the time of day.
  workbook.created = workbook.modified = new Date(Date.UTC(2026, 0, 1));
  for (const { description: sheet } of description.sheets)
    writeSheet(workbook.addWorksheet(sheet.name), sheet);
  for (const { name, refersTo } of description.names) workbook.definedNames.add(refersTo, name);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/**
 * Writes what a sheet holds and how it looks into a sheet of the engine's.
 */
export function writeSheet(sheet: Worksheet, description: SheetDescription): void {
  for (const { range, style } of description.formats) {
    eachCell(range, (address) => applyStyle(sheet.getCell(address), style));
  }
  for (const table of description.tables) writeTable(sheet, table);
  for (const { address, value, spills, style } of description.cells) {
    writeCell(sheet.getCell(address), value, spills);
    if (style) applyStyle(sheet.getCell(address), style);
  }
  for (const range of description.merges) sheet.mergeCells(range);
  for (const { range, words, others } of description.lists) {
    sheet.dataValidations.add(range, {
      type: 'list',
      allowBlank: true,
      showErrorMessage: others === 'refused',
      formulae: ['from' in words ? words.from : wordList(words)],
    });
  }
  description.conditions.forEach(({ range, formula, style }, i) => {
    sheet.addConditionalFormatting({
      ref: range,
      rules: [
        {
          type: 'expression',
          priority: i + 1,
          formulae: [storedFormula(formula)],
          style: conditionStyle(style),
        },
      ],
    });
  });
  description.widths.forEach((width, i) => (sheet.getColumn(i + 1).width = width));
  if (description.freeze) {
    const { rows, columns } = description.freeze;
    sheet.views = [{ state: 'frozen', xSplit: columns, ySplit: rows }];
  }
  if (description.print) setUpPrint(sheet, description.print);
}

/** Left undefined the library names a theme of its own; its types do not know that null names none. */
const NO_THEME = null as unknown as string;

/** The numbers that the file format gives to sizes of paper. */
const PAPERS = { A3: 8, A4: 9 } as const;

function setUpPrint(sheet: Worksheet, { area, repeat, across, paper = 'A4' }: PrintSetUp): void {
  Object.assign(sheet.pageSetup, {
    paperSize: PAPERS[paper],
    orientation: across,
    fitToPage: true,
    fitToWidth: 1,
    // 0: as many pages down as it takes.
    fitToHeight: 0,
    printArea: area,
    margins: { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 },
    ...(repeat ? { printTitlesRow: `${repeat.from}:${repeat.to}` } : {}),
  });
  sheet.headerFooter.oddFooter = '&L&A&RPage &P of &N';
}

function wordList(words: readonly string[]): string {
  const text = words.join(',');
  // The host keeps at most 255 characters in a list, and a comma would part a word.
  if (text.length > 255 || words.some((word) => word.includes(','))) {
    throw new RangeError(`a list of words for a drop-down is too long or has a comma: ${text}`);
  }
  return `"${text.replace(/"/g, '""')}"`;
}

function writeCell(cell: Cell, value: WriterValue, spills: boolean, table?: string): void {
  if (value === null || typeof value !== 'object' || value instanceof Date) {
    cell.value = value;
    return;
  }
  const formula = storedFormula(value.formula, table);
  cell.value = spills
    ? { formula, shareType: 'array', ref: cell.address, isDynamicArray: true }
    : { formula };
}

function writeTable(sheet: Worksheet, table: WriterTable): void {
  const at = readAddress(table.at);
  if (!at || table.rows.length === 0) throw new RangeError(`table ${table.name} has no place or no row`);
  sheet.addTable({
    name: table.name,
    ref: table.at,
    headerRow: true,
    // No style of the host's: cells have our own. Without a theme the library would name one.
    style: { theme: NO_THEME, showRowStripes: false },
    columns: table.columns.map(({ name, formula }) => ({
      name,
      filterButton: true,
      ...(formula === undefined ? {} : { calculatedColumnFormula: storedFormula(formula, table.name) }),
    })),
    // Cells are written below one by one, so that a formula keeps its table.
    rows: table.rows.map(() => table.columns.map(() => null)),
  });
  table.columns.forEach((column, c) => {
    if (column.width !== undefined) sheet.getColumn(at.column + c + 1).width = column.width;
    table.rows.forEach((row, r) => {
      const cell = sheet.getCell(cellAddress(at.row + 1 + r, at.column + c));
      const given = row[c];
      const value = given ?? (column.formula === undefined ? null : { formula: column.formula });
      writeCell(cell, value, false, table.name);
      if (column.format !== undefined) cell.numFmt = column.format;
    });
  });
}

function eachCell(range: string, visit: (address: string) => void): void {
  const block: Block | undefined = readAddress(range);
  if (!block) throw new RangeError(`${range} is no range`);
  for (let r = 0; r < block.rows; r++) {
    for (let c = 0; c < block.columns; c++) visit(cellAddress(block.row + r, block.column + c));
  }
}

const argb = (color: string) => ({ argb: `FF${color.toUpperCase()}` });

function fontOf({ bold, italic, underline, size, color }: CellStyle) {
  return {
    ...(bold === undefined ? {} : { bold }),
    ...(italic === undefined ? {} : { italic }),
    ...(underline === undefined ? {} : { underline }),
    ...(size === undefined ? {} : { size }),
    ...(color === undefined ? {} : { color: argb(color) }),
  };
}

function applyStyle(cell: Cell, style: CellStyle): void {
  if (style.format !== undefined) cell.numFmt = style.format;
  const font = fontOf(style);
  if (Object.keys(font).length > 0) cell.font = { name: 'Calibri', size: 11, ...cell.font, ...font };
  if (style.fill !== undefined) cell.fill = { type: 'pattern', pattern: 'solid', fgColor: argb(style.fill) };
  if (style.align !== undefined || style.wrap !== undefined) {
    cell.alignment = {
      ...cell.alignment,
      ...(style.align === undefined ? {} : { horizontal: style.align }),
      ...(style.wrap === undefined ? {} : { wrapText: style.wrap, vertical: 'top' }),
    };
  }
}

function conditionStyle(style: ConditionStyle) {
  const font = fontOf(style);
  return {
    ...(Object.keys(font).length > 0 ? { font } : {}),
    // The pattern has to be named: without it the colour is written but not shown.
    ...(style.fill === undefined
      ? {}
      : { fill: { type: 'pattern' as const, pattern: 'solid' as const, bgColor: argb(style.fill) } }),
  };
}
