import { aStage, stageVerb } from './stageWords';
import { capital } from './capital';
import { degrees } from '../../measures/angle';
import { ANGLE_FORMS } from '../../measures/readAngle';
import { LENGTH_FORMS } from '../../measures/readLength';
import { MASS_FORMS } from '../../measures/readMass';
import type { ReadFailure } from '../../measures/readQuantity';
import { measureAtStage } from './measureHeading';
import { MEASURES, type MeasureName, type Quantity, UNIT_OF } from '../../stages/measures';
import type {
  DensityMeant,
  LeafClear,
  PieceMeasure,
  RouteQuestion,
  SurveyProblem,
} from '../checks/surveyProblem';
import type { RouteFault, WordDoubt } from '../table/stageRow';
import { unitsMeant, type UnitMeant } from '../checks/unitsMeant';
import { shownDown, shownGiven } from '../../measures/shown';

/** A cell that cannot be taken, as data; `refusalWords` words it. */
export type Refusal =
  | { readonly kind: 'error cell'; readonly code: string }
  | {
      readonly kind: 'unreadable';
      readonly measure: MeasureName | PieceMeasure;
      readonly got: unknown;
      readonly why: ReadFailure;
    }
  | { readonly kind: 'zero'; readonly canBeNothing: boolean }
  | {
      readonly kind: 'out of range';
      readonly measure: MeasureName | PieceMeasure;
      readonly got: unknown;
      readonly least: number;
      readonly most: number;
      readonly whole: boolean;
      readonly meant: readonly UnitMeant[];
      /** The range is of the longest size of a piece. */
      readonly longest?: boolean;
    }
  | { readonly kind: 'two values'; readonly one: number; readonly other: number };

const READ_FAILURES: Readonly<Record<ReadFailure, string>> = {
  blank: 'the cell is empty',
  'no unit': 'a number written as text needs its unit',
  'unknown unit': 'the unit is not known',
  comma: 'a comma can mean two things, so write a point or nothing',
  parts: 'its parts do not make one measure',
  'not a number': 'it is no number',
  'hidden character': 'a character that takes no room stands in it, so type it again',
  unreadable: 'it is no number with a unit',
};

/** Why a cell cannot be taken: a clause that continues "… cannot be taken:". */
export function refusalWords(refusal: Refusal): string {
  switch (refusal.kind) {
    case 'error cell':
      return `the cell holds the error ${refusal.code}`;
    case 'unreadable':
      return `${quoted(refusal.got)} was typed, and ${READ_FAILURES[refusal.why]}; write ${formsOf(refusal.measure)}`;
    case 'zero':
      return refusal.canBeNothing
        ? '0 may be an empty cell; write "0 mm" if there is none'
        : '0 may be an empty cell';
    case 'out of range': {
      const { measure, got, least, most, whole, meant, longest } = refusal;
      const range = `${whole ? 'a whole number, ' : ''}${least} to ${most}${spaced(unitOf(measure))}`;
      const of = longest ? ' for the longest size of a piece' : '';
      return `${quoted(got)} was typed, and allowed is ${range}${of}${meantWords(got, meant)}`;
    }
    case 'two values':
      return `two columns hold it and they do not agree, ${shown(refusal.one)} and ${shown(refusal.other)}`;
  }
}

