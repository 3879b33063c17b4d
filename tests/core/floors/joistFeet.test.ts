import { joist } from '../../../src/core/floors/joist';
import { joistFeet, type JoistFeetInput } from '../../../src/core/floors/joistFeet';
import { joistUnderFeet } from '../../../src/core/floors/joistUnderFeet';
import { collectWorking } from '../../../src/core/measures/working';

const ROW: JoistFeetInput = {
  span: 4500,
  spacing: 500,
  breadth: 75,
  depth: 200,
  grade: 'C24',
  dead: 0.5,
  imposed: 1.5,
  footLoad: 1,
  firstAt: 1500,
  footSpacing: 1250,
  feet: 2,
  duration: 'medium',
};

describe('joistFeet', () => {
  it('is a joist with one foot where the row has one', () => {
    const { footLoad, firstAt, ...rest } = ROW;
    expect(joistFeet({ ...ROW, feet: 1 })).toEqual(joist({ ...rest, pointLoad: footLoad, pointAt: firstAt }));
  });

  it('puts the feet where they stand', () => {
    const { steps } = collectWorking((w) => joistFeet({ ...ROW, feet: 3 }, w));
    expect(steps[0]!.value).toBe('1500, 2750, 4000');
    const points = [1500, 2750, 4000].map((at) => ({ load: 1000, at }));
    expect(joistFeet({ ...ROW, feet: 3 })).toEqual(joistUnderFeet({ ...ROW, points }));
  });

  it('refuses a row that does not stand between the supports', () => {
    for (const change of [{ firstAt: 3250 }, { feet: 4 }]) {
      expect(joistFeet({ ...ROW, ...change })).toMatchObject({
        ok: false,
        problem: { kind: 'impossible', argument: 'first_at' },
      });
    }
    expect(joistFeet({ ...ROW, firstAt: 3249 }).ok).toBe(true);
  });
});
