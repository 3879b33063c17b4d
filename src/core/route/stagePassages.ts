import type { PieceSize } from '../measures/piece';
import { cornerPassages } from '../stages/cornerPassages';
import { flightPassages } from '../stages/flightPassages';
import { halfLandingPassages } from '../stages/halfLanding';
import { liftCarPassages } from '../stages/liftCar';
import { openingPassages } from '../stages/opening';
import { quarterLandingPassages } from '../stages/quarterLanding';
import { roomPassages } from '../stages/roomPassages';
import { sideDoorPassages } from '../stages/sideDoor';
import { winderPassages } from '../stages/winder';
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
    case 'quarter landing':
      return quarterLandingPassages(
        {
          widthIn: m.width!,
          widthOut: m.widthOut!,
          headroom: m.height!,
          rise: m.rise!,
          going: m.going!,
          overRail: m.overRail ?? 0,
          ...(m.ceiling === undefined ? {} : { landingCeiling: m.ceiling }),
        },
        piece,
      );
    case 'half landing':
      return halfLandingPassages(
        {
          flightWidth: m.width!,
          well: m.well!,
          landingDepth: m.depth!,
          headroom: m.height!,
          rise: m.rise!,
          going: m.going!,
          overRail: m.overRail ?? 0,
          ...(m.ceiling === undefined ? {} : { landingCeiling: m.ceiling }),
        },
        piece,
      );
    case 'winder':
      return winderPassages(
        { width: m.width!, headroom: m.height!, turn: m.turn!, rise: m.rise!, going: m.going! },
        piece,
      );
    case 'lift':
      return liftCarPassages(
        {
          doorWidth: m.width!,
          doorHeight: m.height!,
          carWidth: m.widthOut!,
          carDepth: m.depth!,
          carHeight: m.ceiling!,
        },
        piece,
      );
  }
}
