import type { Ground } from '../../space/raiseOfMotion';

/** What is below a piece on a quarter landing whose lower flight is so wide [mm], with so much rise for each mm of going. */
export const quarterGrounds = (widthIn: number, rise: number, slope: number): Ground[] => [
  {
    height: 0,
    alongX: 0,
    alongY: 0,
    within: [
      { x: 1, y: 0, from: 0 },
      { x: 0, y: -1, from: -widthIn },
    ],
  },
  {
    height: 0,
    alongX: slope,
    alongY: 0,
    within: [
      { x: -1, y: 0, from: 0 },
      { x: 0, y: -1, from: -widthIn },
    ],
  },
  // Over an open inner quarter too, so that what passes over a handrail is over some ground.
  { height: rise - slope * widthIn, alongX: 0, alongY: slope, within: [{ x: 0, y: 1, from: widthIn }] },
];
