import { shownGiven } from '../core/measures/shown';

/** A worked example: what is asked, what is given, and the function whose working answers it. */
export interface WorkedExample {
  readonly title: string;
  /** In words, as a trainee would be asked; `{1}` stands for the first of what is given. */
  readonly question: string;
  /** In the order of the function's arguments. */
  readonly given: readonly (readonly [label: string, value: number | string, unit: string])[];
  /** Function without its namespace. */
  readonly id: string;
  readonly unit: string;
  /** How far off an answer may be and still count as right, in the unit. */
  readonly tolerance: number;
  /** Rows that its working takes up, where that is more than most need. */
  readonly workingRows?: number;
}

/** Rows that the working of most examples has room in. */
export const WORKING_ROWS = 22;

/** From the mass of a slate to people, floors and room: values of our own making, in the range of common practice. */
export const WORKED_EXAMPLES: readonly WorkedExample[] = [
  {
    title: 'What does the slate weigh?',
    question:
      'A slate in one for a 7 ft table measures {1} x {2} x {3} mm. Slate is {4} kg a cubic metre. How heavy is it?',
    given: [
      ['length', 1830, 'mm'],
      ['breadth', 930, 'mm'],
      ['thickness', 26, 'mm'],
      ['density', 2800, 'kg/m3'],
    ],
    id: 'SLABMASS',
    unit: 'kg',
    tolerance: 1,
  },
  {
    title: 'How wide is the door, really?',
    question:
      'The leaf is {1} wide and {2} thick, its stop {3}. It opens to a right angle and stays on. What is clear?',
    given: [
      ['leaf width', 762, 'mm'],
      ['leaf thickness', 35, 'mm'],
      ['stop', 12, 'mm'],
    ],
    id: 'DOORCLEAR',
    unit: 'mm',
    tolerance: 1,
  },
  {
    title: 'A tape in feet and inches',
    question: 'The customer wrote a width: {1}. How many millimetres is it?',
    given: [['as written', `2' 6 1/2"`, '']],
    id: 'TOMM',
    unit: 'mm',
    tolerance: 0.5,
  },
  {
    title: 'Through the door',
    question:
      'A built-up cabinet of {3} x {4} x {5} mm comes to a door {1} wide and {2} high. What padding a side could it wear?',
    given: [
      ['opening width', 775, 'mm'],
      ['opening height', 1981, 'mm'],
      ['length', 2060, 'mm'],
      ['breadth', 1150, 'mm'],
      ['thickness', 330, 'mm'],
    ],
    id: 'OPENING',
    unit: 'mm a side',
    tolerance: 1,
  },
  {
    title: 'Slanted through the door',
    question:
      'A board of {3} x {4} mm, seen end on, has to go through a hatch of {1} x {2} mm. What padding has it at its best slant?',
    given: [
      ['opening width', 1200, 'mm'],
      ['opening height', 1800, 'mm'],
      ['face length', 2060, 'mm'],
      ['face width', 90, 'mm'],
    ],
    id: 'DIAGONAL',
    unit: 'mm a side',
    tolerance: 2,
  },
  {
    title: 'The longest slate round the hall corner',
    question:
      'Two halls, {1} and {2} wide, meet at a right angle. A slate is carried level on edge, {3} mm thick with its blankets. How long may it be?',
    given: [
      ['width in', 1000, 'mm'],
      ['width out', 900, 'mm'],
      ['thickness', 60, 'mm'],
    ],
    id: 'CORNERLENGTH',
    unit: 'mm',
    tolerance: 5,
  },
  {
    title: 'Round the corner with this slate',
    question:
      'Halls {1} and {2} wide under a ceiling of {3}. What clearance has a slate of {4} x {5} x {6} mm?',
    given: [
      ['width in', 1000, 'mm'],
      ['width out', 900, 'mm'],
      ['ceiling', 2400, 'mm'],
      ['length', 1830, 'mm'],
      ['breadth', 930, 'mm'],
      ['thickness', 26, 'mm'],
    ],
    id: 'CORNER',
    unit: 'mm a side',
    tolerance: 2,
  },
  {
    title: 'Standing it on end',
    question: 'Can a slate of {2} x {3} x {4} mm be stood on end under {1}, and with what clearance?',
    given: [
      ['ceiling', 2100, 'mm'],
      ['length', 1830, 'mm'],
      ['breadth', 930, 'mm'],
      ['thickness', 26, 'mm'],
    ],
    id: 'UPEND',
    unit: 'mm a side',
    tolerance: 2,
  },
  {
    title: 'How steep is the stair?',
    question: 'Rises of {1} and goings of {2}. What is the pitch?',
    given: [
      ['rise', 190, 'mm'],
      ['going', 240, 'mm'],
    ],
    id: 'PITCH',
    unit: 'degrees',
    tolerance: 0.2,
  },
  {
    title: 'Up the flight',
    question:
      'A flight {1} wide, headroom {2} plumb, rises {3}, goings {4}. What clearance has a slate of {5} x {6} x {7} mm?',
    given: [
      ['width', 900, 'mm'],
      ['headroom', 2050, 'mm'],
      ['rise', 190, 'mm'],
      ['going', 240, 'mm'],
      ['length', 1830, 'mm'],
      ['breadth', 930, 'mm'],
      ['thickness', 26, 'mm'],
    ],
    id: 'FLIGHT',
    unit: 'mm a side',
    tolerance: 2,
  },
  {
    title: 'Out of a side door',
    question:
      'A door {1} x {2} in a wall of {3} leads into a passage {4} wide and {5} high, open both ways. What clearance has a slate of {6} x {7} x {8} mm?',
    given: [
      ['door width', 775, 'mm'],
      ['door height', 1981, 'mm'],
      ['wall', 110, 'mm'],
      ['passage width', 1100, 'mm'],
      ['ceiling', 2420, 'mm'],
      ['length', 1830, 'mm'],
      ['breadth', 930, 'mm'],
      ['thickness', 26, 'mm'],
    ],
    id: 'SIDEDOOR',
    unit: 'mm a side',
    tolerance: 3,
  },
  {
    title: 'Who has the heavy end?',
    question:
      'A slate of {1} kg goes up at {4} degrees, grips {2} apart, its centre {3} above the line of the grips. What hangs on the lower end?',
    given: [
      ['mass', 124, 'kg'],
      ['grips apart', 1500, 'mm'],
      ['centre over the grips', 350, 'mm'],
      ['pitch', 38, 'degrees'],
    ],
    id: 'LOWERSHARE',
    unit: 'kg',
    tolerance: 1,
  },
  {
    title: 'Three people on the level',
    question: 'What is the guideline for a team of {1}, 25 kg each, on a level floor in good posture?',
    given: [['handlers', 3, '']],
    id: 'TEAMLIMIT',
    unit: 'kg',
    tolerance: 0.5,
  },
  {
    title: 'Lifting at the van',
    question:
      'One person lifts an end with the hands {1} out and {2} up, and raises it by {3}. What limit does the lifting equation give?',
    given: [
      ['reach', 400, 'mm'],
      ['height', 600, 'mm'],
      ['travel', 300, 'mm'],
    ],
    id: 'LIFTLIMIT',
    unit: 'kg',
    tolerance: 0.3,
  },
  {
    title: 'How long a rest?',
    question:
      'Carrying takes {2} W for a spell of {1} minutes, work and rest together. How many minutes are rest?',
    given: [
      ['spell', 30, 'min'],
      ['work rate', 480, 'W'],
    ],
    id: 'RESTTIME',
    unit: 'min',
    tolerance: 0.5,
  },
  {
    title: 'Under one foot',
    question:
      'A table of {1} kg stands on {2} feet and rocks on two. What does the worst foot press on the floor?',
    given: [
      ['mass', 381, 'kg'],
      ['feet', 4, ''],
    ],
    id: 'FOOTLOAD',
    unit: 'kN',
    tolerance: 0.05,
  },
  {
    title: 'The joist under it',
    question:
      'Joists {3} x {4} of {5} span {1}, {2} apart; floor {6} and imposed load {7} kN/m2; a foot of {8} kN at mid-span. How far is the joist used?',
    given: [
      ['span', 3600, 'mm'],
      ['spacing', 400, 'mm'],
      ['breadth', 50, 'mm'],
      ['depth', 200, 'mm'],
      ['grade', 'C24', ''],
      ['floor', 0.5, 'kN/m2'],
      ['imposed', 1.5, 'kN/m2'],
      ['foot', 1.87, 'kN'],
    ],
    id: 'JOIST',
    unit: '1 = full',
    tolerance: 0.02,
    workingRows: 46,
  },
  {
    title: 'Room to play',
    question:
      'A room of {1} x {2} is to take a playing area of {3} x {4} with cues of {5}. What is spare, the better way round?',
    given: [
      ['room length', 6000, 'mm'],
      ['room width', 4800, 'mm'],
      ['playing length', 2235, 'mm'],
      ['playing width', 1118, 'mm'],
      ['cue', 1470, 'mm'],
    ],
    id: 'ROOMSPARE',
    unit: 'mm',
    tolerance: 2,
  },
];

