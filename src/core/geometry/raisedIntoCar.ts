import { boxPolygon } from './planar/planarWorld';
import { passageBracket, type PlanarPassage } from './planar/passageBracket';
import { Remembered } from '../lists/remembered';

/** A lift car from the side: the door's head, and the car behind it [mm]. */
export interface CarSection {
  readonly head: number;
  readonly depth: number;
  readonly height: number;
}

/** Slices that one bracket may look at. */
const WORK = 1000;
/** Answers remembered at a time. */
const REMEMBERED = 500;
const known = new Remembered<number>(REMEMBERED);

/**
 * A rectangle that goes into a car seen from the side, for the planner: x up from the floor, y into the car from its
 * door. Before the door nothing is higher than the door's head; it begins level there and ends wholly inside.
 * @param along its side along the way as it begins [mm]
 * @param upright its upright side as it begins [mm]
 */
export function carFromSide(
  along: number,
  upright: number,
  { head, depth, height }: CarSection,
): PlanarPassage {
  const reach = Math.hypot(along, upright) / 2;
  const far = 4 * reach + 2 * (height + depth) + 1000;
  const lintel = Math.min(head, height);
  return {
    world: {
      obstacles: [
        boxPolygon(-far, -far, 0, far),
        boxPolygon(lintel, -far, far, 0),
        boxPolygon(height, -far, far, far),
        boxPolygon(-far, depth, far, far),
      ],
      centre: { xMin: 0, xMax: height, yMin: -reach - 3, yMax: depth },
    },
    start: { xMin: 0, xMax: lintel, yMin: -reach - 3, yMax: -reach - 2, angle: Math.PI / 2 },
    goal: { xMin: 0, xMax: height, yMin: 0, yMax: depth, wholeAbove: 0 },
  };
}

/**
 * Padding with which a rectangle goes into a car seen from the side, its front raised past the door's head as it goes
 * in: the lower end of the planner's bracket, to half a millimetre. Only the floor is below it, so that it can be let
 * down on to that anywhere on the way: nothing is raised.
 * @param most padding of no interest [mm a side]: known not to go, or shown otherwise
 * @param shown what is shown otherwise [mm a side]
 * @returns [mm a side]; less than what is known to fit where the limit of work is reached
 * @source Lozano-Perez 1983, as in `decidePassage`
 */
export const raisedIntoCar = (
  along: number,
  upright: number,
  car: CarSection,
  most: number,
  shown: number,
): number =>
  known.get(`${along} ${upright} ${car.head} ${car.depth} ${car.height} ${most} ${shown}`, () => {
    const ask = { guess: shown, workLimit: WORK };
    return passageBracket((u, v) => carFromSide(u, v, car), along, upright, most, ask).lower;
  });
