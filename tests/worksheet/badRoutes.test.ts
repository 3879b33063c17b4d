import { callInCells } from '../support/callInCells';

// What a survey must not say is named, and the survey is not measured: never "goes" with a footnote.

type Cell = string | number;
const PIECES = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ['panel', 'panel', 1000, 300, 25, 12, 1],
];
const HEADINGS = [
  ...['Survey', 'Step', 'Stage', 'Width', 'Width out', 'Height', 'Length', 'Rise', 'Going', 'Risers'],
  ...['Foot ceiling', 'Foot space', 'Head ceiling', 'Head space', 'Run', 'Hand', 'Way'],
];
type Row = Readonly<Record<string, Cell>>;
const table = (...rows: Row[]): Cell[][] => [
  HEADINGS,
  ...rows.map((row) => HEADINGS.map((heading) => row[heading] ?? '')),
];
const judged = (...rows: Row[]) =>
  callInCells('SURVEYS', table(...rows), PIECES)
    .slice(1)
    .map((row) => ({ survey: row[0], verdict: row[2], reason: String(row[10]) }));
const checked = (...rows: Row[]): string =>
  callInCells('CHECKROUTE', table(...rows))
    .flat()
    .join('\n');

const ROOM: Row = { Stage: 'room', Width: 4000, Length: 5000, Height: 2400 };
const PASSAGE: Row = { Stage: 'passage', Width: 1200, Height: 2400, Length: 4000 };
const FLIGHT: Row = {
  ...{ Stage: 'flight', Width: 1000, Height: 2100, Rise: 180, Going: 260, Risers: 13, Way: 'up' },
  ...{ 'Foot ceiling': 2400, 'Foot space': 4000, 'Head ceiling': 2400, 'Head space': 4000 },
};

test('a sound route goes', () => {
  expect(judged({ Step: 1, ...PASSAGE }, { Step: 2, ...FLIGHT }, { Step: 3, ...ROOM })).toMatchObject([
    { verdict: 'goes' },
  ]);
});

test('a space shorter than the corner beside it, by more than twice the tape', () => {
  const corner: Row = { Stage: 'corner', Width: 1000, 'Width out': 1200, Height: 2400 };
  const rows = (headSpace: number): Row[] => [
    { Step: 1, ...PASSAGE },
    { Step: 2, ...FLIGHT, 'Head space': headSpace },
    { Step: 3, ...corner },
    { Step: 4, ...ROOM },
  ];
  expect(judged(...rows(900))).toMatchObject([
    { verdict: 'not measured', reason: expect.stringMatching(/900/) },
  ]);
  expect(checked(...rows(900))).toMatch(/900/);
  expect(judged(...rows(4000))[0]!.verdict).not.toBe('not measured');
});

test('the rows of one survey apart from each other, with labels or repeated steps', () => {
  for (const steps of [
    ['front', 'back'],
    [1, 1],
  ] as const) {
    const rows: Row[] = [
      { Survey: 'A', Step: steps[0], ...PASSAGE },
      { Survey: 'B', Step: 1, ...ROOM },
      { Survey: 'A', Step: steps[1], ...ROOM },
    ];
    const found = judged(...rows);
    expect(found.find(({ survey }) => survey === 'A')).toMatchObject({ verdict: 'not measured' });
    expect(found.find(({ survey }) => survey === 'B')).toMatchObject({ verdict: 'goes' });
    expect(checked(...rows)).toMatch(/apart/);
  }
});

test('flight after flight, landing after landing, room after room', () => {
  const landing: Row = { ...FLIGHT, Stage: 'quarter landing', 'Width out': 1000 };
  for (const row of [FLIGHT, landing, ROOM]) {
    const rows: Row[] = [
      { Step: 1, ...PASSAGE },
      { Step: 2, ...row },
      { Step: 3, ...row },
      { Step: 4, ...PASSAGE },
    ];
    expect(judged(...rows)).toMatchObject([
      { verdict: 'not measured', reason: expect.stringMatching(/what lies between/) },
    ]);
  }
});

test('the header row repeated in the middle', () => {
  const header: Row = Object.fromEntries(HEADINGS.map((heading) => [heading, heading]));
  const rows: Row[] = [
    { Survey: 'A', Step: 1, ...PASSAGE },
    { ...header, Survey: 'A' },
    { Survey: 'A', Step: 3, ...ROOM },
  ];
  expect(judged(...rows)).toMatchObject([
    { verdict: 'not measured', reason: expect.stringMatching(/header row is repeated/) },
  ]);
});

test('a hand where nothing turns is a warning and nothing more', () => {
  const rows: Row[] = [
    { Step: 1, ...PASSAGE, Hand: 'left' },
    { Step: 2, ...ROOM },
  ];
  expect(checked(...rows)).toMatch(/Hand|hand/);
  expect(judged(...rows)).toMatchObject([{ verdict: 'goes' }]);
  expect(checked({ Step: 1, ...PASSAGE }, { Step: 2, ...ROOM })).not.toMatch(/hand/i);
});
