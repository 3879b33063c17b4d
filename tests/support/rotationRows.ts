/** A turn given by any four numbers as a quaternion (w, x, y, z) of whatever length, as the rows of its matrix: textbook. */
export function rotationRows(q: readonly number[]): [number, number, number][] {
  const norm = Math.hypot(...q);
  const [w, x, y, z] = q.map((v) => v / norm) as [number, number, number, number];
  return [
    [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
  ];
}
