import { movesInCell, type AttitudeCell, type Point } from './check';

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
