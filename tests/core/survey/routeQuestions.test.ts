import type { Cell } from '../../../src/core/measures/readQuantity';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import type { RouteQuestion } from '../../../src/core/survey/checks/surveyProblem';
import { surveyTable } from '../../support/surveyTable';

/**
 * What the worksheet contract says is asked: where two measures of one thing differ by more than twice the tape (5 mm
 * unless a survey gives its own), where turns stand closer than a long piece, and what is supposed meanwhile.
 */
type Row = Readonly<Record<string, Cell>>;

const ROOM: Row = { Stage: 'room', Length: 5600, Width: 4200, Height: 2400 };
const DOOR: Row = { Stage: 'door', Width: 715, Height: 1960 };
const CORNER: Row = { Stage: 'corner', Width: 900, 'Width out': 1000, Height: 2400 };
const PASSAGE: Row = { Stage: 'passage', Width: 1000, Height: 2400, Length: 3000 };
const UP: Row = { Stage: 'flight', Width: 1000, Height: 2000, Rise: 190, Going: 240, Way: 'up' };
const DOWN: Row = { ...UP, Way: 'down' };

const table = (rows: readonly Row[]): Cell[][] =>
  surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })));
const asked = (...rows: Row[]): (readonly [number, RouteQuestion])[] =>
  checkRoute(table(rows)).flatMap((p) => (p.kind === 'asked' ? [[p.rowIndex, p.about] as const] : []));
const hands = (...rows: Row[]): (readonly [number, number])[] =>
  asked(...rows).flatMap(([row, about]) =>
    about.kind === 'which hand' ? [[row, about.straight] as const] : [],
  );

describe('the straight between two turns, where it is shorter than a long piece of 2000', () => {
  const near = (run: number): Row => ({ ...CORNER, Run: run });
  test('is the run with the walls of doors and the passages beyond it', () => {
    expect(hands(PASSAGE, near(300), CORNER, ROOM)).toEqual([[2, 300]]);
    expect(hands(PASSAGE, near(300), { ...DOOR, Wall: 110 }, CORNER, ROOM)).toEqual([[3, 410]]);
    expect(hands(PASSAGE, near(300), DOOR, CORNER, ROOM)).toEqual([[3, 300]]);
    const between = { ...PASSAGE, Length: 1400 };
    expect(hands(near(499), { ...DOOR, Wall: 100 }, between, CORNER, ROOM)).toEqual([[3, 1999]]);
    expect(hands(near(500), { ...DOOR, Wall: 100 }, between, CORNER, ROOM)).toEqual([]);
  });
  test('begins with the passage itself where that follows the turn', () => {
    expect(hands(near(300), { ...PASSAGE, Length: 700 }, CORNER, ROOM)).toEqual([[2, 700]]);
  });
  test('is not known over a stair, a passage without its length, or without the run', () => {
    expect(hands(near(300), UP, CORNER, ROOM)).toEqual([]);
    expect(hands(near(300), { ...PASSAGE, Length: '' }, CORNER, ROOM)).toEqual([]);
    expect(hands(CORNER, DOOR, CORNER, ROOM)).toEqual([]);
  });
});

describe('two measures of one thing', () => {
  const differ = (kind: RouteQuestion['kind'], ...rows: Row[]): RouteQuestion[] =>
    asked(...rows).flatMap(([, about]) => (about.kind === kind ? [about] : []));

  test('the arm of a corner and the passage or flight that follows it', () => {
    const kind = 'arm and next row differ';
    for (const next of [PASSAGE, UP]) {
      expect(differ(kind, CORNER, { ...next, Width: 1010 }, ROOM)).toEqual([]);
      expect(differ(kind, CORNER, { ...next, Width: 1011 }, ROOM)).toEqual([{ kind, arm: 1000, next: 1011 }]);
      expect(differ(kind, CORNER, { ...next, Width: 989 }, ROOM)).toHaveLength(1);
    }
    // A door is meant to be narrower, and a tape of its own widens what agrees.
    expect(differ(kind, CORNER, DOOR, ROOM)).toEqual([]);
    expect(differ(kind, CORNER, { ...PASSAGE, Width: 1020, Tape: 10 }, ROOM)).toEqual([]);
    expect(differ(kind, CORNER, { ...PASSAGE, Width: 1021, Tape: 10 }, ROOM)).toHaveLength(1);
  });

  test('the straight after a corner and the space before a stair, which is that with the corner', () => {
    const kind = 'straight and space differ';
    const corner = (run: Cell): Row => ({ ...CORNER, Run: run });
    expect(differ(kind, corner(300), { ...UP, 'Foot space': 1210 }, ROOM)).toEqual([]);
    expect(differ(kind, corner(300), { ...UP, 'Foot space': 1211 }, ROOM)).toEqual([
      { kind, run: 300, space: 1211, width: 900 },
    ]);
    expect(differ(kind, corner(300), { ...UP, 'Foot space': 1189 }, ROOM)).toHaveLength(1);
    // Going down the way comes to the stair's head.
    expect(differ(kind, corner(300), { ...DOWN, 'Head space': 1500 }, ROOM)).toHaveLength(1);
    expect(differ(kind, corner(300), { ...DOWN, 'Foot space': 1500 }, ROOM)).toEqual([]);
    // A space within the tape below the corner's width leaves no straight, and not less than none.
    expect(differ(kind, corner(10), { ...UP, 'Foot space': 895 }, ROOM)).toEqual([]);
    expect(differ(kind, corner(11), { ...UP, 'Foot space': 895 }, ROOM)).toHaveLength(1);
    expect(differ(kind, corner(''), { ...UP, 'Foot space': 1500 }, ROOM)).toEqual([]);
  });

  test('the space at a stair and the passage that it is', () => {
    const kind = 'floor and passage differ';
    const passage = { ...PASSAGE, Length: 1200 };
    expect(differ(kind, { ...UP, 'Head space': 1210 }, passage, ROOM)).toEqual([]);
    expect(differ(kind, { ...UP, 'Head space': 1211 }, passage, ROOM)).toEqual([
      { kind, space: 1211, length: 1200 },
    ]);
    expect(differ(kind, passage, { ...DOWN, 'Head space': 1300 }, ROOM)).toHaveLength(1);
    expect(differ(kind, passage, { ...DOWN, 'Foot space': 1300 }, ROOM)).toEqual([]);
    expect(differ(kind, { ...DOWN, 'Foot space': 1300 }, passage, ROOM)).toHaveLength(1);
  });
});

