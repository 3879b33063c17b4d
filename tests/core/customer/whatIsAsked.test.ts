import type { Cell } from '../../../src/core/measures/readQuantity';
import { customerQuestions } from '../../../src/core/customer/customerQuestions';
import { measurePhrase } from '../../../src/core/customer/measurePhrase';
import { measureQuestion } from '../../../src/core/customer/measureQuestion';
import { placeWords } from '../../../src/core/customer/placeWords';
import type { StageName } from '../../../src/core/stages/kinds';
import type { MeasureName } from '../../../src/core/stages/measures';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { surveyTable } from '../../support/surveyTable';

/**
 * What a customer is asked about: by what each measure is on the way (worksheet contract), in words that only fit that place.
 */
type Row = Readonly<Record<string, Cell>>;

const DOOR: Row = { Stage: 'door', Width: 715, Height: 1960 };
const ROOM: Row = { Stage: 'room', Length: 5600, Width: 4200, Height: 2400 };
const PASSAGE: Row = { Stage: 'passage', Width: 1000, Height: 2400, Length: 4000 };
const FLIGHT: Row = { Stage: 'flight', Way: 'up', Width: 900, Height: 2000, Rise: 190, Going: 240 };
const ENDS: Row = {
  Risers: 14,
  'Foot ceiling': 2400,
  'Foot space': 4000,
  'Head ceiling': 2400,
  'Head space': 4000,
};
const HALF: Row = {
  ...{ Stage: 'half landing', Way: 'up', Width: 900, Depth: 950, Height: 2000, Rise: 190, Going: 240 },
  ...{ Well: 100, Ceiling: 2300, 'Over rail': 900 },
};

const questions = (...rows: Row[]) =>
  customerQuestions(readRoute(surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })))));
const asked = (...rows: Row[]): string[] => questions(...rows).map(({ question }) => question);

describe('one measure of one place', () => {
  test.each<[MeasureName, StageName, RegExp, RegExp]>([
    ['width', 'door', /inside the frame, from the strip/, /wide open/],
    ['width', 'side door', /inside the frame, from the strip/, /wide open/],
    ['width', 'lift', /opening of the lift when its doors are fully open/, /open lift doors/],
    ['width', 'room', /^How wide is P\?$/, /from a corner/],
    ['width', 'flight', /between the wall and the handrail/, /from below/],
    ['width', 'half landing', /between the wall and the handrail/, /from below/],
    ['width', 'corner', /before P, wall to wall/, /as you walk up to it/],
    ['width', 'passage', /or to a radiator/, /along its length/],
    ['widthOut', 'lift', /lift inside, from side to side/, /inside the lift/],
    ['widthOut', 'side door', /passage that P opens into/, /the passage from P/],
    ['widthOut', 'corner', /the way after P/, /the way on from P/],
    ['widthOut', 'quarter landing', /the way after P/, /the way on from P/],
    ['height', 'flight', /straight up from the front edge of a step/, /edge of a step/],
    ['height', 'steps', /straight up from the front edge of a step/, /edge of a step/],
    ['height', 'ramp', /floor to ceiling, beam or lamp/, /lowest place overhead/],
    ['height', 'door', /from the floor or sill/, /the whole of P/],
    ['height', 'side door', /from the floor or sill/, /the whole of P/],
    ['height', 'lift', /from the floor or sill/, /the whole of P/],
    ['height', 'passage', /floor to ceiling, beam or lamp/, /lowest place overhead/],
    ['ceiling', 'lift', /lift inside, floor to ceiling/, /inside the lift/],
    ['ceiling', 'side door', /over the passage at P/, /over the passage at P/],
    ['ceiling', 'half landing', /over P,/, /over P$/],
    ['depth', 'lift', /lift inside, from its closed doors/, /inside the lift/],
    ['depth', 'side door', /passage at P end on one side/, /both sides of P/],
    ['depth', 'half landing', /from the edge of the first step/, /from above/],
    ['length', 'room', /^How long is P\?$/, /along its length/],
    ['length', 'passage', /from one end to the other/, /along its length/],
    ['rise', 'ramp', /rise in all, from its lower end/, /P from the side/],
    ['rise', 'flight', /one step of P, from the top of one/, /one step of P/],
    ['going', 'flight', /front edge of the next/, /held level/],
    ['ratedLoad', 'lift', /load in kg/, /plate in the lift/],
  ])('%s of a %s', (measure, stage, question, photo) => {
    const found = measureQuestion(measure, { place: 'P', stage });
    expect(found.question).toMatch(question);
    expect(found.photo).toMatch(photo);
  });

  test('the height of a stair is over its steps, any other is clear', () => {
    expect(measurePhrase('height', 'flight', 'the stairs')).toBe('height above the step edges of the stairs');
    expect(measurePhrase('height', 'door', 'the door')).toBe('clear height of the door');
    expect(measurePhrase('height', undefined, 'the door')).toBe('clear height of the door');
    expect(measurePhrase('width', 'flight', 'the stairs')).toBe('clear width of the stairs');
  });
});

