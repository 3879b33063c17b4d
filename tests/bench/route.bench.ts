import { surveys } from '../../src/worksheet/functions/surveys';
import { PIECES_TABLE, surveyTable } from './surveyGenerator';

const SEED = 20260301;
const FEW = 100;
const MANY = 1000;
const WITH_LANDING = 3;

/** SURVEYS over a month of surveys x 8 stages x 12 pieces in one process. */
export async function run(): Promise<{ name: string; figure: number; unit: string; goal?: number }[]> {
  const timed = (count: number, seed: number, landings = false): { seconds: number; megabytes: number } => {
    const table = surveyTable(count, seed, landings);
    (globalThis as { gc?: () => void }).gc?.();
    const heap = process.memoryUsage().heapUsed;
    const start = performance.now();
    const result = surveys.compute({
      routes: table,
      pieces: PIECES_TABLE,
      orders: undefined,
      allowance: 25,
      tape: 5,
    });
    const seconds = (performance.now() - start) / 1000;
    const megabytes = (process.memoryUsage().heapUsed - heap) / 2 ** 20;
    if (!result.ok || result.value.length !== 4 * count + 1) throw new Error('SURVEYS gave no full table');
    return { seconds, megabytes };
  };
  timed(FEW, SEED + 1);
  const median = (values: number[]): number =>
    [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  const few = median([1, 2, 3].map((i) => timed(FEW, SEED + 1 + i).seconds));
  const many = timed(MANY, SEED);
  const landings = timed(WITH_LANDING, SEED, true);
  return [
    {
      name: `SURVEYS, ${MANY} surveys x 8 stages x ${PIECES_TABLE.length - 1} pieces, no landing among them`,
      figure: many.seconds,
      unit: 's',
      goal: 2,
    },
    {
      name: `SURVEYS with a landing on each route, a survey`,
      figure: landings.seconds / WITH_LANDING,
      unit: 's',
      goal: 0.002,
    },
    {
      name: `SURVEYS, time of ${MANY} surveys over that of ${FEW}`,
      figure: many.seconds / few,
      unit: 'x',
      goal: 11,
    },
    { name: `SURVEYS, ${MANY} surveys: heap taken, garbage included`, figure: many.megabytes, unit: 'MB' },
  ];
}
