import { fillAxesOfTurn, fillAxesOfYawTiltLean } from '../../../src/core/geometry/boxAxes';
import { multiply, quaternionAbout, rotate } from '../../../src/core/space/quaternion';

// By another route: three turns one after the other, about the upright, the line across and the length.
test('the axes of a quaternion and of yaw, tilt and lean are the turned axes', () => {
  const byTurn = new Float64Array(9);
  const byAngles = new Float64Array(9);
  for (const [yaw, tilt, lean] of [
    [0, 0, 0],
    [0.7, -0.4, 1.9],
    [-2.1, 1.2, -0.3],
    [3, 0.1, 2.8],
  ] as const) {
    const turn = multiply(
      multiply(quaternionAbout([0, 0, 1], yaw), quaternionAbout([0, 1, 0], -tilt)),
      quaternionAbout([1, 0, 0], lean),
    );
    fillAxesOfTurn(byTurn, ...turn);
    fillAxesOfYawTiltLean(byAngles, yaw, tilt, lean);
    const wanted = [...rotate(turn, [1, 0, 0]), ...rotate(turn, [0, 1, 0]), ...rotate(turn, [0, 0, 1])];
    wanted.forEach((value, k) => {
      expect(byTurn[k]).toBeCloseTo(value, 12);
      expect(byAngles[k]).toBeCloseTo(value, 12);
    });
  }
});
