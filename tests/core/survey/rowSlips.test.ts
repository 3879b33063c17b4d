import { radians } from '../../../src/core/measures/angle';
import type { Cell } from '../../../src/core/measures/readQuantity';
import { checkRow } from '../../../src/core/survey/checks/checkRow';
import { problemText } from '../../../src/core/survey/words/problemWords';
import type { SurveyProblem } from '../../../src/core/survey/checks/surveyProblem';

type Row = Readonly<Record<string, Cell>>;

const problemsOf = (row: Row): SurveyProblem[] => checkRow(Object.keys(row), Object.values(row));
const kindsOf = (row: Row): string[] => problemsOf(row).map((p) => p.kind);
const textsOf = (row: Row): string => problemsOf(row).map(problemText).join('\n');

const DOOR: Row = { Step: 1, Stage: 'door', Width: 715, Height: 1960 };
// A private stair of Approved Document K: 190/240 is 38.4 degrees, 2R+G 620.
const FLIGHT: Row = { Step: 1, Stage: 'flight', Width: 900, Height: 2000, Rise: 190, Going: 240 };
const SIDE_DOOR: Row = { ...DOOR, Stage: 'side door', Wall: 100, 'Width out': 1000, Ceiling: 2400 };
const HALF: Row = { ...FLIGHT, Stage: 'half landing', Well: 100, Depth: 950 };
// ISO 4190-1: the 630 kg car.
const LIFT: Row = {
  Step: 1,
  Stage: 'lift',
  Width: 800,
  Height: 2100,
  'Width out': 1100,
  Depth: 1400,
  Ceiling: 2200,
  'Rated load': 630,
};
const ROOM: Row = { Step: 1, Stage: 'room', Length: 5600, Width: 4200, Height: 2400 };

test.each<[string, Row]>([
  ['door', DOOR],
  ['flight', FLIGHT],
  ['side door', SIDE_DOOR],
  ['half landing', HALF],
  ['lift', LIFT],
  ['room', ROOM],
  ['passage', { Step: 1, Stage: 'Passage', Width: 900, Height: 2400 }],
  ['corner', { Step: 1, Stage: 'corner', Width: 900, 'Width out': 1200, Height: 2400, Turn: 90 }],
  ['quarter landing', { ...FLIGHT, Stage: 'quarter landing', 'Width out': 900 }],
  ['winder', { ...FLIGHT, Stage: 'winder', Turn: 90 }],
  ['an empty row', { Step: null, Stage: '', Width: 0 }],
])('an ordinary %s has no problem', (_name, row) => {
  expect(textsOf(row)).toBe('');
});

describe('what a stage needs', () => {
  // The table of stages in the reference.
  test.each<[string, string]>([
    ['door', 'Width, Height'],
    ['side door', 'Width, Height, Wall, Width out (passage), Ceiling'],
    ['passage', 'Width, Height'],
    ['corner', 'Width, Width out, Height'],
    ['flight', 'Width, Height (headroom), Rise, Going'],
    ['quarter landing', 'Width, Width out, Height (headroom), Rise, Going'],
    ['half landing', 'Width, Well, Depth, Height (headroom), Rise, Going'],
    ['winder', 'Width, Height (headroom), Turn, Rise, Going'],
    ['lift', 'Width (door), Height (door), Width out (car width), Depth (car depth), Ceiling (car height)'],
    ['room', 'Length, Width, Height'],
  ])('%s: %s', (stage, needed) => {
    const problems = problemsOf({ Step: 1, Stage: stage, Note: 'nothing measured' });
    expect(problems.every((p) => p.kind === 'not measured' && p.severity === 'error')).toBe(true);
    const names = problems.map((p) => problemText(p).split(' is not measured')[0]).sort();
    expect(names).toEqual(needed.split(', ').sort());
  });

  test('a measure without a column says so', () => {
    expect(textsOf({ Step: 1, Stage: 'door', Width: 800 })).toBe(
      'Height is not measured, and a door needs it; the table has no column for it.',
    );
    expect(textsOf({ ...DOOR, Height: '' })).toBe('Height is not measured, and a door needs it.');
  });
});

