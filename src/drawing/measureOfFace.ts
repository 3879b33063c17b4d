import type { DecidingFace } from '../core/motion/closest';
import { isStair, type StageName } from '../core/stages/kinds';
import type { MeasureName } from '../core/stages/measures';

type Named = Readonly<Partial<Record<DecidingFace, readonly MeasureName[]>>>;

const LEVEL: Named = { sides: ['width'], head: ['height'], ceiling: ['height'] };
const FLIGHT: Named = {
  sides: ['width'],
  slope: ['height'],
  'stairwell edge': ['footCeiling'],
  'foot ceiling': ['footCeiling'],
  'head ceiling': ['headCeiling'],
  'top nosing': ['headCeiling'],
  'foot wall': ['footSpace'],
  'head wall': ['headSpace'],
};
const OWN: Readonly<Partial<Record<StageName, Named>>> = {
  corner: { 'inner corner': ['width', 'widthOut'], sides: ['width', 'widthOut'], ceiling: ['height'] },
  'side door': { jambs: ['width'], head: ['height'], ceiling: ['ceiling'], 'far wall': ['widthOut'] },
  lift: {
    jambs: ['width'],
    head: ['height'],
    ceiling: ['ceiling'],
    sides: ['widthOut'],
    'far wall': ['depth'],
  },
  room: { ceiling: ['height'], sides: ['width'], 'far wall': ['length'] },
  'quarter landing': {
    ceiling: ['ceiling'],
    sides: ['width', 'widthOut'],
    'far wall': ['widthOut'],
    slope: ['height'],
  },
  'half landing': { ceiling: ['ceiling'], 'far wall': ['depth'], rail: ['overRail'], slope: ['height'] },
};

/** The measures of a stage that a face of it is given by; none where the survey measures nothing there. */
export const measureOfFace = (stage: StageName, face: DecidingFace): readonly MeasureName[] =>
  (OWN[stage] ?? (isStair(stage) ? FLIGHT : LEVEL))[face] ?? [];
