import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { playRoom as compute } from '../../core/room/playRoom';
import { tableFunction } from '../namedArguments';
import { PLAY_ARGUMENTS } from '../roomArguments';

export const playRoom = tableFunction({
  id: 'PLAYROOM',
  group: 'Room',
  summary: 'Clear room, length and width, in which every shot can be played',
  arguments: PLAY_ARGUMENTS,
  result: { meaning: 'room length and room width, side by side', unit: 'mm' },
  source: 'play + 2 (cue + backswing) each way: common practice, no source',
  caution: CAUTIONS.room,
  example: {
    arguments: ['100 in', '50 in', '58 in'],
    result: [[216 * 25.4, 166 * 25.4]],
    within: 1e-9,
    source: 'common practice, no source: 216 x 166 in; playing area of 9 ft: WPA table specification',
  },
  compute: ({ playLength, playWidth, cue, backswing }) => {
    const room = compute({ playLength, playWidth, cue, backswing });
    return found([[room.length, room.width]]);
  },
});
