import type { Cell } from '../../../src/core/measures/readQuantity';
import { checkPieces } from '../../../src/core/survey/checks/checkPieces';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import { nearestWord } from '../../../src/core/survey/table/nearestWord';
import { readPieces } from '../../../src/core/survey/table/readPieces';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { stageNamed } from '../../../src/core/survey/table/stageNamed';
import { meantAs, problemText } from '../../../src/core/survey/words/problemWords';
import { problemTexts } from '../../../src/core/survey/words/problemTexts';
import { surveyTable } from '../../support/surveyTable';

/**
 * What is said at the edge of what is usual, possible or known, in full: by the worksheet contract and the ranges that each
 * kind of stage names, worked out here by hand.
 */
type Row = Readonly<Record<string, Cell>>;

const DOOR: Row = { Stage: 'door', Width: 715, Height: 1960 };
const ROOM: Row = { Stage: 'room', Length: 5600, Width: 4200, Height: 2400 };
const CORNER: Row = { Stage: 'corner', Width: 900, 'Width out': 1000, Height: 2400 };
const FLIGHT: Row = { Stage: 'flight', Width: 900, Height: 2000, Rise: 190, Going: 240 };
const QUARTER: Row = {
  ...{ Stage: 'quarter landing', Width: 900, 'Width out': 1000, Height: 2000, Rise: 190, Going: 240 },
};

const numbered = (rows: readonly Row[]): Cell[][] =>
  surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })));
const said = (...rows: Row[]): string[] => checkRoute(numbered(rows)).map(problemText);
const read = (row: Row) => readRoute(surveyTable([row])).rows[0];
const kinds = (...rows: Row[]): string[] => checkRoute(numbered(rows)).map(({ kind }) => kind);

describe('a table read', () => {
  test('without the column Step is asked for the column, and no row for its number', () => {
    expect(checkRoute(surveyTable([DOOR, ROOM])).map(problemText)).toEqual(['There is no column Step.']);
  });
  test('without the column Stage is asked for the column once', () => {
    expect(checkRoute(surveyTable([{ Step: 1, Width: 715, Height: 1960 }])).map(problemText)).toEqual([
      'There is no column Stage.',
    ]);
  });
  test('a step of 1 is the least whole one', () => {
    const at = (step: number) => checkRoute(surveyTable([{ Step: step, ...ROOM }])).map(({ kind }) => kind);
    expect(at(1)).toEqual([]);
    expect(at(-1)).toEqual(['not a whole step']);
  });
  test('no step is numbered 0, or without end', () => {
    const step = (cell: Cell): number | undefined => read({ Step: cell, ...DOOR })?.step;
    for (const cell of ['0', 'three', '1.5', Infinity, -Infinity, NaN, true] as Cell[])
      expect([cell, step(cell)]).toEqual([cell, NaN]);
    expect([step('12'), step(' 7 '), step(-1), step(2.5)]).toEqual([12, 7, -1, 2.5]);
  });
  test('a row of which only a hand, a way or a doubt is filled in is a row', () => {
    const row = (more: Row) => read({ ...DOOR, Stage: '', Width: '', Height: '', ...more });
    expect(row({})).toBeUndefined();
    for (const more of [
      { Hand: 'left' },
      { Way: 'up' },
      { Tape: 'long' },
      { Note: 'x' },
      { Survey: 'A' },
    ] as Row[])
      expect([more, row(more)?.stageText]).toEqual([more, '']);
  });
  test('a column of another stage is told at the row where it is filled in', () => {
    const rows = [ROOM, ROOM, { ...DOOR, 'Car depth': 1400 }, ROOM];
    const found = checkRoute(numbered(rows)).filter(({ kind }) => kind === 'column of another stage');
    expect(found.map(({ rowIndex }) => rowIndex)).toEqual([2]);
    expect(found.map(problemText)).toEqual([
      'Check: Car depth is filled in, but it belongs to lift and is not used for a door.',
    ]);
  });
  test('problems stand by row, errors first, questions last', () => {
    const lost = { ...FLIGHT, Rise: 'high', 'Low width': 700, Hand: 'left' };
    const found = checkRoute(numbered([{ ...DOOR, Width: 5 }, lost, ROOM]));
    expect(found.map(({ rowIndex, severity }) => `${rowIndex} ${severity}`)).toEqual([
      '0 error',
      '1 error',
      '1 warning',
      '1 question',
      '1 question',
    ]);
  });
  test('texts of one row stand one after the other, of others apart', () => {
    const problems = checkRoute(surveyTable([{ Step: 1, Stage: 'door', Width: 5, Height: 6 }]));
    const [header, row] = problemTexts(problems, 1);
    expect(header).toBe('');
    expect(row).toBe(problems.map(problemText).join(' '));
    expect(problems.length).toBeGreaterThan(1);
  });
});

