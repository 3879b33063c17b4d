import type { ArgumentDescription, FunctionDescription } from '../../src/worksheet/description';
import { QUANTITIES } from '../../src/worksheet/quantities';
import { STAGE_NAMES } from '../../src/core/stages/kinds';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { ODD_VALUES, pick, type Chance } from './oddValues';

/** What is handed over for one argument: a range, a lone value, or a list of ranges for a repeating argument. */
export type Handed = unknown;

/** One call of a function, and how it was made. */
export interface FuzzCall {
  readonly handed: readonly Handed[];
  /** Places of the scalar arguments that got an odd value; the others got one that is allowed. */
  readonly odd: readonly number[];
  /** The rows asked for: more than one where an argument came as a column. */
  readonly rows: number;
}

const PIECE_HEADINGS = ['Build', 'Piece', 'Count', 'Length', 'Breadth', 'Thickness', 'Mass', 'Material'];
const DEFAULTS: Readonly<Record<string, readonly [number, number]>> = {
  length: [10, 3000],
  mass: [5, 400],
  angle: [0, 90],
  count: [1, 10],
  ratio: [0, 1],
  percent: [0, 100],
  density: [300, 3000],
  'area load': [0.5, 5],
  force: [0.5, 10],
  speed: [1, 6],
  power: [10, 500],
  minutes: [1, 240],
  hours: [0.1, 8],
  rate: [0.2, 12],
};

/** A call of a function by chance: allowed values, values at and beyond the bounds, and odd ones. */
export function fuzzCall(f: FunctionDescription, chance: Chance, error: (code: string) => unknown): FuzzCall {
  const oddShare = pick(chance, [0, 0, 0.1, 0.3, 1]);
  const rows = f.kind === 'number' && chance() < 0.05 ? 1 + Math.floor(chance() * 4) : 1;
  const odd: number[] = [];
  const handed = f.arguments.map((a, i): Handed => {
    if (a.repeating)
      return Array.from({ length: Math.floor(chance() * 4) }, () => [[anyCell(chance, error)]]);
    if (a.quantity === 'range') return table(a, chance, error);
    const isOdd = chance() < oddShare;
    if (isOdd) odd.push(i);
    const cell = (): unknown => (isOdd ? oddFor(a, chance, error) : allowedFor(a, chance));
    // A host hands over a lone cell for a scalar argument of a function that does not lift.
    if (rows === 1 && chance() < 0.2) return cell();
    const long = rows > 1 && chance() < 0.5 ? rows : 1;
    return Array.from({ length: long }, () => [cell()]);
  });
  // Arguments at the end are left out, as a formula does.
  const optional = f.arguments.length - f.arguments.filter((a) => a.optional).length;
  const given =
    chance() < 0.3 ? optional + Math.floor(chance() * (handed.length - optional + 1)) : handed.length;
  return { handed: handed.slice(0, given), odd: odd.filter((i) => i < given), rows };
}

const anyCell = (chance: Chance, error: (code: string) => unknown): unknown =>
  chance() < 0.1
    ? error(pick(chance, ['#N/A', '#REF!', '#DIV/0!']))
    : chance() < 0.5
      ? pick(chance, ODD_VALUES)
      : Math.round(chance() * 3000);

function oddFor(a: ArgumentDescription, chance: Chance, error: (code: string) => unknown): unknown {
  if (chance() < 0.15) return error(pick(chance, ['#N/A', '#REF!', '#DIV/0!', '#VALUE!']));
  const [low, high] = bounds(a);
  if (chance() < 0.3)
    return pick(chance, [low - 1, high + 1, low - 1e-6, high * (1 + 1e-12), high * 10, -high]);
  return pick(chance, ODD_VALUES);
}

function bounds(a: ArgumentDescription): readonly [number, number] {
  const [low, high] = DEFAULTS[a.quantity] ?? [0, 1];
  return [a.least ?? a.above ?? low, a.most ?? a.below ?? Math.max(high, a.least ?? 0)];
}

/** A value that the description allows, as a number or as it is written. */
function allowedFor(a: ArgumentDescription, chance: Chance): unknown {
  if (a.optional && chance() < 0.2) return null;
  if (a.quantity === 'choice') return pick(chance, a.choices ?? ['']);
  if (a.quantity === 'text') return pick(chance, ['DOOR', 'CARRY.OPENING', 'CORNER', 'nothing', 'slate']);
  const [least, most] = bounds(a);
  const [usualLow, usualHigh] = DEFAULTS[a.quantity] ?? [least, most];
  const low = Math.max(least, usualLow);
  const high = Math.max(low, Math.min(most, usualHigh));
  let value = chance() < 0.1 ? pick(chance, [least, most]) : low + (high - low) * chance();
  if (a.whole) value = Math.round(value);
  else if (chance() < 0.6) value = Math.round(value * 10) / 10;
  if (a.quantity === 'length' && chance() < 0.2) {
    return pick(chance, [`${value} mm`, `${value / 10} cm`, `${value / 1000} m`, `${value / 25.4} in`]);
  }
  if (a.quantity === 'mass' && chance() < 0.2) return `${value} ${QUANTITIES.mass.unit}`;
  return value;
}

/** A table as people and hosts hand it over: mostly a route or pieces, some ragged, empty or of anything. */
function table(a: ArgumentDescription, chance: Chance, error: (code: string) => unknown): unknown {
  const kind = chance();
  if (kind < 0.03) return null;
  if (kind < 0.06) return [];
  if (kind < 0.08) return [[]];
  if (kind < 0.12) return anyCell(chance, error);
  if (kind < 0.2) {
    return Array.from({ length: 1 + Math.floor(chance() * 3) }, () =>
      Array.from({ length: 1 + Math.floor(chance() * 3) }, () => anyCell(chance, error)),
    );
  }
  const width = (given: readonly string[]): string[] => given.filter(() => chance() < 0.9);
  const pieces = /piece|build|rates|orders/.test(a.name);
  const headings = width(pieces ? PIECE_HEADINGS : ROUTE_HEADINGS);
  if (chance() < 0.05) headings.push(pick(chance, headings));
  const cell = (heading: string): unknown => {
    if (chance() < 0.04) return anyCell(chance, error);
    if (heading === 'Stage') return pick(chance, STAGE_NAMES);
    if (heading === 'Survey') return pick(chance, ['A', 'A', 'B', '']);
    if (heading === 'Build') return pick(chance, ['7 ft', '8 ft']);
    if (heading === 'Piece') return pick(chance, ['slate', 'leg', 'frame']);
    if (heading === 'Count' || heading === 'Step' || heading === 'Risers')
      return 1 + Math.floor(chance() * 14);
    if (heading === 'Note') return 'clear';
    if (heading === 'Hand') return pick(chance, ['left', 'right', '']);
    if (heading === 'Way') return pick(chance, ['up', 'down', '']);
    if (heading === 'Rise') return Math.round(170 + 50 * chance());
    if (heading === 'Going') return Math.round(210 + 60 * chance());
    if (chance() < 0.4) return pick(chance, ['', null, 0]);
    return Math.round(50 + 2400 * chance());
  };
  const rows = [headings as unknown[]];
  const count = Math.floor(chance() * 5);
  for (let r = 0; r < count; r++) rows.push(headings.map(cell));
  if (chance() < 0.05) rows.push(headings.slice(1).map(cell));
  // A function of one row takes its headings and its cells apart.
  if (a.name === 'headers') return [headings];
  if (a.name === 'row') return [ROUTE_HEADINGS.map(cell)];
  return rows;
}
