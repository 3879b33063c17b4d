import { bundleCall, formulaParts, NAMESPACE } from '../formulaText';
import { readAddress } from '../address';
import { firstOf, lastOf } from '../../core/lists/ends';

/** What functions.json says of a function, for a person who types a call of it. */
export interface DescribedFunction {
  /** With the namespace. */
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description: string;
    readonly optional: boolean;
    readonly repeating: boolean;
  }[];
}

export type TypingHelp =
  | {
      readonly kind: 'names';
      /** Where the name begins in the text. */
      readonly start: number;
      readonly matches: readonly DescribedFunction[];
    }
  | {
      readonly kind: 'arguments';
      readonly described: DescribedFunction;
      /** The argument that the caret is in, from 0; the last one where it repeats. */
      readonly at: number;
    };

type Json = Readonly<Record<string, unknown>>;

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** The functions of a functions.json, in its order. */
export function describedFunctions(metadata: unknown): DescribedFunction[] {
  const { functions } = (metadata ?? {}) as { functions?: readonly Json[] };
  return (functions ?? []).map((entry) => ({
    name: `${NAMESPACE}.${text(entry['name'])}`,
    description: text(entry['description']),
    parameters: ((entry['parameters'] ?? []) as readonly Json[]).map((p) => ({
      name: text(p['name']),
      description: text(p['description']),
      optional: p['optional'] === true,
      repeating: p['repeating'] === true,
    })),
  }));
}

/** Fewer letters than these are as likely a cell's address. */
const LETTERS = 2;

/**
 * What can be said to a person who types a formula: the functions whose names go on like this, or the argument
 * that the caret is in.
 * @param typed the whole text, with its `=`
 * @param caret how many characters stand before the caret
 */
export function typingHelp(
  typed: string,
  caret: number,
  functions: readonly DescribedFunction[],
): TypingHelp | undefined {
  if (!typed.startsWith('=') || caret < 1) return undefined;
  const parts = formulaParts(typed.slice(1, caret));
  const last = parts[parts.length - 1];
  const next = typed[caret] ?? '';
  if (
    last?.kind === 'name' &&
    last.text.length >= LETTERS &&
    !readAddress(last.text) &&
    !/[\w.(]/.test(next)
  ) {
    const matches = startingWith(last.text.toUpperCase(), functions);
    if (matches.length > 0) return { kind: 'names', start: caret - last.text.length, matches };
  }
  const open: { name: string | undefined; at: number }[] = [];
  parts.forEach(({ kind, text: mark }, i) => {
    if (kind !== 'mark') return;
    const before = parts[i - 1];
    if (mark === '(')
      open.push({ name: before?.kind === 'call' ? bundleCall(before.text) : undefined, at: 0 });
    else if (mark === '{') open.push({ name: undefined, at: 0 });
    else if (mark === ')' || mark === '}') open.pop();
    else if (mark === ',' && open.length > 0) lastOf(open).at++;
  });
  for (const { name, at } of open.reverse()) {
    const described =
      name === undefined ? undefined : functions.find((f) => f.name === `${NAMESPACE}.${name}`);
    if (!described) continue;
    const lastOne = described.parameters.length - 1;
    return {
      kind: 'arguments',
      described,
      at: described.parameters[lastOne]?.repeating ? Math.min(at, lastOne) : at,
    };
  }
  return undefined;
}

function startingWith(name: string, functions: readonly DescribedFunction[]): DescribedFunction[] {
  const found = functions.filter(
    (f) => f.name.startsWith(name) || f.name.slice(NAMESPACE.length + 1).startsWith(name),
  );
  return found.length === 1 && firstOf(found).name === name ? [] : found;
}
