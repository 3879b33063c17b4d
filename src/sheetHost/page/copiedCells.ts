import { firstOf } from '../../core/lists/ends';
import { entryAt } from '../../core/lists/entryAt';
import type { Block } from '../address';
import { shownText } from '../excelts/shownText';
import { movedFormula } from '../movedFormula';
import type { WorkbookSession } from './workbookSession';

/** What was copied, as text and as it was entered, and from where. */
export interface Copied {
  /** As the clipboard has it: results as shown, cells parted by tabs. */
  readonly text: string;
  readonly row: number;
  readonly column: number;
  readonly entries: readonly (readonly string[])[];
}

/** Copies what is selected. */
export function copiedCells(session: WorkbookSession): Copied {
  const { area } = session.selected;
  const { host, sheet } = session;
  const rows = host
    .read(sheet, area)
    .map((line, r) =>
      line.map((v, c) =>
        shownText(v, host.format(sheet, area.row + r, area.column + c)).replace(/[\t\r\n]+/g, ' '),
      ),
    );
  const entries = Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (__, c) => session.entry(area.row + r, area.column + c)),
  );
  const text = rows.map((line) => line.join('\t')).join('\n');
  return { text, row: area.row, column: area.column, entries };
}

/**
 * What the clipboard puts into a block: formulas, moved, where it still holds what was copied here; else its text.
 * Undefined where it holds none.
 */
export function pastedCells(text: string, area: Block, copied: Copied | undefined): string[][] | undefined {
  if (copied?.text === text.replace(/\r\n/g, '\n')) return copiedTo(area, copied);
  if (text === '') return undefined;
  return text
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .map((line) => line.split('\t'));
}

/** What was copied as it is in a block: formulas moved, and repeated where the block is a multiple of it. */
function copiedTo(area: Block, { row, column, entries }: Copied): string[][] {
  const [rows, columns] = [entries.length, firstOf(entries).length];
  const fits = area.rows % rows === 0 && area.columns % columns === 0;
  const [down, across] = fits ? [area.rows, area.columns] : [rows, columns];
  return Array.from({ length: down }, (_, r) =>
    Array.from({ length: across }, (__, c) => {
      const entry = entryAt(entryAt(entries, r % rows), c % columns);
      if (!entry.startsWith('=')) return entry;
      return movedFormula(
        entry,
        area.row + r - (row + (r % rows)),
        area.column + c - (column + (c % columns)),
      );
    }),
  );
}
