import { found, refused, type Outcome } from './problem';
import type { Working } from './working';

export interface DoorClearInput {
  /** Width of the leaf [mm]. */
  readonly leafWidth: number;
  /** [mm] */
  readonly leafThickness: number;
  /** How far each stop stands into the opening [mm]. */
  readonly stop: number;
  /** How far a handle or a bar stands off the leaf [mm]. */
  readonly furniture: number;
  /** How far the door opens, 45-180 [degrees]; 180 stands for the leaf taken off. */
  readonly openAngle: number;
}

const SOURCE = 'the gap, stop, leaf and furniture of Approved Document M, turned with the leaf';

/**
 * The clear width of a doorway: what the stops leave, less what the open leaf and its furniture take on the hinge side.
 *
 * Source: Approved Document M's measure of a clear opening (leaf less stop, leaf thickness and projecting furniture),
 * carried to other angles than 90 degrees by turning the leaf about its hinge.
 * @param input lengths [mm], angle [degrees] 45-180
 * @returns clear width [mm]
 * Problems: `impossible` when the leaf covers the whole opening.
 * @example doorClear({ leafWidth: 762, leafThickness: 35, stop: 12, furniture: 0, openAngle: 90 }) // 715
 */
export function doorClear(input: DoorClearInput, working?: Working): Outcome<number> {
  const { leafWidth, leafThickness, stop, furniture, openAngle } = input;
  const angle = (openAngle * Math.PI) / 180;
  // At 180 the leaf is off; the sine of pi is not quite 0 in floating point.
  const sin = openAngle === 180 ? 0 : Math.sin(angle);
  // Likewise the cosine of a right angle.
  const cos = openAngle === 90 ? 0 : Math.cos(angle);
  const leafTakes =
    openAngle === 180
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
      got: openAngle,
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
