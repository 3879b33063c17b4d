import { problemsOfRoute } from '../survey/checks/checkRoute';
import type { RouteQuestion, SurveyProblem } from '../survey/checks/surveyProblem';
import type { RouteRead } from '../survey/table/readRoute';
import { stepName, type RouteFault, type StageRow } from '../survey/table/stageRow';
import { kindOf, roleOf } from '../stages/kinds';
import type { MeasureName } from '../stages/measures';
import { measureQuestion } from './measureQuestion';
import { placeWords } from './placeWords';
import { shownDown, shownGiven } from '../measures/shown';

/** One thing to ask a customer. */
export interface CustomerQuestion {
  readonly survey: string;
  /** What the step is called. */
  readonly step: number | string;
  readonly question: string;
  readonly why: string;
  /** What a photograph of it has to show. */
  readonly photo: string;
}

/**
 * How much an answer is worth: without the first nothing can be judged, the second may be wrong by much, the third is
 * supposed meanwhile, the fourth is taken at its worst.
 */
const WORTH = { missing: 0, doubted: 1, open: 2, unmeasured: 3 } as const;

interface Ranked extends Omit<CustomerQuestion, 'survey' | 'step'> {
  readonly worth: keyof typeof WORTH;
  readonly at: number;
}

const WHY = {
  missing: 'without it nobody can say whether the table gets through',
  unknown: 'we need to know what is there before anything can be said of the way',
  refused: 'what was noted cannot be read as a measure',
  unusual: (value: string) => `${value} was noted, which is far from what is usual there`,
  unmeasured:
    'the table may have to turn or to be raised there, and as long as it is not known we count on the worst',
  supposed: 'as long as it is not known we count on the worse of the two',
} as const;

/**
 * What to ask the customers of one survey or of many: what is missing, what is doubted and what is left open, the most
 * useful first within each survey. What the office has to put right by itself (headings, numbers of steps) is not asked.
 *
 * @param read the table of a route, or of the routes of many surveys
 * @returns questions in a customer's words, survey by survey in the order of the table; none twice
 * @example
 * customerQuestions(readRoute([['Stage', 'Width', 'Height'], ['door', 715, null], ['room', 4000, 2400]])).map((q) => q.step)
 * // ['row 1', 'row 2']
 */
export function customerQuestions(read: RouteRead): CustomerQuestion[] {
  const problems = problemsOfRoute(read);
  return read.surveys.flatMap(({ name, rows }) => {
    const own = new Map(rows.map((row, i) => [row.rowIndex, i]));
    const ranked = [
      ...problems.flatMap((problem): Ranked[] => {
        const at = own.get(problem.rowIndex);
        return at === undefined ? [] : asked(problem, rows, at).map((one) => ({ ...one, at }));
      }),
      ...rows.flatMap((row, at) => unmeasured(rows, row, at).map((one) => ({ ...one, at }))),
    ];
    const sorted = ranked.sort((a, b) => WORTH[a.worth] - WORTH[b.worth] || a.at - b.at);
    const seen = new Set<string>();
    return sorted.flatMap(({ question, why, photo, at }): CustomerQuestion[] => {
      if (seen.has(question)) return [];
      seen.add(question);
      const row = rows[at];
      return row ? [{ survey: name, step: stepName(row, at), question, why, photo }] : [];
    });
  });
}

type Asked = Omit<Ranked, 'at'>;

/** The measure of a place asked for, or asked for again. */
function again(
  rows: readonly StageRow[],
  at: number,
  measure: MeasureName,
  worth: Ranked['worth'],
  why: string,
): Asked[] {
  const stage = rows[at]?.stage;
  if (!stage) return [];
  return [{ ...measureQuestion(measure, { place: placeWords(rows, at), stage }), worth, why }];
}

