import { boxInBoxAtMost } from '../geometry/proofs/boxInBoxAtMost';
import { yawCutAtMost } from '../geometry/proofs/yawCutAtMost';
import type { PieceSize } from '../measures/piece';
import type { StageMeasures, StageName } from '../survey/stageMeasures';

/**
 * The proofs that take longer than a passage is worth, for a piece that is not shown to pass and that the quick
 * bounds do not refuse. The measures are those of the best case.
 * @returns the condition that fails, in words; undefined where nothing is proved
 */
export function deepProof(stage: StageName, m: StageMeasures, piece: PieceSize): string | undefined {
  if (stage === 'corner' && piece.length > m.height!) {
    return yawCutAtMost(m.width!, m.widthOut!, m.height!, m.turn ?? 90, piece) < 0
      ? 'under this ceiling it cannot stand up, and at one angle on either way round it stands nowhere'
      : undefined;
  }
  if (stage === 'room') {
    return boxInBoxAtMost([m.length!, m.width!, m.height!], piece) < 0
      ? 'it fits in the room in no attitude'
      : undefined;
  }
  return undefined;
}
