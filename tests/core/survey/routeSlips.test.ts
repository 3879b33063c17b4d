import fc from 'fast-check';
import type { Cell } from '../../../src/core/measures/readQuantity';
import { stageShortfall } from '../../../src/core/route/stageShortfall';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import { problemTexts } from '../../../src/core/survey/words/problemTexts';
import { problemWords } from '../../../src/core/survey/words/problemWords';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { MEASURE_NAMES } from '../../../src/core/stages/measures';
import { STAGE_NAMES } from '../../../src/core/stages/kinds';
import { measureHeading } from '../../../src/core/survey/words/measureHeading';
import { surveyTable } from '../../support/surveyTable';

type Row = Readonly<Record<string, Cell>>;

const DOOR: Row = { Stage: 'door', Width: 715, Height: 1960 };
const ROOM: Row = { Stage: 'room', Length: 5600, Width: 4200, Height: 2400 };
const FLIGHT: Row = { Stage: 'flight', Width: 900, Height: 2000, Rise: 190, Going: 240 };
const HALF: Row = { ...FLIGHT, Stage: 'half landing', Well: 100, Depth: 950 };

const numbered = (...rows: Row[]): Cell[][] => surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })));
/** What looks wrong; what is only asked is tested by itself. */
const found = (table: Cell[][]) =>
  checkRoute(table)
    .filter(({ severity }) => severity !== 'question')
    .map((p) => [p.rowIndex, p.kind]);

test('a sound route has no problem', () => {
  expect(checkRoute(numbered(DOOR, { ...FLIGHT, Way: 'up' }, ROOM))).toEqual([]);
});

describe('a route that ends before the room', () => {
  test('is named at its last step, wherever that stands', () => {
    expect(found(numbered(DOOR, FLIGHT))).toEqual([[1, 'ends before the room']]);
    const table = surveyTable([
      { Survey: 'a', Step: 2, ...FLIGHT },
      { Survey: 'b', Step: 1, ...DOOR },
      { Survey: 'a', Step: 1, ...DOOR },
      { Survey: 'b', Step: 2, ...ROOM },
    ]);
    expect(found(table)).toEqual([[0, 'ends before the room']]);
  });
  test('a misspelt last stage may be the room', () => {
    expect(found(numbered(DOOR, { ...ROOM, Stage: 'rooom' }))).toEqual([[1, 'unknown stage']]);
  });
});

describe('step numbers', () => {
  const steps = (...numbers: Cell[]) =>
    surveyTable(numbers.map((Step, i) => ({ Step, ...(i === numbers.length - 1 ? ROOM : DOOR) })));
  test('missing', () => {
    expect(found(steps(1, 2, 4))).toEqual([[2, 'step missing']]);
    expect(checkRoute(steps(2, 6))).toMatchObject([
      { kind: 'step missing', from: 1, to: 1 },
      { kind: 'step missing', from: 3, to: 5 },
    ]);
  });
  test('doubled', () => {
    expect(found(steps(1, 2, 2, 3))).toEqual([[2, 'step doubled']]);
  });
  test('without a number', () => {
    expect(found(steps(1, '', 2))).toEqual([[1, 'no step number']]);
    // A label names a step as well as a number does.
    expect(found(steps('Front door', '2a', 'Games room'))).toEqual([]);
  });
  test('the same step in two surveys is not doubled', () => {
    const table = surveyTable([
      { Survey: 'a', Step: 1, ...ROOM },
      { Survey: 'b', Step: 1, ...ROOM },
    ]);
    expect(checkRoute(table)).toEqual([]);
  });
});

test('a row without a survey among rows with one', () => {
  const table = surveyTable([
    { Survey: 'a', Step: 1, ...ROOM },
    { Survey: '', Step: 1, ...ROOM },
  ]);
  expect(found(table)).toEqual([[1, 'no survey name']]);
  expect(checkRoute(surveyTable([{ Survey: '', Step: 1, ...ROOM }]))).toEqual([]);
});

