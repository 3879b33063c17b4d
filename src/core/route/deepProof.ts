import type { PieceSize } from '../measures/piece';
import type { StageName } from '../stages/kinds';
import { solverOf, type PlacedMeasures } from '../stages/solvers';
import { tapedMeasures } from './tapeCase';

/**
 * The proofs that take longer than a passage is worth, for a piece that is not shown to pass and that the quick
 * bounds do not refuse.
 * @param measures as taped; how they can err for the piece is seen to here
 * @param tape how far off a measure may be [mm]
 * @param piece as small as the tape allows
 * @param shown greatest clearance [mm a side] of a motion as measured; what is nearly shown to pass is not tried
 * @returns the condition that fails, in words; undefined where nothing is proved
 */
export function deepProof(
  stage: StageName,
  measures: PlacedMeasures,
  tape: number,
  piece: PieceSize,
  shown = -Infinity,
): string | undefined {
  const proof = solverOf(stage).deepProof;
  if (!proof || shown > proof.upTo) return undefined;
  const best = tapedMeasures(stage, measures, tape, 'best');
  const worst = tapedMeasures(stage, measures, tape, 'worst');
  return proof.proves({ best, worst }, piece);
}
