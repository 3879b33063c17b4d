import { lineReaches } from '../../../src/core/geometry/proofs/centreCutBlocks';
import { sortedPiece } from '../../../src/core/measures/piece';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { proofAt } from '../../../src/core/route/proofs';
import { stageBook } from '../../../src/core/route/stageBook';
import { stageRow } from '../../support/walkedRoute';

// The middle of a thin rod of the critical length lies 1400/2 + 700/2 (1400/700)^(1/3) from the outer wall opposite (the
// calculus-book ladder), so a line that its middle has to cross may start beyond the inner edge: 205.6 by hand, and half as
// much again. Where an arm opens out nearer than the piece reaches from there, nothing is proved.

test('lines start beyond the inner edge of the wider arm, and at it where both are as wide', () => {
  const corner = { ceiling: 300, turn: Math.PI / 2 };
  expect(lineReaches({ ...corner, widthIn: 1400, widthOut: 700 })).toBeCloseTo(1.5 * 205.6, 0);
  expect(lineReaches({ ...corner, widthIn: 700, widthOut: 1400 })).toBeCloseTo(1.5 * 205.6, 0);
  expect(lineReaches({ ...corner, widthIn: 900, widthOut: 900 })).toBeCloseTo(0, 9);
});

test('a corner is proved only where its wider arm holds as far as the piece reaches from such a line', () => {
  const piece = sortedPiece(3600, 250, 40);
  const reach = Math.hypot(3600, 250, 40) / 2;
  const proved = (length: number): boolean => {
    const rows = [
      { stage: 'passage', measures: { width: 3000, height: 300, length: 4000 } },
      { stage: 'passage', measures: { width: 1400, height: 300, length } },
      { stage: 'corner', measures: { width: 1400, widthOut: 700, height: 300 }, hand: 'left' },
      { stage: 'passage', measures: { width: 700, height: 300, length: 4000 } },
      { stage: 'room', measures: { width: 6000, height: 300, length: 6000 } },
    ] as const;
    const book = stageBook(0);
    const route = prepareRoute(
      rows.map((row, i) => stageRow({ hand: undefined, way: undefined, ...row }, i)),
      book,
    );
    return proofAt(route, 2, book.pieceOf(piece), book) !== undefined;
  };
  expect(proved(reach + 320)).toBe(true);
  expect(proved(reach + 200)).toBe(false);
  expect(proved(reach + 10)).toBe(false);
});

test('a landing is proved where a flight as its own lies beside it, or none, and not where winding treads begin at once', () => {
  // What is proved of a landing supposes straight flights between walls; over winding treads the piece may hang round a bend.
  const stair = { height: 1900, rise: 190, going: 240 } as const;
  const landing = {
    stage: 'quarter landing',
    measures: { ...stair, width: 700, widthOut: 700, ceiling: 1900 },
  } as const;
  const flight = {
    stage: 'flight',
    measures: { ...stair, width: 700, risers: 20, footCeiling: 1900 },
  } as const;
  const winder = { stage: 'winder', measures: { ...stair, width: 700, turn: 90 } } as const;
  const proved = (...after: readonly (typeof flight | typeof winder)[]): boolean => {
    const book = stageBook(0);
    const rows = [flight, landing, ...after].map((row, i) =>
      stageRow({ ...row, hand: 'left', way: 'up' }, i),
    );
    return (
      proofAt(prepareRoute(rows, book), 1, book.pieceOf(sortedPiece(2700, 1300, 450)), book) !== undefined
    );
  };
  expect(proved(flight)).toBe(true);
  expect(proved()).toBe(true);
  expect(proved(winder, flight)).toBe(false);
});