describe('columns that hold one thing twice', () => {
  const twice = (heading: string, one: Cell, other: Cell, row: Row = DOOR) => {
    const [headers, cells] = surveyTable([{ Step: 1, ...row }]) as [Cell[], Cell[]];
    return readRoute([
      [...headers.filter((h) => h !== heading), heading, heading],
      [...cells.filter((_, i) => headers[i] !== heading), one, other],
    ]).rows[0];
  };
  test('take what one of them says, and nothing where they differ', () => {
    expect(twice('Width', 700, null)?.measures.width).toBe(700);
    expect(twice('Width', null, 700)?.measures.width).toBe(700);
    expect(twice('Width', 700, '70 cm')?.measures.width).toBe(700);
    const apart = twice('Width', 700, 800);
    expect(apart?.measures.width).toBeUndefined();
    expect(apart?.refused).toEqual([
      { measure: 'width', got: 800, why: 'two columns hold it and they do not agree, 700 and 800' },
    ]);
  });
  test('a step that is written twice has to be one', () => {
    expect(twice('Step', 3, 3)?.step).toBe(3);
    expect(twice('Step', null, 3)?.step).toBe(3);
    expect(twice('Step', 3, '')?.step).toBe(3);
    expect(twice('Step', 3, 4)?.step).toBeNaN();
    expect(twice('Step', 3, 'third')?.step).toBeNaN();
  });
  test('a stage that is written twice has to be one', () => {
    expect(twice('Stage', 'door', '')?.stage).toBe('door');
    expect(twice('Stage', '', 'door')?.stage).toBe('door');
    expect(twice('Stage', 'door', 'door')?.stage).toBe('door');
    expect(twice('Stage', 'door', 'room')).toMatchObject({ stage: undefined, stageText: 'door / room' });
  });
  test('a 0 that says that there is none says so in either', () => {
    const landing = { ...QUARTER, Stage: 'half landing', Depth: 900 };
    for (const [one, other] of [
      [0, null],
      [null, 0],
    ] as const)
      expect([one, twice('Well', one, other, landing)?.measures.well]).toEqual([
        one,
        read({ Step: 1, ...landing, Well: 0 })?.measures.well,
      ]);
  });
});

describe('a cell that is an error', () => {
  test('in a column of words, in the tape and in the name of a survey', () => {
    const error = { code: '#REF!' } as Cell;
    expect(read({ Step: 1, ...CORNER, Hand: error })?.doubts).toEqual([
      { column: 'Hand', got: '#REF!', allowed: 'left or right' },
    ]);
    expect(read({ Step: 1, ...CORNER, Tape: error })?.doubts).toEqual([
      { column: 'Tape', got: '#REF!', allowed: 'a length of 0 to 40 mm' },
    ]);
    expect(read({ Survey: error, Step: 1, ...CORNER })?.survey).toBe('#REF!');
    expect(read({ Survey: 7, Step: 1, ...CORNER })?.survey).toBe('7');
  });
  test('what is not said is not there at all', () => {
    const row = read({ Step: 1, ...CORNER, Hand: '', Way: '', Tape: '', Clear: '' });
    expect(Object.keys(row ?? {})).not.toEqual(
      expect.arrayContaining([expect.stringMatching(/^(hand|way|tape|clear|doubts|fault|label)$/)]),
    );
  });
  test('a size of a piece', () => {
    const [piece] = readPieces(
      surveyTable([
        ...[{ Build: 'A', Piece: 'legs', Length: { code: '#N/A' }, Breadth: 200, Thickness: 200 } as Row],
      ]),
    ).pieces;
    expect(piece).toMatchObject({
      sizes: { breadth: 200, thickness: 200 },
      refused: [{ measure: 'length', got: '#N/A', why: 'the cell holds the error #N/A' }],
    });
    expect(Object.keys(piece?.sizes ?? {})).toEqual(['breadth', 'thickness']);
  });
});

