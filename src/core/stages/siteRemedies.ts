/** What can be done on the spot to gain room, and how much that usually brings. */
export interface SiteRemedy {
  readonly what: string;
  /** The most it usually brings [mm]; common practice, no source. */
  readonly brings: number;
}

// A leaf left open narrows a way by its own 35 to 44 mm; a stop is 12 and a lining or architrave 20 a side.
export const LEAF: SiteRemedy = {
  what: 'take the door leaf off, then the stop and the architrave',
  brings: 80,
};
export const HEAD: SiteRemedy = { what: 'take the head stop off', brings: 15 };
// A handrail stands 50 to 75 mm off the wall.
export const RAIL: SiteRemedy = { what: 'take the handrail off', brings: 75 };
export const WALLS: SiteRemedy = {
  what: 'take skirting, radiator and any open leaf out of the way',
  brings: 100,
};
export const BALUSTRADE: SiteRemedy = { what: 'have the balustrade taken down', brings: 1000 };
export const FURNITURE: SiteRemedy = {
  what: 'clear furniture and whatever stands on the floor there',
  brings: 1000,
};
export const LAMP: SiteRemedy = { what: 'take a lamp or a beam casing down', brings: 50 };
