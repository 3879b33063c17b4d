/** What can be done on the spot to gain room, and how much that usually brings. */
export interface SiteRemedy {
  readonly what: string;
  /** The most it usually brings [mm]; common practice, no source. */
  readonly brings: number;
}

/** A door's leaf and lining: left open, the leaf takes 35 to 44 mm of the way, a stop 12, a lining or architrave 20 a side. */
export const LEAF: SiteRemedy = {
  what: 'take the door leaf off, then the stop and the architrave',
  brings: 80,
};
/** The stop at the head of a door. */
export const HEAD: SiteRemedy = { what: 'take the head stop off', brings: 15 };
/** A handrail, which stands 50 to 75 mm off the wall. */
export const RAIL: SiteRemedy = { what: 'take the handrail off', brings: 75 };
/** What stands off a wall. */
export const WALLS: SiteRemedy = {
  what: 'take skirting, radiator and any open leaf out of the way',
  brings: 100,
};
/** The balustrade at the open side of a stair. */
export const BALUSTRADE: SiteRemedy = { what: 'have the balustrade taken down', brings: 1000 };
/** What stands on the floor. */
export const FURNITURE: SiteRemedy = {
  what: 'clear furniture and whatever stands on the floor there',
  brings: 1000,
};
/** What hangs from the ceiling. */
export const LAMP: SiteRemedy = { what: 'take a lamp or a beam casing down', brings: 50 };
