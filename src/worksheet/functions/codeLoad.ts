import { codeLoad as compute } from '../../core/floors/codeLoad';
import { CAUTIONS } from '../../core/measures/cautions';
import { numberFunction } from '../namedArguments';
import { CODE_ARGUMENTS } from '../floorArguments';

export const codeLoad = numberFunction({
  id: 'CODELOAD',
  group: 'Floors',
  summary: "Imposed load that a code gives a floor for its use; a code's load is no permission",
  arguments: CODE_ARGUMENTS,
  result: { meaning: 'the imposed load', unit: 'kN/m2' },
  source:
    'EN 1991-1-1 table 6.2 (from memory); UK National Annex, A1, A2, A4 (from memory); IRC R301.5, 40 psf rooms and ' +
    '30 psf sleeping rooms (read in a quotation), 40 psf stairs (from memory); ASCE 7 table 4.3-1, poolrooms 75 psf ' +
    '(from memory)',
  validity: 'people and furniture; heavy equipment is checked on its own (EN 1991-1-1 section 6)',
  caution: CAUTIONS.floors,
  example: {
    arguments: ['sleeping room', 'US'],
    result: 1.44,
    within: 0.005,
    source: 'IRC R301.5: 30 psf',
  },
  compute: ({ use, code }, working) => compute({ use, code }, working),
});
