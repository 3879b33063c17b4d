import type { PieceSize } from '../measures/piece';
import { cornerPassages } from '../stages/corner/cornerPassages';
import { flightPassages } from '../stages/flight/flightPassages';
import { routePassages, SEARCH_WORK, searchedPassages } from '../stages/landing/searchedStage';
import { liftCarPassages } from '../stages/lift/liftCar';
import { openingPassages } from '../stages/opening/opening';
import { roomPassages } from '../stages/room/roomPassages';
import { sideDoorPassages } from '../stages/sideDoor/sideDoor';
import type { StagePassage } from '../motion/stagePassage';
import type { PlacedMeasures } from './placedMeasures';
import { searchedStage } from './searchedStage';
import type { StageName } from '../survey/table/stageMeasures';

/**
 * Every way through a stage that can be shown for a piece, by how it is held before and after. The measures
 * that the stage needs must be there; the caller sees to that.
 *
 * @param search landings and winders: `full`, or as coarsely as within a route, no further than is enough there
 * @param roomToLean false: ways that need room to lean beside the stage may be left out; the others are the same
 */
export function stagePassages(
  stage: StageName,
  measures: PlacedMeasures,
  piece: PieceSize,
  search: 'full' | 'as in a route' = 'full',
  roomToLean = true,
): StagePassage[] {
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
        roomToLean,
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
    case 'half landing':
    case 'winder':
      return search === 'full'
        ? searchedPassages(searchedStage(stage, m)!, piece, SEARCH_WORK)
        : routePassages(searchedStage(stage, m)!, piece, SEARCH_WORK).map(({ passage }) => passage);
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
