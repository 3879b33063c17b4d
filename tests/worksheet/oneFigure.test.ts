import { callInCells } from '../support/callInCells';

// One figure: a row's own function, STAGECLEAR, STAGES and VERDICT answer the same of one row by itself.

type Cell = string | number;
const SLATE = [1830, 930, 25] as const;
const PIECES = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ['one-piece', 'slate', ...SLATE, 121, 1],
];
const HEADINGS = [
  ...['Step', 'Stage', 'Width', 'Width out', 'Height', 'Ceiling', 'Depth', 'Rise', 'Going', 'Well', 'Wall'],
  ...['Risers', 'Foot ceiling', 'Foot space', 'Head ceiling', 'Head space'],
];

const STAGES: readonly (readonly [
  function_: string,
  values: readonly number[],
  row: Record<string, Cell>,
])[] = [
  ['OPENING', [762, 1981, ...SLATE], { Stage: 'door', Width: 762, Height: 1981 }],
  ['CORNER', [900, 950, 2400, ...SLATE], { Stage: 'corner', Width: 900, 'Width out': 950, Height: 2400 }],
  [
    'SIDEDOOR',
    [800, 1981, 110, 1000, 2400, ...SLATE],
    { Stage: 'side door', Width: 800, Height: 1981, Wall: 110, 'Width out': 1000, Ceiling: 2400 },
  ],
  [
    'FLIGHT',
    [900, 2000, 190, 240, ...SLATE, 13, 2400, 4000, 2400, 4000],
    {
      ...{ Stage: 'flight', Width: 900, Height: 2000, Rise: 190, Going: 240, Risers: 13 },
      ...{ 'Foot ceiling': 2400, 'Foot space': 4000, 'Head ceiling': 2400, 'Head space': 4000 },
    },
  ],
  [
    'LIFTCAR',
    [900, 2100, 1100, 2100, 2300, ...SLATE],
    { Stage: 'lift', Width: 900, Height: 2100, 'Width out': 1100, Depth: 2100, Ceiling: 2300 },
  ],
  [
    'HALFLANDING',
    [950, 100, 1000, 2100, 190, 240, ...SLATE],
    { Stage: 'half landing', Width: 950, Well: 100, Depth: 1000, Height: 2100, Rise: 190, Going: 240 },
  ],
];

test.each(STAGES)('%s, STAGECLEAR, STAGES and VERDICT give one figure', (id, values, row) => {
  const cells = HEADINGS.map((heading): Cell => (heading === 'Step' ? 1 : (row[heading] ?? '')));
  const [[alone]] = callInCells(id, ...values) as [[number]];
  const [[cleared]] = callInCells('STAGECLEAR', [HEADINGS], [cells], ...SLATE) as [[number]];
  const [, step] = callInCells('STAGES', [HEADINGS, cells], ...SLATE);
  const [, verdict] = callInCells('VERDICT', [HEADINGS, cells], PIECES);
  expect(cleared).toBeCloseTo(alone, 6);
  expect(step?.[3]).toBeCloseTo(alone, 6);
  expect(verdict?.[2]).toBeCloseTo(alone, 6);
});
