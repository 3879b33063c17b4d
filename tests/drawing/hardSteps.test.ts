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
  // Passed together with what stands close, leaning over steps or level from a stair's end on.
  ['Q-21', 'cabinet, built up', 5],
  ['Q-21', 'cabinet, built up', 8],
  ['Q-28', 'slate in one', 2],
  ['Q-28', 'cabinet, built up', 1],
  ['Q-28', 'cushion frame', 3],
  ['Q-15', 'long side panel', 6],
  // Where a straight and the space at a stair's head are not measured, or a straight is behind a turn before a stair.
  ['Q-08', 'cabinet, built up', 2],
  ['Q-08', 'cabinet, built up', 4],
  ['Q-08', 'slate in one', 3],
  ['Q-31', 'cushion rail', 4],
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

test.each([
  ['Q-23', 'slate in one', 3],
  ['Q-23', 'slate in one', 4],
  ['Q-23', 'slate in one', 5],
] as const)(
  '%s, the %s at step %d is tightest at the end of the stair that the words name',
  (id, name, step) => {
    const { chain, draw } = carried(id, name);
    const { text = '' } = draw(step - 1, 'ends') ?? {};
    const [, end] = /as it turns at the stair's (foot|head)/.exec(text) ?? [];
    const [, place = ''] = /Place (\d) is the tightest/.exec(text) ?? [];
    const low = new RegExp(`place ${place} from the side: tilted \\d+°, low end (\\d+)( below)?`).exec(text);
    expect(chain).toBeDefined();
    // Twelve risers of 204: its low end is in the half at that end, told from the floor at the head or at the foot.
    const fromHead = low?.[2] !== undefined;
    expect([end, low !== null && Number(low[1]) < 6 * 204]).toEqual([fromHead ? 'head' : 'foot', true]);
    expect(end).toBe(step === 3 ? 'head' : 'foot');
  },
);
