import { degrees } from '../../core/measures/angle';
import { pitch as pitchOf } from '../../core/stages/flight/pitch';
import { GOING, RISE } from '../arguments';
import { numberFunction } from '../namedArguments';

export const pitch = numberFunction({
  id: 'PITCH',
  group: 'Clearance',
  summary: 'Pitch of a stair',
  arguments: [RISE, GOING],
  result: { meaning: 'angle of the line of nosings to the floor', unit: 'degrees' },
  source: 'Approved Document K, definition of pitch: atan(rise / going)',
  example: {
    arguments: [220, 220],
    result: 45,
    within: 1e-9,
    source: 'Approved Document K, table 1.1: a stair of 220/220 is at 45 degrees',
  },
  compute: ({ rise, going }, working) => degrees(pitchOf(rise, going, working)),
});
