import { handlers } from '../carrying/handlers';
import { restTime } from '../carrying/restTime';
import { GUIDELINE_EACH, LARGEST_TEAM, teamLimit } from '../carrying/teamLimit';
import { workRate } from '../carrying/workRate';
import { found, refused, type Outcome } from '../measures/problem';
import { kindOf } from '../stages/kinds';
import { stepCalled, type StageRow } from '../survey/table/stageRow';
import { measureHeading } from '../survey/words/measureHeading';
import type { Build } from './buildVerdict';
import type { JobRates } from './jobRates';
import { shownUp } from '../measures/shown';

/** Minutes and hours of one build on one route. */
export interface JobTime {
  /** Carrying in, rests included [min]. */
  readonly carry: number;
  /** [min] */
  readonly setUp: number;
  /** Hours of all people together: (crew x carry + fitters x setUp) / 60 [h]. */
  readonly crewHours: number;
  /** The pieces that pass the guideline for as many of the crew as one is published for. */
  readonly handling: Handling;
}

/** What a crew may handle by the guideline, on the level, and what of the build is heavier. */
export interface Handling {
  /** How many the limit is for: the crew, or the largest team that has one. */
  readonly team: number;
  /** [kg] */
  readonly limit: number;
  /** Pieces above the limit, the heaviest first. */
  readonly above: readonly { readonly name: string; readonly mass: number }[];
}

/** Who is on the job. */
export interface JobPeople {
  /** Who carries, a whole number from 1. */
  readonly crew: number;
  /** Of them, who stays to set the table up. */
  readonly fitters: number;
}

/** What is walked, climbed and turned on one trip. */
export interface TripLength {
  /** [m] */
  readonly distance: number;
  readonly rises: number;
  readonly turns: number;
}

// A mover with a share of a piece walks at 3 km/h and weighs 80 kg: WORKRATE's own worked example weighs 80.
const WALKING = { bodyMass: 80, speed: 3, grade: 0, terrain: 1 } as const;
// RESTTIME's defaults: 350 W can be kept up, 105 W is resting.
const RESTING = { limit: 350, resting: 105 } as const;

/**
 * Adds up a route: lengths of passages and runs, flights along the pitch, risers and turns. A flight without
 * its risers cannot be added up.
 */
export function tripLength(rows: readonly StageRow[]): Outcome<TripLength> {
  let distance = 0;
  let rises = 0;
  let turns = 0;
  for (const [i, row] of rows.entries()) {
    const { stage, measures } = row;
    distance += measures.run ?? 0;
    if (!stage) continue;
    const { trip } = kindOf(stage);
    const missing = trip.needs.find((name) => measures[name] === undefined);
    if (missing) {
      return refused({
        kind: 'not measured',
        argument: `${measureHeading(missing)} at ${stepCalled(row, i)}`,
      });
    }
    distance += trip.distance(measures);
    rises += trip.rises(measures);
    turns += trip.turns;
  }
  return found({ distance: distance / 1000, rises, turns });
}

/**
 * Time of a job. For each piece, count x (load + trip) / teams, where
 *   trip = carry x distance/10 m + rise x rises + turn x turns, and rests within it where the work rate of the
 *   share that each carrier has passes 350 W: trip / (1 - part to rest);
 *   teams = crew / carriers, whole teams, at least 1; carriers: 1 up to 25 kg, 2 or 3 within the team
 *   guideline, else the whole crew.
 * Set-up = table + pieces x piece, or the figure given for that build, by the fitters alone.
 *
 * Work rates of stairs are not published in a form that covers a slate, so rests are those of the level: too
 * short on stairs. The rates are the firm's own business.
 * @source work rate: Pandolf 1977; rest: Murrell's form; carriers: HSE L23 team factors
 * @param trip what is walked, climbed and turned
 * @param people crew, and the fitters among them
 * @param rates minutes of each part of the work
 * @returns minutes, hours of all people together, and what is heavier than the guideline
 * @problems `not measured` without a mass or a count; `impossible` for more fitters than crew, or for a crew of one
 * with a piece above the guideline for one, which nobody carries alone.
 */
export function jobTime(
  trip: TripLength,
  build: Build,
  people: JobPeople,
  rates: JobRates,
): Outcome<JobTime> {
  const { crew, fitters } = people;
  if (fitters > crew) {
    return refused({
      kind: 'impossible',
      argument: 'fitters',
      got: fitters,
      because: `the crew is ${crew}, and the fitters are some of them`,
    });
  }
  const { minutes } = rates;
  const perTrip =
    (minutes['Carry 10 m, each trip'] * trip.distance) / 10 +
    minutes['Rise, each trip'] * trip.rises +
    minutes['Turn, each trip'] * trip.turns;
  let carry = 0;
  let count = 0;
  const masses: { name: string; mass: number }[] = [];
  for (const piece of build.pieces) {
    const { name, mass } = piece;
    if (mass === undefined) {
      return refused({ kind: 'not measured', argument: `Mass of ${name} in ${build.name}` });
    }
    if (piece.count === undefined) {
      return refused({ kind: 'not measured', argument: `Count of ${name} in ${build.name}` });
    }
    const carriers = carriersOf(mass, crew);
    const teams = Math.max(1, Math.floor(crew / carriers));
    const worked = perTrip / (1 - partToRest(mass, carriers));
    carry += (piece.count * (minutes['Load, each piece'] + worked)) / teams;
    count += piece.count;
    masses.push({ name, mass });
  }
  const handling = handlingOf(masses, crew);
  const [heaviest] = handling.above;
  if (crew === 1 && heaviest) {
    return refused({
      kind: 'impossible',
      argument: 'crew',
      got: crew,
      because:
        `${heaviest.name} of ${build.name} is ${shownUp(heaviest.mass)} kg, and one person may handle at most ` +
        `${GUIDELINE_EACH} kg on the level (HSE INDG143)`,
    });
  }
  const setUp =
    rates.setUpOf.get(build.name.trim().toLowerCase()) ??
    minutes['Set-up, each table'] + minutes['Set-up, each piece'] * count;
  return found({ carry, setUp, crewHours: (crew * carry + fitters * setUp) / 60, handling });
}

function handlingOf(pieces: readonly { name: string; mass: number }[], crew: number): Handling {
  const team = Math.min(crew, LARGEST_TEAM);
  const outcome = teamLimit({ handlers: team, limitEach: GUIDELINE_EACH });
  const limit = outcome.ok ? outcome.value : 0;
  const above = pieces.filter(({ mass }) => mass > limit).sort((a, b) => b.mass - a.mass);
  return { team, limit, above };
}

function carriersOf(mass: number, crew: number): number {
  if (mass <= GUIDELINE_EACH) return 1;
  const fewest = handlers({ mass, limitEach: GUIDELINE_EACH });
  return Math.min(crew, fewest.ok ? Math.max(2, fewest.value) : crew);
}

/** Part of work and rest together that is rest, for one of the carriers. */
function partToRest(mass: number, carriers: number): number {
  const rate = workRate({ ...WALKING, load: mass / carriers });
  const rest = restTime({ minutes: 1, workRate: rate, ...RESTING });
  return rest.ok ? rest.value : 0;
}