describe('the ends of a flight, which are measured at a landing beside it', () => {
  const measured = { ...FLIGHT, Risers: 13 };
  const ends = (...rows: Row[]): string[] =>
    asked(...rows).filter((question) => /at the (top|bottom) of/.test(question));
  const foot = /bottom of the/;
  const head = /top of the/;
  test.each<[string, Row[], boolean, boolean]>([
    ['up from a passage into a room', [PASSAGE, measured, ROOM], true, true],
    ['up to a landing', [PASSAGE, measured, HALF, { ...FLIGHT, ...ENDS }, ROOM], true, false],
    ['up from a landing', [{ ...FLIGHT, ...ENDS }, HALF, measured, ROOM], false, true],
    [
      'down to a landing',
      [
        PASSAGE,
        { ...measured, Way: 'down' },
        { ...HALF, Way: 'down' },
        { ...FLIGHT, ...ENDS, Way: 'down' },
        ROOM,
      ],
      false,
      true,
    ],
    [
      'down from a landing',
      [{ ...FLIGHT, ...ENDS, Way: 'down' }, { ...HALF, Way: 'down' }, { ...measured, Way: 'down' }, ROOM],
      true,
      false,
    ],
    [
      'neither way told, beside a landing',
      [PASSAGE, { ...measured, Way: '' }, { ...HALF, Way: '' }, { ...FLIGHT, ...ENDS, Way: '' }, ROOM],
      false,
      false,
    ],
    [
      'to a winder',
      [
        PASSAGE,
        measured,
        { Stage: 'winder', Way: 'up', Width: 900, Height: 2000, Rise: 190, Going: 240, Treads: 3 },
        { ...FLIGHT, ...ENDS },
        ROOM,
      ],
      true,
      false,
    ],
  ])('%s', (_, rows, atFoot, atHead) => {
    const found = ends(...rows);
    expect([found.some((q) => foot.test(q)), found.some((q) => head.test(q))]).toEqual([atFoot, atHead]);
  });
  test('nothing that is measured, or was refused, is asked for as unmeasured', () => {
    expect(asked(PASSAGE, { ...FLIGHT, ...ENDS }, ROOM)).toEqual([]);
    const refused = questions(PASSAGE, { ...FLIGHT, ...ENDS, Risers: 'many' }, ROOM);
    expect(refused.map(({ why }) => why)).toEqual(['what was noted cannot be read as a measure']);
  });
  test('the length of a passage between two places, not of the first or the last', () => {
    const open = { ...PASSAGE, Length: '' };
    const long = (found: string[]): number => found.filter((question) => /How long is/.test(question)).length;
    expect(long(asked(DOOR, open, ROOM))).toBe(1);
    expect(long(asked(open, ROOM))).toBe(0);
    expect(long(asked(DOOR, open))).toBe(0);
  });
});

