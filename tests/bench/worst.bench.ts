import type { CellError } from '../../src/core/measures/readQuantity';
import { hostFunction } from '../../src/worksheet/callFunction';
import { cellCost } from '../../src/worksheet/calls/cellCost';
import type { ArgumentDescription } from '../../src/worksheet/description';
import { FUNCTIONS } from '../../src/worksheet/functions';
import type { Figure } from './figure';
import { seeded } from './seeded';

/*
 * The longest call of each function that may take long, among seeded calls of any arguments that it allows, in processor
 * time. CARRY_CALLS=20000 is the campaign; CARRY_WORST=LIFTCAR looks at one function; CARRY_SEED another stream.
 */
const CALLS = Number(process.env['CARRY_CALLS'] ?? 200);
const ONLY = process.env['CARRY_WORST'];
const SEED = Number(process.env['CARRY_SEED'] ?? 20261126);
const LONG = 250;

/** Any value that the argument allows: half of them even over its range, half even over its logarithm. */
function anyValue(argument: ArgumentDescription, next: () => number): number | string | null {
  const even = next();
  const share = next();
  if (argument.optional && next() < 0.5) return null;
  if (argument.choices) return argument.choices[Math.floor(share * argument.choices.length)] ?? null;
  const low = argument.least ?? argument.above ?? 0;
  const high = argument.most ?? argument.below ?? 10_000;
  const from = Math.max(low, 1);
  const value = even < 0.5 || high <= from ? low + (high - low) * share : from * (high / from) ** share;
  if (argument.whole) return Math.round(value);
  return Math.min(high, Math.max(low, Math.round(value * 1000) / 1000)) || from;
}

/** As a stair or a piece is: what the argument calls usual, where it says so. */
function usualValue(argument: ArgumentDescription, next: () => number): number | string | null {
  const { usual } = argument;
  if (usual && !argument.choices) {
    next();
    const value = usual.least + (usual.most - usual.least) * next();
    return argument.whole ? Math.round(value) : Math.round(value);
  }
  return anyValue(argument, next);
}

export async function run(): Promise<Figure[]> {
  const figures: Figure[] = [];
  const makeError = (code: string, message?: string): CellError => ({
    code,
    ...(message ? { message } : {}),
  });
  for (const description of FUNCTIONS) {
    const { id, arguments: described } = description;
    if (description.kind !== 'number' || cellCost(description) !== Infinity) continue;
    if (ONLY !== undefined && id !== ONLY) continue;
    const call = hostFunction(description, makeError);
    const next = seeded(SEED);
    const times: number[] = [];
    let worst = { time: 0, given: '' };
    for (let i = 0; i < CALLS; i++) {
      const given = described.map((argument) => (i % 2 === 0 ? anyValue : usualValue)(argument, next));
      const begun = process.cpuUsage();
      try {
        call(...given);
      } catch (refusal) {
        if (refusal instanceof Error) throw refusal;
      }
      const { user, system } = process.cpuUsage(begun);
      const time = (user + system) / 1000;
      times.push(time);
      if (time > worst.time) worst = { time, given: JSON.stringify(given) };
      if (time > LONG) console.log(`${id} ${time.toFixed(0)} ms: ${JSON.stringify(given)}`);
    }
    times.sort((a, b) => a - b);
    figures.push(
      { name: `${id}: longest of ${CALLS} calls`, figure: Math.round(worst.time), unit: 'ms', goal: LONG },
      { name: `${id}: median`, figure: times[times.length >> 1] ?? 0, unit: 'ms' },
    );
  }
  return figures;
}
