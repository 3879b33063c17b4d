import { askedBy } from './askedBy';
import { isNoneKnown } from '../core/crew/aidFor';
import { carryMoves, type CarryMove } from '../core/crew/carryMoves';
import { aidWords, handWords, moveOrder, shareWords } from '../core/crew/moveWords';
import { CAUTIONS } from '../core/measures/cautions';
import { degrees } from '../core/measures/angle';
import { shownDown, shownGiven, shownUp } from '../core/measures/shown';
import { carryAdvice } from '../core/carrying/carryAdvice';
import type { Build, BuildPiece } from '../core/route/buildVerdict';
import { prepareRoute, type PreparedRoute } from '../core/route/preparedRoute';
import { stageBook, type StageBook } from '../core/route/stageBook';
import { isStair, type StageName } from '../core/stages/kinds';
import { tapeOf, type StageRow } from '../core/survey/table/stageRow';
import { carriedRoute, type CarriedRoute } from '../drawing/carriedRoute';
import type { Table } from '../worksheet/description';
import { buildsOf, surveysOf } from '../worksheet/routeInputs';
import { CREW_SHEET_STYLE } from './crewSheetStyle';
import { markup, Markup, NOTHING } from './markup';
import { wholePage } from './wholePage';
import type { Month, MonthSurvey } from './month';

/** What is said over all sheets. */
export interface CrewSheetsWords {
  readonly title: string;
  /** E.g. that the data are invented. */
  readonly remark: string;
}

/** Steps that are shown in numbered places, the tightest first: more do not fit on a page; with many moves or pictures one. */
const SHOWN_STEPS = 2;
const MANY_MOVES = 7;
const MANY_PICTURES = 9;

/** What a stage's neighbours want protected from: said once each. */
const PROTECT: Readonly<Partial<Record<StageName, string>>> = {
  door: 'door frames and leaves: boards and blankets',
  'side door': 'door frames and leaves: boards and blankets',
  corner: 'the inner corner of each turn: corner boards',
  passage: 'floors of passages: boards under wheels',
  flight: 'treads, nosings and handrail: pads and mats that cannot slip',
  'quarter landing': 'newel and rail of the landing: pads',
  'half landing': 'newel and rail of the landing: pads',
  winder: 'treads, nosings and handrail: pads and mats that cannot slip',
  lift: 'doors and walls of the lift: blankets',
  room: 'the floor where the table is built up: boards',
};

/**
 * A sheet for the crew for each survey that goes or is tight as ordered, each on its own A4 page: where, which pieces, the
 * way as a strip, the numbered places of its tightest steps, the moves, what to protect and to bring, and the cautions. One
 * page of HTML that needs nothing else.
 *
 * @param routes table of the routes, its header row first
 * @param pieces table of the pieces, its header row first
 */
export function crewSheets(month: Month, routes: Table, pieces: Table, words: CrewSheetsWords): string {
  const surveys = surveysOf('routes', routes);
  const builds = buildsOf(pieces);
  const sheets =
    surveys.ok && builds.ok
      ? month.surveys.flatMap((survey, i): Markup[] => {
          const { rows, build } = askedBy(survey, surveys.value, builds.value);
          const sheet = rows && build && crewSheet(month, survey, rows, build, `crew-${i + 1}`);
          return sheet ? [sheet] : [];
        })
      : [];
  return wholePage(
    words.title,
    CREW_SHEET_STYLE,
    markup`<main>
<h1>${words.title}</h1>
<p class="remark">${words.remark} A sheet for each survey that goes, or is tight, as it is ordered.</p>
${sheets.length === 0 ? markup`<p>None goes as it is ordered.</p>` : sheets}
</main>`,
  );
}

