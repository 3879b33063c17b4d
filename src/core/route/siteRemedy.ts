import type { MeasureName, StageName } from '../survey/table/stageMeasures';

/** What can be done on the spot to gain room, and how much that usually brings. */
export interface SiteRemedy {
  readonly what: string;
  /** The most it usually brings [mm]; common practice, no source. */
  readonly brings: number;
}

// A leaf left open narrows a way by its own 35 to 44 mm; a stop is 12 and a lining or architrave 20 a side.
const LEAF: SiteRemedy = { what: 'take the door leaf off, then the stop and the architrave', brings: 80 };
const HEAD: SiteRemedy = { what: 'take the head stop off', brings: 15 };
// A handrail stands 50 to 75 mm off the wall.
const RAIL: SiteRemedy = { what: 'take the handrail off', brings: 75 };
const WALLS: SiteRemedy = { what: 'take skirting, radiator and any open leaf out of the way', brings: 100 };
const BALUSTRADE: SiteRemedy = { what: 'have the balustrade taken down', brings: 1000 };
const FURNITURE: SiteRemedy = {
  what: 'clear furniture and whatever stands on the floor there',
  brings: 1000,
};
const LAMP: SiteRemedy = { what: 'take a lamp or a beam casing down', brings: 50 };

const STEPS: Readonly<Record<StageName, Partial<Record<MeasureName, SiteRemedy>>>> = {
  door: { width: LEAF, height: HEAD },
  'side door': { width: LEAF, height: HEAD, wall: LEAF, widthOut: WALLS, depth: FURNITURE },
  passage: { width: WALLS, height: LAMP, length: FURNITURE },
  corner: { width: WALLS, widthOut: WALLS, height: LAMP },
  flight: { width: RAIL, height: LAMP, footSpace: FURNITURE, headSpace: FURNITURE },
  'quarter landing': { width: RAIL, widthOut: RAIL, height: LAMP, overRail: BALUSTRADE },
  'half landing': { width: RAIL, depth: WALLS, height: LAMP, overRail: BALUSTRADE },
  winder: { width: RAIL, height: LAMP },
  lift: {},
  room: { length: FURNITURE, width: FURNITURE },
};

/** The plain step that could bring a measure, where there is one. */
export const siteRemedy = (stage: StageName, measure: MeasureName): SiteRemedy | undefined =>
  measure === 'run' ? FURNITURE : STEPS[stage][measure];