describe('a measure', () => {
  test('the ends of what is possible are possible', () => {
    expect(read({ Step: 1, ...DOOR, Width: 100 })?.measures.width).toBe(100);
    expect(read({ Step: 1, ...DOOR, Width: 20000 })?.measures.width).toBe(20000);
    expect(read({ Step: 1, ...DOOR, Width: 99 })?.refused[0]?.why).toBe(
      '99 was typed, and allowed is 100 to 20000 mm; 99 cm would be 990 mm',
    );
    expect(read({ Step: 1, ...FLIGHT, Risers: 12.5 })?.refused[0]?.why).toBe(
      '12.5 was typed, and allowed is a whole number, 1 to 100',
    );
  });
  test('"open" is the sky where a ceiling may be it, and no width', () => {
    expect(read({ Step: 1, ...FLIGHT, Stage: 'steps', Height: 'open' })?.measures.height).toBe(20000);
    expect(read({ Step: 1, ...DOOR, Width: 'open' })?.refused).toHaveLength(1);
    // The sky is no unusual height; 20 m between walls are doubted.
    expect(said({ ...FLIGHT, Stage: 'steps', Height: 'open', Risers: 3, Way: 'up' }, ROOM)).toEqual([]);
    expect(said({ ...ROOM, Width: 20000 })).toEqual([
      expect.stringMatching(/^Check: Width is 20000 mm, and usual is \d+ to \d+ mm\.$/),
    ]);
  });
  test('one that the stage does not use is not held against anything', () => {
    expect(said({ ...ROOM, Rise: 900 })).toEqual([]);
  });
  test('a run is held against what is usual wherever it counts', () => {
    expect(said({ ...CORNER, Run: 90000 }, ROOM)).toEqual([
      expect.stringMatching(/^Check: Run is 90000 mm, and usual is/),
    ]);
  });
  test('a going that is missing beside a run is asked about, another measure is not', () => {
    expect(said({ ...FLIGHT, Going: '', Run: 240, Way: 'up' }, ROOM)[0]).toBe(
      'Going is not measured, and a flight needs it. Run is filled in, but Run is the straight after a turn: is it the Going of a step, from nosing to nosing?',
    );
    expect(said({ ...FLIGHT, Rise: '', Run: 240, Way: 'up' }, ROOM)[0]).toBe(
      'Rise is not measured, and a flight needs it.',
    );
  });
  test('none, said plainly, is not out of the usual; a bare 0 may be an empty cell', () => {
    const side = { Stage: 'side door', Width: 715, Height: 1960, 'Width out': 1000, Ceiling: 2400 };
    expect(said({ ...side, Wall: '0 mm', Depth: 900, Run: 3000 }, ROOM)).toEqual([]);
    expect(said({ ...side, Wall: '20 mm', Depth: 900, Run: 3000 }, ROOM)).toEqual([
      'Check: Wall is 20 mm, and usual is 50 to 700 mm.',
    ]);
  });
  test('a turn out of the usual is told in degrees, and no unit of length is meant', () => {
    expect(said({ ...CORNER, Turn: 2 }, ROOM)).toEqual([
      'Check: Turn is 2 degrees, and usual is 30 to 120 degrees.',
    ]);
  });
});

