import { radians, RIGHT_ANGLE } from '../../../src/core/measures/angle';
import { doorClear, type DoorClearInput } from '../../../src/core/measures/doorClear';
import { collectWorking } from '../../../src/core/measures/working';

describe('doorClear', () => {
  const LEAF: DoorClearInput = {
    leafWidth: 762,
    leafThickness: 35,
    stop: 12,
    furniture: 0,
    openAngle: RIGHT_ANGLE,
  };
  const clear = (input: Partial<DoorClearInput>): number => {
    const outcome = doorClear({ ...LEAF, ...input });
    if (!outcome.ok) throw new Error(outcome.problem.kind);
    return outcome.value;
  };

  it('takes stop, leaf and furniture off at 90 degrees (Approved Document M)', () => {
    expect(clear({})).toBe(762 - 12 - 35);
    expect(clear({ furniture: 60 })).toBe(762 - 12 - 95);
  });

  it('takes only the stops off with the leaf off', () => {
    expect(clear({ openAngle: radians(180) })).toBe(762 - 24);
    expect(clear({ openAngle: radians(180), furniture: 90 })).toBe(738);
  });

  it('leaves the whole leaf where it is off and no stop stands', () => {
    expect(clear({ stop: 0, openAngle: radians(180) })).toBe(762);
  });

  it('is refused where nothing at all is left, and not before', () => {
    expect(doorClear({ ...LEAF, leafWidth: 47 })).toMatchObject({ ok: false });
    expect(clear({ leafWidth: 47.5 })).toBe(0.5);
  });

  it('leaves the stop where the leaf takes less than it', () => {
    expect(clear({ leafThickness: 10, openAngle: radians(100) })).toBe(738);
  });

  it('lets the leaf turn about its hinge at other angles (geometry of the formula, by hand)', () => {
    // 60 degrees: max(35 x .8660, 762 x .5 + 35 x .8660) = 411.31.
    expect(clear({ openAngle: radians(60) })).toBeCloseTo(762 - 12 - 411.3109, 3);
    // 120 degrees: the leaf leans away, its thickness decides: 35 x .8660 = 30.31.
    expect(clear({ openAngle: radians(120) })).toBeCloseTo(762 - 12 - 30.3109, 3);
  });

  it('never shrinks as the door opens further, without furniture', () => {
    let before = 0;
    for (let openAngle = 45; openAngle <= 180; openAngle += 5) {
      const now = clear({ openAngle: radians(openAngle) });
      expect(now).toBeGreaterThanOrEqual(before - 1e-9);
      before = now;
    }
  });

  it('takes nothing off with the leaf off where there is no stop', () => {
    expect(clear({ openAngle: radians(180), stop: 0 })).toBeCloseTo(762, 9);
  });

  it('gives half a millimetre that is left, and refuses where nothing is', () => {
    expect(clear({ leafThickness: 749.5 })).toBeCloseTo(0.5, 9);
    expect(doorClear({ ...LEAF, leafThickness: 750 })).toMatchObject({ ok: false });
  });

  it('refuses a leaf that leaves nothing', () => {
    expect(doorClear({ ...LEAF, openAngle: radians(45), furniture: 300 })).toMatchObject({
      ok: false,
      problem: { kind: 'impossible', argument: 'open_angle', got: 45 },
    });
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) => doorClear({ ...LEAF, openAngle: radians(75) }, w));
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
  });
});
