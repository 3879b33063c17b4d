import { GRIPS } from '../core/carrying/couplingMultiplier';
import { LONGEST_HOURS } from '../core/carrying/frequencyMultiplier';
import { GUIDELINE_EACH } from '../core/carrying/teamLimit';
import type { ArgumentDescription } from './description';

/** A mass that is lifted or carried, or that stands on a floor [kg]; a tonne times five is no table. */
export const massOf = (help: string) =>
  ({ name: 'mass', help, quantity: 'mass', above: 0, most: 5000 }) as const satisfies ArgumentDescription;

/** Body masses of grown people [kg], with what they wear. */
const BODY_RANGE = { least: 30, most: 250 } as const;

export const BODY_MASS = {
  name: 'body_mass',
  help: 'mass of the person, with clothes and tools',
  quantity: 'mass',
  ...BODY_RANGE,
} as const satisfies ArgumentDescription;

/** What each of a crew weighs when nobody was weighed: a big man in boots, common practice, no source. */
export const CREW_BODY_MASS = {
  ...BODY_MASS,
  help: 'mass of each of the crew, with clothes and tools',
  optional: { default: 90 },
} as const satisfies ArgumentDescription;

export const LIMIT_EACH = {
  name: 'limit_each',
  help: 'what each may handle alone, never more than the guideline',
  quantity: 'mass',
  above: 0,
  most: GUIDELINE_EACH,
  optional: { default: GUIDELINE_EACH },
} as const satisfies ArgumentDescription;

/** The arguments of the lifting equation, in order. */
export const LIFT = [
  {
    name: 'reach',
    help: 'hands in front of the ankles, measured level',
    quantity: 'length',
    least: 100,
    most: 2000,
  },
  {
    name: 'height',
    help: 'hands above the floor; write "0 mm" for the floor itself',
    quantity: 'length',
    least: 0,
    most: 3000,
  },
  {
    name: 'travel',
    help: 'how far the hands rise or sink; write "0 mm" for none',
    quantity: 'length',
    least: 0,
    most: 3000,
  },
  {
    name: 'twist',
    help: 'how far to the side of straight ahead the load is',
    quantity: 'angle',
    least: 0,
    most: 180,
    optional: { default: 0 },
  },
  {
    name: 'lifts_per_minute',
    help: 'mean over 15 minutes; between two rows of the table the next more frequent counts',
    quantity: 'rate',
    above: 0,
    most: 60,
    optional: { default: 0.2 },
  },
  {
    name: 'hours',
    help: 'how long the lifting goes on',
    quantity: 'hours',
    above: 0,
    most: LONGEST_HOURS,
    optional: { default: 1 },
    beyond: 'no multiplier is published beyond 8 hours: have the work assessed by a competent person',
  },
  {
    name: 'grip',
    help: 'how well the hands hold',
    quantity: 'choice',
    choices: GRIPS,
    optional: { default: 'fair' },
  },
] as const satisfies readonly ArgumentDescription[];
