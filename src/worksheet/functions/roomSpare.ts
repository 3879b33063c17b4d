import { CAUTIONS } from '../../core/measures/cautions';
import { roomSpare as compute } from '../../core/room/roomSpare';
import { ROOM } from '../../core/stages/room/roomKind';
import { opening } from '../arguments';
import { numberFunction } from '../namedArguments';
import { PLAY_ARGUMENTS } from '../roomArguments';

export const roomSpare = numberFunction({
  id: 'ROOMSPARE',
  group: 'Room',
  summary: 'What a room has to spare over the room to play, the table the better way round',
  arguments: [
    opening('room_length', 'clear length of the room', ROOM.needs.length.usual),
    opening('room_width', 'clear width of the room', ROOM.needs.length.usual),
    ...PLAY_ARGUMENTS,
  ],
  result: { meaning: 'the smaller spare; negative when short', unit: 'mm' },
  source: 'room less PLAYROOM in both directions, the better of the two ways round',
  caution: CAUTIONS.room,
  example: {
    arguments: ['17 ft', '20 ft', '100 in', '50 in', '58 in'],
    result: 24 * 25.4,
    within: 1e-9,
    source: '20 x 17 ft less 216 x 166 in (common practice, no source): 24 and 38 in',
  },
  compute: ({ roomLength, roomWidth, playLength, playWidth, cue, backswing }, working) =>
    compute({ roomLength, roomWidth, playLength, playWidth, cue, backswing }, working),
});
