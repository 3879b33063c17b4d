/** The whole route that closes the examples: columns, then rows; a 7 ft slate in one is carried along it. */
export const ROUTE_EXAMPLE = {
  title: 'A whole route',
  question:
    'Door, hall, corner, stair and room: what clearance has the 7 ft slate on the whole route, and which step decides?',
  headers: [
    'Step',
    'Stage',
    'Width',
    'Width out',
    'Height',
    'Length',
    'Rise',
    'Going',
    'Foot ceiling',
    'Foot space',
    'Head ceiling',
    'Head space',
  ],
  rows: [
    [1, 'door', 774, null, 2040, null, null, null, null, null, null, null],
    [2, 'passage', 1150, null, 2420, 4000, null, null, null, null, null, null],
    [3, 'corner', 1150, 1000, 2420, null, null, null, null, null, null, null],
    [4, 'passage', 1000, null, 2420, 3000, null, null, null, null, null, null],
    [5, 'flight', 900, null, 2050, null, 190, 240, 2420, 3000, 2400, 3200],
    [6, 'room', 5400, null, 2400, 4300, null, null, null, null, null, null],
  ],
  piece: [1830, 930, 26],
  tolerance: 2,
} as const;
