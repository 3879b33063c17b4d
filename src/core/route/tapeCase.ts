import type { PieceSize } from '../measures/piece';
import type { MeasureName } from '../survey/table/stageMeasures';
import type { PlacedMeasures } from './placedMeasures';

/** Which way every measure errs: against the piece, not at all, or for it. */
export type TapeCase = 'worst' | 'measured' | 'best';

/** What a larger figure does to a piece's chances; measures not named here are not taped. */
const LARGER_HELPS: readonly MeasureName[] = [
  'width',
  'widthOut',
  'height',
  'ceiling',
  'depth',
  'length',
  'well',
  'footCeiling',
  'footSpace',
  'headCeiling',
  'headSpace',
  'run',
];

const LARGER_HINDERS: readonly MeasureName[] = ['wall', 'overRail'];

/** Whether a larger figure of this measure can only help a piece, only hinder it, or either. */
export function effectOfMeasure(measure: MeasureName): 'helps' | 'hinders' | 'either' {
  if (LARGER_HELPS.includes(measure)) return 'helps';
  return LARGER_HINDERS.includes(measure) ? 'hinders' : 'either';
}

/**
 * The measures of a stage with the tape against the piece, or for it. Rise and going can err either way, so
 * a stage that has them gives four sets, of which the least clearance counts (best case: the greatest). A
 * total run of stairs is taped once, so the tape is divided by the risers where their number is given.
 *
 * An over rail of 0 means walls and stays so; a well cannot be less than nothing. Turn is not taped.
 * @param tape how far off a measure may be [mm]
 */
export function tapedMeasures(measures: PlacedMeasures, tape: number, tapeCase: TapeCase): PlacedMeasures[] {
  if (tapeCase === 'measured' || tape === 0) return [measures];
  const shift = tapeCase === 'worst' ? -tape : tape;
  const taped: { -readonly [K in keyof PlacedMeasures]: PlacedMeasures[K] } = { ...measures };
  for (const name of LARGER_HELPS) {
    const value = measures[name];
    if (value !== undefined) taped[name] = Math.max(0, value + shift);
  }
  for (const name of LARGER_HINDERS) {
    const value = measures[name];
    if (value !== undefined && !(name === 'overRail' && value === 0))
      taped[name] = Math.max(0, value - shift);
  }
  const { rise, going, risers } = measures;
  if (rise === undefined || going === undefined) return [taped];
  const each = tape / (risers !== undefined && risers > 0 ? risers : 1);
  const sets: PlacedMeasures[] = [];
  for (const riseShift of [-each, each]) {
    for (const goingShift of [-each, each]) {
      sets.push({ ...taped, rise: Math.max(1, rise + riseShift), going: Math.max(1, going + goingShift) });
    }
  }
  return sets;
}

/** The piece as large, or as small, as the tape allows. */
export function tapedPiece(piece: PieceSize, tape: number, tapeCase: TapeCase): PieceSize {
  if (tapeCase === 'measured' || tape === 0) return piece;
  const shift = tapeCase === 'worst' ? tape : -tape;
  return {
    length: Math.max(0, piece.length + shift),
    breadth: Math.max(0, piece.breadth + shift),
    thickness: Math.max(0, piece.thickness + shift),
  };
}