describe('centimetres, inches, metres and feet typed as mm', () => {
  test.each<[string, Row, string]>([
    ['a door of 76 cm', { ...DOOR, Width: 76 }, '76 cm would be 760 mm'],
    ['a door of 30 in', { ...DOOR, Width: 30 }, '30 in would be 762 mm'],
    ['a door of 0.76 m', { ...DOOR, Width: 0.76 }, '0.76 m would be 760 mm'],
    ['a height of 78 in', { ...DOOR, Height: 78 }, '78 in would be 1981.2 mm'],
    ['a height of 6.5 ft', { ...DOOR, Height: 6.5 }, '6.5 ft would be 1981.2 mm'],
    ['a rise of 19 cm', { ...FLIGHT, Rise: 19 }, '19 cm would be 190 mm'],
    ['a rise of 7.5 in', { ...FLIGHT, Rise: 7.5 }, '7.5 in would be 190.5 mm'],
    ['a going of 24 cm', { ...FLIGHT, Going: 24 }, '24 cm would be 240 mm'],
  ])('%s is refused and the unit named', (_name, row, words) => {
    const [problem] = problemsOf(row);
    expect(problem).toMatchObject({ kind: 'refused', severity: 'error' });
    expect(problemText(problem!)).toContain(words);
  });

  // 198 lies in the range that openings may have, but no door is so low.
  test('a height of 198 cm is possible in mm, and doubted', () => {
    const problem = problemsOf({ ...DOOR, Height: 198 }).find((p) => p.kind === 'unusual');
    expect(problem).toMatchObject({
      severity: 'warning',
      measure: 'height',
      meant: [{ unit: 'cm', value: 1980 }],
    });
  });

  test('a text names its own unit, so nothing is guessed about it', () => {
    const [problem] = problemsOf({ ...DOOR, Width: '76 mm' });
    expect(problemText(problem!)).not.toContain('would be');
  });

  test('no unit is named in which it would be no ordinary door', () => {
    expect(textsOf({ ...DOOR, Width: 7 })).not.toContain('would be');
  });
});

describe('width and height exchanged', () => {
  test.each<[string, Row]>([
    ['door', { ...DOOR, Width: 1960, Height: 715 }],
    ['side door', { ...SIDE_DOOR, Width: 1960, Height: 750 }],
    ['flight', { ...FLIGHT, Width: 2000, Height: 900 }],
  ])('%s', (_name, row) => {
    expect(kindsOf(row)).toContain('width and height exchanged');
    expect(kindsOf(row)).not.toContain('unusual');
  });
  test.each<[string, Row]>([
    ['a pair of doors', { ...DOOR, Width: 1600, Height: 2000 }],
    ['a wide passage', { Step: 1, Stage: 'passage', Width: 2400, Height: 2200 }],
    ['a hatch', { ...DOOR, Width: 900, Height: 600 }],
  ])('%s is none', (_name, row) => {
    expect(kindsOf(row)).not.toContain('width and height exchanged');
  });
});

describe('rise and going exchanged', () => {
  test('240/190 for 190/240', () => {
    expect(kindsOf({ ...FLIGHT, Rise: 240, Going: 190 })).toEqual(['rise and going exchanged']);
  });
  test.each<[string, number, number]>([
    ['an ordinary stair', 190, 240],
    ['equal', 220, 220],
    ['a stair as steep either way', 240, 230],
  ])('%s is none', (_name, rise, going) => {
    expect(kindsOf({ ...FLIGHT, Rise: rise, Going: going })).not.toContain('rise and going exchanged');
  });
});

