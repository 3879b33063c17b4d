import type { Cell } from '../../src/core/measures/readQuantity';
import { callInCells } from '../support/callInCells';

// Routes of doors alone, where each verdict is plain: what a reply says of it, and what the check asks to look at first.

const PIECES: Cell[][] = [['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count']];
const build = (name: string, ...sizes: Cell[]): Cell[] => [name, 'cabinet', ...sizes, 60, 1];
const doors = (...widths: Cell[]): Cell[][] => [
  ['Step', 'Stage', 'Width', 'Height'],
  ...widths.map((width, i): Cell[] => [i + 1, 'door', width, 1981]),
];
const reply = (route: Cell[][], ...builds: Cell[][]): string[][] =>
  callInCells('REPLY', route, [...PIECES, ...builds])
    .slice(1)
    .map((row) => row.map(String));
const said = (route: Cell[][], ...builds: Cell[][]): string[][] =>
  reply(route, ...builds).filter(([about]) => !/^(Please|Rests)/.test(about ?? ''));

// 800 x 780 x 760 needs 760 + 2 x 25 of allowance + 2 x 5 of tape, 820, to go and more than 765 to pass at worst.
const CUBE = (name = 'Cube'): Cell[] => build(name, 800, 780, 760);

test('each verdict in its own words, with the place that decides', () => {
  expect(said(doors(900, 830), CUBE())).toEqual([
    [
      'Fits',
      'Cube: by these measures all its pieces have room on the whole way, least of all at the second door.',
    ],
  ]);
  const [tight, change] = said(doors(900, 800), CUBE());
  expect(tight).toEqual([
    'Fits narrowly',
    'Cube: it can pass, but with less room than we want to see, least of all at the second door with the cabinet. We would try it with a frame first.',
  ]);
  expect(change).toEqual([
    'What would change it',
    'Cube: it would fit if the clear width of the second door were 820 mm; 800 mm was noted. Please measure that once more.',
  ]);
  expect(said(doors(900, 700), CUBE())[0]).toEqual([
    'Does not fit',
    'Cube: the cabinet cannot pass the second door as it was measured, whichever way it is turned.',
  ]);
  expect(said(doors(900, ''), CUBE())).toEqual([
    [
      'Not known yet',
      'Cube: before something is known of all places on the way, nothing can be said; it is missing at the second door.',
    ],
  ]);
  // A size that is missing has no place on the way.
  expect(said(doors(900, 830), build('Cube', 800, 780, ''))).toEqual([
    ['Not known yet', 'Cube: before something is known of all places on the way, nothing can be said.'],
  ]);
});

test('the best verdict first; what would change one is said once, of the first in the order of the firm', () => {
  const all = said(doors(900, 800), CUBE('First'), build('Small', 800, 500, 400), CUBE('Other'));
  expect(all.map(([about, words]) => [about, words?.split(':')[0]])).toEqual([
    ['Fits', 'Small'],
    ['Fits narrowly', 'First'],
    ['What would change it', 'First'],
    ['Fits narrowly', 'Other'],
  ]);
});

test('where two places would have to change nothing is said that one alone would do', () => {
  expect(said(doors(800, 800), CUBE()).map(([about]) => about)).toEqual(['Fits narrowly']);
});

test('of what is still open three questions are put, and no more', () => {
  const asked = (route: Cell[][]): number =>
    reply(route, CUBE()).filter(([about]) => about === 'Please tell us').length;
  expect(asked(doors(900, 830))).toBe(1);
  expect(asked(doors('', '', '', '', ''))).toBe(3);
});

describe('what the check asks to look at', () => {
  const verdict = (route: Cell[][]): string[] =>
    (callInCells('VERDICT', route, [...PIECES, CUBE()])[1] ?? []).map(String);
  const reason = (route: Cell[][]): string => verdict(route).join(' | ');
  const ROOM: Cell[] = [3, 'room', 4200, 2400, 5600];
  const whole = (...widths: Cell[]): Cell[][] => [
    ['Step', 'Stage', 'Width', 'Height', 'Length'],
    ...widths.map((width, i): Cell[] => [i + 1, 'door', width, 1981, '']),
    ROOM,
  ];
  test('is said before a verdict that goes, after any other, and not where a measure is missing', () => {
    // 838 is a door leaf of 2 ft 9 in.
    expect(reason(whole(900, 838))).toMatch(
      /\| goes \|.*look first: .*; the check asks to look at step 2 first/,
    );
    expect(reason(whole(900, 830))).not.toMatch(/look/);
    expect(reason(whole(900, 813))).toMatch(/\| tight \|.*; the check asks to look at step 2 first/);
    expect(reason(whole(900, 813))).not.toMatch(/look first: /);
    expect(reason(whole(838, ''))).toMatch(/\| not measured \|/);
    expect(reason(whole(838, ''))).not.toMatch(/look/);
    expect(reason(whole(838, 838))).toMatch(/steps 1 and 2 first/);
  });
});
