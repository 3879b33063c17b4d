import type { Bundle } from '../../src/sheetHost/bundle';
import { isCellError } from '../../src/sheetHost/hostValues';
import type { FunctionDescription } from '../../src/worksheet/description';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { seeded } from '../support/parkMiller';
import { fuzzCall, type FuzzCall } from './fuzzCalls';

/** What a call gave that no cell may hold, or said in words that help nobody. */
export interface Finding {
  readonly id: string;
  readonly what: string;
  readonly handed: string;
}

export interface FuzzReport {
  readonly calls: Readonly<Record<string, number>>;
  readonly findings: readonly Finding[];
  /** Slowest call of each function [ms]: told, and judged only where the caller asks for it. */
  readonly slowest: Readonly<Record<string, { readonly took: number; readonly handed: string }>>;
}

/** Some desktop builds cut a message at this length [characters] (common practice, no source). */
export const LONGEST_MESSAGE = 255;
/** Longest text that a cell holds [characters] ("Excel specifications and limits"). */
const LONGEST_TEXT = 32767;

/** Functions that judge, search or solve a landing: few calls of them take the time of thousands of others. */
const HEAVY = new Set([
  'ADVISE',
  'VERDICT',
  'SURVEYS',
  'REMEASURE',
  'STAGES',
  'STAGECLEAR',
  'JOBTIME',
  'HALFLANDING',
  'QUARTERLANDING',
  'WINDER',
  'STAIRTURN',
  'FACINGDOOR',
  'LIFTCAR',
  'MOVES',
  'REPLY',
  'WORKING',
]);

/** Which function is called next: all in turn, the heavy ones once in `rare` rounds. */
function* order(rare: number): Generator<FunctionDescription> {
  for (let round = 0; ; round++) {
    for (const f of FUNCTIONS) if (!HEAVY.has(f.id) || round % rare === 0) yield f;
  }
}

/**
 * Calls every function of the built bundle with what hosts and hands may give, until `until` says stop.
 * @param until asked before each call with the number of calls made
 * @param rare of how many rounds one calls the functions that take long
 */
export async function fuzz(
  bundle: Bundle,
  seed: number,
  until: (calls: number) => boolean,
  rare = 40,
): Promise<FuzzReport> {
  const chance = seeded(1 + Math.abs(Math.trunc(seed)));
  const error = (code: string): unknown => new bundle.runtime.global.Error(code);
  const calls: Record<string, number> = {};
  const findings: Finding[] = [];
  const slowest: Record<string, { took: number; handed: string }> = {};
  let made = 0;
  for (const f of order(rare)) {
    if (until(made)) break;
    const call = bundle.functions.get(f.id)?.call;
    if (!call) {
      findings.push({ id: f.id, what: 'is described and not in the bundle', handed: '' });
      continue;
    }
    made += 1;
    calls[f.id] = (calls[f.id] ?? 0) + 1;
    const asked = fuzzCall(f, chance, error);
    const started = performance.now();
    let given: unknown;
    try {
      given = await call(...handedWhole(f, asked), { functionName: f.id });
    } catch (thrown) {
      given = isCellError(thrown) ? [[thrown]] : { thrown };
    }
    const took = performance.now() - started;
    if (took > (slowest[f.id]?.took ?? 0)) slowest[f.id] = { took, handed: handedText(asked.handed) };
    for (const what of faultsOf(f, asked, given))
      findings.push({ id: f.id, what, handed: handedText(asked.handed) });
    if (findings.length > 200) break;
  }
  return { calls, findings, slowest };
}

/** A host hands over a place for every argument: null for one left out, an empty list where it repeats. */
const handedWhole = (f: FunctionDescription, { handed }: FuzzCall): unknown[] =>
  f.arguments.map((a, i) => (i < handed.length ? handed[i] : a.repeating ? [] : null));

/** What is wrong with an answer, a sentence each. */
export function faultsOf(f: FunctionDescription, asked: FuzzCall, given: unknown): string[] {
  if (typeof given === 'object' && given !== null && 'thrown' in given) {
    return [`threw ${String(given.thrown).slice(0, 200)}`];
  }
  if (!Array.isArray(given) || given.length === 0) return ['gave no table'];
  const width = Array.isArray(given[0]) ? (given[0] as unknown[]).length : 0;
  const faults: string[] = [];
  for (const row of given as unknown[]) {
    if (!Array.isArray(row) || row.length !== width || width === 0) return ['gave rows of different lengths'];
    for (const cell of row as unknown[]) faults.push(...cellFaults(f, asked, cell));
  }
  return [...new Set(faults)];
}

function cellFaults(f: FunctionDescription, asked: FuzzCall, cell: unknown): string[] {
  if (typeof cell === 'boolean') return [];
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) return [`gave ${cell}`];
    return Object.is(cell, -0) ? ['gave -0'] : [];
  }
  if (typeof cell === 'string') {
    if (cell.length > LONGEST_TEXT) return ['gave a text longer than a cell holds'];
    return /\bNaN\b|Infinity|undefined|\[object/.test(cell) && !wroteItself(asked, cell)
      ? [`said "${cell.slice(0, 120)}"`]
      : [];
  }
  if (!isCellError(cell)) return ['gave something that is no cell'];
  // An error value of the sheet comes through as itself.
  if (cell.code !== '#VALUE!' && cell.code !== '#N/A') return hasError(asked) ? [] : [`gave ${cell.code}`];
  const said = cell.message ?? '';
  if (said === '') return hasError(asked) ? [] : [`gave ${cell.code} without a word`];
  const faults: string[] = [];
  if (said.includes('fault of the add-in')) faults.push('said that it could not be computed');
  if (said.length > LONGEST_MESSAGE) faults.push(`said more than ${LONGEST_MESSAGE} characters: "${said}"`);
  if (/\bundefined\b|\[object/.test(said)) faults.push(`said "${said}"`);
  if (/cannot be read|: allowed is/.test(said) && !namesAll(f, said))
    faults.push(`does not name it all: "${said}"`);
  return faults;
}

/** A refusal of a value names the argument or the column, the value and what is allowed. */
const namesAll = (f: FunctionDescription, said: string): boolean =>
  (f.arguments.some((a) => said.startsWith(a.name)) ||
    f.arguments.some((a) => a.quantity === 'range' || a.repeating)) &&
  /(cannot be read from|is) .+: .+/s.test(said);

const cellsOf = (handed: unknown): unknown[] => (Array.isArray(handed) ? handed.flat(3) : [handed]);
const hasError = (asked: FuzzCall): boolean => asked.handed.flatMap(cellsOf).some(isCellError);

/** What was typed may come back in words: a text of ours does not make it up. */
const wroteItself = (asked: FuzzCall, text: string): boolean =>
  asked.handed
    .flatMap(cellsOf)
    .some((c) => /NaN|Infinity|undefined/.test(String(c)) && text.includes(String(c).slice(0, 8)));

/** The arguments as one may type them into a test. */
export const handedText = (handed: readonly unknown[]): string =>
  JSON.stringify(handed, (_key, value: unknown) =>
    typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))
      ? `number ${Object.is(value, -0) ? '-0' : value}`
      : typeof value === 'string' && value.length > 60
        ? `${value.slice(0, 20)}… (${value.length} characters)`
        : value,
  ).slice(0, 2000);
