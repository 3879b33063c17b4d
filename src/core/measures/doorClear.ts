import { asWritten, RIGHT_ANGLE } from './angle';
import { found, refused, type Outcome } from './problem';
import type { Working } from './working';

/** A door leaf with its stops and the angle that it opens to. */
export interface DoorClearInput {
  /** Width of the leaf [mm]. */
  readonly leafWidth: number;
  /** [mm] */
  readonly leafThickness: number;
  /** How far each stop stands into the opening [mm]. */
  readonly stop: number;
  /** How far a handle or a bar stands off the leaf [mm]. */
  readonly furniture: number;
  /** How far the door opens, 45 to 180 degrees [rad]; half a turn stands for the leaf taken off. */
  readonly openAngle: number;
}

const SOURCE = 'the gap, stop, leaf and furniture of Approved Document M, turned with the leaf';

/**
 * The clear width of a doorway: what the stops leave, less what the open leaf and its furniture take on the hinge side.
 *
 * @source Approved Document M's measure of a clear opening (leaf less stop, leaf thickness and projecting furniture),
 * carried to other angles than 90 degrees by turning the leaf about its hinge.
 * @param input lengths [mm], angle [rad] of 45 to 180 degrees
 * @returns clear width [mm]
 * @problems `impossible` when the leaf covers the whole opening.
 * @example doorClear({ leafWidth: 762, leafThickness: 35, stop: 12, furniture: 0, openAngle: Math.PI / 2 }) // 715
 */
export function doorClear(input: DoorClearInput, working?: Working): Outcome<number> {
  const { leafWidth, leafThickness, stop, furniture, openAngle } = input;
  const leafOff = openAngle === Math.PI;
  const sin = Math.sin(openAngle);
  // The cosine of a right angle is not quite 0 in floating point.
  const cos = openAngle === RIGHT_ANGLE ? 0 : Math.cos(openAngle);
  const leafTakes = leafOff
    ? 0
    : Math.max(leafThickness * sin, leafWidth * cos + (leafThickness + furniture) * sin);
  working?.({
    what: 'Taken by the open leaf',
    formula:
      'max(leaf_thickness sin a, leaf_width cos a + (leaf_thickness + furniture) sin a); 0 with the leaf off',
    value: leafTakes,
    unit: 'mm',
    source: SOURCE,
  });
  const hingeSide = Math.max(stop, leafTakes);
  working?.({
    what: 'Taken on the hinge side',
    formula: 'max(stop, taken by the open leaf)',
    value: hingeSide,
    unit: 'mm',
    source: SOURCE,
  });
  const clear = leafWidth - stop - hingeSide;
  if (!(clear > 0)) {
    return refused({
      kind: 'impossible',
      argument: 'open_angle',
      got: asWritten(openAngle),
      because: 'opened so far, the leaf leaves no clear width; open it further or take it off',
    });
  }
  working?.({
    what: 'Clear width',
    formula: 'leaf_width - stop - taken on the hinge side',
    value: clear,
    unit: 'mm',
    source: SOURCE,
  });
  return found(clear);
}