test('a stair end shorter than a long piece, before a passage or a room, is asked about at its own end', () => {
  const ends = (...rows: Row[]): RouteQuestion[] =>
    asked(...rows).flatMap(([, about]) => (about.kind === 'turn at the stair end' ? [about] : []));
  const passage = { ...PASSAGE, Length: '' };
  const kind = 'turn at the stair end';
  expect(ends({ ...UP, 'Head space': 1999 }, passage, ROOM)).toEqual([{ kind, end: 'head', space: 1999 }]);
  expect(ends({ ...UP, 'Head space': 2000 }, passage, ROOM)).toEqual([]);
  expect(ends({ ...UP, 'Head space': 900 }, ROOM)).toHaveLength(1);
  expect(ends({ ...UP, 'Head space': 900 }, DOOR, ROOM)).toEqual([]);
  expect(ends(passage, { ...DOWN, 'Head space': 900 }, ROOM)).toEqual([{ kind, end: 'head', space: 900 }]);
  expect(ends({ ...DOWN, 'Foot space': 900 }, passage, ROOM)).toEqual([{ kind, end: 'foot', space: 900 }]);
});

test('what is supposed meanwhile is asked: a passage beyond a side door, openings that face each other', () => {
  const kinds = (...rows: Row[]) => asked(...rows).map(([row, about]) => [row, about.kind]);
  const side: Row = {
    Stage: 'side door',
    Width: 800,
    Height: 2000,
    Wall: 100,
    'Width out': 1000,
    Ceiling: 2400,
  };
  expect(kinds(DOOR, side, PASSAGE, ROOM)).toEqual([[1, 'passage goes on beside the door']]);
  expect(kinds(DOOR, { ...side, Depth: 1500 }, PASSAGE, ROOM)).toEqual([]);
  expect(kinds(DOOR, { ...PASSAGE, Length: '' }, ROOM)).toEqual([[1, 'openings face each other']]);
  expect(kinds(DOOR, ROOM)).toEqual([]);
});

test('a quarter landing as wide as neither flight is not taken for one measured downward', () => {
  const landing = { ...UP, Stage: 'quarter landing', Width: 1100, 'Width out': 1100 };
  const kinds = asked({ ...UP, Width: 900 }, landing, { ...UP, Width: 760 }, ROOM).map(([, a]) => a.kind);
  expect(kinds).not.toContain('landing measured downward');
});

test('problems stand in the order of the rows, errors first, questions last', () => {
  const problems = checkRoute(
    table([
      { ...DOOR, Width: 762, Tape: 3 },
      { ...CORNER, Run: 100 },
      { ...CORNER, Height: '', Hand: 'sideways' },
      { ...UP, Way: '', Going: '' },
    ]),
  );
  const rank = { error: 0, warning: 1, question: 2 };
  const order = problems.map(({ rowIndex, severity }) => 10 * rowIndex + rank[severity]);
  expect(new Set(order).size).toBeGreaterThan(4);
  expect(order).toEqual([...order].sort((a, b) => a - b));
});

// Storeys of 2.2 to 4.5 m, and floors 120 to 600 deep over the ceiling below: common practice, no source.
describe('rises that add up to no storey', () => {
  const climb = (Risers: number, Rise: number, rest: Row = {}) =>
    checkRoute(table([DOOR, { ...UP, Risers, Rise, ...rest }, ROOM])).filter(
      ({ kind }) => kind === 'not a storey' || kind === 'storey against ceiling',
    );
  test('2200 is the least, 4500 the most', () => {
    expect(climb(11, 200)).toEqual([]);
    expect(climb(11, 199.9)).toMatchObject([{ kind: 'not a storey', least: 2200, most: 4500 }]);
    expect(climb(20, 225)).toEqual([]);
  });
  test('a single flight leads 120 to 600 above the ceiling at its foot', () => {
    const under = { 'Foot ceiling': 2400 };
    expect(climb(12, 210, under)).toEqual([]);
    expect(climb(12, 209.9, under)).toMatchObject([
      { kind: 'storey against ceiling', least: 2520, most: 3000 },
    ]);
    expect(climb(15, 200, under)).toEqual([]);
    expect(climb(15, 200.1, under)).toHaveLength(1);
  });
});
