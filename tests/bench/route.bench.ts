import { surveys } from '../../src/worksheet/functions/surveys';
import { verdict } from '../../src/worksheet/functions/verdict';
import type { Figure } from './figure';
import { PIECES_TABLE, surveyTable } from './surveyGenerator';

/*
 * One piece on one route that was never seen before, and SURVEYS over surveys x 8 stages x 12 pieces, in one process and
 * in processor time: some two minutes. CARRY_SURVEYS=1000 is the campaign of ordered builds, which takes several more.
 */
const SEED = 20260301;
const FEW = 5;
const MANY = 50;
const WITH_LANDING = 3;
const ORDERED = Number(process.env['CARRY_SURVEYS'] ?? 18);
const ROUTES_SEEN_FIRST = 150;
const LANDINGS_SEEN_FIRST = 60;
const WARM = 20;

type Table = readonly (readonly (string | number)[])[];

/** Processor time of some work [ms]. */
function timed<T>(work: () => T): { readonly result: T; readonly time: number } {
  const begun = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(begun);
  return { result, time: (user + system) / 1000 };
}

const byShare = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN;

function everyBuild(count: number, seed: number, landings = false): { seconds: number; megabytes: number } {
  const table = surveyTable(count, seed, landings);
  (globalThis as { gc?: () => void }).gc?.();
  const heap = process.memoryUsage().heapUsed;
  const { result, time } = timed(() =>
    surveys.compute({ routes: table, pieces: PIECES_TABLE, orders: undefined, allowance: 25, tape: 5 }),
  );
  const megabytes = (process.memoryUsage().heapUsed - heap) / 2 ** 20;
  if (!result.ok || result.value.length !== 4 * count + 1) throw new Error('SURVEYS gave no full table');
  return { seconds: time / 1000, megabytes };
}

/** One ordered build for each survey, a third of the surveys with a landing [s]. */
function orderedBuilds(count: number): number {
  const landings = Math.round(count / 3);
  const [, ...others] = surveyTable(landings, SEED + 9, true);
  const routes: Table = [
    ...surveyTable(count - landings, SEED + 8),
    ...others.map(([id, ...rest]) => [`L${id}`, ...rest]),
  ];
  const ids = [...new Set(routes.slice(1).map(([id]) => String(id)))];
  const builds = [...new Set(PIECES_TABLE.slice(1).map(([build]) => String(build)))];
  const orders = [['Survey', 'Build'], ...ids.map((id, i) => [id, builds[i % builds.length] ?? ''])];
  const { result, time } = timed(() =>
    surveys.compute({ routes, pieces: PIECES_TABLE, orders, allowance: 25, tape: 5 }),
  );
  if (!result.ok || result.value.length !== count + 1) throw new Error('SURVEYS gave no full table');
  return time / 1000;
}

/** What stands on a route between its front door and the room. */
type Stairs = 'one flight' | 'two flights' | 'a landing';

/** Steps of a generated survey that are left out where it has one flight: the corner behind it and the second. */
const SECOND_FLIGHT: readonly unknown[] = [5, 6];

/** The verdict on one piece for each of some routes, each seen for the first time [ms]. */
function seenFirst(count: number, stairs: Stairs, seed = SEED + 7): number[] {
  const [header = [], ...all] = surveyTable(count, seed, stairs === 'a landing');
  const rows = stairs === 'one flight' ? all.filter(([, step]) => !SECOND_FLIGHT.includes(step)) : all;
  const pieces = PIECES_TABLE.slice(1).filter(([, piece]) => piece === 'slate');
  return Array.from({ length: count }, (_, i) => {
    const route = [header, ...rows.filter(([id]) => id === `S${i + 1}`)];
    const one = [PIECES_TABLE[0] ?? [], pieces[i % pieces.length] ?? []];
    const { result, time } = timed(() => verdict.compute({ route, pieces: one, allowance: 25, tape: 5 }));
    if (!result.ok) throw new Error('VERDICT gave no table');
    return time;
  });
}

export function* run(): Generator<Figure> {
  for (const [what, count, goal] of [
    ['one flight', ROUTES_SEEN_FIRST, 5],
    ['two flights', ROUTES_SEEN_FIRST, 5],
    ['a landing', LANDINGS_SEEN_FIRST, 20],
  ] as const) {
    // Others first, so that the code is warm.
    seenFirst(WARM, what, SEED + 6);
    const times = seenFirst(count, what);
    const name = `one slate on a route seen first, ${what}`;
    yield { name: `${name}: median`, figure: byShare(times, 0.5), unit: 'ms', goal };
    yield { name: `${name}: 9 of 10`, figure: byShare(times, 0.9), unit: 'ms' };
    yield { name: `${name}: worst`, figure: byShare(times, 1), unit: 'ms', goal: 250 };
  }
  yield {
    name: `SURVEYS, one ordered build for each of ${ORDERED} surveys, a third with a landing`,
    figure: orderedBuilds(ORDERED),
    unit: 's',
    goal: ORDERED / 100,
  };
  yield {
    name: `SURVEYS with a landing on each route, every build, a survey`,
    figure: everyBuild(WITH_LANDING, SEED, true).seconds / WITH_LANDING,
    unit: 's',
  };
  const few = byShare(
    [1, 2, 3].map((i) => everyBuild(FEW, SEED + 1 + i).seconds),
    0.5,
  );
  const many = everyBuild(MANY, SEED);
  yield {
    name: `SURVEYS, ${MANY} surveys x 8 stages x ${PIECES_TABLE.length - 1} pieces, no landing among them`,
    figure: many.seconds,
    unit: 's',
  };
  yield {
    name: `SURVEYS, time of ${MANY} surveys over that of ${FEW}`,
    figure: many.seconds / few,
    unit: 'x',
    goal: 11,
  };
  yield {
    name: `SURVEYS, ${MANY} surveys: heap taken, garbage included`,
    figure: many.megabytes,
    unit: 'MB',
  };
}
