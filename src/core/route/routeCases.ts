import type { PieceSize } from '../measures/piece';
import { judgeRoute, type RouteCase } from './judgeRoute';
import type { PreparedRoute } from './preparedRoute';
import type { StageBook } from './stageBook';

/**
 * Judges one piece after another on one route, equal pieces once: builds of one size share most of theirs.
 * @param allowance the clearance the firm insists on [mm a side]
 */
export function routeCases(
  route: PreparedRoute,
  book: StageBook,
  allowance: number,
): (size: PieceSize) => RouteCase {
  const known: (RouteCase | undefined)[] = [];
  return (size) => (known[book.pieceOf(size).index] ??= judgeRoute(route, size, book, allowance));
}