describe('slips of a stair', () => {
  const up = { ...FLIGHT, Way: 'up' };
  test('headroom taken square to the slope: 1899 at the most, and plumb 1940 to 2150', () => {
    // tan(pitch) = 3 / 4: plumb is 5 / 4 of what is square to the slope.
    const at = (height: number): string[] =>
      kinds({ ...up, Rise: 180, Going: 240, Height: height }, ROOM).filter(
        (kind) => kind === 'headroom square',
      );
    expect(at(1720)).toEqual(['headroom square']);
    expect(at(1721)).toEqual([]);
    expect(at(1552)).toEqual(['headroom square']);
    expect(at(1551)).toEqual([]);
    // Of a gentle stair the two are nearly one.
    const gentle = (height: number) =>
      kinds({ ...up, Rise: 90, Going: 390, Height: height }, ROOM).includes('headroom square');
    expect([1899, 1900, 1901].map(gentle)).toEqual([true, false, false]);
  });
  test('a length is held against risers from two on, and against what the going makes level', () => {
    const length = (risers: number, mm: number) =>
      kinds({ ...up, Rise: 180, Going: 240, Risers: risers, Length: mm }, ROOM).includes('flight length');
    // From first nosing to last 12 goings of 240 level, 2880; 300 each along the slope, 3600; one more going, 3840.
    expect(length(13, 2592)).toBe(false);
    expect(length(13, 2591)).toBe(true);
    expect(length(13, 4224)).toBe(false);
    expect(length(13, 4225)).toBe(true);
    // Of two risers one going, or 300; of a single one no length at all.
    expect(length(2, 594)).toBe(false);
    expect(length(2, 595)).toBe(true);
    expect(length(1, 3000)).toBe(false);
    expect(
      said({ ...up, Rise: 180, Going: 240, Risers: 13, Length: 2000 }, ROOM).filter((s) => /Length/.test(s)),
    ).toEqual(['Check: Length is 2000 mm, but 13 risers make a flight of about 3600 mm.']);
  });
  test('the rise of a whole flight, over its risers', () => {
    expect(said({ ...up, Rise: 2600, Risers: 13 }, ROOM)).toEqual(
      expect.arrayContaining([
        'Check: Rise is 2600 mm, which looks like the whole flight: over 13 risers it would be 200 mm a step.',
      ]),
    );
    // A rise of 1000 is possible, so nothing is refused.
    expect(kinds({ ...up, Rise: 1000, Risers: 5 }, ROOM)).not.toContain('rise of the flight');
  });
  test('steps and pitch in words', () => {
    expect(said({ ...up, Rise: 220, Going: 220 }, ROOM)).toContain(
      'Check: Rise and Going make a pitch of 45 degrees, and a private stair has at most 42.',
    );
    expect(said({ ...up, Rise: 260, Going: 120 }, ROOM)).toContain(
      'Check: Rise and Going make a pitch of 65.2 degrees, and above 60 a stair is climbed as a ladder.',
    );
  });
  test('nothing of a stair is said of what is none, or before both of its measures are there', () => {
    expect(said({ ...ROOM, Rise: 240, Going: 190 })).toEqual([]);
    expect(kinds({ ...up, Rise: '' }, ROOM)).toEqual(['not measured']);
    expect(kinds({ ...QUARTER, Depth: 500 })).not.toContain('landing shallow');
  });
  test('a climb of ten risers is held against a storey, a lesser one is not', () => {
    const climb = (risers: number, rise: number) =>
      kinds({ ...up, Rise: rise, Risers: risers }, ROOM).filter((kind) => kind === 'not a storey');
    expect(climb(10, 215)).toEqual(['not a storey']);
    expect(climb(9, 215)).toEqual([]);
    expect(climb(10, 220)).toEqual([]);
  });
  test('two storeys in one climb are two', () => {
    // Twice 3000 in two flights with a landing between: 32 risers of 187.5.
    const flight = { ...up, Rise: 187.5, Risers: 16, Going: 250 };
    const landing = { ...QUARTER, Stage: 'half landing', Well: 100, Depth: 900, Rise: 187.5, Going: 250 };
    expect(kinds(flight, landing, flight, ROOM)).not.toContain('not a storey');
    // 100 risers of 150 are 15000: four storeys of 3750.
    const high = { ...up, Rise: 150, Risers: 50, Going: 300 };
    expect(kinds(high, { ...landing, Rise: 150, Going: 300 }, high, ROOM)).not.toContain('not a storey');
    // 34 of 135 are 4590, too much for one storey; two are usually 4400 at the least.
    const low = { ...up, Rise: 135, Risers: 17, Going: 300 };
    expect(said(low, { ...landing, Rise: 135, Going: 300 }, low, ROOM)).toContain(
      'Check: 34 Risers make a climb of 4590 mm, and from floor to floor it is usually 2200 to 4500 mm; count them again.',
    );
  });
  test('one flight of several is not held against the ceiling at its foot', () => {
    const one = { ...up, Rise: 190, Risers: 7, 'Foot ceiling': 2400 };
    const landing = { ...QUARTER, Stage: 'half landing', Well: 100, Depth: 900 };
    expect(kinds(one, landing, one, ROOM)).not.toContain('storey against ceiling');
    expect(said({ ...one, Risers: 11 }, ROOM)).toContain(
      'Check: 11 Risers of 190 mm make a climb of 2090 mm, but above the Foot ceiling of 2400 mm the next floor is usually at 2520 to 3000 mm.',
    );
  });
});

describe('width and height exchanged', () => {
  test('where each would be usual as the other, and nowhere else', () => {
    expect(kinds({ ...DOOR, Width: 1960, Height: 715 })).toContain('width and height exchanged');
    expect(kinds({ ...DOOR, Width: 1960, Height: '' })).not.toContain('width and height exchanged');
    expect(kinds({ ...DOOR, Width: '', Height: 715 })).not.toContain('width and height exchanged');
    expect(kinds({ ...ROOM, Width: 2400, Height: 1000 })).not.toContain('width and height exchanged');
  });
});

