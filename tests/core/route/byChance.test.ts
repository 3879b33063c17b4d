import * as widening from '../../../src/core/space/widenedMotion';
import { sortedPiece } from '../../../src/core/measures/piece';
import { radians } from '../../../src/core/measures/angle';
import { routePassages, SEARCH_WORK } from '../../../src/core/stages/landing/landingPassages';
import { winderStage } from '../../../src/core/stages/winder/winder';
import { callInCells } from '../../support/callInCells';
import { replay } from '../../support/replayMotion';

/**
 * Widening shows so much that seldom anything is left for a search by chance; here it shows nothing, so that what a
 * route says of a motion that chance found is seen from the search to the cell.
 */
jest.spyOn(widening, 'widestMotionOf').mockImplementation(() => undefined);

const stair = { width: 950, headroom: 2200, rise: 185, going: 250 };
const panel = sortedPiece(1000, 600, 25);
const WINDER = [
  ['Step', 'Stage', 'Width', 'Height', 'Turn', 'Rise', 'Going', 'Clear'],
  [1, 'winder', stair.width, stair.headroom, 90, stair.rise, stair.going, 'yes'],
];

test('what only a search by chance finds goes on replay', () => {
  const passages = routePassages(winderStage({ ...stair, turn: radians(90) }), panel, SEARCH_WORK);
  expect(passages.map(({ passage }) => passage.answer.byChance)).toEqual([true]);
  const [{ found }] = passages as [(typeof passages)[number]];
  expect(replay({ motion: found!.motion, scene: found!.scene }, panel, { step: 10 }).collides).toBe(false);
});

test.each(['0 mm', '25 mm'])(
  'in a route it is tight at any allowance, and no figure hangs on it (allowance %s)',
  (allowance) => {
    const [header, step, whole] = callInCells('STAGES', WINDER, 1000, 600, 25, allowance) as string[][];
    const at = (name: string): number => header!.indexOf(name);
    for (const row of [step!, whole!]) {
      expect(row[at('Verdict')]).toBe('tight');
      expect(row[at('Clearance')]).toBe('');
    }
    expect(step![at('Reason')]).toContain('by a search, which gives no figure');
    expect(step![at('Reason')]).not.toMatch(/-?\d+ mm (a side )?left/);
  },
);

test('VERDICT and SURVEYS give no figure either', () => {
  const pieces = [
    ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
    ['Panels', 'panel', 1000, 600, 25, 40, 2],
  ];
  const [header, verdict] = callInCells('VERDICT', WINDER, pieces) as string[][];
  expect(verdict![header!.indexOf('Verdict')]).toBe('tight');
  expect(verdict![header!.indexOf('Clearance')]).toBe('');
  const survey = [
    ['Survey', ...WINDER[0]!],
    ['W-1', ...WINDER[1]!],
  ];
  const [columns, row] = callInCells('SURVEYS', survey, pieces) as string[][];
  expect(row![columns!.indexOf('Verdict')]).toBe('tight');
  expect(row![columns!.indexOf('Clearance')]).toBe('');
});
