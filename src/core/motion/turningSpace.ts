/** Free space in which a piece can be turned over [mm], as seen along the way. */
export interface TurningSpace {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  /** The way may run along either side: a room's door can be in any wall. */
  readonly eitherWay?: boolean;
}

/** The space a stage has for changing the pose, before the piece goes on through it and after. */
export interface TurningSpaces {
  readonly before: TurningSpace;
  readonly after: TurningSpace;
}

/** One space, before and after. */
export const oneSpace = (space: TurningSpace): TurningSpaces => ({ before: space, after: space });