/**
 * A question as a formula, so that it follows the cells of what is given.
 * @param cells in the order of what is given
 */
export function questionFormula({ question }: WorkedExample, cells: readonly string[]): string {
  const parts = question
    .split(/\{(\d)\}/)
    .map((part, i) => (i % 2 === 0 ? quoted(part) : (cells[Number(part) - 1] ?? '""')));
  return parts.filter((part) => part !== '""').join('&');
}

const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;

/** Functions that read an answer with its unit, where there is one. */
const READS: Readonly<Record<string, string>> = { mm: 'CARRY.TOMM', kg: 'CARRY.TOKG' };

/** An answer in a cell as a number: plain, or text with its unit; an error where it is neither. */
export function answerFormula(cell: string, unit: string): string {
  const without = ['mm a side', unit].reduce(
    (text, word) => (word === '' ? text : `SUBSTITUTE(${text},${quoted(word.toLowerCase())},"")`),
    `LOWER(${cell})`,
  );
  const plain = `VALUE(TRIM(${without}))`;
  const reader = READS[unit] ?? (unit === 'mm a side' ? READS.mm : undefined);
  const text = reader === undefined ? plain : `IFERROR(${plain},${reader}(${cell}))`;
  return `IF(ISNUMBER(${cell}),${cell},${text})`;
}

