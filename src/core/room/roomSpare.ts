import type { Working } from '../measures/working';
import { playRoom, type PlayRoomInput } from './playRoom';

/** A room, and the table that is to stand in it. */
export interface RoomSpareInput extends PlayRoomInput {
  /** [mm] */
  readonly roomLength: number;
  /** [mm] */
  readonly roomWidth: number;
}

/**
 * What a room has to spare over the room to play, the table the better way round: the smaller of the two directions.
 *
 * @source `playRoom`.
 * @param input lengths [mm]
 * @returns spare [mm], negative when short
 * @example
 * roomSpare({ roomLength: 6000, roomWidth: 4500, playLength: 2540, playWidth: 1270, cue: 1473.2, backswing: 0 }) // 283.6
 */
export function roomSpare(input: RoomSpareInput, working?: Working): number {
  const needed = playRoom(input, working);
  const along = Math.min(input.roomLength - needed.length, input.roomWidth - needed.width);
  const across = Math.min(input.roomLength - needed.width, input.roomWidth - needed.length);
  const spare = Math.max(along, across);
  const source = 'the smaller of the two directions';
  working?.({
    what: 'Spare, table along the room length',
    formula: 'min(room_length - needed length, room_width - needed width)',
    value: along,
    unit: 'mm',
    source,
  });
  working?.({
    what: 'Spare, table across it',
    formula: 'min(room_length - needed width, room_width - needed length)',
    value: across,
    unit: 'mm',
    source,
  });
  working?.({
    what: 'Spare',
    formula: 'the better way round',
    value: spare,
    unit: 'mm',
    source: 'the greater of the two',
  });
  return spare;
}
