import { Workbook } from '@cj-tech-master/excelts';
import { calculateFormulas, type WorkbookLike } from '@cj-tech-master/excelts/formula';
import { nearestWord } from '../../core/survey/table/nearestWord';
import { readAddress } from '../address';
import { bundleCall, formulaParts, NAMESPACE, shownFormula, type FormulaPart } from '../formulaText';
import { syntaxWords } from '../syntaxWords';
import { plainFormula } from './dependence';
import { syntaxFault } from './formulaReads';

/** What a workbook has names for. */
export interface KnownNames {
  /** The bundle's functions, without the namespace, in capitals. */
  readonly functions: readonly string[];
  /** Names that the workbook defines, and its tables. */
  readonly defined: readonly string[];
}

const asked = new Map<string, boolean>();

/** Whether the engine has a function of that name: it computes a call without arguments, and names what it does not know. */
function engineKnows(name: string): boolean {
  const upper = name.toUpperCase();
  let knows = asked.get(upper);
  if (knows === undefined) {
    const book = new Workbook();
    const cell = book.addWorksheet('Asked').getCell('A1');
    cell.value = { formula: `${upper}()` };
    // The engine's own workbook; only its types are stricter than what it takes.
    calculateFormulas(book as unknown as WorkbookLike);
    const { result } = cell;
    knows = (result as { error?: unknown } | null | undefined)?.error !== '#NAME?';
    asked.set(upper, knows);
  }
  return knows;
}

const isMeant = (word: string | undefined): string => (word === undefined ? '' : `; is ${word} meant?`);

const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/**
 * What a formula that shows #NAME? calls by a name that nothing has, for the person who typed it.
 * @param stored the formula as the file stores it
 * @returns a sentence without its full stop; undefined where all names are known, so that a cell it reads has the error
 */
export function unknownName(stored: string, known: KnownNames): string | undefined {
  if (syntaxFault(plainFormula(stored)) !== undefined)
    return `the formula cannot be read: ${syntaxWords(shownFormula(stored))}`;
  const parts = formulaParts(shownFormula(stored));
  const local = new Set(formulaParts(stored).flatMap(({ text }) => /^_xlpm\.(.*)$/.exec(text)?.[1] ?? []));
  for (const [i, { kind, text }] of parts.entries()) {
    if (kind === 'call' && !local.has(text)) {
      const own = bundleCall(text);
      if (own === undefined ? !engineKnows(text) : !known.functions.includes(own))
        return `there is no function ${text}${isMeant(functionMeant(own ?? text.toUpperCase(), known))}`;
    }
    if (kind !== 'name' || local.has(text) || !isAName(parts, i)) continue;
    if (known.defined.some((one) => alike(one, text))) continue;
    if (text.toUpperCase().startsWith(`${NAMESPACE}.`))
      return `${text} is no name here; a function has brackets behind its name, as in ${NAMESPACE}.PITCH(190,240)`;
    const meant = isMeant(nearestWord(text, known.defined));
    return `nothing here is called ${text}${meant || `; a text stands in quotes: "${text}"`}`;
  }
  return undefined;
}

/** The function of ours whose name is this or nearly this, so that a name without its namespace is recognized too. */
function functionMeant(name: string, { functions }: KnownNames): string | undefined {
  const meant = functions.includes(name) ? name : nearestWord(name, functions);
  return meant === undefined ? undefined : `${NAMESPACE}.${meant}`;
}

/** Not a cell, a column, a sheet, a table, a truth value, or part of an error's code. */
function isAName(parts: readonly FormulaPart[], i: number): boolean {
  const { text = '' } = parts[i] ?? {};
  const [before, after] = [parts[i - 1]?.text, parts[i + 1]];
  if (after?.text === '!' || after?.kind === 'bracketed') return false;
  if (before === '#' || (before === '/' && parts[i - 3]?.text === '#')) return false;
  if ((before === ':' || after?.text === ':') && /^\$?[A-Za-z]{1,3}$/.test(text)) return false;
  return !/^(?:TRUE|FALSE)$/i.test(text) && !readAddress(text.replace(/\$/g, ''));
}
