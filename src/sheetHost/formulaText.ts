import { firstOf } from '../core/lists/ends';

/**
 * Formulas are stored in a file otherwise than they are shown in the formula line: custom functions as
 * `_xldudf_CARRY_CORNER`, functions younger than the file format with `_xlfn.`, the names of LET and LAMBDA
 * with `_xlpm.`, `A8#` as ANCHORARRAY, `[@Width]` with its table and `#This Row`.
 */

/** The namespace of the add-in, as in its manifest. */
export const NAMESPACE = 'CARRY';

const STORED_CALL = `_xldudf_${NAMESPACE}_`;

// Functions that came after Excel 2007 and whose names a file stores with a prefix ("Issue: An _xlfn. prefix is
// displayed in front of a formula", Microsoft support). The two with _xlws. as well: [MS-XLSX] 2.2.2.
const WORKSHEET_PREFIXED = new Set(['FILTER', 'SORT']);
const PREFIXED = new Set(
  `ACOT ACOTH AGGREGATE ANCHORARRAY ARABIC ARRAYTOTEXT BASE BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND
  BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV
  CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH
  COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL DROP ENCODEURL ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST
  F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FILTERXML FLOOR.MATH FLOOR.PRECISE FORECAST.ETS FORECAST.LINEAR
  FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV GAMMALN.PRECISE GAUSS HSTACK HYPGEOM.DIST IFNA IFS IMAGE IMCOSH IMCOT
  IMCSC IMCSCH IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV
  MAKEARRAY MAP MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV
  NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI
  POISSON.DIST QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE RRI SCAN SEC SECH SEQUENCE SHEET
  SHEETS SINGLE SKEW.P SORTBY STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TAKE
  TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P VAR.S VSTACK
  WEBSERVICE WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST`.split(/\s+/),
);

/** A piece of a formula. A `call` is a name with its opening bracket still to come. */
export interface FormulaPart {
  readonly kind: 'text' | 'sheet' | 'bracketed' | 'call' | 'name' | 'space' | 'mark';
  readonly text: string;
}

const NAME = /^[A-Za-z_\\$\u00c0-\uffff][A-Za-z0-9_.\\$?\u00c0-\uffff]*/;
const NUMBER = /^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/;

/** Cuts a formula, without its `=`, into parts; joined again they are the formula. */
export function formulaParts(formula: string): FormulaPart[] {
  const parts: FormulaPart[] = [];
  let at = 0;
  const take = (kind: FormulaPart['kind'], length: number) => {
    parts.push({ kind, text: formula.slice(at, at + length) });
    at += length;
  };
  while (at < formula.length) {
    const rest = formula.slice(at);
    const first = firstOf(rest);
    if (first === '"') take('text', quotedLength(rest, '"'));
    else if (first === "'") take('sheet', quotedLength(rest, "'"));
    else if (first === '[') take('bracketed', bracketLength(rest));
    else if (/\s/.test(first)) take('space', lengthOf(/^\s+/, rest));
    else if (NUMBER.test(rest)) take('mark', lengthOf(NUMBER, rest));
    else {
      const name = NAME.exec(rest)?.[0];
      if (name === undefined) take('mark', 1);
      else take(rest[name.length] === '(' ? 'call' : 'name', name.length);
    }
  }
  return parts;
}

/** How much of the beginning of a text a form takes. */
const lengthOf = (form: RegExp, text: string): number => form.exec(text)?.[0].length ?? 0;

function quotedLength(text: string, quote: string): number {
  for (let i = 1; i < text.length; i++) {
    if (text[i] !== quote) continue;
    if (text[i + 1] !== quote) return i + 1;
    i++;
  }
  return text.length;
}

function bracketLength(text: string): number {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === "'") i++;
    else if (text[i] === '[') depth++;
    else if (text[i] === ']' && --depth === 0) return i + 1;
  }
  return text.length;
}

/**
 * The formula as a file stores it.
 * @param shown the formula as people write it, with or without its `=`
 * @param table the table that the cell stands in, for `[@Column]`
 * @example storedFormula('=CARRY.PITCH(190,240)') // '_xldudf_CARRY_PITCH(190,240)'
 */
export function storedFormula(shown: string, table?: string): string {
  const parts = formulaParts(shown.replace(/^=/, ''));
  const local = localNames(parts);
  let out = '';
  parts.forEach((part, i) => {
    const previous = parts[i - 1];
    if (part.kind === 'call') out += storedCall(part.text);
    else if (part.kind === 'name') {
      if (parts[i + 1]?.text === '#' && previous?.text !== '!') out += `_xlfn.ANCHORARRAY(${part.text})`;
      else out += local.has(i) ? `_xlpm.${part.text}` : part.text;
    } else if (part.text === '#' && previous?.kind === 'name') {
      // Part of the ANCHORARRAY just written; after a sheet it has still to be closed round both.
      if (parts[i - 2]?.text === '!') out = wrapLastReference(out, parts.slice(i - 3, i));
    } else if (part.kind === 'bracketed' && part.text.startsWith('[@')) {
      const column = part.text.slice(2, -1);
      const inner = column === '' ? '' : `,${column.startsWith('[') ? column : `[${column}]`}`;
      const named = previous?.kind === 'name' ? '' : (table ?? '');
      out += `${named}[[#This Row]${inner}]`;
    } else out += part.text;
  });
  return out;
}

