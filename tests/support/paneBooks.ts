import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { PIECE_HEADINGS } from '../../src/core/survey/table/readPieces';
import type { FakeBook } from './fakeExcel';

type Value = FakeBook['sheets'][0]['cells'][0][0];

/** A route row by column. */
export const routeRow = (values: Readonly<Record<string, Value>>): Value[] =>
  ROUTE_HEADINGS.map((header) => values[header] ?? null);

/** A workbook with a route as a table and pieces as a plain range; an invented house. */
export function exampleBook(): FakeBook {
  const rows = [
    routeRow({ Survey: 'Mill Lane', Step: 1, Stage: 'door', Width: 790, Height: '2.03 m' }),
    routeRow({ Survey: 'Mill Lane', Step: 2, Stage: 'passage', Width: 900, Height: 2300, Length: 3000 }),
    routeRow({
      Survey: 'Mill Lane',
      Step: 3,
      Stage: 'corner',
      Width: 800,
      Height: 2300,
      Turn: 90,
      Note: 'mirror',
    }),
    routeRow({
      Survey: 'Mill Lane',
      Step: 4,
      Stage: 'flight',
      Width: 860,
      Height: 2050,
      Rise: 190,
      Going: 240,
      Risers: 13,
    }),
    routeRow({ Survey: 'Mill Lane', Step: 5, Stage: 'door', Width: '2\' 6"', Height: '78' }),
    routeRow({ Survey: 'Mill Lane', Step: 6, Stage: 'room', Length: 5600, Width: 4300, Height: 2350 }),
  ];
  return {
    sheets: [
      { name: 'Surveys', cells: [['Our surveys'], [], [...ROUTE_HEADINGS], ...rows] },
      {
        name: 'Stock',
        cells: [
          [...PIECE_HEADINGS],
          ['7 ft', 'Slate', 1830, 930, 25, 119, 1],
          ['8 ft', 'Slate section', 1270, 800, 25, 71, 3],
        ],
      },
    ],
    tables: [
      {
        name: 'OurRoute',
        sheet: 'Surveys',
        row: 2,
        column: 0,
        rows: rows.length + 1,
        columns: ROUTE_HEADINGS.length,
      },
    ],
    selection: { sheet: 'Surveys', row: 4, column: 3, rows: 1, columns: 1 },
  };
}
