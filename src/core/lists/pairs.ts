/** Each entry of a list with the next. @example pairs([1, 2, 3]) // [[1, 2], [2, 3]] */
export function pairs<T>(list: readonly T[]): (readonly [T, T])[] {
  return list.slice(1).map((next, i) => [list[i] as T, next]);
}

/** The sides of a closed figure: each corner with the next, and the last with the first. @example sides([1, 2, 3]) // [[1, 2], [2, 3], [3, 1]] */
export function sides<T>(corners: readonly T[]): (readonly [T, T])[] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] as T]);
}
