import { ADVICE } from '../../../src/core/carrying/advice';
import { CAUTIONS } from '../../../src/core/measures/cautions';

// The duty to defer is the project's own rule; guidance behind it: HSE L23 (assessment), EN 1991-1-1 (engineer's checks).
describe('the cautions and the advice', () => {
  it('defer on people to an assessment by a competent person', () => {
    for (const text of [CAUTIONS.lifting, CAUTIONS.stairs, ADVICE.share, ADVICE.team]) {
      expect(text).toMatch(/competent person/);
      expect(text).toMatch(/assess/);
    }
  });

  it('defer on floors and stairs to local code or a licensed structural engineer', () => {
    expect(CAUTIONS.floors).toMatch(/Local code/);
    for (const text of [CAUTIONS.floors, ADVICE.floor, ADVICE.stair]) {
      expect(text).toMatch(/licensed structural engineer/);
    }
  });

  it('promise nothing about a route', () => {
    expect(CAUTIONS.route).toMatch(/no promise/);
    expect(CAUTIONS.route).toMatch(/space alone/);
  });

  it('are short enough to be read in a cell', () => {
    for (const text of [...Object.values(CAUTIONS), ...Object.values(ADVICE)]) {
      expect(text.length).toBeLessThanOrEqual(200);
    }
  });
});
