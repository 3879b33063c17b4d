import { sortedPiece, type PieceSize } from '../../measures/piece';
import { readLength } from '../../measures/readLength';
import { readMass } from '../../measures/readMass';
import { readQuantity, type Cell, type ReadNumber } from '../../measures/readQuantity';
import { cellText, isBlankCell, isErrorCell, saysNothing } from './cells';
import { findColumns } from './findColumns';
import { refusalWords } from '../words/problemWords';
import { HEADER_ROW, type HeaderProblem, type PieceMeasure, type SizeName } from '../checks/surveyProblem';
import { unitsMeant } from '../checks/unitsMeant';

/** One row of the pieces, read: what is not given or cannot be taken is absent. */
export interface PieceRow {
  readonly build: string;
  readonly piece: string;
  /** Sorted; undefined unless all three sizes can be taken. */
  readonly size: PieceSize | undefined;
  /** The sizes as given [mm]. */
  readonly sizes: Readonly<Partial<Record<SizeName, number>>>;
  /** [kg] of one piece. */
  readonly mass: number | undefined;
  /** How many are alike; 1 when the cell is empty, which can arrive as 0. */
  readonly count: number | undefined;
  readonly countGiven: boolean;
  readonly refused: readonly RefusedPieceMeasure[];
  /** Zero-based place in the table, header not counted. */
  readonly rowIndex: number;
}

/** A cell of a piece that could not be taken. */
export interface RefusedPieceMeasure {
  readonly measure: PieceMeasure;
  readonly got: unknown;
  /** A clause that continues "… cannot be taken:". */
  readonly why: string;
}

/** One way to supply a table: all pieces with the same Build. */
export interface Build {
  /** As first written. */
  readonly name: string;
  readonly pieces: readonly [PieceRow, ...PieceRow[]];
}

/** A table of pieces as it was read. */
export interface PiecesRead {
  /** In the order of the table; empty rows left out. */
  readonly pieces: readonly PieceRow[];
  /** In the order in which they first appear, which is the firm's order of preference. */
  readonly builds: readonly Build[];
  /** What is wrong with the header row; for the rows see `checkPieces`. */
  readonly problems: readonly HeaderProblem[];
}

/** The sizes of a piece. */
export const SIZES: readonly SizeName[] = ['length', 'breadth', 'thickness'];
/** The columns of a table of pieces, in their order. */
export const PIECE_HEADINGS = ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'] as const;

/** A piece's longest size [mm], as for every function of this add-in: inches typed bare fall outside. */
export const LONGEST = { least: 300, most: 6000 } as const;
/** Any size of a piece [mm]. Ours: no piece is thinner, and what a formula leaves of nothing falls outside. */
const LEAST_SIZE = 1;
/** Mass of one piece [kg]. Ours: no piece of a table is heavier, and grams typed for kg fall outside. */
const MASS = { least: 0.01, most: 2000 } as const;
/** Ours: no table has more pieces that are alike. */
const COUNT = { least: 1, most: 100 } as const;

/**
 * Reads the pieces of all builds from a table: columns by name, in any order and case. Builds that differ only in
 * case are one build.
 * @param table rows of cells, the header row first
 * @returns the pieces with sizes [mm] and mass [kg]; a build is only as well known as its least known piece, so a
 * piece whose `size` is undefined leaves its build not measured
 */
export function readPieces(table: readonly (readonly Cell[])[]): PiecesRead {
  const found = findColumns(table[0] ?? [], PIECE_HEADINGS);
  const problems: HeaderProblem[] = [...found.doubled];
  for (const heading of PIECE_HEADINGS) {
    // Without a count every row is one piece; each row says so.
    if (heading !== 'Count' && found.at(heading).length === 0) problems.push(found.missing(heading));
  }
  const pieces: PieceRow[] = [];
  for (let i = 1; i < table.length; i++) {
    const cells = table[i] ?? [];
    const cell = (heading: (typeof PIECE_HEADINGS)[number]): Cell => {
      const at = found.at(heading);
      return cells[at.find((column) => !saysNothing(cells[column])) ?? at[0] ?? -1];
    };
    if (PIECE_HEADINGS.every((heading) => saysNothing(cell(heading)))) continue;
    pieces.push(readPiece(cell, i - 1));
  }
  if (pieces.length === 0) problems.push({ kind: 'no rows', severity: 'error', rowIndex: HEADER_ROW });
  return { pieces, builds: buildsOf(pieces), problems };
}

