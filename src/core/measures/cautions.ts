/**
 * The cautions, by topic: the same words in every result, help text and pane. Each defers to somebody who can
 * see the piece, the people and the building; a number from here is never permission.
 */
export const CAUTIONS = {
  /** With any result on what people lift or carry on the level. */
  lifting:
    'Guidance for a level floor and good posture, not a safe limit. A competent person assesses the handling ' +
    'first; local rules come before this.',
  /** With any result on carrying on a flight or a landing. */
  stairs:
    'No guidance covers a slate carried on stairs by hand. Plan a mechanical aid and a written assessment by a ' +
    'competent person; nobody stands below a slate that can slip.',
  /** With any result on floors, joists, treads and flights. */
  floors:
    'Floors and stairs can fail under a slate. Local code decides the loads, and a licensed structural engineer ' +
    'whether this floor or stair takes them.',
  /** With any result on whether a piece gets through. */
  route:
    '"Goes" is about space alone: people, floors and stairs need their own checks. A measured route is no ' +
    'promise; where it is tight, try a template or a frame first.',
  /** With any words that are meant for a customer. */
  customer:
    'This is about space alone, by the measures we were given, and no promise. Before a delivery a competent person ' +
    'assesses the carrying, and whether floors and stairs bear it.',
  /** With any result on the room the table stands in. */
  room: 'Space alone: radiators, doors, sloping ceilings and the floor under the table need their own checks.',
} as const;

/** What a caution is about. */
export type CautionTopic = keyof typeof CAUTIONS;