function wrapLastReference(out: string, reference: readonly FormulaPart[]): string {
  const text = reference.map((p) => p.text).join('');
  return `${out.slice(0, out.length - text.length)}_xlfn.ANCHORARRAY(${text})`;
}

function storedCall(name: string): string {
  const upper = name.toUpperCase();
  if (upper.startsWith(`${NAMESPACE}.`)) {
    return STORED_CALL + upper.slice(NAMESPACE.length + 1).replace(/\./g, '_');
  }
  if (WORKSHEET_PREFIXED.has(upper)) return `_xlfn._xlws.${upper}`;
  return PREFIXED.has(upper) ? `_xlfn.${upper}` : name;
}

/** The positions of the names that LET and LAMBDA define, where they are defined and where they are used. */
function localNames(parts: readonly FormulaPart[]): Set<number> {
  const found = new Set<number>();
  parts.forEach((part, i) => {
    if (part.kind !== 'call' || !/^(?:LET|LAMBDA)$/i.test(part.text)) return;
    const { starts, end } = callArguments(parts, i);
    const lets = part.text.toUpperCase() === 'LET';
    const names = new Set<string>();
    starts.slice(0, -1).forEach((start, n) => {
      if (lets && n % 2 === 1) return;
      const name = parts.slice(start).find((p) => p.kind !== 'space');
      if (name?.kind === 'name') names.add(name.text.toLowerCase());
    });
    parts.slice(i + 1, end).forEach((p, k) => {
      if (p.kind === 'name' && names.has(p.text.toLowerCase())) found.add(i + 1 + k);
    });
  });
  return found;
}

/** Where each argument of the call at `call` begins, and the place of its closing bracket. */
export function callArguments(
  parts: readonly FormulaPart[],
  call: number,
): { readonly starts: readonly number[]; readonly end: number } {
  const starts = [call + 2];
  let depth = 0;
  for (const [i, { kind, text }] of parts.entries()) {
    if (i <= call) continue;
    if (kind !== 'mark') continue;
    if (text === '(' || text === '{') depth++;
    else if (text === ')' || text === '}') {
      if (--depth === 0) return { starts, end: i };
    } else if (text === ',' && depth === 1) starts.push(i + 1);
  }
  return { starts, end: parts.length };
}

/**
 * The formula as the formula line shows it, without its `=`.
 * @example shownFormula('_xldudf_CARRY_PITCH(190,240)') // 'CARRY.PITCH(190,240)'
 */
export function shownFormula(stored: string): string {
  const parts = formulaParts(stored);
  const skip = new Set<number>();
  const after = new Map<number, string>();
  let out = '';
  parts.forEach((part, i) => {
    if (skip.has(i)) {
      out += after.get(i) ?? '';
      return;
    }
    if (part.kind === 'call') {
      const plain = part.text.replace(/^_xlfn\./i, '').replace(/^_xlws\./i, '');
      if (/^(?:ANCHORARRAY|SINGLE)$/i.test(plain) && plain !== part.text) {
        const { end } = callArguments(parts, i);
        skip.add(i + 1).add(end);
        if (/^ANCHORARRAY$/i.test(plain)) after.set(end, '#');
        else out += '@';
      } else out += shownName(plain);
    } else if (part.kind === 'name') out += part.text.replace(/^_xlpm\./i, '');
    else if (part.kind === 'bracketed')
      out += part.text.replace(/^\[\[#This Row\],(\[[^[\]]*\])\]$/i, shownColumn);
    else out += part.text;
  });
  return out;
}

const shownColumn = (_: string, column: string): string =>
  /^\[[A-Za-z0-9_]+\]$/.test(column) ? `[@${column.slice(1, -1)}]` : `[@${column}]`;

function shownName(name: string): string {
  if (!name.toLowerCase().startsWith(STORED_CALL.toLowerCase())) return name;
  return `${NAMESPACE}.${name.slice(STORED_CALL.length).replace(/_/g, '.')}`;
}

/** Whether a call, as shown or as stored, is of one of the add-in's functions; its id if so. */
export function bundleCall(name: string): string | undefined {
  const shown = shownName(name).toUpperCase();
  return shown.startsWith(`${NAMESPACE}.`) ? shown.slice(NAMESPACE.length + 1) : undefined;
}
