import { CAUTIONS } from '../core/measures/cautions';
import type { Remeasure } from '../core/route/remeasure';
import { VERDICTS } from '../core/route/verdict';
import { CLASS_MEANING, VERDICT_CLASSES } from '../core/route/verdictClass';
import { markup, Markup, NOTHING } from './markup';
import { wholePage } from './wholePage';
import {
  adviceWords,
  byUrgency,
  clearanceWords,
  type Explanation,
  type Month,
  type MonthSurvey,
} from './month';
import { MONTH_PAGE_STYLE } from './monthPageStyle';
import { mm, mmLeft, mmNeededFrom } from '../core/route/reason';
import { tasksOf } from './today';
import { takenTogether } from './remeasureWords';
import { verdictSign } from './verdictSign';
import { shownUp } from '../core/measures/shown';

export interface MonthPageWords {
  readonly title: string;
  /** Said under the title, e.g. that the data are invented. */
  readonly remark: string;
}

/** Measures listed for a survey: those after them take a larger change still. */
const MEASURES_LISTED = 6;

/**
 * The month as one page of HTML that needs nothing else: counts and what to do today, a line a survey, and for each
 * survey that does not go its drawing, what to measure again and what to advise. No script, and nothing is fetched.
 */
export function monthPage(month: Month, { title, remark }: MonthPageWords): string {
  const { surveys, allowance, tape } = month;
  const others = byUrgency(month).filter(({ verdict }) => verdict !== 'goes');
  return wholePage(
    title,
    MONTH_PAGE_STYLE,
    markup`<header>
<h1>${title}</h1>
<p>${remark} Clearances are mm a side; the firm insists on ${mm(allowance)} a side, and a tape may be off by ${mm(tape)} where a survey does not say otherwise.</p>
${cautions()}
</header>
<main>
<h2>The month in numbers</h2>
${countsTable(surveys)}
${today(month)}
<h2>A line a survey, as asked for</h2>
<p class="small">Clearance is the least on the whole route; the step named is the one that decides the verdict, and may leave more by itself.</p>
${lineTable(month)}
${
  others.length === 0
    ? NOTHING
    : markup`<h2>Surveys that do not simply go, the most urgent first</h2>
<p class="small">In the drawings solid building is hatched and the piece heavily outlined. Needed: that measure alone makes its step go.</p>
${others.map((s) => surveySection(month, s))}`
}
</main>`,
  );
}

/** What to do today, a list a task; each survey leads to its section, or to its line where it has none. */
function today(month: Month): Markup {
  const tasks = tasksOf(month);
  if (tasks.length === 0)
    return markup`<h2>What to do today</h2><p>Nothing: every survey goes. Plan people, aids and floors.</p>`;
  const parts = tasks.map(
    ({
      title,
      about,
      surveys,
    }) => markup`<section class="task"><h3>${title} <span class="number">${surveys.length}</span></h3>
<p class="small">${about}</p>
<ul>${surveys.map(({ survey, what }) => taskLine(month, survey, what))}</ul></section>`,
  );
  return markup`<h2>What to do today</h2>
<div class="tasks">${parts}</div>
`;
}

function taskLine(month: Month, s: MonthSurvey, what: string): Markup {
  const who = [s.customer, s.day === undefined ? '' : `day ${s.day}`]
    .filter((part) => part !== '')
    .join(', ');
  const said = who === '' ? NOTHING : markup` <span class="who">${who}</span>`;
  return markup`<li><a href="#${anchor(month, s)}">${s.survey}</a>${said}: ${what}</li>
`;
}

function cautions(): Markup {
  const { route, stairs, lifting, floors } = CAUTIONS;
  const lines = [route, stairs, lifting, floors].map((caution) => markup`<li>${caution}</li>`);
  return markup`<section class="cautions" aria-label="Cautions"><strong>Cautions</strong><ul>${lines}</ul></section>`;
}

function countsTable(surveys: readonly MonthSurvey[]): Markup {
  const known: readonly string[] = VERDICTS;
  const rows = VERDICT_CLASSES.map((one) => {
    const count = surveys.filter(({ verdictClass }) => verdictClass === one).length;
    return countRow(verdictSign(one.verdict, one.name), count, CLASS_MEANING[one.name]);
  });
  // A verdict that is none of ours is an error in a cell, and counted as what it says.
  const odd = new Set(surveys.map(({ verdict }) => verdict).filter((verdict) => !known.includes(verdict)));
  return markup`<table class="counts"><thead><tr><th scope="col">Verdict</th><th scope="col" class="number">Surveys</th><th scope="col">What it means</th></tr></thead>
<tbody>${rows}${[...odd].map((verdict) => countRow(verdictSign(verdict), surveys.filter((s) => s.verdict === verdict).length, ''))}<tr><th scope="row">all</th><td class="number">${surveys.length}</td><td></td></tr></tbody></table>`;
}

const countRow = (sign: Markup, count: number, meaning: string): Markup =>
  markup`<tr><th scope="row">${sign}</th><td class="number">${count}</td><td>${meaning}</td></tr>`;

function lineTable(month: Month): Markup {
  const heads = ['Survey', 'Verdict', 'Deciding step', 'Clearance', 'Build and piece', 'Reason'];
  const head = heads.map((text) =>
    text === 'Clearance'
      ? markup`<th scope="col" class="number">${text}</th>`
      : markup`<th scope="col">${text}</th>`,
  );
  return markup`<div class="wide line" role="region" aria-label="A line a survey" tabindex="0"><table><thead><tr>${head}</tr></thead>
<tbody>${month.surveys.map((s) => lineRow(month, s))}</tbody></table></div>`;
}

