/** Rows and columns of a range. */
export interface Shape {
  readonly rows: number;
  readonly columns: number;
}

/**
 * The shape in which ranges go together: each is that shape, or a single row, a single column or a single
 * cell that is repeated across it. Undefined when they do not go together.
 */
export function commonShape(shapes: readonly Shape[]): Shape | undefined {
  let rows = 1;
  let columns = 1;
  for (const shape of shapes) {
    if (shape.rows !== 1) {
      if (rows !== 1 && rows !== shape.rows) return undefined;
      rows = shape.rows;
    }
    if (shape.columns !== 1) {
      if (columns !== 1 && columns !== shape.columns) return undefined;
      columns = shape.columns;
    }
  }
  return { rows, columns };
}
