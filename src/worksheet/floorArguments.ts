import { CODES, USES } from '../core/floors/codeLoads';
import { DURATIONS } from '../core/floors/joistUses';
import { JOIST_GRADES } from '../core/floors/joistGrades';
import type { ArgumentDescription } from './description';

export const CODE_ARGUMENTS = [
  { name: 'use', help: 'what the floor is for', quantity: 'choice', choices: USES },
  {
    name: 'code',
    help: 'EN: recommended values; UK: its National Annex; US: IRC and ASCE 7',
    quantity: 'choice',
    choices: CODES,
    optional: { default: 'EN' },
  },
] as const satisfies readonly ArgumentDescription[];

export const FEET = {
  name: 'feet',
  help: 'how many feet the table stands on',
  quantity: 'count',
  least: 1,
  most: 24,
  whole: true,
} as const satisfies ArgumentDescription;

export const WORST_SHARE = {
  name: 'worst_share',
  help: 'part of the weight on the worst foot, 1/feet to 1',
  quantity: 'ratio',
  above: 0,
  most: 1,
  optional: { default: null, meaning: 'min(1, 2/feet): a table rocks on two feet' },
} as const satisfies ArgumentDescription;

/** A joist and the even loads on it; inches typed bare fall outside. */
export const JOIST_ARGUMENTS = [
  { name: 'span', help: 'clear span between supports', quantity: 'length', least: 500, most: 12000 },
  { name: 'spacing', help: 'centre to centre', quantity: 'length', least: 100, most: 1500 },
  { name: 'breadth', help: 'breadth of the joist', quantity: 'length', least: 20, most: 300 },
  {
    name: 'depth',
    help: 'depth of the joist; the span is 5 to 35 of them',
    quantity: 'length',
    least: 50,
    most: 600,
  },
  {
    name: 'grade',
    help:
      'strength class of EN 338, or lumber of North America by its stamp: DF-L (Douglas fir-larch), HF (hem-fir), SPF ' +
      '(spruce-pine-fir) or SP (southern pine), No. 1 to No. 3',
    quantity: 'choice',
    choices: JOIST_GRADES,
  },
  {
    name: 'dead',
    help: "the floor's own weight, usually 0.25 to 0.50",
    quantity: 'area load',
    least: 0,
    most: 20,
    plainZero: true,
  },
  {
    name: 'imposed',
    help: 'people and furniture, see CODELOAD',
    quantity: 'area load',
    least: 0,
    most: 20,
    plainZero: true,
  },
] as const satisfies readonly ArgumentDescription[];

export const DURATION = {
  name: 'duration',
  help: 'how long the imposed load stays, for kmod',
  quantity: 'choice',
  choices: DURATIONS,
  optional: { default: 'medium' },
} as const satisfies ArgumentDescription;
