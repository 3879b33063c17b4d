import type { ArgumentDescription } from './description';

/** Playing area, cue and stroke; inches typed bare fall outside. */
export const PLAY_ARGUMENTS = [
  { name: 'play_length', help: 'length of the playing area', quantity: 'length', least: 300, most: 6000 },
  { name: 'play_width', help: 'width of the playing area', quantity: 'length', least: 300, most: 6000 },
  { name: 'cue', help: 'length of the cue', quantity: 'length', least: 300, most: 2500 },
  {
    name: 'backswing',
    help: 'room behind the cue for the stroke',
    quantity: 'length',
    least: 0,
    most: 1000,
    optional: { default: 0 },
  },
] as const satisfies readonly ArgumentDescription[];
