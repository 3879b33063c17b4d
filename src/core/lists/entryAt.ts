/**
 * The entry of a list at an index. Asked for where the list is known to reach so far: that it does not is a fault of
 * ours, and it is named here, where it is made, rather than as something undefined further on.
 *
 * @example entryAt(['door', 'flight'], 1) // 'flight'
 */
export function entryAt<T>(list: ArrayLike<T>, index: number): T {
  if (!(index >= 0 && index < list.length))
    throw new RangeError(`There is no entry ${index} in a list of ${list.length}.`);
  return list[index] as T;
}
