import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { shownDown, shownUp } from '../../core/measures/shown';
import { EXAMPLE_RATES, RATE_NAMES, SET_UP_OF } from '../../core/route/jobRates';
import { jobTime as compute, tripLength, type Handling } from '../../core/route/jobTime';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { buildsOf, oneRoute, PIECES, ratesOf, ROUTE } from '../routeInputs';

export const JOBTIME_COLUMNS = ['Build', 'Carry min', 'Set-up min', 'Crew hours', 'Handling'] as const;

const ratesInWords = RATE_NAMES.map((name) => `${name} ${EXAMPLE_RATES[name]}`).join('; ');

export const jobTime = tableFunction({
  id: 'JOBTIME',
  group: 'Routes and surveys',
  summary: 'Minutes to carry in and set up each build, and the person-hours of the crew',
  arguments: [
    ROUTE,
    PIECES,
    { name: 'crew', help: 'people on the job', quantity: 'count', least: 1, most: 12, whole: true },
    {
      name: 'rates',
      help:
        `two columns, what and minutes, in place of the EXAMPLE rates (replace them by your own): ${ratesInWords}; ` +
        `"${SET_UP_OF}" and a build's name gives the whole set-up of that build; "0 min" for none`,
      quantity: 'range',
      optional: { default: null, meaning: 'the example rates' },
    },
    {
      name: 'fitters',
      help: 'of the crew, who stays to set up; the others are not counted for it',
      quantity: 'count',
      least: 1,
      most: 12,
      whole: true,
      optional: { default: null, meaning: 'the whole crew' },
    },
  ],
  result: {
    meaning: `a header row and one row a build: ${JOBTIME_COLUMNS.join(', ')}`,
    unit: 'min, person-hours',
  },
  source:
    'carry = sum over pieces of count (load + trip / (1 - part to rest)) / teams; trip = carry x metres/10 + rise x ' +
    'risers + turn x turns (a half landing is two); teams = crew / carriers in whole teams, at least 1; carriers: 1 up ' +
    'to 25 kg, 2 or 3 within HSE L23 team factors, else the whole crew; part to rest: RESTTIME where the WORKRATE of an ' +
    '80 kg carrier at 3 km/h with their share passes 350 W; set-up = table + pieces x piece; crew hours are ' +
    'person-hours, (crew x carry + fitters x set-up)/60; Handling: HSE L23 for the crew, or for 3 of a larger one',
  validity:
    'a crew of 1 with a piece above 25 kg is refused; a heavier piece than the crew may handle keeps its time and is ' +
    'named under Handling; only lengths that were measured are walked (Length, Run, flights by their Risers); the rates are an example of ours ' +
    'with no source; rests are those of the level, too short on stairs',
  caution: CAUTIONS.stairs,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height', 'Length'],
        [1, 'passage', 900, 2300, 10000],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['panels', 'panel', 1200, 400, 25, 20, 4],
      ],
      2,
      [
        ['Load, each piece', 5],
        ['Carry 10 m, each trip', 1],
        ['Set-up of panels', 48],
      ],
    ],
    result: [[...JOBTIME_COLUMNS], ['panels', 12, 48, 2, 'within the guideline for 2 on the level']],
    within: 1e-9,
    source: 'by hand: 4 panels x (5 + 1) min by 2 people singly is 12 min; 2 x (12 + 48)/60 = 2 h',
  },
  compute: ({ route: table, pieces, crew, rates: ratesTable, fitters }) => {
    const rows = oneRoute(table);
    if (!rows.ok) return rows;
    const builds = buildsOf(pieces);
    if (!builds.ok) return builds;
    const rates = ratesOf(ratesTable);
    if (!rates.ok) return rates;
    const trip = tripLength(rows.value);
    if (!trip.ok) return trip;
    const body = builds.value.map((build): TableCell[] => {
      const time = compute(trip.value, build, { crew, fitters: fitters ?? crew }, rates.value);
      if (!time.ok)
        return [build.name, ...Array<TableCell>(JOBTIME_COLUMNS.length - 1).fill({ problem: time.problem })];
      return [
        build.name,
        time.value.carry,
        time.value.setUp,
        time.value.crewHours,
        handlingWords(time.value.handling),
      ];
    });
    return found([[...JOBTIME_COLUMNS], ...body]);
  },
});

/** What is heavier than the guideline, or that nothing is. */
function handlingWords({ team, limit, above }: Handling): string {
  const [heaviest, ...others] = above;
  const guideline =
    team === 1 ? 'the guideline for 1 on the level' : `the guideline for ${team} on the level`;
  if (!heaviest) return `within ${guideline}`;
  const more = others.length === 0 ? '' : ` and ${others.length} more`;
  return (
    `${heaviest.name}, ${shownUp(heaviest.mass)} kg${more}: above ${guideline}, ${shownDown(limit, 1)} kg; ` +
    'mechanical aid and a written assessment'
  );
}
