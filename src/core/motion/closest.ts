/**
 * What of a stage a piece all but touches where it has least room, in the stage's own terms. An edge is met from several
 * sides at once: the piece turns about it.
 */
export type DecidingFace =
  | 'sides'
  | 'jambs'
  | 'head'
  | 'ceiling'
  | 'far wall'
  | 'inner corner'
  /** A flight's own ceiling along the pitch. */
  | 'slope'
  | 'nosings'
  | 'top nosing'
  /** Where a flight's own ceiling ends over its foot. */
  | 'stairwell edge'
  | 'foot ceiling'
  | 'head ceiling'
  | 'foot wall'
  | 'head wall'
  | 'riser'
  | 'rail'
  /** Whatever stands there that the piece does not stand on. */
  | 'anything';

/** Where a motion has least room: the one source of what is said, ringed and printed of it. */
export interface Closest {
  /** In words that can be read to a customer. */
  readonly words: string;
  /** Any of these; none where it is a length or a part of the way that no picture shows. */
  readonly faces: readonly DecidingFace[];
  /** The words give the figure of the measure that decides. */
  readonly figured: boolean;
}

/**
 * Where a motion has least room.
 * @example closestAt('under the head of the door', 'head').words // 'under the head of the door'
 */
export const closestAt = (words: string, ...faces: DecidingFace[]): Closest => ({
  words,
  faces,
  figured: false,
});

/** The same in words that give the figure of the deciding measure. */
export const closestAtFigure = (words: string, ...faces: DecidingFace[]): Closest => ({
  words,
  faces,
  figured: true,
});

/** The same, with what is said before it of how the piece is held. */
export const closestHeld = (held: string, at: Closest): Closest => ({
  ...at,
  words: `${held}, ${at.words}`,
});

/** Where nothing is close. */
export const NOWHERE_CLOSEST: Closest = closestAt('');