/** What a problem of a row or between rows asks of the customer; nothing where the office mends it. */
function asked(problem: SurveyProblem, rows: readonly StageRow[], at: number): Asked[] {
  const place = placeWords(rows, at);
  switch (problem.kind) {
    case 'no stage':
    case 'unknown stage':
      return [
        {
          question: `What is there${between(rows, at)}: a door, a passage, a corner, stairs, a landing, a lift or a room?`,
          why: WHY.unknown,
          photo: 'the whole way there, from where you come in',
          worth: 'missing',
        },
      ];
    case 'not measured':
      return again(rows, at, problem.measure, 'missing', WHY.missing);
    case 'refused':
      return again(rows, at, problem.measure, 'missing', WHY.refused);
    case 'bare zero asked':
      return again(
        rows,
        at,
        problem.measure,
        'doubted',
        'it was noted as nothing, which may mean that nobody measured it',
      );
    case 'unusual':
      return again(rows, at, problem.measure, 'doubted', WHY.unusual(figure(problem.value)));
    case 'door leaf':
      return [
        {
          question: `Is ${figure(problem.leaf)} mm the width of the door itself or of the opening at ${place}? Please measure between the strip the door closes against and the open door.`,
          why: `doors are made ${figure(problem.leaf)} mm wide, and such a door leaves about ${problem.leaves.map(({ clear }) => String(shownDown(clear))).join(' or ')} mm to pass`,
          photo: `${place} wide open, the tape held across, its figures readable`,
          worth: 'doubted',
        },
      ];
    case 'narrow part not used':
      return problem.lacksWidth
        ? again(rows, at, 'lowWidth', 'doubted', 'how high it stands was noted, and not how wide the way is')
        : [];
    case 'narrow part as wide':
      return again(rows, at, 'lowWidth', 'doubted', 'the way was noted as no narrower there than above');
    case 'height of the narrow part asked':
      return again(rows, at, 'lowHeight', 'open', WHY.supposed);
    case 'width and height exchanged':
      return [
        ...again(rows, at, 'width', 'doubted', 'its width and its height look exchanged'),
        ...again(rows, at, 'height', 'doubted', 'its width and its height look exchanged'),
      ];
    case 'rise and going exchanged':
      return stepAgain(rows, at, 'the height and the depth of a step look exchanged');
    case 'steep':
    case 'rises and going':
      return stepAgain(rows, at, 'the steps that were noted make stairs that are hardly built so');
    case 'headroom square':
      return again(
        rows,
        at,
        'height',
        'doubted',
        'it looks measured at a slant: hold the tape straight up and down',
      );
    case 'rise of the flight':
      return again(rows, at, 'rise', 'doubted', 'what was noted looks like the height of all steps together');
    case 'flight length':
      return [
        ...again(rows, at, 'risers', 'doubted', 'the number of steps and the length do not agree'),
        ...again(rows, at, 'going', 'doubted', 'the number of steps and the length do not agree'),
      ];
    case 'landing shallow':
      return again(
        rows,
        at,
        'depth',
        'doubted',
        'a landing is hardly ever less deep than the stairs are wide',
      );
    case 'ceiling below the door':
      return again(rows, at, 'ceiling', 'doubted', 'a ceiling lower than the door was noted');
    case 'not a storey':
    case 'storey against ceiling':
      return again(
        rows,
        at,
        'risers',
        'doubted',
        'the steps that were noted do not lead from one floor to the next',
      );
    case 'step missing':
      return [
        {
          question: `What comes just before ${place}? Please walk the way and tell us everything you pass.`,
          why: 'a place on the way looks left out',
          photo: 'the whole way, a picture from every place where it turns',
          worth: 'missing',
        },
      ];
    case 'ends before the room':
      return [
        {
          question: `What comes after ${place}, up to the place where the table is to stand?`,
          why: 'the way ends before the room',
          photo: 'the way on, and the room from its door',
          worth: 'missing',
        },
      ];
    case 'route fault':
      return faultAsked(problem.fault, rows, at);
    case 'asked':
      return openAsked(problem.about, rows, at);
    default:
      return [];
  }
}

const stepAgain = (rows: readonly StageRow[], at: number, why: string): Asked[] => [
  ...again(rows, at, 'rise', 'doubted', why),
  ...again(rows, at, 'going', 'doubted', why),
];

function faultAsked(fault: RouteFault, rows: readonly StageRow[], at: number): Asked[] {
  const place = placeWords(rows, at);
  switch (fault.kind) {
    case 'between is missing':
      return [
        {
          question: `What lies between ${placeWords(rows, at - 1)} and ${place}?`,
          why: WHY.unknown,
          photo: 'the floor between the two',
          worth: 'missing',
        },
      ];
    case 'space shorter than the turn':
      return [
        {
          question: `At the end of the stairs where you turn at ${place}, how far is it from the step to the wall facing it, and how wide is the way you turn into?`,
          why: 'the two that were noted cannot both be right',
          photo: 'the floor at the end of the stairs, taken from the steps',
          worth: 'missing',
        },
      ];
    default:
      return [];
  }
}

