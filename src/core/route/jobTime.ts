import { handlers } from '../carrying/handlers';
import { restTime } from '../carrying/restTime';
import { GUIDELINE_EACH } from '../carrying/teamLimit';
import { workRate } from '../carrying/workRate';
import { found, refused, type Outcome } from '../measures/problem';
import { kindOf } from '../stages/kinds';
import { stepName, type StageRow } from '../survey/table/stageRow';
import { stepWords } from './stepWords';
import { measureHeading } from '../survey/words/measureHeading';
import type { Build, BuildPiece } from './buildVerdict';
import type { JobRates } from './jobRates';

/** Minutes and hours of one build on one route. */
export interface JobTime {
  /** Carrying in, rests included [min]. */
  readonly carry: number;
  readonly setUp: number;
  /** Crew x (carry + setUp) / 60 [h]. */
  readonly crewHours: number;
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
        argument: `${measureHeading(missing)} at ${stepWords(stepName(row, i))}`,
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
 * Set-up = table + pieces x piece, or the figure given for that build. Crew hours = crew (carry + set-up)/60.
 *
 * Work rates of stairs are not published in a form that covers a slate, so rests are those of the level: too
 * short on stairs. The rates are the firm's own business.
 * @source work rate: Pandolf 1977; rest: Murrell's form; carriers: HSE L23 team factors
 */
export function jobTime(trip: TripLength, build: Build, crew: number, rates: JobRates): Outcome<JobTime> {
  const { minutes } = rates;
  const perTrip =
    (minutes['Carry 10 m, each trip'] * trip.distance) / 10 +
    minutes['Rise, each trip'] * trip.rises +
    minutes['Turn, each trip'] * trip.turns;
  let carry = 0;
  let count = 0;
  for (const piece of build.pieces) {
    if (piece.mass === undefined) {
      return refused({ kind: 'not measured', argument: `Mass of ${piece.name} in ${build.name}` });
    }
    if (piece.count === undefined) {
      return refused({ kind: 'not measured', argument: `Count of ${piece.name} in ${build.name}` });
    }
    const carriers = carriersOf(piece.mass, crew);
    const teams = Math.max(1, Math.floor(crew / carriers));
    const worked = perTrip / (1 - partToRest(piece, carriers));
    carry += (piece.count * (minutes['Load, each piece'] + worked)) / teams;
    count += piece.count;
  }
  const setUp =
    rates.setUpOf.get(build.name.trim().toLowerCase()) ??
    minutes['Set-up, each table'] + minutes['Set-up, each piece'] * count;
  return found({ carry, setUp, crewHours: (crew * (carry + setUp)) / 60 });
}

function carriersOf(mass: number, crew: number): number {
  if (mass <= GUIDELINE_EACH) return 1;
  const fewest = handlers({ mass, limitEach: GUIDELINE_EACH });
  return Math.min(crew, fewest.ok ? Math.max(2, fewest.value) : crew);
}

/** Part of work and rest together that is rest, for one of the carriers. */
function partToRest(piece: BuildPiece, carriers: number): number {
  const rate = workRate({ ...WALKING, load: piece.mass! / carriers });
  const rest = restTime({ minutes: 1, workRate: rate, ...RESTING });
  return rest.ok ? rest.value : 0;
}