function crewSheet(
  month: Month,
  survey: MonthSurvey,
  rows: readonly StageRow[],
  build: Build,
  id: string,
): Markup | undefined {
  const piece = build.pieces.find(({ name }) => name === survey.piece);
  if (!piece?.size) return undefined;
  const book = stageBook(tapeOf(rows, month.tape));
  const route = prepareRoute(rows, book);
  const carried = carriedRoute(route, piece.size, piece.name, book, month.allowance);
  if (!carried.chain || carried.chain.clearance < 0) return undefined;
  const moves = movesOf(route, book, piece, month.allowance);
  if (moves.some(({ kind }) => kind === 'no way shown')) return undefined;
  const shown = tightSteps(carried, route).map((row) => stepPictures(carried, route, row, id));
  const count = shown.reduce((sum, { pictures }) => sum + pictures, 0);
  const room = moves.length > MANY_MOVES || count > MANY_PICTURES ? 1 : SHOWN_STEPS;
  const [first = NOTHING, ...others] = shown.slice(0, room).map(({ figure }) => figure);
  return markup`<section class="sheet" aria-labelledby="${id}">
<h2 id="${id}">${survey.survey}: ${survey.build}</h2>
<p class="where">${[survey.customer, survey.place].filter((part) => part !== '').join(', ')}</p>
${piecesList(build)}
<p class="shown">Pictures and moves: ${pieceWords(piece)}${heaviestWords(build, piece)}</p>
${strip(carried, route, id)}
<div class="tight">${first}
<div class="two"><div><h3>Protect</h3><ul>${protect(rows).map((line) => markup`<li>${line}</li>`)}</ul></div>
<div><h3>Bring</h3><ul>${bring(moves).map((line) => markup`<li>${line}</li>`)}</ul></div></div>
${others}</div>
${movesTable(survey.survey, moves, piece.mass)}
<p class="caution"><strong>Caution:</strong> ${survey.caution === '' ? CAUTIONS.route : survey.caution}</p>
</section>
`;
}

const movesOf = (
  route: PreparedRoute,
  book: StageBook,
  { size, mass }: BuildPiece,
  allowance: number,
): CarryMove[] => (size ? carryMoves(route, book, { size, allowance, mass }) : []);

const pieceWords = ({ name, size, mass }: BuildPiece): string =>
  `${name}, ${size ? [size.length, size.breadth, size.thickness].map(whole).join(' x ') : ''} mm${mass === undefined ? '' : `, ${shownUp(mass)} kg`}`;

function heaviestWords({ pieces }: Build, shown: BuildPiece): string {
  const [heaviest] = [...pieces].sort((a, b) => (b.mass ?? 0) - (a.mass ?? 0));
  if (!heaviest || heaviest === shown || heaviest.mass === undefined) return '';
  return `, the closest on this way. The heaviest is the ${heaviest.name}, ${shownUp(heaviest.mass)} kg: ${carryAdvice(heaviest.mass)}`;
}

const whole = (value: number): string => String(shownGiven(value));

/** The pieces in a line each, in columns as the page has room. */
function piecesList({ pieces }: Build): Markup {
  const items = pieces.map(({ name, size, mass, count }) => {
    const sizes = size
      ? `${[size.length, size.breadth, size.thickness].map(whole).join(' x ')} mm`
      : 'sizes not known';
    return markup`<li>${String(count ?? '?')} x ${name}: ${sizes}, ${mass === undefined ? 'mass not known' : `${shownUp(mass)} kg`}${(count ?? 1) > 1 ? ' each' : ''}</li>`;
  });
  return markup`<ul class="pieces">${items}</ul>`;
}

/** The way as a strip: one small drawing a row, the tightest marked. */
function strip(carried: CarriedRoute, route: PreparedRoute, id: string): Markup {
  const [tightest] = tightSteps(carried, route);
  const items = route.steps.map(({ row, name }, i) => {
    const drawing = carried.drawSmall(i, `${id}-strip-${i + 1}`);
    const clearance = carried.chain?.steps[i]?.clearance;
    const left = clearance === undefined ? '' : String(shownDown(clearance));
    const mark = i === tightest ? markup`<strong>tightest: </strong>` : NOTHING;
    return markup`<li${i === tightest ? new Markup(' class="marked"') : NOTHING}>${drawing ? new Markup(drawing.svg) : NOTHING}<span>${String(name)} ${row.stage ?? row.stageText}<br>${mark}${left}</span></li>`;
  });
  return markup`<h3>The way, and what it leaves a side, mm</h3><ol class="strip">${items}</ol>`;
}