describe('a space at the end of a stair beside a corner, less than the corner is wide by more than two tapes', () => {
  const fault = (...rows: Row[]): string[] =>
    said(...rows).filter((text) => text.startsWith("The space at the stair's end"));
  const words =
    "The space at the stair's end is 889 mm, less than the 900 mm that the turn beside it is wide; one of the two is wrong.";
  const up = { ...FLIGHT, Way: 'up' };
  const down = { ...FLIGHT, Way: 'down' };
  const corner = { ...CORNER, 'Width out': 900 };
  test.each<[string, Row[]]>([
    ['up from the corner, at its foot', [corner, { ...up, 'Foot space': 889 }]],
    ['down from the corner, at its head', [corner, { ...down, 'Head space': 889 }]],
    ['up to the corner, at its head', [{ ...up, 'Head space': 889 }, corner]],
    ['down to the corner, at its foot', [{ ...down, 'Foot space': 889 }, corner]],
    ['either way, at both', [corner, { ...FLIGHT, 'Foot space': 889, 'Head space': 889 }]],
  ])('%s', (_, rows) => {
    expect(fault(...rows, ROOM)).toEqual([words]);
  });
  test.each<[string, Row[]]>([
    ['as wide but for two tapes', [corner, { ...up, 'Foot space': 890 }]],
    ['at the other end', [corner, { ...up, 'Head space': 889 }]],
    ['at the other end, down', [{ ...down, 'Head space': 889 }, corner]],
    ['either way, at one end only', [corner, { ...FLIGHT, 'Foot space': 889, 'Head space': 1200 }]],
    [
      'a corner that is not measured',
      [
        { ...corner, Width: '' },
        { ...up, 'Foot space': 889 },
      ],
    ],
    ['a door in place of a stair', [corner, { ...DOOR, 'Foot space': 300 }]],
    ['a door in place of a corner', [DOOR, { ...up, 'Foot space': 300 }]],
  ])('not %s', (_, rows) => {
    expect(fault(...rows, ROOM)).toEqual([]);
  });
});

describe('what is asked', () => {
  const up = { ...FLIGHT, Way: 'up' };
  const asked = (...rows: Row[]): string[] =>
    said(...rows)
      .filter((text) => text.startsWith('Ask: '))
      .map((text) => text.slice(5));
  test('a landing without a flight on either side', () => {
    const text = (side: string): string =>
      `There is no flight ${side} this landing: a flight as wide and steep as the landing says, and longer than the piece, is supposed there.`;
    expect(asked({ ...QUARTER, Way: 'up' }, { ...up, Width: 1000 }, ROOM)).toEqual([text('before')]);
    expect(asked(up, { ...QUARTER, Way: 'up' }, ROOM)).toEqual([text('after')]);
    expect(asked(up, { ...QUARTER, Way: 'up' }, { ...up, Width: 1000 }, ROOM)).toEqual([]);
  });
  test('a landing whose two widths are the flights the other way round', () => {
    const rows = (width: Cell, out: Cell, lower: Cell, upper: Cell): Row[] => [
      ...[
        { ...up, Width: lower },
        { ...QUARTER, Way: 'up', Width: width, 'Width out': out },
      ],
      ...[{ ...up, Width: upper }, ROOM],
    ];
    const exchanged = (...widths: [Cell, Cell, Cell, Cell]): boolean =>
      asked(...rows(...widths)).some((text) => text.startsWith("A landing's Width is the lower flight's"));
    expect(exchanged(1000, 900, 900, 1000)).toBe(true);
    // Within two tapes of 5 on each side it is as written.
    expect(exchanged(1010, 890, 900, 1000)).toBe(true);
    expect(exchanged(1011, 900, 900, 1000)).toBe(false);
    expect(exchanged(900, 1000, 900, 1000)).toBe(false);
    expect(exchanged(905, 905, 910, 900)).toBe(false);
    for (const missing of [0, 1, 2, 3]) {
      const widths: [Cell, Cell, Cell, Cell] = [1000, 900, 900, 1000];
      widths[missing] = '';
      expect([missing, exchanged(...widths)]).toEqual([missing, false]);
    }
    // A passage behind it is no upper flight.
    const [lower, landing] = rows(1000, 900, 900, 1000) as [Row, Row];
    const passage = { Stage: 'passage', Width: 1000, Height: 2400, Length: 3000 };
    expect(asked(lower, landing, passage, ROOM).join()).not.toContain('measured downward');
    expect(asked(passage, landing, { ...up, Width: 1000 }, ROOM).join()).not.toContain('measured downward');
  });
  test('a run beside the space of a stair, where both are known', () => {
    const corner = { ...CORNER, Run: 300, 'Width out': 900 };
    const differs = (first: Row, ...rows: Row[]): string[] =>
      asked(first, ...rows, ROOM).filter((text) => text.startsWith('Run is'));
    const text = (space: number, beside: number): string =>
      `Run is 300 mm, but the space of ${space} mm at the stair's end leaves ${beside} mm beside the turn: which is right? Both have to go.`;
    expect(differs(corner, { ...up, 'Foot space': 1500 })).toEqual([text(1500, 600)]);
    // 895 is less than the turn is wide, by less than two tapes: nothing is left beside it.
    expect(differs(corner, { ...up, 'Foot space': 895 })).toEqual([text(895, 0)]);
    expect(differs(corner, { ...up, 'Foot space': 1210 })).toEqual([]);
    expect(differs({ ...corner, Run: '' }, { ...up, 'Foot space': 1500 })).toEqual([]);
    expect(differs({ ...corner, Width: '' }, { ...up, 'Foot space': 1500 })).toEqual([]);
    expect(differs(corner, { ...DOOR, 'Foot space': 1500 })).toEqual([]);
  });
  test('the straight between two turns is the lengths of passages and the walls of doors, and no other length', () => {
    const passage = { Stage: 'passage', Width: 1000, Height: 2400, Length: 700 };
    const between = (...rows: Row[]): string[] =>
      asked({ ...CORNER, Run: '0 mm' }, ...rows, CORNER, ROOM).filter((text) => text.includes('lie between'));
    expect(between(passage)).toEqual([
      'Only 700 mm lie between this turn and the one before: to which Hand does each turn, left or right?',
    ]);
    expect(between({ ...ROOM, Length: 700, Width: 700 })).toEqual([]);
  });
});

