import { kindOf, type StageName } from '../stages/kinds';
import type { MeasureName } from '../stages/measures';

const HEADROOM = 'height above the step edges of';

/** Each measure as a customer would call it, before the words for its place. */
const PHRASES: Readonly<Record<MeasureName, string>> = {
  width: 'clear width of',
  widthOut: 'width of the way after',
  height: 'clear height of',
  ceiling: 'height of the ceiling over',
  depth: 'depth of',
  length: 'length of',
  turn: 'angle of',
  rise: 'height of a step of',
  going: 'depth of a step of',
  risers: 'number of steps of',
  treads: 'number of turning steps of',
  well: 'gap between the stairs at',
  wall: 'thickness of the wall at',
  overRail: 'height of the railing at',
  footCeiling: 'height of the ceiling at the bottom of',
  footSpace: 'floor in front of the first step of',
  headCeiling: 'height of the ceiling at the top of',
  headSpace: 'floor beyond the top step of',
  run: 'straight way after',
  lowWidth: 'clear width low down of',
  lowHeight: 'height of what stands in the way at',
  ratedLoad: 'load on the plate of',
};

/**
 * A measure of a place in a customer's words.
 * @param place as `placeWords` calls it
 * @example measurePhrase('width', 'door', 'the second door') // 'clear width of the second door'
 */
export function measurePhrase(measure: MeasureName, stage: StageName | undefined, place: string): string {
  const headroom = measure === 'height' && stage !== undefined && kindOf(stage).stair !== null;
  return `${headroom ? HEADROOM : PHRASES[measure]} ${place}`;
}