describe('rises that do not add up to the storey', () => {
  const straight = (risers: number, extra: Row = {}) =>
    numbered({ ...FLIGHT, Risers: risers, ...extra }, ROOM);
  test('13 risers of 190 make 2470: a storey', () => {
    expect(found(straight(13))).toEqual([]);
  });
  test('11 make 2090: none', () => {
    expect(found(straight(11))).toEqual([[0, 'not a storey']]);
  });
  test('a few steps are no storey and need not be', () => {
    expect(found(straight(4))).toEqual([]);
    expect(found(straight(9))).toEqual([]);
  });
  test('two flights and the landing between them are one climb', () => {
    const climb = (lower: number, upper: number) =>
      numbered({ ...FLIGHT, Risers: lower }, HALF, { ...FLIGHT, Risers: upper }, ROOM);
    expect(found(climb(7, 7))).toEqual([]);
    expect(found(climb(7, 4))).toEqual([[2, 'not a storey']]);
    expect(found(climb(13, 14))).toEqual([]);
  });
  test('nothing is added up where risers were not counted, or treads wind', () => {
    expect(found(numbered({ ...FLIGHT, Risers: 10 }, HALF, FLIGHT, ROOM))).toEqual([]);
    const winder: Row = { ...FLIGHT, Stage: 'winder', Turn: 90 };
    expect(found(numbered({ ...FLIGHT, Risers: 10 }, winder, ROOM))).toEqual([]);
  });
  test('a single flight is held against the ceiling at its foot', () => {
    const under = (ceiling: number) => found(straight(13, { 'Foot ceiling': ceiling }));
    // 2470 less the floor's depth of 120 to 600.
    expect(under(2350)).toEqual([]);
    expect(under(1900)).toEqual([]);
    expect(under(2351)).toEqual([[0, 'storey against ceiling']]);
    expect(under(2500)).toEqual([[0, 'storey against ceiling']]);
  });
  test('other stages between two flights keep their climbs apart', () => {
    const passage: Row = { Stage: 'passage', Width: 1000, Height: 2400 };
    expect(found(numbered({ ...FLIGHT, Risers: 13 }, passage, { ...FLIGHT, Risers: 13 }, ROOM))).toEqual([]);
  });
});

test('the texts stand beside their rows, the header row first', () => {
  const table = numbered(DOOR, { ...DOOR, Width: 762 }, ROOM);
  table.splice(2, 0, []);
  const texts = problemTexts(checkRoute(table), table.length - 1);
  expect(texts).toHaveLength(5);
  expect(texts.map((text) => text !== '')).toEqual([false, false, false, true, false]);
  const headless = problemTexts(
    checkRoute([
      ['Step', 'Stge'],
      [1, 'door'],
    ]),
    1,
  );
  expect(headless[0]).toBe('There is no column Stage; is "Stge" meant for it?');
});

// What a reader of CHECKROUTE is told must be what VERDICT does.
test('a row has an error exactly where the route cannot be judged by it', () => {
  const cell = fc.oneof(
    fc.constantFrom<Cell>(0, null, '', '76 cm', '5', 'x', '0 mm', { code: '#N/A' }, true, -5, 40, 45),
    fc.integer({ min: 90, max: 2500 }),
  );
  const headings = MEASURE_NAMES.map(measureHeading);
  let errors = 0;
  let sound = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...STAGE_NAMES, 'dor'),
      fc.constantFrom<Cell>(1, 1, 1, null, 'one'),
      fc.array(cell, { minLength: headings.length, maxLength: headings.length }),
      fc.boolean(),
      (stage, step, cells, mostlyGood) => {
        const measures = mostlyGood ? cells.map((c) => (typeof c === 'number' ? c : 800)) : cells;
        const table = [
          ['Step', 'Stage', ...headings],
          [step, stage, ...measures],
        ];
        const row = readRoute(table).rows[0]!;
        const judged = row.stage && stageShortfall(row) === undefined;
        const error = checkRoute(table).some((p) => p.rowIndex === 0 && p.severity === 'error');
        if (error) errors++;
        else sound++;
        expect(error).toBe(!judged);
      },
    ),
    { seed: 23, numRuns: 2000 },
  );
  expect(errors).toBeGreaterThan(100);
  expect(sound).toBeGreaterThan(100);
});