describe('a space at the end of a stair', () => {
  const asked = (...rows: Row[]): string[] => said(...rows).filter((text) => text.startsWith('Ask: '));
  const turn = (end: string): string =>
    `Ask: The space at the ${end} of this flight is 1500 mm, shorter than a long piece: does the way go straight on there, or does it turn? If it turns, add the corner or side door.`;
  const up = { ...FLIGHT, Way: 'up' };
  const down = { ...FLIGHT, Way: 'down' };
  test('is asked about at its own end, whichever way the stair goes', () => {
    expect(asked(ROOM, { ...up, 'Foot space': 1500 }, ROOM)).toEqual([turn('foot')]);
    expect(asked(ROOM, { ...up, 'Head space': 1500 }, ROOM)).toEqual([turn('head')]);
    expect(asked(ROOM, { ...down, 'Foot space': 1500 }, ROOM)).toEqual([turn('foot')]);
    expect(asked(ROOM, { ...down, 'Head space': 1500 }, ROOM)).toEqual([turn('head')]);
  });
  test('of two measures of one floor the one beside it counts', () => {
    const passage = { Stage: 'passage', Width: 1000, Height: 2400, Length: 3000 };
    const differ = (...rows: Row[]): number =>
      asked(...rows).filter((text) => text.includes('are the same floor')).length;
    expect(differ(passage, { ...up, 'Foot space': 2500 }, ROOM)).toBe(1);
    expect(differ(passage, { ...up, 'Head space': 2500 }, ROOM)).toBe(0);
    expect(differ(passage, { ...down, 'Head space': 2500 }, ROOM)).toBe(1);
    expect(differ(passage, { ...down, 'Foot space': 2500 }, ROOM)).toBe(0);
    expect(differ(ROOM, { ...up, 'Head space': 2500 }, passage, ROOM)).toBe(1);
    expect(differ(ROOM, { ...down, 'Foot space': 2500 }, passage, ROOM)).toBe(1);
    expect(differ(ROOM, { ...down, 'Head space': 2500 }, passage, ROOM)).toBe(0);
  });
  test('noted where a landing is belongs to the other end, and is called by its column', () => {
    const landing = { ...QUARTER, Way: 'up' };
    expect(asked(ROOM, { ...up, 'Head space': 2500 }, landing, { ...up, Width: 1000 }, ROOM)).toEqual([
      'Ask: Head space is filled in, but by Way and the order of the rows the head of this flight is at the landing, which measures it: is it the space at the foot?',
    ]);
    expect(asked(up, landing, { ...up, Width: 1000, 'Foot space': 2500 }, ROOM)).toEqual([
      'Ask: Foot space is filled in, but by Way and the order of the rows the foot of this flight is at the landing, which measures it: is it the space at the head?',
    ]);
  });
});