// Clear opening by Approved Document M: the leaf less a stop of 12 and the open leaf's thickness. Leaves of BS 4787 and
// of whole inches from 2 ft 0 in to 3 ft 0 in, and their thicknesses, from memory.
describe('a door leaf given for the clear opening', () => {
  test.each<[Cell, number, readonly (readonly [thickness: number, clear: number])[]]>([
    [
      610,
      610,
      [
        [35, 563],
        [44, 554],
      ],
    ],
    [
      686,
      686,
      [
        [35, 639],
        [44, 630],
      ],
    ],
    [
      762,
      762,
      [
        [35, 715],
        [44, 706],
      ],
    ],
    [
      838,
      838,
      [
        [35, 791],
        [44, 782],
      ],
    ],
    [
      711,
      711,
      [
        [35, 664],
        [44, 655],
      ],
    ],
    [
      813,
      813,
      [
        [35, 766],
        [44, 757],
      ],
    ],
    [
      914,
      914,
      [
        [35, 867],
        [44, 858],
      ],
    ],
    [
      526,
      526,
      [
        [40, 474],
        [44, 470],
      ],
    ],
    [
      626,
      626,
      [
        [40, 574],
        [44, 570],
      ],
    ],
    [
      726,
      726,
      [
        [40, 674],
        [44, 670],
      ],
    ],
    [
      826,
      826,
      [
        [40, 774],
        [44, 770],
      ],
    ],
    [
      926,
      926,
      [
        [40, 874],
        [44, 870],
      ],
    ],
    [
      1026,
      1026,
      [
        [40, 974],
        [44, 970],
      ],
    ],
    [
      '24 in',
      610,
      [
        [35, 563],
        [44, 554],
      ],
    ],
    [
      '30 in',
      762,
      [
        [35, 715],
        [44, 706],
      ],
    ],
    [
      '2\' 8"',
      813,
      [
        [35, 766],
        [44, 757],
      ],
    ],
    [
      '3\' 0"',
      914,
      [
        [35, 867],
        [44, 858],
      ],
    ],
    [
      '36"',
      914,
      [
        [35, 867],
        [44, 858],
      ],
    ],
    [
      '26 in',
      660,
      [
        [35, 613],
        [44, 604],
      ],
    ],
    [
      '2\' 10"',
      864,
      [
        [35, 817],
        [44, 808],
      ],
    ],
  ])('%p is a leaf of %d', (width, leaf, clears) => {
    const found = problemsOf({ ...DOOR, Width: width });
    const leaves = clears.map(([thickness, clear]) => ({ thickness, clear }));
    expect(found).toEqual([
      expect.objectContaining({ kind: 'door leaf', severity: 'warning', leaf, leaves }),
    ]);
    expect(kindsOf({ ...SIDE_DOOR, Width: width })).toContain('door leaf');
  });
  test.each([611, 685, 715, 763, 760, 800, 774, 825, 900])('%d is no leaf', (width) => {
    expect(kindsOf({ ...DOOR, Width: width })).not.toContain('door leaf');
  });
  test('the column Clear silences it, and a note that says clear makes it suggest that', () => {
    expect(problemsOf({ ...DOOR, Width: 826, Clear: 'yes' })).toEqual([]);
    const noted = textsOf({ ...DOOR, Width: 826, Note: 'measured Clear of the frame' });
    expect(noted).toContain('The note says clear');
    expect(noted).toContain('yes in the column Clear');
    expect(textsOf({ ...DOOR, Width: 826, Note: 'unclear' })).not.toContain('The note says clear');
  });
  test('a passage of that width is a passage', () => {
    expect(kindsOf({ Step: 1, Stage: 'passage', Width: 762, Height: 2400 })).toEqual([]);
  });
});

describe('words that people write for a stage', () => {
  test.each<[string, string]>([
    ['Half-landing', 'half landing'],
    ['quarter\u2010landing', 'quarter landing'],
    ['Side\u2013door', 'side door'],
  ])('%s is taken', (word) => {
    expect(kindsOf({ Step: 1, Stage: word })).not.toContain('unknown stage');
  });
  test.each<[string, readonly string[]]>([
    ['porch', ['passage', 'room']],
    ['Lobby', ['passage', 'room']],
    ['gate', ['door']],
  ])('%s is answered with what to use', (word, nearest) => {
    expect(problemsOf({ Step: 1, Stage: word })).toMatchObject([{ kind: 'unknown stage', nearest }]);
  });
  test.each(['window', 'Hoist', 'crane'])(
    '%s is no stage, and is not taken for one that is spelt alike',
    (word) => {
      expect(kindsOf({ Step: 1, Stage: word })).toEqual(['no stage of ours']);
      expect(textsOf({ Step: 1, Stage: word })).not.toMatch(/winder/);
    },
  );
  test('a character that takes no room is named', () => {
    expect(textsOf({ Step: 1, Stage: 'do\u200bor' })).toContain('"do<U+200B>or"');
    expect(textsOf({ ...DOOR, Width: '715\u200b mm' })).toContain('a character that takes no room');
  });
});

describe('the going of a step', () => {
  const without: Row = { Step: 1, Stage: 'flight', Width: 900, Height: 2000, Rise: 190 };
  test('is also headed Tread depth', () => {
    expect(problemsOf({ ...without, 'Tread depth': 240 })).toEqual([]);
  });
  test('is not Run, and the check says why', () => {
    const problems = problemsOf({ ...without, Run: 240 });
    expect(problems).toContainEqual(
      expect.objectContaining({ kind: 'not measured', measure: 'going', runForGoing: true }),
    );
    expect(textsOf({ ...without, Run: 240 })).toContain('Run is the straight after a turn');
  });
});

