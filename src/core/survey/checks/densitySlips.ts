import { sortedPiece, type PieceSize } from '../../measures/piece';
import { MM_PER_INCH } from '../../measures/readLength';
import { KG_PER_POUND } from '../../measures/readMass';
import { MM3_PER_M3 } from '../../measures/slabMass';
import { LONGEST, SIZES, type PieceRow } from '../table/readPieces';
import { partOf } from './slateWords';
import type { DensityMeant, PieceProblem } from './surveyProblem';

/** Density of slate [kg/m3]: Cardarelli, Materials Handbook. */
const SLATE_DENSITIES = { least: 2700, most: 2950 } as const;

/**
 * Pockets, holes and rounded corners take up to a tenth off a slate's box, and a backing board or a heavier table's
 * tape adds little. Common practice, no source.
 */
const CUT_AWAY = 0.1;
/** Share by which a density may come out too high from sizes and a mass that were rounded. */
const ROUNDING = 0.03;

/** Anything else of a table fills its box with wood, steel and air [kg/m3]: common practice, no source. */
const OTHER_DENSITIES = { least: 10, most: 2000 } as const;

/** Slate beds are 19 to 50 mm thick: common practice, no source; the WPA asks for 1 in at least. */
const SLATE_THICKNESS = { least: 18, most: 60 } as const;

const UNITS = [
  { unit: 'cm', factor: 10 },
  { unit: 'in', factor: MM_PER_INCH },
] as const;

/** Mass against sizes: what the piece would have to weigh a cubic metre, and the slip that would explain it. */
export function densitySlips(row: PieceRow): PieceProblem[] {
  const { size, mass, rowIndex } = row;
  const slate = partOf(row.piece) === 'slate';
  const problems: PieceProblem[] = [];
  if (size && mass !== undefined) {
    const density = (mass * MM3_PER_M3) / (size.length * size.breadth * size.thickness);
    const usual = slate ? SLATE_DENSITIES : OTHER_DENSITIES;
    if (!agrees(density, slate)) {
      const meant = meanings(row, mass, density, slate);
      problems.push({ kind: 'density', severity: 'warning', rowIndex, density, slate, ...usual, meant });
    }
  }
  if (slate && size && problems.length === 0) {
    const { least, most } = SLATE_THICKNESS;
    const value = size.thickness;
    if (value < least || value > most) {
      problems.push({ kind: 'slate thickness', severity: 'warning', rowIndex, value, least, most });
    }
  }
  return problems;
}

function agrees(density: number, slate: boolean): boolean {
  if (!slate) return density >= OTHER_DENSITIES.least && density <= OTHER_DENSITIES.most;
  const { least, most } = SLATE_DENSITIES;
  return density >= least * (1 - CUT_AWAY) && density <= most * (1 + ROUNDING);
}

/** Single slips under which mass and sizes agree: one size in cm or in, the mass in lb, or of all pieces. */
function meanings(
  { sizes: { length, breadth, thickness }, count }: PieceRow,
  mass: number,
  density: number,
  slate: boolean,
): DensityMeant[] {
  // What other pieces weigh varies too much for a slip to be told from a light piece.
  if (!slate || length === undefined || breadth === undefined || thickness === undefined) return [];
  const sizes = { length, breadth, thickness };
  const likely: DensityMeant[] = [];
  for (const measure of SIZES) {
    for (const { unit, factor } of UNITS) {
      const value = sizes[measure] * factor;
      if (isSlab({ ...sizes, [measure]: value }) && agrees(density / factor, slate)) {
        likely.push({ measure, unit, value });
      }
    }
  }
  if (agrees(density * KG_PER_POUND, slate)) {
    likely.push({ measure: 'mass', unit: 'lb', value: mass * KG_PER_POUND });
  }
  if (count !== undefined && count > 1 && agrees(density / count, slate)) {
    likely.push({ measure: 'mass', unit: 'all together', count, value: mass / count });
  }
  return likely;
}

/** Whether three sizes can be those of a slate: thin, and as broad as a section at least. */
function isSlab(sizes: PieceSize): boolean {
  const { length, breadth, thickness } = sortedPiece(sizes.length, sizes.breadth, sizes.thickness);
  const { least, most } = SLATE_THICKNESS;
  return length <= LONGEST.most && breadth >= LONGEST.least && thickness >= least && thickness <= most;
}
