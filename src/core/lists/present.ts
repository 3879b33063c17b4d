/**
 * A value that is there wherever this is asked. That it is not is a fault of ours, and named here, where it is made.
 *
 * @example present(new Map([['width', 700]]).get('width'), 'the width') // 700
 */
export function present<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`Not there: ${what}.`);
  return value;
}