/** A problem as a plain sentence that names the measure, its value and what is allowed. */
export function problemWords(problem: SurveyProblem): string {
  switch (problem.kind) {
    // The header row
    case 'column missing':
      return problem.near === undefined
        ? `There is no column ${problem.column}.`
        : `There is no column ${problem.column}; is "${problem.near}" meant for it?`;
    case 'column doubled':
      return `The column ${problem.column} is there ${problem.times} times; keep one.`;
    case 'no rows':
      return 'There is no row under the headers.';

    // One row of a route
    case 'no stage':
      return 'The stage is not named.';
    case 'unknown stage':
      return `"${seen(problem.got)}" is no stage known here${problem.nearest ? `; is ${listed(problem.nearest, 'or')} meant?` : '.'}`;
    case 'no stage of ours':
      return `"${problem.got}" is no stage here: what goes that way is not judged; ask a lifting contractor for it.`;
    case 'no step number':
      return 'The step has no number and no name, so it is named by its place.';
    case 'header repeated':
      return 'The header row is repeated here; keep it at the top only.';
    case 'word not taken':
      return `${doubtWords(problem.doubt)}.`;
    case 'hand where nothing turns':
      return `Hand is filled in, but ${aStage(problem.stage)} ${stageVerb(problem.stage, 'turns', 'turn')} nowhere: give it at the row where the way turns.`;
    case 'run not used':
      return `Run is filled in, but at ${aStage(problem.stage)} it is not used: it is the straight after a corner, a side door or a lift.`;
    case 'narrow part not used':
      return problem.lacksWidth
        ? 'Low height is filled in and Low width is not: nothing narrow is supposed there. How wide is the way beside it?'
        : `${measureAtStage(problem.measure, problem.stage)} is filled in, but at ${aStage(problem.stage)} it is not used: give the narrowest Width, or a passage or a flight with it.`;
    case 'narrow part as wide':
      return `Low width is ${shown(problem.lowWidth)} mm and Width ${shown(problem.width)} mm: Low width is the clear width where something stands in the way near the floor, and the lesser of the two.`;
    case 'height of the narrow part asked':
      return 'Low height is empty: how high does the narrow part stand? It is taken to reach up to the ceiling.';
    case 'not a whole step':
      return `The step is ${String(problem.step)}; steps are counted 1, 2, 3 and so on.`;
    case 'not measured':
      return `${measureAtStage(problem.measure, problem.stage)} is not measured, and ${aStage(problem.stage)} ${stageVerb(problem.stage, 'needs', 'need')} it${problem.noColumn ? '; the table has no column for it' : ''}.${problem.runForGoing ? ' Run is filled in, but Run is the straight after a turn: is it the Going of a step, from nosing to nosing?' : ''}`;
    case 'refused':
      return `${measureAtStage(problem.measure, problem.stage)} cannot be taken: ${problem.why}.`;
    case 'bare zero asked':
      return `${measureAtStage(problem.measure, problem.stage)} is 0, and an empty cell can arrive as 0: was it measured? Write "0 mm" if there is none.`;
    case 'unusual': {
      const unit = spaced(unitOf(problem.measure));
      return `${measureAtStage(problem.measure, problem.stage)} is ${shown(problem.value)}${unit}, and usual is ${problem.least} to ${problem.most}${unit}${meantWords(problem.value, problem.meant)}.`;
    }
    case 'width and height exchanged':
      return `Width is ${shown(problem.width)} mm and Height ${shown(problem.height)} mm: they look exchanged.`;
    case 'rise and going exchanged':
      return `Rise is ${shown(problem.rise)} mm and Going ${shown(problem.going)} mm: they look exchanged.`;
    case 'door leaf':
      return `Width is ${problem.leaf} mm, which is a standard door leaf; with the leaf open at 90 degrees such a door is clear about ${listed(problem.leaves.map(leafWords), 'or')}. ${problem.noteSaysClear ? 'The note says clear: if it was measured so, write yes in the column Clear.' : 'Measure between the stop and the open leaf; if that is what was measured, write yes in the column Clear.'}`;
    case 'headroom square':
      return `Height (headroom) is ${shown(problem.value)} mm, which looks taken square to the slope; plumb above the nosings it would be ${whole(problem.plumb)} mm at this pitch of ${whole(degrees(problem.pitch))} degrees.`;
    case 'steep':
      return `Rise and Going make a pitch of ${shown(degrees(problem.pitch))} degrees, and ${problem.as === 'ladder' ? 'above 60 a stair is climbed as a ladder' : 'a private stair has at most 42'}.`;
    case 'rises and going':
      return `Twice the Rise and the Going make ${shown(problem.sum)} mm, and usual is ${problem.least} to ${problem.most} mm.`;
    case 'rise of the flight':
      return `Rise is ${shown(problem.total)} mm, which looks like the whole flight: over ${problem.risers} risers it would be ${shown(problem.total / problem.risers)} mm a step.`;
    case 'flight length':
      return `Length is ${shown(problem.value)} mm, but ${problem.risers} risers make a flight of about ${whole(problem.expected)} mm.`;
    case 'landing shallow':
      return `Depth is ${shown(problem.depth)} mm and the flight ${shown(problem.width)} mm wide; a landing is usually at least as deep as its flight is wide.`;
    case 'ceiling below the door':
      return `${measureAtStage('ceiling', problem.stage)} is ${shown(problem.ceiling)} mm, lower than the door's Height of ${shown(problem.height)} mm.`;
    case 'column of another stage':
      return `${problem.column} is filled in, but it belongs to ${listed(problem.stages, 'and')} and is not used for ${aStage(problem.stage)}.`;

    // Between rows
    case 'no survey name':
      return 'Survey is empty here, while other rows have one, so this row belongs to none of them.';
    case 'route fault':
      return `${faultWords(problem.fault)}.`;
    case 'asked':
      return questionWords(problem.about);
    case 'step doubled':
      return `Step ${shown(problem.step)} is there twice${ofSurvey(problem.survey)}.`;
    case 'step missing':
      return `${problem.from === problem.to ? `Step ${problem.from} is` : `Steps ${problem.from} to ${problem.to} are`} missing before this one${ofSurvey(problem.survey)}.`;
    case 'ends before the room':
      return `The route${ofSurvey(problem.survey)} ends at ${aStage(problem.stage)} and not in a room.`;
    case 'not a storey':
      return `${problem.risers} Risers make a climb of ${whole(problem.total)} mm, and from floor to floor it is usually ${problem.least} to ${problem.most} mm; count them again.`;
    case 'storey against ceiling':
      return `${problem.risers} Risers of ${shown(problem.rise)} mm make a climb of ${whole(problem.total)} mm, but above the Foot ceiling of ${shown(problem.ceiling)} mm the next floor is usually at ${whole(problem.least)} to ${whole(problem.most)} mm.`;

    // Pieces
    case 'no build':
      return 'Build is empty, so this piece belongs to no table.';
    case 'no piece name':
      return 'The piece has no name.';
    case 'size not given':
      return `${heading(problem.measure)} is not given.`;
    case 'size refused':
      return `${heading(problem.measure)} cannot be taken: ${problem.why}.`;
    case 'count taken as one':
      return 'Count is empty and is taken as 1.';
    case 'sizes out of order':
      return `The sizes are ${problem.sizes.map(shown).join(' x ')} mm; Length is usually the longest and Thickness the least. They are sorted.`;
    case 'density': {
      const what = problem.slate ? 'slate is' : 'such pieces are';
      return `Mass and sizes make ${whole(problem.density)} kg/m3, and ${what} ${whole(problem.least)} to ${whole(problem.most)}${problem.meant.map((m) => `; ${densityMeantWords(m)}`).join('')}.`;
    }
    case 'slate thickness':
      return `Thickness is ${shown(problem.value)} mm, and a slate is usually ${problem.least} to ${problem.most} mm thick.`;
    case 'piece doubled':
      return `"${problem.piece}" is there twice in build "${problem.build}"; use Count for pieces that are alike.`;
    case 'sections missing':
      return `Build "${problem.build}" has a slate in ${problem.of} sections, but ${problem.missing ? `${problem.missing.length === 1 ? 'section' : 'sections'} ${listed(problem.missing.map(String), 'and')} ${problem.missing.length === 1 ? 'is' : 'are'} not there` : `${problem.found} ${problem.found === 1 ? 'is' : 'are'} listed`}.`;
    case 'part missing':
      return `Build "${problem.build}" has no ${problem.part}, while build "${problem.other}" has.`;
  }
}