describe('a table of pieces', () => {
  const HEADINGS = ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'];
  const pieces = (...rows: Cell[][]) => checkPieces([HEADINGS, ...rows]);
  const words = (...rows: Cell[][]): string[] => pieces(...rows).map(problemText);
  const slate = (name: string, count = 1, build = 'A'): Cell[] => [build, name, 1830, 930, 25, 119, count];

  test('sections of a slate that are not there, by their numbers and by their count', () => {
    expect(words(slate('slate 1 of 3'), slate('slate 3 of 3'))).toEqual([
      'Check: Build "A" has a slate in 3 sections, but section 2 is not there.',
    ]);
    expect(words(slate('slate 2 of 4'))).toEqual([
      'Check: Build "A" has a slate in 4 sections, but sections 1, 3 and 4 are not there.',
    ]);
    expect(pieces(slate('slate 2 of 4'))).toMatchObject([{ of: 4, found: 1, missing: [1, 3, 4] }]);
    expect(words(slate('slate, three sections', 2))).toEqual([
      'Check: Build "A" has a slate in 3 sections, but 2 are listed.',
    ]);
    expect(words(slate('slate, three sections', 1))).toEqual([
      'Check: Build "A" has a slate in 3 sections, but 1 is listed.',
    ]);
    expect(words(slate('slate, three sections', 3))).toEqual([]);
    expect(words(slate('slate 1 of 1'))).toEqual([]);
  });
  test('a part that every other build has, and one that only some have', () => {
    const legs = (build: string): Cell[] => [build, 'legs', 700, 200, 200, 15, 4];
    const three = ['A', 'B', 'C'].map((build) => slate('slate', 1, build));
    expect(words(...three, legs('A'), legs('B'))).toEqual([
      'Check: Build "C" has no legs, while build "A" has.',
    ]);
    expect(words(...three, legs('A'))).toEqual([]);
  });
  test('a piece without a name, and one with a size missing', () => {
    expect(words(['A', '', 900, 300, 200, 20, 1])).toEqual(['Check: The piece has no name.']);
    expect(words(['A', 'legs', 200, '', 900, 20, 1])).toEqual(['Breadth is not given.']);
    expect(words(['A', 'legs', 200, 900, '', 20, 1])).toEqual(['Thickness is not given.']);
  });
  test('a mass for several at once, for one at the most, and in pounds', () => {
    // 1830 x 930 x 25 of slate at 2800 kg/m3 are 119.1 kg.
    const told = (mass: number, count: number): string[] =>
      words(['A', 'slate', 1830, 930, 25, mass, count]).map((text) => text.split('; ').slice(1).join('; '));
    // In pounds 238.2 would be 108 kg, 2540 kg/m3, which a slate with pockets is, too.
    expect(told(238.2, 2)).toEqual([
      'with Mass meant in lb it is 108 kg and they agree; with Mass meant for all 2 together it is 119.1 kg each and they agree.',
    ]);
    expect(told(357.3, 3)).toEqual([
      'with Mass meant for all 3 together it is 119.1 kg each and they agree.',
    ]);
    expect(told(119.1, 2)).toEqual([]);
    expect(told(20, 2)).toEqual(['']);
    expect(told(262.6, 1)).toEqual(['with Mass meant in lb it is 119.1 kg and they agree.']);
  });
  test('the ends of what a slate weighs, and anything else of a table', () => {
    // A piece of 1 m2 by 40 mm, 0.04 m3: slate 2700 less a tenth to 2950 and 3 in a hundred more.
    const slab = (mass: number): string[] =>
      pieces(['A', 'slate', 1000, 1000, 40, mass, 1]).map((p) => p.kind);
    expect(slab(97.2)).toEqual([]);
    expect(slab(97.1)).toEqual(['density']);
    expect(slab(121.54)).toEqual([]);
    expect(slab(121.55)).toEqual(['density']);
    const panel = (mass: number): string[] =>
      pieces(['A', 'panel', 1000, 1000, 100, mass, 1]).map((p) => p.kind);
    expect([0.9, 1, 200, 201].map(panel)).toEqual([['density'], [], [], ['density']]);
  });
  test('what slate weighs, and what anything else does, in words', () => {
    expect(words(['A', 'slate', 1000, 1000, 40, 50, 1])[0]).toBe(
      'Check: Mass and sizes make 1250 kg/m3, and slate is 2700 to 2950.',
    );
    expect(words(['A', 'panel', 1000, 1000, 100, 250, 1])).toEqual([
      'Check: Mass and sizes make 2500 kg/m3, and such pieces are 10 to 2000.',
    ]);
  });
  test('a number of pieces up to 100, and a mass from 0.01 kg', () => {
    const kind = (mass: Cell, count: Cell): string[] =>
      pieces(['A', 'bolts', 300, 20, 10, mass, count])
        .filter(({ severity }) => severity === 'error')
        .map(problemText);
    expect(kind(0.5, 100)).toEqual([]);
    expect(kind(0.5, 101)).toEqual([
      'Count cannot be taken: 101 was typed, and allowed is a whole number, 1 to 100.',
    ]);
    expect(kind(0.009, 1)).toEqual([
      'Mass cannot be taken: 0.009 was typed, and allowed is 0.01 to 2000 kg.',
    ]);
    expect(kind('heavy', 1)).toEqual([
      expect.stringMatching(/^Mass cannot be taken: "heavy" was typed, and/),
    ]);
    expect(kind(true, 1)).toEqual([expect.stringMatching(/^Mass cannot be taken: TRUE was typed, and/)]);
    expect(kind(false, 1)).toEqual([expect.stringMatching(/^Mass cannot be taken: FALSE was typed, and/)]);
  });
  test('a piece of which a column stands twice is what either says', () => {
    const row = ['A', 'legs', '', 200, 200, 15, 4, 700];
    expect(readPieces([[...HEADINGS, 'Length'], row]).pieces[0]?.sizes.length).toBe(700);
    const none = readPieces([HEADINGS.slice(0, 6), ['A', 'legs', 700, 200, 200, 15]]);
    expect(none.pieces[0]).toMatchObject({ count: 1, countGiven: false });
  });
  test('a longest size too short for a piece', () => {
    expect(words(['A', 'legs', 70, 20, 20, 15, 1])[0]).toBe(
      'Length cannot be taken: 70 was typed, and allowed is 300 to 6000 mm for the longest size of a piece; 70 cm would be 700 mm; 70 in would be 1778 mm.',
    );
  });
});

