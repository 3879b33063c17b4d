import type { PieceSize } from '../measures/piece';
import { measureAt, spatialMeasures, type StageName } from '../stages/kinds';
import type { MeasureName } from '../stages/measures';
import type { PlacedMeasures } from '../stages/solvers';
import type { TapeEffect } from '../stages/stageKind';

/** Which way every measure errs: against the piece, not at all, or for it. */
export type TapeCase = 'worst' | 'measured' | 'best';

/** Whether a larger figure of this measure can only help a piece at this stage, only hinder it, or either. */
export function effectOfMeasure(stage: StageName, measure: MeasureName): 'helps' | 'hinders' | 'either' {
  switch (measureAt(stage, measure)?.tape) {
    case 'more helps':
      return 'helps';
    case 'more hinders':
    case 'more hinders, 0 is none':
      return 'hinders';
    default:
      return 'either';
  }
}

type Taped = { -readonly [Name in keyof PlacedMeasures]: PlacedMeasures[Name] };
type Sets = [Taped, ...Taped[]];

/**
 * The measures of a stage with the tape against the piece, or for it. A measure that can err either way doubles
 * the sets, of which the least clearance counts (best case: the greatest). A total run of stairs is taped once,
 * so there the tape is divided by the risers where their number is given. A space cannot be less than nothing.
 * @param tape how far off a measure may be [mm]
 */
export function tapedMeasures(
  stage: StageName,
  measures: PlacedMeasures,
  tape: number,
  tapeCase: TapeCase,
): Sets {
  if (tapeCase === 'measured' || tape === 0) return [measures];
  const { risers = 0 } = measures;
  const sets: Sets = [{ ...measures }];
  for (const name of spatialMeasures(stage)) {
    const value = measures[name];
    const effect = measureAt(stage, name)?.tape;
    if (value === undefined || effect === undefined) continue;
    const [end, other] = endsOfTape(value, effect, tape, tapeCase, risers);
    for (const set of sets) set[name] = end;
    if (other !== undefined) sets.push(...sets.map((set) => ({ ...set, [name]: other })));
  }
  return sets;
}

/** What a measure can be with the tape against the piece, or for it. */
function endsOfTape(
  value: number,
  effect: TapeEffect,
  tape: number,
  tapeCase: 'worst' | 'best',
  risers: number,
): readonly [end: number, other?: number] {
  const shift = tapeCase === 'worst' ? -tape : tape;
  switch (effect) {
    case 'more helps':
      return [Math.max(0, value + shift)];
    case 'more hinders, 0 is none':
      return [value === 0 ? 0 : Math.max(0, value - shift)];
    case 'more hinders':
      return [Math.max(0, value - shift)];
    case 'either way':
      return eitherWay(value, tape);
    case 'shared by the risers':
      return eitherWay(value, risers > 0 ? tape / risers : tape);
    case 'not taped':
    case 'no space':
      return [value];
  }
}

/** Of what is taped either way, something is left at the least [mm]. */
const eitherWay = (value: number, tape: number): readonly [number, number] => [
  Math.max(1, value - tape),
  Math.max(1, value + tape),
];

/** The piece as large, or as small, as the tape [mm] allows. */
export function tapedPiece(piece: PieceSize, tape: number, tapeCase: TapeCase): PieceSize {
  if (tapeCase === 'measured' || tape === 0) return piece;
  const shift = tapeCase === 'worst' ? tape : -tape;
  return {
    length: Math.max(0, piece.length + shift),
    breadth: Math.max(0, piece.breadth + shift),
    thickness: Math.max(0, piece.thickness + shift),
  };
}