/** A problem in its cell: what is only to be looked at or asked says so. */
export const problemText = (problem: SurveyProblem): string =>
  problem.severity === 'error'
    ? problemWords(problem)
    : `${problem.severity === 'question' ? 'Ask' : 'Check'}: ${problemWords(problem)}`;

/** A word that cannot be taken. */
export const doubtWords = ({ column, got, allowed }: WordDoubt): string =>
  `${column} cannot be taken: ${quoted(got)} was typed, and allowed is ${allowed}`;

/** What keeps a survey from being judged, without a full stop: it may go on. */
export function faultWords(fault: RouteFault): string {
  switch (fault.kind) {
    case 'rows apart':
      return `The rows of this survey stand apart from each other, and their steps do not tell the order: put them together, or number them`;
    case 'two tapes':
      return `Tape is ${shown(fault.one)} mm in one row of this survey and ${shown(fault.other)} mm in another; give one`;
    case 'between is missing':
      return `${capital(aStage(fault.other))} ${stageVerb(fault.other, 'comes', 'come')} straight after ${aStage(fault.one)}: what lies between is missing`;
    case 'space shorter than the turn':
      return `The space at the stair's end is ${shown(fault.space)} mm, less than the ${shown(fault.width)} mm that the turn beside it is wide; one of the two is wrong`;
  }
}