describe('what is open between rows', () => {
  const one = (pattern: RegExp, ...rows: Row[]) => {
    const found = questions(...rows).filter(({ question }) => pattern.test(question));
    expect(found.map(({ question }) => question)).toHaveLength(1);
    return found[0];
  };
  test('steps before a landing lead to it, those after it on', () => {
    const up = { ...FLIGHT, ...ENDS, 'Head ceiling': '', 'Head space': '' };
    expect(one(/^Do steps lead up or down to the/, HALF, { ...FLIGHT, ...ENDS }, ROOM)?.step).toBe(1);
    expect(one(/^Do steps lead on beyond the/, up, HALF, ROOM)?.step).toBe(2);
  });
  test('a space that is noted at the end where a landing is belongs to the other end', () => {
    const up = { ...FLIGHT, Risers: 13, 'Foot ceiling': 2400, 'Foot space': '', 'Head space': 900 };
    // The head is at the landing: asked is the space at the foot.
    expect(
      one(
        /At the bottom of the first run of stairs, how far/,
        PASSAGE,
        up,
        HALF,
        { ...FLIGHT, ...ENDS },
        ROOM,
      )?.step,
    ).toBe(2);
    const on = { ...FLIGHT, Risers: 13, 'Head ceiling': 2400, 'Foot space': 900 };
    expect(
      one(
        /Which way do you turn at the top of the second run of stairs/,
        { ...FLIGHT, ...ENDS },
        HALF,
        on,
        ROOM,
      )?.step,
    ).toBe(3);
  });
  test('a short space at a stair is asked for by its own end', () => {
    const short = { ...FLIGHT, ...ENDS, 'Foot space': 1500 };
    const bottom = one(/^At the bottom of/, { ...ROOM, Length: 4000 }, short, ROOM);
    expect(bottom?.why).toMatch(/worse of the two/);
    expect(bottom?.photo).toMatch(/at the bottom of/);
    expect(one(/^At the top of/, PASSAGE, { ...FLIGHT, ...ENDS, 'Head space': 1500 }, ROOM)).toBeDefined();
  });
  test('a place without a name is told by its neighbours that have one', () => {
    const lost: Row = { Stage: 'hall way', Width: 900 };
    const what = (...rows: Row[]): string | undefined =>
      asked(...rows).find((question) => question.startsWith('What is there'));
    expect(what(DOOR, lost, ROOM)).toMatch(/^What is there after the door and before the room:/);
    expect(what(lost, ROOM)).toMatch(/^What is there before the room:/);
    expect(what(DOOR, lost)).toMatch(/^What is there after the door:/);
    expect(what(lost)).toMatch(/^What is there:/);
  });
  test('what lies between two flights is asked between them', () => {
    expect(asked({ ...FLIGHT, ...ENDS }, { ...FLIGHT, ...ENDS }, ROOM)).toContain(
      'What lies between the first run of stairs and the second run of stairs?',
    );
  });
});

test('what is missing is asked first, then what is doubted, what is open, what was not measured', () => {
  const rows = [DOOR, { ...FLIGHT, Way: '', Rise: '', Width: 450 }, ROOM];
  const order = questions(...rows).map(({ question }) => question);
  const at = (pattern: RegExp): number => order.findIndex((question) => pattern.test(question));
  const places = [
    at(/How high is one step/),
    at(/between the wall and the handrail/),
    at(/up or down/),
    at(/How many steps up/),
  ];
  expect(places.every((place) => place >= 0)).toBe(true);
  expect([...places].sort((p, q) => p - q)).toEqual(places);
});

test('what is worth more comes first wherever it stands on the way, else what is met first', () => {
  const order = (...rows: Row[]): (number | string)[] => questions(...rows).map(({ step }) => step);
  const leaf = { ...DOOR, Width: 762 };
  const missing = { ...DOOR, Width: '' };
  const open = { ...FLIGHT, ...ENDS, Way: '' };
  const unmeasured = { ...FLIGHT, ...ENDS, Risers: '' };
  expect(order(leaf, missing, ROOM)).toEqual([2, 1]);
  expect(order(missing, leaf, ROOM)).toEqual([1, 2]);
  expect(order(open, leaf, ROOM)).toEqual([2, 1]);
  expect(order(unmeasured, PASSAGE, open, ROOM)).toEqual([3, 1]);
  expect(order(leaf, leaf, missing, missing, ROOM)).toEqual([3, 4, 1, 2]);
});

test('a narrow part without its width is asked for, one that the place does not use is not', () => {
  const low = (...rows: Row[]): string[] => asked(...rows).filter((question) => /low down/.test(question));
  expect(low({ ...PASSAGE, 'Low height': 700 }, ROOM)).toHaveLength(1);
  expect(low({ ...DOOR, 'Low height': 700 }, ROOM)).toHaveLength(0);
});

test('the tenth of its like is called by its number', () => {
  const { rows } = readRoute(surveyTable(Array.from({ length: 10 }, () => DOOR)));
  expect(placeWords(rows, 8)).toBe('the ninth door');
  expect(placeWords(rows, 9)).toBe('door 10');
  expect(placeWords(rows, 99)).toBe('this place');
});
