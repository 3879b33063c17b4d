import { callInCells } from '../support/callInCells';

const PIECES = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ['one-piece', 'slate', 1830, 930, 25, 121, 1],
];
type Cell = string | number;
const verdict = (...table: Cell[][]) => {
  const [headers, row] = callInCells('VERDICT', table, PIECES);
  return (name: string) => row![headers!.indexOf(name)];
};

describe('the name of a step', () => {
  test('a number stays a number, a label names the row, and without either its place does', () => {
    // On edge, half of what the width leaves: (125 - 25) / 2.
    const at = (step: Cell) => verdict(['Step', 'Stage', 'Width', 'Height'], [step, 'door', 125, 1981]);
    expect([at(4)('Step'), at(4)('Clearance')]).toEqual([4, 50]);
    expect(at('Front door')('Step')).toBe('Front door');
    expect(at('Front door')('Reason')).toMatch(/step Front door \(door\): /);
    expect(at('')('Step')).toBe('row 1');
    expect(at('')('Verdict')).toBe('goes');
  });

  test('with labels the rows count as they stand; with numbers alone these give the order', () => {
    const stages = (one: Cell, other: Cell) =>
      callInCells(
        'STAGES',
        [
          ['Step', 'Stage', 'Width', 'Height'],
          [one, 'door', 200, 1981],
          [other, 'door', 300, 1981],
        ],
        1830,
        930,
        25,
      )
        .slice(1, 3)
        .map((row) => row[0]);
    expect(stages(2, 1)).toEqual([1, 2]);
    expect(stages('2a', 1)).toEqual(['2a', 1]);
  });
});

test('a survey’s own tape counts over the argument', () => {
  const door = (tape: Cell) =>
    callInCells(
      'VERDICT',
      [
        ['Step', 'Stage', 'Width', 'Height', 'Tape'],
        [1, 'door', 125, 1981, tape],
      ],
      PIECES,
      45,
    )[1]![1];
  // 25 mm + 2 x 45 of allowance + the tape on the width and on the piece: 125 at 5 mm, 127 at 6 mm.
  expect(door('')).toBe('goes');
  expect(door(5)).toBe('goes');
  expect(door(6)).toBe('tight');
  expect(door('a foot')).toBe('not measured');
  // 0 to 40 mm, both ends with them.
  expect(door('0 mm')).toBe('goes');
  expect(door(40)).toBe('tight');
  expect(door(41)).toBe('not measured');
  expect(door(-1)).toBe('not measured');
});

test('a tape written in two columns has to be one', () => {
  const door = (one: Cell, other: Cell) =>
    callInCells(
      'VERDICT',
      [
        ['Step', 'Stage', 'Width', 'Height', 'Tape', 'Tape'],
        [1, 'door', 125, 1981, one, other],
      ],
      PIECES,
      45,
    )[1]![1];
  expect([door(5, 5), door('', 5), door(5, '')]).toEqual(['goes', 'goes', 'goes']);
  expect([door(5, 6), door(6, 5), door('', 6)]).toEqual(['not measured', 'not measured', 'tight']);
});

test('a passage is narrower near its floor: it is carried through the narrow part, or above it', () => {
  const passage = (low: Cell, height: Cell) =>
    callInCells(
      'VERDICT',
      [
        ['Step', 'Stage', 'Width', 'Height', 'Length', 'Low width', 'Low height'],
        [1, 'passage', 900, 2400, 4000, low, height],
      ],
      [PIECES[0]!, ['one-piece', 'slate', 1830, 930, 60, 290, 1]],
    )[1]![1];
  expect(passage('', '')).toBe('goes');
  // On edge it is 60 mm thick: between the narrow part's sides (100 - 60) / 2 = 20, less than the allowance.
  // Above 900 mm of narrow part, 1500 are left for 930 on edge, but raised so far it does not simply go.
  expect(passage(100, 900)).toBe('tight');
  expect(passage(100, 250)).toBe('goes');
});

test('what cannot be judged is not measured, whatever its measures', () => {
  const route = (...stages: Cell[]) =>
    verdict(
      ['Step', 'Stage', 'Width', 'Height', 'Length', 'Rise', 'Going', 'Way'],
      ...stages.map((stage, i): Cell[] => [i + 1, stage, 3000, 2400, 3000, 180, 250, '']),
    );
  expect(route('room', 'door', 'room')('Verdict')).toBe('goes');
  expect(route('door', 'room', 'room')('Verdict')).toBe('not measured');
  expect(route('flight', 'flight')('Reason')).toContain('what lies between is missing');
});
