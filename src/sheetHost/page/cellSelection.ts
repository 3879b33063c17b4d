import { SHEET_COLUMNS, SHEET_ROWS, type Block } from '../address';
import type { WorkbookSession } from './workbookSession';

interface Place {
  readonly row: number;
  readonly column: number;
}

/** The cells that are selected: they are moved, or made larger from where the selection began. */
export class CellSelection {
  private anchor: Place = { row: 0, column: 0 };

  constructor(private readonly session: WorkbookSession) {}

  /** What is selected now began at this cell; the first where none is named. */
  beginAt({ row, column }: Place = { row: 0, column: 0 }): void {
    this.anchor = { row, column };
  }

  /** Selects a block from its first cell. */
  take(block: Block): void {
    this.beginAt(block);
    this.session.select(block);
  }

  /** Selects one cell, the nearest there is. */
  goTo(row: number, column: number): void {
    this.take({
      row: Math.min(Math.max(row, 0), SHEET_ROWS - 1),
      column: Math.min(Math.max(column, 0), SHEET_COLUMNS - 1),
      rows: 1,
      columns: 1,
    });
  }

  /** Selects all from where the selection began to a cell. */
  extendTo({ row, column }: Place): void {
    const { anchor } = this;
    const [top, left] = [
      Math.max(0, Math.min(row, anchor.row)),
      Math.max(0, Math.min(column, anchor.column)),
    ];
    this.session.select(
      {
        row: top,
        column: left,
        rows: Math.max(row, anchor.row) - top + 1,
        columns: Math.max(column, anchor.column) - left + 1,
      },
      anchor,
    );
  }

  /** Goes on from the cell that is selected, or moves the far corner of what is. */
  move(rows: number, columns: number, how: 'move' | 'extend' = 'move'): void {
    const from = how === 'extend' ? this.farCorner() : this.session.selected.cell;
    const to = { row: from.row + rows, column: from.column + columns };
    if (how === 'extend') this.extendTo(to);
    else this.goTo(to.row, to.column);
  }

  /** The corner of the selection that shift and the arrows move. */
  private farCorner(): Place {
    const { area } = this.session.selected;
    const far = (start: number, count: number, anchor: number) =>
      start < anchor ? start : start + count - 1;
    return {
      row: far(area.row, area.rows, this.anchor.row),
      column: far(area.column, area.columns, this.anchor.column),
    };
  }
}