describe('words misspelt', () => {
  test('two neighbours exchanged are one slip, wherever they stand', () => {
    // Words of four letters, of which one slip is let be; changed letter by letter each would be two.
    const swapped = (word: string, k: number): string =>
      `${word.slice(0, k)}${word[k + 1] ?? ''}${word[k] ?? ''}${word.slice(k + 2)}`;
    for (const word of ['ramp', 'lift', 'door', 'steps'])
      for (let k = 0; k + 1 < word.length; k++)
        if (word[k] !== word[k + 1])
          expect([word, k, nearestWord(swapped(word, k), [word])]).toEqual([word, k, word]);
    // Two letters that are not neighbours are two slips.
    expect(nearestWord('pmar', ['ramp'])).toBeUndefined();
    expect(nearestWord('rxmy', ['ramp'])).toBeUndefined();
    expect(nearestWord('mrap', ['ramp'])).toBeUndefined();
  });
  test('two slips are let be in a word of six letters and in none of five', () => {
    expect(nearestWord('flxxht', ['flight'])).toBe('flight');
    expect(nearestWord('stxxs', ['steps'])).toBeUndefined();
  });
  test('a heading misspelt is asked about, another is not', () => {
    const missing = (other: string): string[] =>
      checkRoute([
        ['Step', other],
        [1, 'door'],
      ])
        .filter(({ kind }) => kind === 'column missing')
        .map(problemText);
    expect(missing('Stgae')).toEqual(['There is no column Stage; is "Stgae" meant for it?']);
    expect(missing('Photograph')).toEqual(['There is no column Stage.']);
  });
  test('a text longer than any name of a stage is none', () => {
    expect(stageNamed(`half${' '.repeat(29)}landing`)).toBe('half landing');
    expect(stageNamed(`half${' '.repeat(30)}landing`)).toBeUndefined();
  });
  test('a long text is cut in a sentence, a short one is not', () => {
    const told = (text: string): string | undefined =>
      read({ Step: 1, ...DOOR, Width: text })?.refused[0]?.why;
    expect(told('x'.repeat(40))).toMatch(/^"x{40}" was typed/);
    expect(told('x'.repeat(41))).toMatch(/^"x{40}…" was typed/);
  });
});

test('a bare number in the unit that would make it usual', () => {
  const usual = { least: 560, most: 1800 };
  expect(meantAs(76, usual)).toBe('76 cm would be 760 mm');
  expect(meantAs(56, usual)).toBe('56 cm would be 560 mm; 56 in would be 1422.4 mm');
  expect(meantAs(1.8, usual)).toBe('1.8 m would be 1800 mm');
  expect(meantAs(559, usual)).toBe('');
  expect(meantAs(560, usual)).toBe('');
  expect(meantAs(0, usual)).toBe('');
  expect(meantAs('76', usual)).toBe('');
});

test('steps that are missing, of a survey with a name and of one without', () => {
  const rows = (survey: Row): Cell[][] =>
    surveyTable([
      { ...survey, Step: 1, ...DOOR },
      { ...survey, Step: 3, ...DOOR },
      { ...survey, Step: 6, ...ROOM },
    ]);
  const told = (survey: Row): string[] =>
    checkRoute(rows(survey))
      .filter(({ kind }) => kind === 'step missing')
      .map(problemText);
  expect(told({})).toEqual([
    'Check: Step 2 is missing before this one.',
    'Check: Steps 4 to 5 are missing before this one.',
  ]);
  expect(told({ Survey: 'Mill' })).toEqual([
    'Check: Step 2 is missing before this one of survey "Mill".',
    'Check: Steps 4 to 5 are missing before this one of survey "Mill".',
  ]);
});

test('steps without a number stay as they stand, numbered ones are put in order', () => {
  const order = (...steps: Cell[]): (string | undefined)[] =>
    readRoute(
      surveyTable(steps.map((step, i) => ({ Step: step, ...DOOR, Note: `${i}` }))),
    ).surveys[0]?.rows.map(({ note }) => note) ?? [];
  expect(order(3, 1, 2)).toEqual(['1', '2', '0']);
  expect(order(3, 'x', 2)).toEqual(['0', '1', '2']);
  expect(order(2, 1, 2, 1)).toEqual(['1', '3', '0', '2']);
});
