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
    const { nx, ny, offset, turn, order, count } = this;
    order.length = 0;
    for (let i = 0; i < count; i++) {
      let j = order.length;
      while (j > 0 && turn[order[j - 1]!]! > turn[i]!) {
        order[j] = order[j - 1]!;
        j--;
      }
      order[j] = i;
    }
    // Of two that point the same way the tighter one stays.
    const kept: number[] = [];
    for (const i of order) {
      const last = kept.length > 0 ? kept[kept.length - 1]! : -1;
      if (last >= 0 && turn[i]! - turn[last]! < 1e-12) {
        if (offset[i]! < offset[last]!) kept[kept.length - 1] = i;
      } else kept.push(i);
    }
    // So do one just above minus half a turn and one just below half a turn.
    const [lowest, highest] = [kept[0], kept[kept.length - 1]];
    if (
      lowest !== undefined &&
      highest !== undefined &&
      turn[highest]! - turn[lowest]! > 2 * Math.PI - 1e-12
    ) {
      if (offset[highest]! < offset[lowest]!) kept.shift();
      else kept.pop();
    }
    const line: number[] = [];
    const px: number[] = [];
    const py: number[] = [];
    let head = 0;
    const outside = (i: number, x: number, y: number): boolean =>
      nx[i]! * x + ny[i]! * y >= offset[i]! - 1e-12 * Math.abs(offset[i]!);
    const meet = (i: number, j: number): boolean => {
      const det = nx[i]! * ny[j]! - ny[i]! * nx[j]!;
      if (Math.abs(det) < 1e-14) return false;
      px.push((offset[i]! * ny[j]! - ny[i]! * offset[j]!) / det);
      py.push((nx[i]! * offset[j]! - offset[i]! * nx[j]!) / det);
      return true;
    };
    for (const i of kept) {
      while (line.length - head >= 2 && outside(i, px[px.length - 1]!, py[py.length - 1]!)) {
        line.pop();
        px.pop();
        py.pop();
      }
      while (line.length - head >= 2 && outside(i, px[head]!, py[head]!)) head++;
      if (line.length - head >= 1 && !meet(line[line.length - 1]!, i)) return undefined;
      line.push(i);
    }
    while (line.length - head >= 3 && outside(line[head]!, px[px.length - 1]!, py[py.length - 1]!)) {
      line.pop();
      px.pop();
      py.pop();
    }
    while (line.length - head >= 3 && outside(line[line.length - 1]!, px[head]!, py[head]!)) head++;
    if (line.length - head < 3) return undefined;
    if (!meet(line[line.length - 1]!, line[head]!)) return undefined;
    return chains(px, py, head);
  }
}

/** Splits corners (counter-clockwise, from `head` on) at the leftmost and rightmost into two chains. */
function chains(px: number[], py: number[], head: number): ConvexShape | undefined {
  const n = px.length - head;
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
