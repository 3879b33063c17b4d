/**
 * A corner solved by brute force, with nothing of the core's formulas: a rectangle is put at a grid of places
 * and angles in the two arms, its padding there measured from its corners to the outer walls and from its body
 * to the solid inner corner, the best place at each angle refined, and the angles joined by a flood.
 */
interface Box {
  readonly p: number;
  readonly q: number;
}

/** Largest padding of the rectangle centred at (x, y) with its long side at `angle` to the first arm. */
function paddingAt(box: Box, b1: number, b2: number, turn: number, x: number, y: number, angle: number) {
  // The first arm runs along +x, the inner side is +y (a turn to the left). The inner corner is the origin.
  // The first arm lies at y <= 0, down to the outer wall y = -b1; the second at the other side of its inner wall.
  const n2 = [Math.sin(turn), -Math.cos(turn)] as const; // out of the second inner wall
  const ux = Math.cos(angle);
  const uy = Math.sin(angle);
  const reach = (nx: number, ny: number, c: number) =>
    (Math.abs(nx * ux + ny * uy) * Math.max(0, box.p + 2 * c)) / 2 +
    (Math.abs(-nx * uy + ny * ux) * Math.max(0, box.q + 2 * c)) / 2;
  const fits = (c: number): boolean => {
    if (-y + reach(0, -1, c) > b1) return false;
    if (n2[0] * x + n2[1] * y + reach(n2[0], n2[1], c) > b2) return false;
    // The solid inner corner is the wedge y >= 0 and n2.(x,y) <= 0. The rectangle misses it when some edge line
    // of either separates them: the wedge's two walls, or the rectangle's four sides with the apex outside and
    // both wedge directions pointing away.
    const gap = 1e-9;
    if (y + reach(0, 1, c) <= gap) return true;
    if (n2[0] * x + n2[1] * y - reach(n2[0], n2[1], c) >= -gap) return true;
    const rays = [
      [-1, 0],
      [Math.cos(turn), Math.sin(turn)],
    ] as const;
    for (const [nx, ny] of [
      [ux, uy],
      [-ux, -uy],
      [-uy, ux],
      [uy, -ux],
    ] as const) {
      const apexBeyond = -(nx * x + ny * y) - reach(nx, ny, c) >= -gap;
      if (apexBeyond && rays.every(([rx, ry]) => nx * rx + ny * ry >= -1e-12)) return true;
    }
    return false;
  };
  let low = -box.p / 2;
  let high = Math.min(b1, b2) / 2;
  if (!fits(low)) return low - 1;
  for (let i = 0; i < 34; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Best padding at one angle: over the corner, or far down either arm. */
function bestAt(box: Box, b1: number, b2: number, turn: number, angle: number) {
  const at = (x: number, y: number) => paddingAt(box, b1, b2, turn, x, y, angle);
  const far = 4 * (box.p + box.q + b1 + b2);
  const arm1 = at(-far, -b1 / 2);
  const arm2 = at(
    Math.cos(turn) * far + (Math.sin(turn) * b2) / 2,
    Math.sin(turn) * far - (Math.cos(turn) * b2) / 2,
  );
  // Over the corner: coordinates s (distance from the first inner wall) and t (from the second).
  let best = -Infinity;
  let bs = 0;
  let bt = 0;
  const place = (s: number, t: number): number => {
    // y = -s, and n2.(x, y) = t
    const y = -s;
    const x = (t + Math.cos(turn) * y) / Math.sin(turn);
    return at(x, y);
  };
  const N = 10;
  for (let i = 0; i <= N; i++) {
    for (let j = 0; j <= N; j++) {
      const value = place((b1 * i) / N, (b2 * j) / N);
      if (value > best) [best, bs, bt] = [value, (b1 * i) / N, (b2 * j) / N];
    }
  }
  for (let step = Math.max(b1, b2) / N; step > 0.02; step *= 0.6) {
    let moved = true;
    while (moved) {
      moved = false;
      for (let k = 0; k < 8; k++) {
        const s = bs + step * Math.cos((k * Math.PI) / 4);
        const t = bt + step * Math.sin((k * Math.PI) / 4);
        const value = place(s, t);
        if (value > best + 1e-9) {
          [best, bs, bt] = [value, s, t];
          moved = true;
        }
      }
    }
  }
  return { arm1, arm2, corner: Math.max(best, arm1, arm2) };
}

/** Clearance by brute force over `angles` angles of half a turn. */
export function cornerByBruteForce(box: Box, b1: number, b2: number, turn: number, angles: number): number {
  const step = Math.PI / angles;
  const at = Array.from({ length: angles }, (_, i) => bestAt(box, b1, b2, turn, i * step));
  // Flood from the angles good for arm 1 at falling levels until one good for arm 2 is reached.
  const levels = at.flatMap((a) => [a.arm1, a.arm2, a.corner]).sort((a, b) => b - a);
  let low = 0;
  let high = levels.length - 1;
  const passes = (level: number): boolean => {
    const seen = new Array<boolean>(angles).fill(false);
    const stack = at.flatMap((a, i) => (a.arm1 >= level ? [i] : []));
    for (const i of stack) seen[i] = true;
    while (stack.length > 0) {
      const i = stack.pop()!;
      if (at[i]!.arm2 >= level) return true;
      for (const j of [(i + 1) % angles, (i + angles - 1) % angles]) {
        if (!seen[j] && at[j]!.corner >= level) {
          seen[j] = true;
          stack.push(j);
        }
      }
    }
    return false;
  };
  while (low < high) {
    const middle = (low + high) >> 1;
    if (passes(levels[middle]!)) high = middle;
    else low = middle + 1;
  }
  return levels[low]!;
}
