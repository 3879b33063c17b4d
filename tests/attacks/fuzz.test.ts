import { loadBundle } from '../../src/sheetHost/loadBundle';
import { builtFolder } from '../support/builtFolder';
import { faultsOf, fuzz } from './fuzz';
import { FUNCTIONS } from '../../src/worksheet/functions';

// A seeded share of `npm run fuzz`. No clock: how long a call takes is told by the command.
const CALLS = Number(process.env['CALLS'] ?? 20000);

test(`${CALLS} calls of the built bundle give cells and words that help`, async () => {
  const bundle = await loadBundle(builtFolder());
  const { calls, findings } = await fuzz(bundle, 11, (made) => made >= CALLS, 200);
  expect(findings).toEqual([]);
  expect(Object.keys(calls)).toHaveLength(FUNCTIONS.length);
  expect(Math.min(...Object.values(calls))).toBeGreaterThan(0);
}, 120_000);

describe('what the attack would find', () => {
  const f = FUNCTIONS.find(({ id }) => id === 'OPENING')!;
  const asked = { handed: [1, 2, 3], odd: [], rows: 1 };
  test.each([
    ['no number', [[NaN]]],
    ['infinity', [[1, -Infinity]]],
    ['a zero below zero', [[-0]]],
    ['rows of two lengths', [[1, 2], [3]]],
    ['no rows', []],
    ['no cell', [[undefined]]],
    ['a word that was never meant', [['undefined mm left']]],
    ['a refusal without a word', [[{ code: '#VALUE!' }]]],
    ['a fault', [[{ code: '#VALUE!', message: 'X could not be computed: this is a fault of the add-in' }]]],
    ['a refusal that names no argument', [[{ code: '#VALUE!', message: 'this is 3: allowed is 4' }]]],
    ['a message that is cut', [[{ code: '#N/A', message: 'x'.repeat(256) }]]],
    ['a thing thrown', { thrown: new Error('no') }],
  ])('%s', (_name, given) => {
    expect(faultsOf(f, asked, given)).not.toEqual([]);
  });
  test('and what it lets be', () => {
    const message = 'opening_width is -1: allowed is 1 to 20000 mm';
    expect(faultsOf(f, asked, [[12.5, 'goes', true, { code: '#VALUE!', message }]])).toEqual([]);
  });
});
