import type { WriteCell } from './sheetAccess';

/** A question for a trainee: what is asked, what is given, and which function works it out. */
export interface WorkedExample {
  readonly question: string;
  /** Label and value, in the order of the function's arguments. */
  readonly inputs: readonly (readonly [string, WriteCell])[];
  readonly id: string;
  readonly unit: string;
  /** How far off an answer may be, in that unit. */
  readonly within: number;
}

/** The piece of most questions: a one-piece slate for a 7 ft table. Common practice, no source. */
const SLATE = [
  ['Length, mm', 1830],
  ['Breadth, mm', 930],
  ['Thickness, mm', 25],
] as const;

/** From the mass of a slate to the stairs: the arithmetic of a job, one question at a time. */
export const WORKED_EXAMPLES: readonly WorkedExample[] = [
  {
    question: 'What does the slate weigh?',
    inputs: SLATE,
    id: 'SLABMASS',
    unit: 'kg',
    within: 0.5,
  },
  {
    question: 'A 762 mm leaf, 35 mm thick, is left on and opens square. How wide is the way through?',
    inputs: [
      ['Leaf width, mm', 762],
      ['Leaf thickness, mm', 35],
    ],
    id: 'DOORCLEAR',
    unit: 'mm',
    within: 1,
  },
  {
    question: 'A cellar hatch is 700 x 900 mm. How much is to spare on each side for the slate?',
    inputs: [['Opening width, mm', 700], ['Opening height, mm', 900], ...SLATE],
    id: 'OPENING',
    unit: 'mm a side',
    within: 0.5,
  },
  {
    question: 'At what angle to the long side of the hatch does the slate stand then?',
    inputs: [
      ['Opening width, mm', 700],
      ['Opening height, mm', 900],
      ['Face length, mm', 930],
      ['Face width, mm', 25],
    ],
    id: 'DIAGONALANGLE',
    unit: 'degrees',
    within: 0.5,
  },
  {
    question: 'A passage 800 mm wide meets one of 760 mm at a right angle. How much is to spare?',
    inputs: [['Width in, mm', 800], ['Width out, mm', 760], ['Ceiling, mm', 1700], ...SLATE],
    id: 'CORNER',
    unit: 'mm a side',
    within: 0.5,
  },
  {
    question: 'What is the longest level piece, 25 mm thick, that turns there?',
    inputs: [
      ['Width in, mm', 800],
      ['Width out, mm', 760],
      ['Thickness, mm', 25],
    ],
    id: 'CORNERLENGTH',
    unit: 'mm',
    within: 1,
  },
  {
    question: 'Can the slate be stood on end under a ceiling of 2100 mm? With how much to spare?',
    inputs: [['Ceiling, mm', 2100], ...SLATE],
    id: 'UPEND',
    unit: 'mm a side',
    within: 0.5,
  },
  {
    question: 'Stairs of 190 mm rise and 240 mm going: how steep are they?',
    inputs: [
      ['Rise, mm', 190],
      ['Going, mm', 240],
    ],
    id: 'PITCH',
    unit: 'degrees',
    within: 0.1,
  },
  {
    question: 'With 1500 mm of headroom over those stairs, how much is to spare for the slate?',
    inputs: [['Width, mm', 860], ['Headroom, mm', 1500], ['Rise, mm', 190], ['Going, mm', 240], ...SLATE],
    id: 'FLIGHT',
    unit: 'mm a side',
    within: 0.5,
  },
  {
    question:
      'On those stairs two carry 119 kg on edge, gripped at the lower edge. What does the lower one have?',
    inputs: [
      ['Mass, kg', 119],
      ['Grip spacing, mm', 1500],
      ['Centre of mass above the grips, mm', 465],
      ['Pitch, degrees', 38.4],
    ],
    id: 'LOWERSHARE',
    unit: 'kg',
    within: 0.5,
  },
  {
    question: 'On a level floor, what may three lift together by the guideline of 25 kg each?',
    inputs: [
      ['Handlers', 3],
      ['Limit each, kg', 25],
    ],
    id: 'TEAMLIMIT',
    unit: 'kg',
    within: 0.1,
  },
  {
    question: 'A table of 260 kg stands on four feet and rocks. What is on the worst foot?',
    inputs: [
      ['Mass, kg', 260],
      ['Feet', 4],
    ],
    id: 'FOOTLOAD',
    unit: 'kN',
    within: 0.01,
  },
  {
    question: 'The room is 5600 x 4300 mm, the playing area 1981 x 991, the cue 1473. How much is to spare?',
    inputs: [
      ['Room length, mm', 5600],
      ['Room width, mm', 4300],
      ['Play length, mm', 1981],
      ['Play width, mm', 991],
      ['Cue, mm', 1473],
    ],
    id: 'ROOMSPARE',
    unit: 'mm',
    within: 1,
  },
];