/** What a route leaves open, as it is asked. */
function openAsked(about: RouteQuestion, rows: readonly StageRow[], at: number): Asked[] {
  const place = placeWords(rows, at);
  const open = (question: string, photo: string, why: string = WHY.supposed): Asked[] => [
    { question, photo, why, worth: 'open' },
  ];
  switch (about.kind) {
    case 'which way the stair goes':
      return open(`On the way in, do you go up or down ${place}?`, `${place} as you come to it`);
    case 'turn at the stair end':
      return again(rows, at, about.end === 'foot' ? 'footSpace' : 'headSpace', 'open', WHY.supposed).map(
        (one) => ({
          ...one,
          question: `At the ${about.end === 'foot' ? 'bottom' : 'top'} of ${place}, do you walk straight on or turn to a side, and to which?`,
        }),
      );
    case 'which hand':
      return open(`At ${place}, do you turn left or right on the way in?`, `${place} as you come to it`);
    case 'arm and next row differ':
      return open(
        `How wide is the way just after ${place}? Both ${figure(about.arm)} mm and ${figure(about.next)} mm were noted.`,
        `the way on from ${place}, the tape held across`,
        'two different widths were noted for one place',
      );
    case 'straight and space differ':
      return open(
        `From ${place} to the first step of the stairs: how far is it, and how far from that step back to the wall facing it?`,
        `the floor between ${place} and the stairs`,
        'the lengths that were noted do not agree',
      );
    case 'floor and passage differ':
      return open(
        `How far is it from the end of ${place} to the wall or door facing it? Both ${figure(about.space)} mm and ${figure(about.length)} mm were noted.`,
        `the floor at the end of ${place}, taken from the steps`,
        'two different lengths were noted for one place',
      );
    case 'no flight beside the landing':
      return open(
        `Do steps lead ${about.side === 'before' ? 'up or down to' : 'on beyond'} ${place}? How many?`,
        `${place} with all the steps beside it`,
        'the steps beside it were not noted',
      );
    case 'landing measured downward':
      return open(
        `At ${place}, how wide are the steps below it, and how wide those above it?`,
        `${place} from below, the tape held across the steps`,
        'the two widths look exchanged',
      );
    case 'space at the landing':
      return again(rows, at, about.end === 'foot' ? 'headSpace' : 'footSpace', 'open', WHY.supposed);
    case 'passage goes on beside the door':
      return again(rows, at, 'depth', 'open', WHY.supposed);
    case 'openings face each other':
      return again(rows, at, 'length', 'open', WHY.supposed);
  }
}

function unmeasured(rows: readonly StageRow[], { stage, measures, refused }: StageRow, at: number): Asked[] {
  if (!stage) return [];
  const beside = [rows[at - 1]?.stage, rows[at + 1]?.stage];
  return kindOf(stage).worthAsking.flatMap((measure): Asked[] => {
    if (measures[measure] !== undefined) return [];
    if (refused.some((one) => one.measure === measure)) return [];
    // A flight's ends beside a landing are measured there.
    if (stage === 'flight' && measure !== 'risers' && endOnLanding(rows, at, measure)) return [];
    if (stage === 'passage' && beside.includes(undefined)) return [];
    return again(rows, at, measure, 'unmeasured', WHY.unmeasured);
  });
}

function endOnLanding(rows: readonly StageRow[], at: number, measure: MeasureName): boolean {
  const way = rows[at]?.way;
  const before = roleOf(rows[at - 1]?.stage) === 'landing';
  const after = roleOf(rows[at + 1]?.stage) === 'landing';
  // Which of its ends that is, is asked first.
  if (way === undefined) return before || after;
  const foot = measure === 'footSpace' || measure === 'footCeiling';
  return (way === 'up') === foot ? before : after;
}

/** Where a place without a name is, by its neighbours. */
function between(rows: readonly StageRow[], at: number): string {
  const before = rows[at - 1]?.stage ? ` after ${placeWords(rows, at - 1)}` : '';
  const after = rows[at + 1]?.stage ? `${before ? ' and' : ''} before ${placeWords(rows, at + 1)}` : '';
  return before + after;
}

const figure = (value: number): string => String(shownGiven(value));
