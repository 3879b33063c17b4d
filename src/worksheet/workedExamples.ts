/** A worked example: what is asked, what is given, and the function whose working answers it. */
export interface WorkedExample {
  readonly title: string;
  /** In words, as a trainee would be asked. */
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
      'A slate in one for a 7 ft table measures 1830 x 930 x 26 mm. Slate is 2800 kg a cubic metre. How heavy is it?',
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
      'The leaf is 762 wide and 35 thick, its stop 12. It opens to a right angle and stays on. What is clear?',
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
    question: 'The customer wrote a width in feet and inches. How many millimetres is it?',
    given: [['as written', `2' 6 1/2"`, '']],
    id: 'TOMM',
    unit: 'mm',
    tolerance: 0.5,
  },
  {
    title: 'Through the door',
    question:
      'A built-up cabinet of 2060 x 1150 x 330 mm comes to a door 775 wide and 1981 high. What padding a side could it wear?',
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
      'A board of 2060 x 90 mm, seen end on, has to go through a hatch of 1200 x 1800 mm. What padding has it at its best slant?',
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
      'Two halls, 1000 and 900 wide, meet at a right angle. A slate is carried level on edge, 60 mm thick with its blankets. How long may it be?',
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
    question: 'The same halls under a ceiling of 2400. What clearance has the 7 ft slate?',
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
    question: 'Can the same slate be stood on end under 2100, and with what clearance?',
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
    question: 'Rises of 190 and goings of 240. What is the pitch?',
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
    question: 'A straight flight 900 wide with 2050 of plumb headroom. What clearance has the 7 ft slate?',
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
      'A door 775 wide stands in the side of a passage 1100 wide, wall 110. What clearance has the 7 ft slate, both ends open?',
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
      'A slate of 124 kg goes up at 38 degrees, grips 1500 apart, its centre 350 above the line of the grips. What hangs on the lower end?',
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
    question: 'What is the guideline for a team of three, 25 kg each, on a level floor in good posture?',
    given: [['handlers', 3, '']],
    id: 'TEAMLIMIT',
    unit: 'kg',
    tolerance: 0.5,
  },
  {
    title: 'Lifting at the van',
    question:
      'One person lifts an end with the hands 400 out and 600 up, and raises it by 300. What limit does the lifting equation give?',
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
      'Carrying takes 480 W for a spell of 30 minutes, work and rest together. How many minutes are rest?',
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
      'A table of 381 kg stands on four feet and rocks on two. What does the worst foot press on the floor?',
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
      'Joists 50 x 200 of C24 span 3600, 400 apart; floor 0.5 and imposed load 1.5 kN/m2; a foot of 1.87 kN at mid-span. How far is the joist used?',
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
      'A room of 6000 x 4800 is to take a playing area of 2235 x 1118 with cues of 1470. What is spare, the better way round?',
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