describe('headroom taken square to the slope', () => {
  // 2000 plumb is 2000 cos(pitch) square: Approved Document K asks for 2000 plumb.
  test.each([
    [190, 240],
    [200, 230],
    [220, 245],
    [175, 280],
  ])('at %d/%d', (rise, going) => {
    const square = Math.round(2000 * Math.cos(Math.atan2(rise, going)));
    const found = problemsOf({ ...FLIGHT, Height: square, Rise: rise, Going: going });
    const slip = found.find((p) => p.kind === 'headroom square');
    expect(slip).toMatchObject({ severity: 'warning' });
    expect(slip?.kind === 'headroom square' && Math.abs(slip.plumb - 2000)).toBeLessThan(1);
    expect(found.map((p) => p.kind)).not.toContain('unusual');
  });
  test.each<[string, number]>([
    ['the usual headroom', 2000],
    ['a loft stair', 1900],
    ['low either way', 1450],
    ['neither plumb nor square', 1750],
  ])('%s is none', (_name, height) => {
    expect(kindsOf({ ...FLIGHT, Height: height })).not.toContain('headroom square');
  });
  test('a low door is none', () => {
    expect(kindsOf({ ...DOOR, Height: 1567 })).toEqual(['unusual']);
  });
});

// Approved Document K, table 1.1: pitch at most 42 degrees, 550 <= 2R+G <= 700.
describe('steps', () => {
  const kinds = (rise: number, going: number) => kindsOf({ ...FLIGHT, Rise: rise, Going: going });
  test('220/220 is 45 degrees, which the code does not allow', () => {
    expect(problemsOf({ ...FLIGHT, Rise: 220, Going: 220 })).toMatchObject([
      { kind: 'steep', limit: radians(42) },
    ]);
  });
  test('the pitch at 42 degrees', () => {
    expect(kinds(198, 220)).not.toContain('steep');
    expect(kinds(199, 220)).toContain('steep');
  });
  test('above 60 degrees it is a ladder', () => {
    const steep = problemsOf({ ...FLIGHT, Rise: 220, Going: 120 }).find((p) => p.kind === 'steep');
    expect(steep).toMatchObject({ limit: radians(60) });
    expect(problemText(steep!)).toContain('ladder');
  });
  test.each([
    [150, 250, false],
    [150, 249, true],
    [200, 300, false],
    [201, 300, true],
  ])('2R+G of %d/%d', (rise, going, slip) => {
    expect(kinds(rise, going).includes('rises and going')).toBe(slip);
  });
  test.each([
    [150, 260, false],
    [149, 260, true],
    [220, 260, false],
    [221, 260, true],
  ])('a rise of %d (going %d) out of the usual', (rise, going, slip) => {
    expect(problemsOf({ ...FLIGHT, Rise: rise, Going: going }).some((p) => p.kind === 'unusual')).toBe(slip);
  });
  test("the whole flight's rise given for one step's", () => {
    expect(kindsOf({ ...FLIGHT, Rise: 2600, Risers: 14 })).toEqual(['refused', 'rise of the flight']);
    expect(kindsOf({ ...FLIGHT, Rise: 2600, Risers: 3 })).toEqual(['refused']);
  });
  test("a flight's length against its risers", () => {
    // 12 goings of 240 on a slope of 190: 12 x 306.1 = 3673.
    expect(kindsOf({ ...FLIGHT, Risers: 13, Length: 3673 })).toEqual([]);
    expect(kindsOf({ ...FLIGHT, Risers: 13, Length: 2880 })).toEqual([]);
    expect(kindsOf({ ...FLIGHT, Risers: 13, Length: 1800 })).toEqual(['flight length']);
    expect(kindsOf({ ...FLIGHT, Risers: 13, Length: 5000 })).toEqual(['flight length']);
  });
});

