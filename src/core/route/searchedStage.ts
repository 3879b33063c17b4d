import { halfLandingStage } from '../stages/landing/halfLanding';
import type { SearchedStage } from '../stages/landing/searchedStage';
import { quarterLandingStage } from '../stages/landing/quarterLanding';
import { winderStage } from '../stages/winder/winder';
import type { StageMeasures, StageName } from '../survey/table/stageMeasures';

/**
 * A stage whose motions are searched in space: landings and winders; undefined for the others, which are
 * solved. The measures that the stage needs must be there; the caller sees to that.
 */
export function searchedStage(stage: StageName, m: StageMeasures): SearchedStage | undefined {
  const ceiling = m.ceiling === undefined ? {} : { landingCeiling: m.ceiling };
  switch (stage) {
    case 'quarter landing':
      return quarterLandingStage({
        widthIn: m.width!,
        widthOut: m.widthOut!,
        headroom: m.height!,
        rise: m.rise!,
        going: m.going!,
        overRail: m.overRail ?? 0,
        ...ceiling,
      });
    case 'half landing':
      return halfLandingStage({
        flightWidth: m.width!,
        well: m.well!,
        landingDepth: m.depth!,
        headroom: m.height!,
        rise: m.rise!,
        going: m.going!,
        overRail: m.overRail ?? 0,
        ...ceiling,
      });
    case 'winder':
      return winderStage({
        width: m.width!,
        headroom: m.height!,
        turn: m.turn!,
        rise: m.rise!,
        going: m.going!,
      });
    default:
      return undefined;
  }
}