/** Rows with the least clearance, the tightest first; of rows that are passed together, whose picture is one, the first. */
function tightSteps({ chain }: CarriedRoute, { steps }: PreparedRoute): number[] {
  const clearance = (row: number): number => chain?.steps[row]?.clearance ?? Infinity;
  const joint = (row: number): string => chain?.steps[row]?.joint?.join() ?? `${row} alone`;
  const order = steps.map((_, i) => i).sort((a, b) => clearance(a) - clearance(b));
  return order
    .filter((row, k) => order.findIndex((other) => joint(other) === joint(row)) === k)
    .slice(0, SHOWN_STEPS);
}

/** Width of a picture of a whole step [px]; those of its places are half as wide. On paper all five stand in one row. */
const PICTURE = 220;

function stepPictures(
  carried: CarriedRoute,
  route: PreparedRoute,
  row: number,
  id: string,
): { readonly figure: Markup; readonly pictures: number } {
  const drawing = carried.draw(row, `${id}-step-${row + 1}`, PICTURE);
  const step = route.steps[row];
  if (!drawing || !step) return { figure: NOTHING, pictures: 0 };
  const pictures = drawing.pictures.map(({ svg }) => new Markup(svg));
  const figure = markup`<figure><figcaption>${String(step.name)} ${step.row.stage ?? ''}</figcaption><div class="places">${pictures}</div></figure>`;
  return { figure, pictures: pictures.length };
}

function movesTable(survey: string, moves: readonly CarryMove[], mass: number | undefined): Markup {
  const heads = ['No.', 'Step', 'Move', 'Tilt', 'Raise', 'Clearance', 'Hands', 'Lower share', 'Aid'];
  const numeric = new Set(['No.', 'Tilt', 'Raise', 'Clearance', 'Lower share']);
  const head = heads.map((text) =>
    numeric.has(text)
      ? markup`<th scope="col" class="number">${text}</th>`
      : markup`<th scope="col">${text}</th>`,
  );
  let told = '';
  const rows = moves.map((move) => {
    const closest =
      move.closest === '' ? '' : `; closest ${move.closest === told ? 'as above' : move.closest}`;
    if (move.closest !== '') told = move.closest;
    const share = shareWords(move, mass);
    return markup`<tr><td class="number" data-head="No.">${move.number}</td><td data-head="Step">${String(move.step)}</td><th scope="row">${moveOrder(move)}${closest}</th><td class="number" data-head="Tilt">${move.tilt === undefined ? '–' : String(shownGiven(degrees(move.tilt), 0))}</td><td class="number" data-head="Raise">${move.raise === undefined ? '–' : shownUp(move.raise)}</td><td class="number" data-head="Clearance">${move.clearance === undefined ? '–' : shownDown(move.clearance)}</td><td data-head="Hands">${handWords(move)}</td><td class="number" data-head="Lower share">${typeof share === 'number' ? shownUp(share) : share}</td><td data-head="Aid">${aidWords(move)}</td></tr>`;
  });
  return markup`<div class="wide" role="region" aria-label="${survey}: moves" tabindex="0"><table class="moves"><caption><span>Moves: tilt in degrees, raise and clearance in mm, lower share in kg (what the lower end bears; no word on how many may carry it)</span></caption><thead><tr>${head}</tr></thead><tbody>${rows}</tbody></table></div>`;
}

const protect = (rows: readonly StageRow[]): string[] => [
  ...new Set(rows.flatMap(({ stage }) => (stage && PROTECT[stage] ? [PROTECT[stage]] : []))),
];

/** Every aid that a move names, once, and what every carry needs. */
function bring(moves: readonly CarryMove[]): string[] {
  const aids = new Set<string>();
  for (const { aid } of moves) {
    if (aid === 'skates') aids.add('skates');
    if (aid === 'stair climber') aids.add('stair climber, if the written assessment allows it');
  }
  const unknown = moves.some(({ aid }) => isNoneKnown(aid));
  const stairs = moves.some(({ stage }) => stage !== undefined && isStair(stage));
  return [
    ...aids,
    'gloves, safety boots, blankets, straps',
    ...(stairs ? ['lamp for the stair, the written assessment'] : []),
    'tape and a frame of the piece, for a trial before it is lifted',
    ...(unknown ? ['for some moves no aid is known: settle them in the assessment before loading'] : []),
  ];
}
