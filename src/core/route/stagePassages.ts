import type { PieceSize } from '../measures/piece';
import { cornerPassages } from '../stages/cornerPassages';
import { flightPassages } from '../stages/flightPassages';
import { openingPassages } from '../stages/opening';
import { roomPassages } from '../stages/roomPassages';
import { sideDoorPassages } from '../stages/sideDoor';
import type { StagePassage } from '../stages/stagePassage';
import type { StageMeasures, StageName } from '../survey/stageMeasures';

/**
 * Every way through a stage that can be shown for a piece, by how it is held before and after. The measures
 * that the stage needs must be there; the caller sees to that.
 */
export function stagePassages(stage: StageName, measures: StageMeasures, piece: PieceSize): StagePassage[] {
  const m = measures;
  switch (stage) {
    case 'door':
      return openingPassages({ width: m.width!, height: m.height! }, piece);
    case 'passage':
      return openingPassages({ width: m.width!, height: m.height! }, piece);
    case 'corner':
      return cornerPassages(
        { widthIn: m.width!, widthOut: m.widthOut!, ceiling: m.height!, turn: m.turn ?? 90 },
        piece,
      );
    case 'flight':
      return flightPassages(
        { width: m.width!, headroom: m.height!, rise: m.rise!, going: m.going! },
        piece,
        m,
      );
    case 'side door':
      return sideDoorPassages(
        {
          doorWidth: m.width!,
          doorHeight: m.height!,
          wallThickness: m.wall!,
          passageWidth: m.widthOut!,
          ceiling: m.ceiling!,
          deadEnd: m.depth,
        },
        piece,
      );
    case 'room':
      return roomPassages({ length: m.length!, width: m.width!, height: m.height! }, piece);
    default:
      return [];
  }
}