describe('what keeps a whole survey from being judged', () => {
  const faults = (table: Cell[][]) =>
    checkRoute(table).flatMap((p) => (p.kind === 'route fault' ? [[p.rowIndex, p.fault.kind]] : []));

  test('what lies between two stairs, landings or rooms', () => {
    expect(faults(numbered(DOOR, FLIGHT, FLIGHT, ROOM))).toEqual([[2, 'between is missing']]);
    expect(faults(numbered(FLIGHT, HALF, HALF, FLIGHT, ROOM))).toEqual([[2, 'between is missing']]);
    expect(faults(numbered(DOOR, ROOM, ROOM))).toEqual([[2, 'between is missing']]);
    expect(faults(numbered(FLIGHT, HALF, FLIGHT, ROOM))).toEqual([]);
  });

  test('rows of one survey apart from each other, unless their numbers tell the order', () => {
    const apart = (...steps: Cell[]) =>
      surveyTable([
        { Survey: 'a', Step: steps[0], ...DOOR },
        { Survey: 'b', Step: 1, ...ROOM },
        { Survey: 'a', Step: steps[1], ...ROOM },
      ]);
    expect(faults(apart(1, 2))).toEqual([]);
    expect(faults(apart(2, 1))).toEqual([]);
    expect(faults(apart(1, 1))).toEqual([[0, 'rows apart']]);
    expect(faults(apart('Front door', 'Room'))).toEqual([[0, 'rows apart']]);
  });

  test('a space shorter than the corner beside it by more than two tapes', () => {
    const corner: Row = { Stage: 'corner', Width: 900, 'Width out': 1000, Height: 2400 };
    const upward = (space: number) => numbered({ ...FLIGHT, Way: 'up', 'Head space': space }, corner, ROOM);
    expect(faults(upward(990))).toEqual([]);
    expect(faults(upward(989))).toEqual([[1, 'space shorter than the turn']]);
  });

  test('a header row in the middle, two tapes, a hand that is none', () => {
    const table = numbered(DOOR, ROOM);
    const twice = [...table.slice(0, 2), table[0]!, ...table.slice(2)];
    expect(checkRoute(twice).filter((p) => p.severity === 'error')).toMatchObject([
      { rowIndex: 1, kind: 'header repeated' },
    ]);
    expect(faults(numbered({ ...DOOR, Tape: 3 }, { ...ROOM, Tape: 4 }))).toEqual([[0, 'two tapes']]);
    expect(found(numbered({ ...DOOR, Hand: 'left' }, ROOM))).toEqual([[0, 'hand where nothing turns']]);
    expect(found(numbered({ ...FLIGHT, Way: 'sideways' }, ROOM))).toEqual([[0, 'word not taken']]);
    expect(found(numbered({ ...DOOR, Run: 500 }, ROOM))).toEqual([[0, 'run not used']]);
  });
});

