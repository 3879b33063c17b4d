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
  /** The words where they name the stair, by what it is called: `the flight`, `the ramp`. */
  readonly onStair?: (stair: string) => string;
  /** The words name this end of the stair: of its faces only what is there is meant. */
  readonly atEnd?: 'foot' | 'head';
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
export function closestHeld(held: string, at: Closest): Closest {
  const { onStair } = at;
  return {
    ...at,
    words: `${held}, ${at.words}`,
    ...(onStair ? { onStair: (stair: string) => `${held}, ${onStair(stair)}` } : {}),
  };
}

/**
 * Where a motion has least room on a flight, in words that name it: what is solved as a flight may be a ramp.
 * @param at the faces, and whether the words give a figure; its words are not read
 */
export const closestOnStair = (words: (stair: string) => string, at: Closest): Closest => ({
  ...at,
  words: words('the flight'),
  onStair: words,
});

/**
 * The same told of what it really is.
 * @param stair `the ramp`
 */
export const toldOfStair = (at: Closest, stair: string): Closest =>
  at.onStair ? { ...at, words: at.onStair(stair) } : at;

/** Where nothing is close. */
export const NOWHERE_CLOSEST: Closest = closestAt('');
