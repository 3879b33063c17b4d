import { codePoint as compute } from '../../core/floors/codePoint';
import { CAUTIONS } from '../../core/measures/cautions';
import { numberFunction } from '../namedArguments';
import { CODE_ARGUMENTS } from '../floorArguments';

export const codePoint = numberFunction({
  id: 'CODEPOINT',
  group: 'Floors',
  summary: 'Concentrated load that a code gives a floor for its use, acting alone',
  arguments: CODE_ARGUMENTS,
  result: { meaning: 'the concentrated load', unit: 'kN' },
  source:
    'EN 1991-1-1 table 6.2 (from memory), on a square of side 50 mm, 6.3.1.2(5) (from memory); UK National Annex, ' +
    'A1, A2, A4 (from memory); IRC R301.5, 300 lb on 2 in x 2 in of a stair tread, which is no floor load (read in ' +
    'a quotation)',
  validity: "people and furniture, not together with the imposed load; a code's load is no permission",
  caution: CAUTIONS.floors,
  example: {
    arguments: ['stairs', 'US'],
    result: 1.334466,
    within: 1e-6,
    source: 'IRC R301.5: 300 lb, at 4.4482216 N to the pound force',
  },
  compute: ({ use, code }, working) => compute({ use, code }, working),
});