describe('what is asked', () => {
  const asked = (...rows: Row[]) =>
    checkRoute(numbered(...rows)).flatMap((p) => (p.kind === 'asked' ? [[p.rowIndex, p.about.kind]] : []));
  const up: Row = { ...FLIGHT, Way: 'up' };
  const corner: Row = { Stage: 'corner', Width: 900, 'Width out': 1000, Height: 2400 };
  const passage: Row = { Stage: 'passage', Width: 1000, Height: 2400, Length: 3000 };

  test('which way a stair goes, once for a stair', () => {
    expect(asked(DOOR, FLIGHT, HALF, FLIGHT, ROOM)).toEqual([[1, 'which way the stair goes']]);
  });
  test('whether a short stair end turns before a row that leads straight on', () => {
    const short: Row = { ...up, 'Head space': 900 };
    expect(asked(short, { ...passage, Length: 900 }, ROOM)).toEqual([[0, 'turn at the stair end']]);
    expect(asked({ ...up, 'Head space': 3000 }, passage, ROOM)).toEqual([]);
    expect(asked(short, passage, ROOM)).toEqual([[0, 'floor and passage differ']]);
  });
  test('where a narrower row stands across the arm of a corner', () => {
    expect(asked(passage, corner, { ...passage, Width: 900 }, ROOM)).toEqual([
      [1, 'arm and next row differ'],
    ]);
    expect(asked(passage, corner, passage, ROOM)).toEqual([]);
  });
  test('to which hand two near turns go, unless it is told', () => {
    const near: Row = { ...corner, Run: 500 };
    expect(asked(passage, near, corner, ROOM)).toEqual([[2, 'which hand']]);
    expect(asked(passage, near, { ...corner, Hand: 'left' }, ROOM)).toEqual([]);
    expect(asked(passage, { ...corner, Run: 2500 }, corner, ROOM)).toEqual([]);
  });
  test('the flight that a landing supposes, and a run that does not agree with a space', () => {
    expect(asked(up, { ...HALF, Way: 'up' }, ROOM)).toEqual([[1, 'no flight beside the landing']]);
    expect(asked({ ...corner, Run: 500 }, { ...up, 'Foot space': 1700, Width: 1000 }, ROOM)).toEqual([
      [0, 'straight and space differ'],
    ]);
  });
});

describe('a quarter landing measured downward', () => {
  const landing = (Width: number, WidthOut: number): Row => ({
    ...FLIGHT,
    Stage: 'quarter landing',
    Width,
    'Width out': WidthOut,
  });
  const below: Row = { ...FLIGHT, Width: 900 };
  const above: Row = { ...FLIGHT, Width: 760 };
  const asked = (...rows: Row[]) =>
    checkRoute(numbered(...rows)).flatMap((p) => (p.kind === 'asked' ? [p.about.kind] : []));
  test('is asked about, whichever way the rows go', () => {
    const up = (...rows: Row[]): Row[] => rows.map((row) => ({ ...row, Way: 'up' }));
    const down = (...rows: Row[]): Row[] => rows.map((row) => ({ ...row, Way: 'down' }));
    expect(asked(...up(below, landing(900, 760), above), ROOM)).not.toContain('landing measured downward');
    expect(asked(...up(below, landing(760, 900), above), ROOM)).toContain('landing measured downward');
    expect(asked(...down(above, landing(900, 760), below), ROOM)).not.toContain('landing measured downward');
    expect(asked(...down(above, landing(760, 900), below), ROOM)).toContain('landing measured downward');
  });
  test('so is a space at the landing itself, which leaves the other end of the flight unmeasured', () => {
    const turn = { ...landing(900, 900), Way: 'down' };
    const flight = (Way: 'up' | 'down', spaces: Row): Row => ({ ...FLIGHT, Width: 900, Way, ...spaces });
    const foot = { 'Foot space': 950 };
    const head = { 'Head space': 950 };
    const kind = 'space at the landing';
    // Going down, the head of the first flight and the foot of the second are on the level floors.
    expect(asked(flight('down', head), turn, flight('down', foot), ROOM)).not.toContain(kind);
    expect(
      asked(flight('down', foot), turn, flight('down', head), ROOM).filter((k) => k === kind),
    ).toHaveLength(2);
    expect(asked(flight('up', foot), { ...turn, Way: 'up' }, flight('up', head), ROOM)).not.toContain(kind);
    expect(asked(flight('down', { ...foot, ...head }), turn, flight('down', foot), ROOM)).not.toContain(kind);
    const [problem] = checkRoute(numbered(flight('down', foot), turn, flight('down', foot), ROOM)).filter(
      (p) => p.kind === 'asked' && p.about.kind === kind,
    );
    expect(problem && problemWords(problem)).toMatch(
      /^Foot space is filled in.* the foot of this flight is at the landing.*at the head\?$/,
    );
  });
});