/** What is said of an answer in a cell, as a formula. */
export const markFormula = (cell: string, { unit, tolerance }: WorkedExample, result: string): string =>
  `IF(${cell}="","write it in ${cell}",IF(ISERROR(${answerFormula(cell, unit)}),"not a number, and none with its unit",` +
  `IF(ABS(${answerFormula(cell, unit)}-${result})<=${tolerance},"right, within ${tolerance}","not yet")))`;

/** What is only shown once `yes` stands in a cell. */
export const shownWhenAsked = (asked: string, formula: string): string =>
  `IF(LOWER(TRIM(${asked}))="yes",${formula},"write yes in ${asked.replace(/\$/g, '')} to see it")`;

/** Of the linear congruence by which a seed varies what is given: primes, so that neighbours differ. */
const BY_SEED = 7919;
const BY_NUMBER = 4657;
const BY_SQUARE = 3571;
const MODULUS = 10007;
/** Below this a number is a count or a share, and stays. */
const VARIED_FROM = 10;
/** From here on a tape reads in steps of five. */
const COARSE_FROM = 200;

/**
 * What is given, varied by a seed from a tenth less to a tenth more, in steps that a tape or a table would have; the same
 * for the same seed in every host.
 * @param seed the cell of the seed, a whole number
 * @param number another for each number that is varied
 * @returns undefined for what is not varied
 */
export function variedFormula(value: number | string, seed: string, number: number): string | undefined {
  if (typeof value !== 'number' || value < VARIED_FROM) return undefined;
  const step = value >= COARSE_FROM ? 5 : 1;
  const low = shownGiven((0.9 * value) / step, 0) * step;
  const count = Math.max(2, shownGiven((0.2 * value) / step, 0));
  const drawn = `MOD(ABS(${seed})*${BY_SEED}+${number * BY_NUMBER + number * number * BY_SQUARE},${MODULUS})`;
  return `${low}+${step}*INT(${drawn}/${MODULUS}*${count})`;
}
