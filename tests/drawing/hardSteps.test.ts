import { carriedRoute } from '../../src/drawing/carriedRoute';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { routeOfMonth } from '../support/drawnMonth';

/**
 * Steps that a piece passes with little room at both ends of a stair: with nearly all of the clearance as padding no motion
 * was drawn there, and the place stood alone.
 */
const HARD = [
  ['Q-03', 'long side panel', 3],
  ['Q-05', 'slate in one', 3],
  ['Q-07', 'slate in one', 3],
  ['Q-11', 'long side panel', 4],
  ['Q-33', 'long side panel', 6],
  ['Q-52', 'long side panel', 3],
] as const;

const carried = (id: string, name: string): ReturnType<typeof carriedRoute> => {
  const { build } = SAMPLE_SURVEYS.find((survey) => survey.id === id)!;
  const piece = SAMPLE_PIECES.find((one) => one.build === build && one.piece === name)!;
  const { route, book } = routeOfMonth(id);
  return carriedRoute(route, piece, name, book, 25);
};

test.each(HARD)('%s, the %s is drawn on its way through step %d', (id, name, step) => {
  const drawn = carried(id, name).draw(step - 1, 'hard');
  expect(drawn?.text).toMatch(/numbered along the way|in one place/);
  expect(drawn?.text).not.toMatch(/place alone|by itself/);
});

test('a step drawn by itself, closest in a straight of the route, is drawn without that straight', () => {
  const { chain, draw } = carried('Q-10', 'slate in one');
  const steps = chain?.steps.map((_, row) => draw(row, `alone-${row}`)) ?? [];
  expect(steps.length).toBeGreaterThan(4);
  expect(chain?.steps.some(({ closest }) => closest === 'limit')).toBe(true);
  for (const one of steps) expect(one?.pictures.length).toBeGreaterThan(0);
});
