import { seededStream } from '../../src/core/space/seededStream';

type Row = (string | number)[];

export const ROUTE_HEADERS = [
  'Survey',
  'Step',
  'Stage',
  'Width',
  'Width out',
  'Height',
  'Ceiling',
  'Depth',
  'Length',
  'Turn',
  'Rise',
  'Going',
  'Risers',
  'Well',
  'Wall',
  'Over rail',
  'Foot ceiling',
  'Foot space',
  'Head ceiling',
  'Head space',
  'Run',
] as const;

/** Eight stages from the kerb to the room, as a house has them: read with a tape to 5 mm. Without landings
 * the stairs turn at a corner: a landing is searched and not solved, which takes another order of time. */
export function surveyTable(count: number, seed: number, withLandings = false): Row[] {
  const random = seededStream(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
  const tape = (least: number, most: number): number =>
    5 * Math.round((least + random() * (most - least)) / 5);
  const rows: Row[] = [[...ROUTE_HEADERS]];
  const add = (survey: string, step: number, stage: string, measures: Record<string, number>): void => {
    rows.push(
      ROUTE_HEADERS.map((header) =>
        header === 'Survey'
          ? survey
          : header === 'Step'
            ? step
            : header === 'Stage'
              ? stage
              : (measures[header] ?? ''),
      ),
    );
  };
  for (let i = 0; i < count; i++) {
    const survey = `S${i + 1}`;
    const rise = tape(170, 215);
    const going = tape(225, 280);
    const width = tape(760, 920);
    const headroom = tape(1950, 2300);
    const flight = () => ({
      Width: width,
      Height: headroom,
      Rise: rise,
      Going: going,
      Risers: pick([5, 6, 7, 8, 12, 13]),
      ...(random() < 0.6
        ? {
            'Foot ceiling': tape(2300, 2500),
            'Foot space': tape(1000, 2500),
            'Head ceiling': tape(2250, 2450),
            'Head space': tape(900, 2000),
          }
        : {}),
    });
    add(survey, 1, 'door', {
      Width: pick([686, 711, 726, 762, 788, 813, 838]) - 40,
      Height: pick([1946, 1966, 2005]),
    });
    add(survey, 2, 'passage', { Width: tape(850, 1250), Height: tape(2250, 2500), Length: tape(1500, 6000) });
    if (random() < 0.5) {
      add(survey, 3, 'corner', {
        Width: tape(850, 1200),
        'Width out': tape(800, 1200),
        Height: tape(2250, 2500),
        Run: tape(500, 3000),
      });
    } else {
      add(survey, 3, 'side door', {
        Width: pick([686, 726, 762, 788]),
        Height: pick([1946, 1966, 2005]),
        'Width out': tape(850, 1300),
        Ceiling: tape(2250, 2500),
        Wall: pick([75, 100, 115, 140]),
      });
    }
    add(survey, 4, 'flight', flight());
    if (!withLandings) {
      add(survey, 5, 'corner', {
        Width: tape(850, 1200),
        'Width out': tape(850, 1200),
        Height: headroom,
        Turn: 90,
      });
    } else if (random() < 0.5) {
      add(survey, 5, 'quarter landing', {
        Width: width,
        'Width out': width,
        Height: headroom,
        Rise: rise,
        Going: going,
      });
    } else {
      add(survey, 5, 'half landing', {
        Width: width,
        Well: pick([50, 75, 100, 200]),
        Depth: tape(800, 1050),
        Height: headroom,
        Rise: rise,
        Going: going,
        ...(random() < 0.4 ? { 'Over rail': tape(900, 1000) } : {}),
      });
    }
    add(survey, 6, 'flight', flight());
    add(survey, 7, 'door', { Width: pick([686, 726, 762, 788]), Height: pick([1946, 1966, 2005]) });
    add(survey, 8, 'room', { Width: tape(3500, 5500), Height: tape(2250, 2500), Length: tape(4500, 7000) });
  }
  return rows;
}

/** Twelve pieces in four builds; sizes of our own making, of the order that is common practice. */
export const PIECES_TABLE: readonly Row[] = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ['8 ft in three', 'slate section', 1180, 790, 25, 66, 3],
  ['8 ft in three', 'side panel', 2440, 330, 45, 24, 2],
  ['8 ft in three', 'legs', 760, 180, 180, 14, 4],
  ['8 ft one-piece', 'slate', 2360, 1180, 25, 198, 1],
  ['8 ft one-piece', 'side panel', 2440, 330, 45, 24, 2],
  ['8 ft one-piece', 'legs', 760, 180, 180, 14, 4],
  ['7 ft one-piece', 'slate', 1830, 930, 25, 121, 1],
  ['7 ft one-piece', 'cabinet', 2130, 1220, 320, 85, 1],
  ['7 ft one-piece', 'cushions', 1900, 150, 60, 9, 1],
  ['6 ft one-piece', 'slate', 1560, 810, 20, 72, 1],
  ['6 ft one-piece', 'cabinet', 1830, 1040, 280, 60, 1],
  ['6 ft one-piece', 'cushions', 1650, 150, 60, 8, 1],
];
