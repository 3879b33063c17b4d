/** A convex polygon as two chains over x, ready for a sweep; NaN-free; `empty` when nothing is left of it. */
export interface ConvexShape {
  readonly lowX: number[];
  readonly lowY: number[];
  readonly upX: number[];
  readonly upY: number[];
}

/** Half-planes nx x + ny y <= offset, kept in three arrays and used again, so that slices cost no garbage. */
export class HalfPlanes {
  count = 0;
  readonly nx: number[] = [];
  readonly ny: number[] = [];
  readonly offset: number[] = [];
  private readonly turn: number[] = [];
  private readonly order: number[] = [];
  private readonly kept: number[] = [];
  /** Lines of the polygon found so far, and the corners in which each meets the next. */
  private readonly line: number[] = [];
  private readonly px: number[] = [];
  private readonly py: number[] = [];
  private corners = 0;

  clear(): void {
    this.count = 0;
  }

  add(nx: number, ny: number, offset: number): void {
    const i = this.count++;
    this.nx[i] = nx;
    this.ny[i] = ny;
    this.offset[i] = offset;
    this.turn[i] = Math.atan2(ny, nx);
  }

  /**
   * The polygon that the half-planes leave; undefined when it is empty or thinner than 1e-9 mm. They have to
   * bound it on all sides.
   */
  intersection(): ConvexShape | undefined {
    const { offset, turn, order, kept, line, px, py, count } = this;
    for (let i = 0; i < count; i++) {
      let j = i;
      while (j > 0 && turn[order[j - 1]!]! > turn[i]!) {
        order[j] = order[j - 1]!;
        j--;
      }
      order[j] = i;
    }
    // Of two that point the same way the tighter one stays.
    let first = 0;
    let end = 0;
    for (let k = 0; k < count; k++) {
      const i = order[k]!;
      const last = end > 0 ? kept[end - 1]! : -1;
      if (last >= 0 && turn[i]! - turn[last]! < 1e-12) {
        if (offset[i]! < offset[last]!) kept[end - 1] = i;
      } else kept[end++] = i;
    }
    // So do one just above minus half a turn and one just below half a turn.
    if (end > 0 && turn[kept[end - 1]!]! - turn[kept[0]!]! > 2 * Math.PI - 1e-12) {
      if (offset[kept[end - 1]!]! < offset[kept[0]!]!) first++;
      else end--;
    }
    let head = 0;
    let lines = 0;
    this.corners = 0;
    for (let k = first; k < end; k++) {
      const i = kept[k]!;
      while (lines - head >= 2 && this.outside(i, px[this.corners - 1]!, py[this.corners - 1]!)) {
        lines--;
        this.corners--;
      }
      while (lines - head >= 2 && this.outside(i, px[head]!, py[head]!)) head++;
      if (lines - head >= 1 && !this.meet(line[lines - 1]!, i)) return undefined;
      line[lines++] = i;
    }
    while (lines - head >= 3 && this.outside(line[head]!, px[this.corners - 1]!, py[this.corners - 1]!)) {
      lines--;
      this.corners--;
    }
    while (lines - head >= 3 && this.outside(line[lines - 1]!, px[head]!, py[head]!)) head++;
    if (lines - head < 3) return undefined;
    if (!this.meet(line[lines - 1]!, line[head]!)) return undefined;
    return chains(px, py, head, this.corners);
  }

  private outside(i: number, x: number, y: number): boolean {
    const { nx, ny, offset } = this;
    return nx[i]! * x + ny[i]! * y >= offset[i]! - 1e-12 * Math.abs(offset[i]!);
  }

  /** Adds the corner in which two of the lines meet; false where they are parallel. */
  private meet(i: number, j: number): boolean {
    const { nx, ny, offset } = this;
    const det = nx[i]! * ny[j]! - ny[i]! * nx[j]!;
    if (Math.abs(det) < 1e-14) return false;
    this.px[this.corners] = (offset[i]! * ny[j]! - ny[i]! * offset[j]!) / det;
    this.py[this.corners++] = (nx[i]! * offset[j]! - offset[i]! * nx[j]!) / det;
    return true;
  }
}

/** Splits corners (counter-clockwise, from `head` to before `end`) at the leftmost and rightmost into two chains. */
function chains(
  px: readonly number[],
  py: readonly number[],
  head: number,
  end: number,
): ConvexShape | undefined {
  const n = end - head;
  let left = 0;
  let right = 0;
  for (let k = 1; k < n; k++) {
    if (px[head + k]! < px[head + left]!) left = k;
    if (px[head + k]! > px[head + right]!) right = k;
  }
  if (!(px[head + right]! - px[head + left]! > 1e-9)) return undefined;
  const lowX: number[] = [];
  const lowY: number[] = [];
  const upX: number[] = [];
  const upY: number[] = [];
  for (let k = left; ; k = (k + 1) % n) {
    push(lowX, lowY, px[head + k]!, py[head + k]!, false);
    if (k === right) break;
  }
  for (let k = left; ; k = (k + n - 1) % n) {
    push(upX, upY, px[head + k]!, py[head + k]!, true);
    if (k === right) break;
  }
  return { lowX, lowY, upX, upY };
}

// Upright sides join two corners of one x: of these the outer one stays.
function push(xs: number[], ys: number[], x: number, y: number, upper: boolean): void {
  const last = xs.length - 1;
  if (last >= 0 && x - xs[last]! < 1e-9) {
    if (last === 0) {
      ys[0] = upper ? Math.max(ys[0]!, y) : Math.min(ys[0]!, y);
      return;
    }
    ys[last] = upper ? Math.max(ys[last]!, y) : Math.min(ys[last]!, y);
    return;
  }
  xs.push(x);
  ys.push(y);
}
