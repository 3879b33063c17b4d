import { formulaParts } from './formulaText';

/** A number with a unit behind it, or feet and inches, as people write them; the sign of an inch is a quote to a formula. */
const BARE_MEASURE =
  /(?<![A-Za-z_$\d.!])\d+(?:\.\d+)?(?:\s*(?:mm|cm|m|in|inch|ft|kg|lb|deg)\b|\s*'\s*(?:\d+(?:\.\d+)?\s*"?)?)/;

/**
 * Why a formula cannot be read, for the person who typed it: the engine tells it in numbers of its own.
 * @param formula without its `=`
 * @example syntaxWords('SUM(1;2)') // 'arguments are parted by a comma here, not by a semicolon: write , for ;'
 */
export function syntaxWords(formula: string): string {
  const outside = formula.replace(/"[^"]*(?:"|$)/g, '""').replace(/'(?:[^']|'')*'!/g, '!');
  const bare = BARE_MEASURE.exec(outside)?.[0].trim();
  if (bare !== undefined) return `a measure with its unit stands in quotes: "${bare.replace(/"/g, '""')}"`;
  const parts = formulaParts(formula);
  const marks = parts.filter(({ kind }) => kind === 'mark').map(({ text }) => text);
  if (parts.some(({ kind, text }) => kind === 'text' && (text.length < 2 || !text.endsWith('"'))))
    return 'a text in quotes is not closed';
  const braced = parts.some(({ text }) => text === '{');
  if (marks.includes(';') && !braced)
    return 'arguments are parted by a comma here, not by a semicolon: write , for ;';
  const count = (mark: string): number => marks.filter((m) => m === mark).length;
  const [open, closed] = [count('('), count(')')];
  if (open > closed)
    return `${open - closed} closing bracket${open - closed === 1 ? ' is' : 's are'} missing`;
  if (closed > open) return `${closed - open} closing bracket${closed - open === 1 ? '' : 's'} too many`;
  const last = parts.filter(({ kind }) => kind !== 'space').pop();
  if (last && /^[-+*/^&=<>,:]$/.test(last.text)) return `nothing stands after its last ${last.text}`;
  return 'a sign is missing between two values, or one is out of place';
}