describe('other slips', () => {
  // Approved Document K 1.20: a landing is at least as long as the flight is wide.
  test('a landing shallower than its flight is wide', () => {
    expect(kindsOf({ ...HALF, Depth: 899 })).toEqual(['landing shallow']);
    expect(kindsOf({ ...HALF, Depth: 900 })).toEqual([]);
  });
  test('a ceiling lower than the door under it', () => {
    expect(kindsOf({ ...SIDE_DOOR, Height: 2100, Ceiling: 2099 })).toEqual(['ceiling below the door']);
    expect(kindsOf({ ...SIDE_DOOR, Height: 2100, Ceiling: 2100 })).toEqual([]);
    expect(kindsOf({ ...LIFT, Height: 2300 })).toEqual(['ceiling below the door']);
  });
  test('a stage misspelt', () => {
    expect(problemsOf({ ...DOOR, Stage: 'dor' })).toMatchObject([
      { kind: 'unknown stage', severity: 'error', got: 'dor', nearest: ['door'] },
    ]);
    expect(textsOf({ ...DOOR, Stage: 'garden' })).toBe('"garden" is no stage known here.');
    expect(kindsOf({ ...DOOR, Stage: '' })).toEqual(['no stage']);
  });
  test('a step without a number, and one that is not whole', () => {
    expect(kindsOf({ ...DOOR, Step: null })).toEqual(['no step number']);
    expect(kindsOf({ ...DOOR, Step: 'first' })).toEqual([]);
    expect(kindsOf({ ...DOOR, Step: 1.5 })).toEqual(['not a whole step']);
    expect(kindsOf({ Stage: 'door', Width: 715, Height: 1960 })).toEqual([]);
  });
  test('a cell that cannot be read says what came and what to write', () => {
    expect(textsOf({ ...DOOR, Width: '71,5 cm' })).toMatch(/"71,5 cm".*comma.*write a number of mm/s);
    expect(textsOf({ ...DOOR, Width: '715' })).toMatch(/needs its unit/);
    expect(textsOf({ ...DOOR, Width: { code: '#N/A' } })).toBe(
      'Width cannot be taken: the cell holds the error #N/A.',
    );
  });
  test('a refused measure that the stage does not use is left alone', () => {
    expect(kindsOf({ ...DOOR, Going: 'unknown', Ceiling: { code: '#N/A' } })).toEqual([]);
  });
  test('a refused optional measure is an error, a refused run only a warning', () => {
    expect(problemsOf({ ...DOOR, Wall: 'thick' })).toMatchObject([{ kind: 'refused', severity: 'error' }]);
    expect(problemsOf({ ...DOOR, Run: 'long' })).toMatchObject([{ kind: 'refused', severity: 'warning' }]);
  });
  test('persons given for the rated load', () => {
    expect(problemsOf({ ...LIFT, 'Rated load': 8 })).toMatchObject([
      { kind: 'refused', measure: 'ratedLoad' },
    ]);
  });
});

test('errors come before warnings, and only warnings say so', () => {
  const found = problemsOf({ ...SIDE_DOOR, Width: 762, Wall: '' });
  expect(found.map((p) => p.severity)).toEqual(['error', 'warning']);
  expect(found.map((p) => problemText(p).startsWith('Check: '))).toEqual([false, true]);
});

test('steps are many, and every sentence says so', () => {
  const STEPS: Row = { Step: 1, Stage: 'steps', Width: 1000, Risers: 3, Rise: 170, Going: 300 };
  expect(textsOf({ ...STEPS, Rise: '' })).toBe('Rise is not measured, and steps need it.');
  expect(textsOf({ ...STEPS, Hand: 'left' })).toContain('but steps turn nowhere');
  expect(textsOf({ ...STEPS, 'Car width': 100 })).toContain('is not used for steps.');
  expect(textsOf({ ...STEPS, Run: 500 })).toContain('but at steps it is not used');
});

// The columns as the reference says them: Low width is the clear width up to Low height, at a passage or a flight.
describe('a part that is narrower near the floor', () => {
  const PASSAGE: Row = { Step: 1, Stage: 'passage', Width: 900, Height: 2400, Length: 3000 };
  test('is taken with its width and its height', () => {
    expect(kindsOf({ ...PASSAGE, 'Low width': 790, 'Low height': 700 })).toEqual([]);
    expect(kindsOf({ ...FLIGHT, 'Low width': 790, 'Low height': 1000 })).toEqual([]);
  });
  test('without its height it is asked how high it stands', () => {
    const found = problemsOf({ ...PASSAGE, 'Low width': 790 });
    expect(found).toMatchObject([{ kind: 'height of the narrow part asked', severity: 'question' }]);
    expect(problemText(found[0]!)).toContain('taken to reach up to the ceiling');
  });
  test.each<[string, Row, string]>([
    ['a height alone', { ...PASSAGE, 'Low height': 700 }, 'Low width is not'],
    ['no narrower', { ...PASSAGE, 'Low width': 900, 'Low height': 700 }, 'the lesser of the two'],
    ['at a door', { ...DOOR, 'Low width': 600 }, 'at a door it is not used'],
    [
      'at steps',
      { Step: 1, Stage: 'steps', Width: 900, Risers: 3, Rise: 170, Going: 300, 'Low height': 900 },
      'at steps it is not used',
    ],
  ])('%s is not passed over in silence', (_name, row, words) => {
    const found = problemsOf(row);
    expect(found).toHaveLength(1);
    expect(found[0]!.severity).toBe('warning');
    expect(problemText(found[0]!)).toContain(words);
  });
});
