import { seededStream } from '../../src/core/space/seededStream';
import { anyPlace, BoxInAir, searchAir, type AirPlace } from '../support/airSearch';
import { airOf, check, type Cell, type Key, type PassCertificate, type Point } from './check';

/** Searches, each with its stream of chance and with so much padding [mm a side], or a share of what is claimed where that is less. */
const ATTEMPTS = [
  { seed: 1, most: 12 },
  { seed: 2, most: 12 },
  { seed: 3, most: 5 },
] as const;
const SHARE = 0.4;
/** Moves that each search may try. */
const TRIES = 12_000;
/** Places tried for a piece to stand in, and kept. */
const [STANDS, ROOTS] = [6000, 12];
/** So far before the first row the open ground counts, to each side and up [mm]. */
const GROUND = { before: 3200, beside: 2500, above: 2800 } as const;
/** Nothing is carried so high over the highest ceiling, or over what stands under the sky [mm]. */
const SKYWARD = { least: 2600, over: 400 } as const;
/** Rows in which a piece cannot stand wholly are passed at once, up to so many. */
const FAR = 4;
/** The search lets cells be so far apart that meet [mm]; the checker does not. */
const TOLERANCE = 0.3;

/**
 * The certificate with a motion that was found by chance in the air that the checker works out: for a motion that could not
 * be drawn whole. How a motion was found is nothing to the checker, which follows it as any other.
 * @returns undefined where none was found, which proves nothing
 */
export function searchedPass({ notDrawn: _, ...one }: PassCertificate): PassCertificate | undefined {
  for (const { seed, most } of ATTEMPTS) {
    const padding = Math.min(most, SHARE * one.clearance);
    const keys = searchedKeys(one, padding, seed);
    const found: PassCertificate | undefined = keys && { ...one, padding, keys };
    if (found && check(found).faults.length === 0) return found;
  }
  return undefined;
}

/** From one row in which the piece stands wholly to the next, as far as the last. */
function searchedKeys(
  { rows, piece, keys }: PassCertificate,
  padding: number,
  seed: number,
): Key[] | undefined {
  const air = nearBy(airOf(rows));
  const next = seededStream(seed);
  const half = [piece.length, piece.breadth, piece.thickness].map(
    (side) => side / 2 + padding + TOLERANCE,
  ) as unknown as Point;
  const stands = (row: number): AirPlace[] => {
    const own = air.filter((cell) => cell.row === row);
    const box = new BoxInAir(own, half);
    const found: AirPlace[] = [];
    for (let n = 0; own.length > 0 && n < STANDS && found.length < ROOTS; n++) {
      const place = anyPlace(own, next);
      if (box.free(place)) found.push(place);
    }
    return found;
  };
  // What is drawn is gone on from, where it stands with this padding.
  const whole = new BoxInAir(air, half);
  const drawn = keys.filter((key, k) => k === 0 || whole.free(key));
  let path: Key[] = drawn.length === keys.length ? [...keys] : keys.slice(0, 1);
  let row = Math.max(0, path[path.length - 1]?.row ?? 0);
  const end = rows.length - 1;
  while (row < end) {
    const last = path[path.length - 1];
    const starts = [...(last ? [last] : []), ...(path.length <= 1 ? stands(-1) : [])];
    let found: AirPlace[] | undefined;
    let to = row;
    while (!found && to < Math.min(row + FAR, end)) {
      to++;
      const goals = stands(to);
      const cells = air.filter((cell) => cell.row >= row - 1 && cell.row <= to + 1);
      if (goals.length > 0) found = searchAir({ cells, half, starts, goals, next, tries: TRIES });
    }
    if (!found) return undefined;
    const made = found.map(({ at, turn }): Key => ({ at, turn, row: to }));
    const [first, ...further] = made;
    if (!first) return undefined;
    path = path.length <= 1 ? [{ ...first, row: -1 }, ...further] : [...path, ...further];
    row = to;
  }
  return path;
}

/** Open ground and sky as far as a carry may need them: chance should not look beyond. */
function nearBy(air: readonly Cell[]): Cell[] {
  const ceilings = air.flatMap(({ row, planes }) =>
    row < 0 ? [] : planes.filter(([, , c, d]) => c > 0.99 && d < 15_000).map(([, , , d]) => d),
  );
  const top = Math.max(SKYWARD.least, ...ceilings) + SKYWARD.over;
  const { before, beside, above } = GROUND;
  return air.map(({ row, planes }) => ({
    row,
    planes: [
      ...planes,
      [0, 0, 1, row < 0 ? Math.min(top, above) : top],
      ...(row < 0
        ? ([
            [-1, 0, 0, before],
            [0, 1, 0, beside],
            [0, -1, 0, beside],
          ] as const)
        : []),
    ],
  }));
}