function questionWords(about: RouteQuestion): string {
  switch (about.kind) {
    case 'which way the stair goes':
      return 'Way is empty: does the way go up here or down? Until it is told, what goes has to go both ways.';
    case 'turn at the stair end':
      return `The space at the ${about.end} of this flight is ${shown(about.space)} mm, shorter than a long piece: does the way go straight on there, or does it turn? If it turns, add the corner or side door.`;
    case 'which hand':
      return `Only ${shownDown(about.straight, 1)} mm lie between this turn and the one before: to which Hand does each turn, left or right?`;
    case 'arm and next row differ':
      return `This arm is ${shown(about.arm)} mm wide and the next row ${shown(about.next)} mm: where across the arm does it stand? It is taken to stand anywhere.`;
    case 'straight and space differ':
      return `Run is ${shown(about.run)} mm, but the space of ${shown(about.space)} mm at the stair's end leaves ${shownDown(Math.max(0, about.space - about.width), 1)} mm beside the turn: which is right? Both have to go.`;
    case 'floor and passage differ':
      return `The space at the stair's end is ${shown(about.space)} mm and the passage there ${shown(about.length)} mm long, but they are the same floor: which is right?`;
    case 'no flight beside the landing':
      return `There is no flight ${about.side} this landing: a flight as wide and steep as the landing says, and longer than the piece, is supposed there.`;
    case 'landing measured downward':
      return `A landing's Width is the lower flight's, ${shown(about.lower)} mm here, and Width out the upper one's, ${shown(about.upper)} mm: they look exchanged, as if measured downward. Which is which?`;
    case 'space at the landing': {
      const noted = about.end === 'foot' ? 'Foot' : 'Head';
      const other = about.end === 'foot' ? 'head' : 'foot';
      return `${noted} space is filled in, but by Way and the order of the rows the ${about.end} of this flight is at the landing, which measures it: is it the space at the ${other}?`;
    }
    case 'passage goes on beside the door':
      return 'Depth (dead end) is empty: does the passage go on beyond this door? It is supposed to.';
    case 'openings face each other':
      return 'Length is empty: the openings at the two ends of this passage are taken to face each other. Do they?';
  }
}

const leafWords = ({ thickness, clear }: LeafClear): string =>
  `${shownDown(clear)} mm (leaf ${thickness} mm thick)`;

function densityMeantWords(meant: DensityMeant): string {
  if (meant.measure !== 'mass') {
    return `with ${heading(meant.measure)} meant in ${meant.unit} it is ${shown(meant.value)} mm and they agree`;
  }
  return meant.unit === 'lb'
    ? `with Mass meant in lb it is ${shown(meant.value)} kg and they agree`
    : `with Mass meant for all ${meant.count} together it is ${shown(meant.value)} kg each and they agree`;
}

/**
 * A bare number in the units that would make it an ordinary length; '' where none does.
 * @example meantAs(76, { least: 560, most: 1800 }) // '76 cm would be 760 mm'
 */
export const meantAs = (got: unknown, usual: Parameters<typeof unitsMeant>[1]): string =>
  meantWords(got, unitsMeant(got, usual)).slice(2);

function meantWords(got: unknown, meant: readonly UnitMeant[]): string {
  return meant
    .map(({ unit, value }) => `; ${shownGiven(got as number, 4)} ${unit} would be ${shown(value)} mm`)
    .join('');
}

/** A number as people write a tape's: no more than a tenth. */
const shown = (value: number): string => String(shownGiven(value));
const whole = (value: number): string => String(shownGiven(value, 0));

/** Characters that take no room, by their names. */
const seen = (text: string): string =>
  text.replace(
    /[\u00ad\u200b-\u200f\u2060-\u2064\ufeff]/g,
    (hidden) => `<U+${hidden.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}>`,
  );

/** What was typed, cut to what fits a sentence. */
function quoted(got: unknown): string {
  if (typeof got === 'string') return `"${seen(got.length > 40 ? `${got.slice(0, 40)}…` : got)}"`;
  if (typeof got === 'boolean') return got ? 'TRUE' : 'FALSE';
  return String(got);
}

const heading = (measure: PieceMeasure): string => capital(measure);

const FORMS: Readonly<Record<Quantity, string>> = {
  length: LENGTH_FORMS,
  angle: ANGLE_FORMS,
  mass: MASS_FORMS,
  count: 'a plain number',
};
const PIECE_QUANTITIES: Readonly<Record<PieceMeasure, Quantity>> = {
  length: 'length',
  breadth: 'length',
  thickness: 'length',
  mass: 'mass',
  count: 'count',
};

const quantityOf = (measure: MeasureName | PieceMeasure): Quantity =>
  measure in PIECE_QUANTITIES
    ? PIECE_QUANTITIES[measure as PieceMeasure]
    : MEASURES[measure as MeasureName].quantity;

const unitOf = (measure: MeasureName | PieceMeasure): string => UNIT_OF[quantityOf(measure)];

const spaced = (unit: string): string => (unit ? ` ${unit}` : '');

const formsOf = (measure: MeasureName | PieceMeasure): string => FORMS[quantityOf(measure)];

function listed(words: readonly string[], joint: 'and' | 'or'): string {
  const last = words[words.length - 1] ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}

const ofSurvey = (survey: string): string => (survey === '' ? '' : ` of survey "${survey}"`);
