import type { Working } from '../measures/working';

/** A playing area, the cue, and how far it is drawn back. */
export interface PlayRoomInput {
  /** Playing area [mm]. */
  readonly playLength: number;
  /** [mm] */
  readonly playWidth: number;
  /** [mm] */
  readonly cue: number;
  /** Room behind the cue for the stroke [mm]. */
  readonly backswing: number;
}

/** Sizes of a room [mm]. */
export interface RoomSize {
  readonly length: number;
  readonly width: number;
}

const SOURCE = 'common practice, no source: a cue square to every cushion';

/**
 * The clear room in which every shot can be played with a cue of that length.
 *
 * @source playing area + 2 (cue + backswing) each way, common practice, no source.
 * @param input lengths [mm]
 * @returns room [mm]
 * @example playRoom({ playLength: 2540, playWidth: 1270, cue: 1473.2, backswing: 0 }).length // 5486.4 mm
 */
export function playRoom(input: PlayRoomInput, working?: Working): RoomSize {
  const round = 2 * (input.cue + input.backswing);
  const room = { length: input.playLength + round, width: input.playWidth + round };
  working?.({ what: 'Both sides', formula: '2 (cue + backswing)', value: round, unit: 'mm', source: SOURCE });
  working?.({
    what: 'Room length',
    formula: 'play_length + both sides',
    value: room.length,
    unit: 'mm',
    source: SOURCE,
  });
  working?.({
    what: 'Room width',
    formula: 'play_width + both sides',
    value: room.width,
    unit: 'mm',
    source: SOURCE,
  });
  return room;
}
