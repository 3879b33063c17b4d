import { movesInCell, type AttitudeCell, type PlacedCell, type Point } from './check';

/** Above so many cells a certificate would be longer than anyone reads. */
const MOST_CELLS = 60_000;

/**
 * Cuts the attitudes of a box into cells, until in each `shut` says that the box is too large.
 * @param half half the sides of the box [mm]
 * @param shut whether it stands nowhere in the cell when all that holds it gives way by the cell's bound
 * @returns undefined where an attitude is found in which it stands, or the cells are too many
 */
export function shutCells(
  half: Point,
  shut: (cell: AttitudeCell) => boolean,
  most = MOST_CELLS,
): AttitudeCell[] | undefined {
  const made: AttitudeCell[] = [];
  const waiting: [number, number, number, number, number, number][] = [[0, 0, 0, 1, 1, 1]];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const cell = bounded(next, half);
    if (shut(cell)) {
      made.push(cell);
      continue;
    }
    if (made.length + waiting.length > most || !shut([cell[0], cell[1], cell[2], 0, 0, 0, 0]))
      return undefined;
    const widest = next.indexOf(Math.max(next[3], next[4], next[5]), 3);
    for (const side of [-1, 1]) {
      const halved: typeof next = [...next];
      halved[widest]! /= 2;
      halved[widest - 3]! += side * halved[widest]!;
      waiting.push(halved);
    }
  }
  return made;
}

/** With the bound that it needs, in whole thousandths above it [mm]. */
function bounded(
  sides: readonly [number, number, number, number, number, number],
  half: Point,
): AttitudeCell {
  const needed = movesInCell([...sides, 0], half);
  return [...sides, Math.ceil(needed * 1000 + 1) / 1000];
}

/**
 * Cuts the attitudes of a box, and the line that its middle may be on, into cells, as `shutCells` does.
 * @param along length of the line [mm]
 * @param shut whether it stands nowhere in the cell when all that holds it gives way by the cell's bound
 */
export function placedCells(
  half: Point,
  along: number,
  shut: (cell: PlacedCell) => boolean,
  most = MOST_CELLS,
): PlacedCell[] | undefined {
  const made: PlacedCell[] = [];
  const waiting: number[][] = [[0, 0, 0, 0.5, 1, 1, 1, 0.5]];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [x, y, z, place, dx, dy, dz, dPlace] = next as unknown as PlacedCell;
    const needed = movesInCell([x, y, z, dx, dy, dz, 0], half);
    if (shut([x, y, z, place, dx, dy, dz, dPlace, Math.ceil(needed * 1000 + 1) / 1000])) {
      made.push([x, y, z, place, dx, dy, dz, dPlace, Math.ceil(needed * 1000 + 1) / 1000]);
      continue;
    }
    if (made.length + waiting.length > most || !shut([x, y, z, place, 0, 0, 0, 0, 0])) return undefined;
    // What moves it most is halved.
    const sides = [dx, dy, dz];
    const widest = needed < along * dPlace ? 7 : 4 + sides.indexOf(Math.max(...sides));
    for (const side of [-1, 1]) {
      const halved = [...next];
      halved[widest]! /= 2;
      halved[widest - 4]! += side * halved[widest]!;
      waiting.push(halved);
    }
  }
  return made;
}
