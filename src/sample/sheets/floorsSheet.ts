import { CODES, USES } from '../../core/floors/codeLoads';
import { JOIST_GRADES } from '../../core/floors/joistGrades';
import type { WorkbookWriter, WriterValue } from '../../sheetHost/workbookWriter';
import { headed, HEADING, INPUT, showWithin } from './look';
import { downTo, upTo } from '../../worksheet/roundedFormulas';
import { BUILD_LIST } from './piecesSheet';

const f = (formula: string): WriterValue => ({ formula });

/**
 * A line of the check: what, the formula of its value, unit, the formula it is held against if any, what that is. What is
 * borne is shown rounded up and what it is held against down, so that the words beside agree with what is seen.
 */
type Line = readonly [what: string, value: string, unit: string, against?: string, which?: string];

/** Inputs: label, value, unit, the name the formulas use. */
const INPUTS: readonly (readonly [string, WriterValue, string, string])[] = [
  ['Build', '8 ft, slate in 1, built up', '', 'FloorBuild'],
  ['Use of the room', 'dwelling', '', 'FloorUse'],
  ['Code', 'UK', '', 'FloorCode'],
  ['Joist span', 3600, 'mm', 'JoistSpan'],
  ['Joist spacing', 400, 'mm', 'JoistSpacing'],
  ['Joist breadth', 50, 'mm', 'JoistBreadth'],
  ['Joist depth', 200, 'mm', 'JoistDepth'],
  ['Joist grade', 'C24', '', 'JoistGrade'],
  ['Own weight of the floor', 0.5, 'kN/m2', 'FloorDead'],
  ['Foot spacing along the joist', 1500, 'mm', 'FootSpacing'],
  ['Foot spacing across the joists', 1000, 'mm', 'FootAcross'],
  ['First foot from the support', 1050, 'mm', 'FirstFoot'],
  ['Pad under a foot, square', 150, 'mm', 'FootPad'],
  ['Carriers on the flight', 3, 'people', 'StairCrew'],
  ['Mass of one carrier', 90, 'kg', 'CarrierMass'],
  ['Flight in plan, length', 3100, 'mm', 'StairLength'],
  ['Flight, clear width', 900, 'mm', 'StairWidth'],
  ['Rise', 190, 'mm', 'StairRise'],
  ['Going', 240, 'mm', 'StairGoing'],
  ['Grips apart', 1500, 'mm', 'GripSpacing'],
  ['Heaviest piece carried', 'on edge', '', 'CarriedPose'],
  ['Grips above its lower side', 0, 'mm', 'GripHeight'],
  ['Room length', 6000, 'mm', 'RoomLength'],
  ['Room width', 4800, 'mm', 'RoomWidth'],
  ['Cue', 1470, 'mm', 'CueLength'],
];

const build = (column: string): string => `INDEX(Builds[${column}],MATCH(FloorBuild,Builds[Build],0))`;
const MASS = build('Table mass');
const SLATE = build('Heaviest piece');
const FEET = build('Feet');
const FOOT = `CARRY.FOOTLOAD(${MASS},${FEET})`;
// What a joist takes of the feet in the next row, when that stands nearer than the next joist: boards as simple spans.
const ROWS_ON_JOIST = 'MAX(1,2-FootAcross/JoistSpacing)';
const EVEN_FOOT = `CARRY.FOOTLOAD(${MASS},${FEET},1/${FEET})*${ROWS_ON_JOIST}`;
const ROCKING_FOOT = `CARRY.FOOTLOAD(${MASS},${FEET},MAX(0.5,1/${FEET}))*${ROWS_ON_JOIST}`;
const PITCH = 'CARRY.PITCH(StairRise,StairGoing)';
// On edge the breadth stands upright and the thickness is across the flight; flat the other way round.
const ON_EDGE = 'CarriedPose="on edge"';
const UPRIGHT = `IF(${ON_EDGE},${build('Heaviest breadth')},${build('Heaviest thickness')})`;
const ACROSS = `IF(${ON_EDGE},${build('Heaviest thickness')},${build('Heaviest breadth')})`;
const MASS_HEIGHT = `${UPRIGHT}/2-GripHeight`;
const SHARE = `CARRY.LOWERSHARE(${SLATE},GripSpacing,${MASS_HEIGHT},${PITCH})`;
const JOIST = 'JoistSpan,JoistSpacing,JoistBreadth,JoistDepth,JoistGrade,FloorDead';
const IMPOSED = 'CARRY.CODELOAD(FloorUse,FloorCode)';

/** Decimals that are shown of a unit; of loads, pressures and shares of full use as many as their limits need. */
const PLACES: Readonly<Record<string, number>> = { kg: 1, degrees: 1, people: 0, mm: 0 };
const placesOf = (unit: string): number => PLACES[unit] ?? 3;

const ROOM_TO_SPARE = 'Room to spare round the playing area';