function readPiece(cell: (heading: (typeof PIECE_HEADINGS)[number]) => Cell, rowIndex: number): PieceRow {
  const refused: RefusedPieceMeasure[] = [];
  const take = (
    measure: PieceMeasure,
    from: Cell,
    read: (c: Cell) => ReadNumber,
    range: { readonly least: number; readonly most: number },
  ): number | undefined => {
    const value = takeNumber(measure, from, read, range);
    if (typeof value !== 'object') return value;
    refused.push(value);
    return undefined;
  };
  const sizes: Partial<Record<SizeName, number>> = {};
  for (const [measure, heading] of [
    ['length', 'Length'],
    ['breadth', 'Breadth'],
    ['thickness', 'Thickness'],
  ] as const) {
    const value = take(measure, cell(heading), readLength, { least: LEAST_SIZE, most: LONGEST.most });
    if (value !== undefined) sizes[measure] = value;
  }
  const short = tooShort(sizes, cell('Length'));
  if (short) {
    refused.push(short);
    delete sizes.length;
  }
  const countGiven = !saysNothing(cell('Count'));
  const { length, breadth, thickness } = sizes;
  const known = length !== undefined && breadth !== undefined && thickness !== undefined;
  return {
    build: cellText(cell('Build')),
    piece: cellText(cell('Piece')),
    size: known ? sortedPiece(length, breadth, thickness) : undefined,
    sizes,
    mass: take('mass', cell('Mass'), readMass, MASS),
    count: countGiven ? take('count', cell('Count'), (c) => readQuantity(c, []), COUNT) : 1,
    countGiven,
    refused,
    rowIndex,
  };
}

/** A piece whose longest size is too short to be one: inches or metres typed bare. */
function tooShort(
  sizes: Readonly<Partial<Record<SizeName, number>>>,
  got: Cell,
): RefusedPieceMeasure | undefined {
  const known = SIZES.flatMap((name) => sizes[name] ?? []);
  if (known.length < SIZES.length || Math.max(...known) >= LONGEST.least) return undefined;
  const why = refusalWords({
    kind: 'out of range',
    measure: 'length',
    got,
    ...LONGEST,
    whole: false,
    meant: unitsMeant(got, LONGEST),
    longest: true,
  });
  return { measure: 'length', got, why };
}

function takeNumber(
  measure: PieceMeasure,
  cell: Cell,
  read: (c: Cell) => ReadNumber,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined | RefusedPieceMeasure {
  if (isBlankCell(cell)) return undefined;
  const refuse = (why: string): RefusedPieceMeasure => ({
    measure,
    got: isErrorCell(cell) ? cell.code : cell,
    why,
  });
  if (isErrorCell(cell)) return refuse(refusalWords({ kind: 'error cell', code: cell.code }));
  const number = read(cell);
  if (!number.ok) return refuse(refusalWords({ kind: 'unreadable', measure, got: cell, why: number.why }));
  const { value } = number;
  if (value === 0 && number.bare) return refuse(refusalWords({ kind: 'zero', canBeNothing: false }));
  const whole = measure === 'count';
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return value;
  return refuse(refusalWords({ kind: 'out of range', measure, got: cell, least, most, whole, meant: [] }));
}

function buildsOf(pieces: readonly PieceRow[]): Build[] {
  const builds = new Map<string, { name: string; pieces: [PieceRow, ...PieceRow[]] }>();
  for (const piece of pieces) {
    const key = piece.build.toLowerCase();
    const build = builds.get(key);
    if (build) build.pieces.push(piece);
    else builds.set(key, { name: piece.build, pieces: [piece] });
  }
  return [...builds.values()];
}