function lineRow(month: Month, s: MonthSurvey): Markup {
  const goes = s.verdict === 'goes';
  const name = goes ? markup`${s.survey}` : markup`<a href="#${anchor(month, s)}">${s.survey}</a>`;
  // A survey that goes has no section: what leads to it ends here.
  const id = goes ? markup` id="${anchor(month, s)}"` : NOTHING;
  const clearance = s.clearance === undefined ? '–' : mmLeft(s.clearance);
  return markup`<tr${id}><th scope="row" class="name">${name}</th><td>${verdictSign(s.verdict, s.verdictClass?.name)}</td><td data-head="Deciding step">${stageWords(s)}</td><td class="number" data-head="Clearance">${clearance}</td><td data-head="Build and piece">${s.build}: ${pieceWords(s)}</td><td class="small">${s.reason}${toCheck(s)}</td></tr>
`;
}

/** What the check asks to look at: beside a verdict that holds only for the measures as typed. */
function toCheck({ toCheck: texts }: MonthSurvey): Markup {
  if (!texts) return NOTHING;
  return markup`<ul class="look">${texts.map((text) => markup`<li>${text}</li>`)}</ul>`;
}

/** By its place, since a survey's name may hold anything. */
const anchor = ({ surveys }: Month, survey: MonthSurvey): string => `survey-${surveys.indexOf(survey) + 1}`;

const stageWords = ({ step, stage }: MonthSurvey): string => `${step} ${stage}`.trim() || '–';
const pieceWords = ({ piece, pose }: MonthSurvey): string =>
  pose === '' ? piece || '–' : `${piece}, ${pose}`;

function surveySection(month: Month, s: MonthSurvey): Markup {
  const { explanation } = s;
  const looks = s.toCheck ? markup`<dt>Look first</dt><dd>${toCheck(s)}</dd>` : NOTHING;
  const facts: (readonly [string, string])[] = [
    ['Customer', [s.customer, s.place].filter((part) => part !== '').join(', ')],
    ['Asked for', s.build],
    [
      'Where',
      [`step ${stageWords(s)}`, clearanceWords(s.clearance)].filter((part) => part !== '').join(', '),
    ],
    ['Piece', pieceWords(s)],
    ['Why', s.reason],
    ['Next step', s.nextStep],
    ['Advise', adviceWords(s.advise)],
    ['Heaviest', s.heaviest === undefined ? s.carry : `${shownUp(s.heaviest)} kg: ${s.carry}`],
  ];
  const shown = facts.filter(([, text]) => text !== '');
  return markup`<section class="survey" id="${anchor(month, s)}">
<h3><span>${s.survey}</span>${verdictSign(s.verdict)}</h3>
<div class="beside">${explanation ? figure(s, explanation) : NOTHING}<div>
<dl>${shown.map(([name, text]) => markup`<dt>${name}</dt><dd>${text}</dd>`)}${looks}</dl></div></div>
${explanation ? measuredAgain(s.survey, takenTogether(explanation.remeasure)) : NOTHING}
</section>
`;
}

function figure(s: MonthSurvey, { drawings, undrawn, drawnClearance }: Explanation): Markup {
  if (!drawings) return markup`<p class="undrawn">${undrawn ?? 'No drawing.'}</p>`;
  const apart =
    drawnClearance !== undefined &&
    s.clearance !== undefined &&
    mmLeft(drawnClearance) !== mmLeft(s.clearance);
  const note = apart
    ? markup`<figcaption class="small">Drawn: this step, ${clearanceWords(drawnClearance)}; on the whole route ${clearanceWords(s.clearance)}.</figcaption>`
    : NOTHING;
  // The drawing code escapes what it is given.
  return markup`<figure>${drawings.map(({ svg }) => new Markup(svg))}${note}</figure>`;
}

function measuredAgain(survey: string, lines: readonly Remeasure[]): Markup {
  if (lines.length === 0) return NOTHING;
  const more = lines.length - MEASURES_LISTED;
  const rest =
    more > 0
      ? markup`<tr><td colspan="5">and ${more} more that take a larger change, or that no single measure mends: see Job in the workbook</td></tr>`
      : NOTHING;
  return markup`<div class="wide" role="region" aria-label="${survey}: measure again, or change" tabindex="0"><table class="again"><caption>${survey}: measure again, or change</caption><thead><tr><th scope="col">Step</th><th scope="col">Measure</th><th scope="col" class="number">As measured</th><th scope="col" class="number">Needed</th><th scope="col">Why</th></tr></thead>
<tbody>${lines.slice(0, MEASURES_LISTED).map(measureRow)}${rest}</tbody></table></div>`;
}

function measureRow({ step, measure, asMeasured, needed, why }: Remeasure): Markup {
  const figure = (value: number | undefined): string => (value === undefined ? '–' : mm(value));
  return markup`<tr><td data-head="Step">${step}</td><td data-head="Measure">${measure || '–'}</td><td class="number" data-head="As measured">${figure(asMeasured)}</td><td class="number" data-head="Needed">${needed === undefined ? '–' : mmNeededFrom(asMeasured, needed)}</td><td data-head="Why">${why}</td></tr>`;
}
