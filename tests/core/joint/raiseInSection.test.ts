import type { ConvexPolygon } from '../../../src/core/geometry/planar/planarWorld';
import { raiseInSection } from '../../../src/core/joint/raiseInSection';

/** By hand: heights over floors that are drawn here. What it may be more between places looked at is 20 mm. */
const MORE = 20;
const floor = (from: number, to: number, high: number): ConvexPolygon => [
  [from, high - 100],
  [to, high - 100],
  [to, high],
  [from, high],
];
const plate = { u: 1000, v: 200 };

test('level over a floor it is as high as its lower side', () => {
  const ground = [floor(-5000, 5000, 0)];
  const level = (y: number) => ({ x: 0, y, angle: 0 });
  expect(raiseInSection(ground, plate, [level(100), level(100)])).toBe(0);
  expect(raiseInSection(ground, plate, [level(100), level(400), level(100)])).toBeCloseTo(300 + MORE, 6);
  // Under a ceiling as well as without one.
  expect(raiseInSection([...ground, floor(-5000, 5000, 2100)], plate, [level(400)])).toBeCloseTo(
    300 + MORE,
    6,
  );
});

test('turned on the spot it is as high as its lowest corner', () => {
  const ground = [floor(-5000, 5000, 0)];
  // Upright its middle is 500 above its lower end, level 100: held at 500 it is raised 400 where it is level.
  const path = [
    { x: 0, y: 500, angle: 0 },
    { x: 0, y: 500, angle: Math.PI / 2 },
  ];
  expect(raiseInSection(ground, plate, path.slice(1))).toBe(0);
  expect(raiseInSection(ground, plate, path.slice(0, 1))).toBeCloseTo(400 + MORE, 6);
  expect(raiseInSection(ground, plate, [...path].reverse())).toBeCloseTo(400 + MORE, 6);
});

test('while part of it rests on a step it is not raised, and over the lower floor by all the step', () => {
  const stair = [floor(-5000, 0, 0), floor(0, 5000, 180)];
  const at = (x: number) => ({ x, y: 280, angle: 0 });
  expect(raiseInSection(stair, plate, [at(-400), at(600)])).toBe(0);
  expect(raiseInSection(stair, plate, [at(600), at(-600)])).toBeCloseTo(180 + MORE, 6);
});

test('over nothing it is raised by any height', () => {
  expect(raiseInSection([floor(2000, 3000, 0)], plate, [{ x: 0, y: 100, angle: 0 }])).toBe(Infinity);
});