const LINES: readonly Line[] = [
  ['Mass of the table', MASS, 'kg'],
  [
    'Load over its footprint',
    `CARRY.FLOORLOAD(${MASS},${build('Outside length')},${build('Outside width')})`,
    'kN/m2',
    IMPOSED,
    'imposed load of the code',
  ],
  ['Load at the worst foot', FOOT, 'kN', 'CARRY.CODEPOINT(FloorUse,FloorCode)', 'point load of the code'],
  ['Pressure under the worst foot', `CARRY.FOOTPRESSURE(${MASS},${build('Feet')},FootPad)`, 'N/mm2'],
  [
    'Joist, even: two feet where they stand',
    `CARRY.JOISTFEET(${JOIST},${IMPOSED},${EVEN_FOOT},FirstFoot,FootSpacing)`,
    '1 = full',
    '1',
    'full use',
  ],
  [
    'Joist, rocking on two: one of them where it stands',
    `CARRY.JOIST(${JOIST},${IMPOSED},${ROCKING_FOOT},FirstFoot)`,
    '1 = full',
    '1',
    'full use',
  ],
  [
    'Joist, rocking on two: one of them at mid-span',
    `CARRY.JOIST(${JOIST},${IMPOSED},${ROCKING_FOOT})`,
    '1 = full',
    '1',
    'full use',
  ],
  [
    'Flight with the heaviest piece and its carriers',
    `CARRY.FLIGHTLOAD(${SLATE},StairCrew,StairLength,StairWidth,CarrierMass)`,
    'kN/m2',
    'CARRY.CODELOAD("stairs",FloorCode)',
    'stairs in the code',
  ],
  ['Pitch of the stair', PITCH, 'degrees', '42', 'private stair, Approved Document K'],
  ['Share of the lower end', SHARE, 'kg', '25', 'guideline for one, on the level'],
  [
    'Load of the lower carrier on a tread',
    `CARRY.TREADLOAD(CarrierMass,${SHARE})`,
    'kN',
    'CARRY.CODEPOINT("stairs",FloorCode)',
    'point load, stairs in the code',
  ],
  [
    'Carriers at the heaviest piece',
    'StairCrew',
    'people',
    `CARRY.STANDING(${build('Heaviest length')},${ACROSS},StairWidth,StairRise,StairGoing)`,
    'places to stand at it on the flight',
  ],
  ['Centre of mass over the grip line', MASS_HEIGHT, 'mm'],
  [
    ROOM_TO_SPARE,
    `CARRY.ROOMSPARE(RoomLength,RoomWidth,${build('Play length')},${build('Play width')},CueLength)`,
    'mm',
  ],
];

/** Floors, feet, joists and stairs under one table. */
export function floorsSheet(book: WorkbookWriter): void {
  const sheet = book.sheet('Floors');
  headed(
    sheet,
    'Floors and stairs',
    'Yellow cells are yours. Within is no permission; over means stop and ask.',
    'floors',
  );
  sheet.rows('A5', [['Given', 'Value', 'Unit']], HEADING);
  INPUTS.forEach(([label, value, unit, name], i) => {
    const row = 6 + i;
    sheet.rows(`A${row}`, [[label, value, unit]]).format(`B${row}`, INPUT);
    book.name(name, `Floors!$B$${row}`);
  });
  sheet.list('B6', { from: BUILD_LIST }, 'refused').list('B7', USES, 'refused').list('B8', CODES, 'refused');
  sheet.list('B13', JOIST_GRADES, 'refused');
  sheet.list(
    `B${6 + INPUTS.findIndex(([, , , name]) => name === 'CarriedPose')}`,
    ['on edge', 'flat'],
    'refused',
  );

  sheet.rows('E5', [['Check', 'Value', 'Unit', 'Held against', 'Which is', 'Says']], HEADING);
  LINES.forEach(([what, value, unit, against, which], i) => {
    const row = 6 + i;
    const places = placesOf(unit);
    const says = against === undefined ? null : f(saysFormula(row));
    sheet.rows(`E${row}`, [
      [
        what,
        f(what === ROOM_TO_SPARE ? downTo(value, places) : upTo(value, places)),
        unit,
        against === undefined ? null : f(downTo(against, places)),
        which ?? null,
        says,
      ],
    ]);
    const format = places === 0 ? '0' : `0.${'0'.repeat(places)}`;
    sheet.format(`F${row}`, { format }).format(`H${row}`, { format });
  });
  const last = 5 + LINES.length;
  showWithin(sheet, `J6:J${last}`, '$J6');
  sheet.print({ area: `A1:J${5 + INPUTS.length}`, across: 'landscape' });
  sheet.widths([34, 30, 9, 2, 46, 11, 26, 12, 32, 48]);
}

const saysFormula = (row: number): string =>
  `IF(ISERROR(F${row}),"not computed: see the cell",IF(ISERROR(H${row}),"not held: no value in this code",` +
  `IF(F${row}<=H${row},"within, and no permission","over: ask an engineer, or use an aid")))`;
