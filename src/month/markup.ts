import { escapeMarkup } from '../drawing/escapeMarkup';
import { entryAt } from '../core/lists/entryAt';

/** Text that is markup already: made by `markup`, or by our own drawing code. */
export class Markup {
  constructor(readonly text: string) {}
}

/** What may stand between the pieces of a template. */
export type MarkupPart = string | number | Markup | readonly Markup[];

/**
 * Markup from a template: whatever is put in is escaped, unless it is markup itself, so that text from cells can
 * only ever be text.
 * @example markup`<td>${'a < b'}</td>`.text // '<td>a &lt; b</td>'
 */
export function markup(pieces: TemplateStringsArray, ...parts: readonly MarkupPart[]): Markup {
  return new Markup(
    pieces.map((piece, i) => (i === 0 ? '' : partText(entryAt(parts, i - 1))) + piece).join(''),
  );
}

/** No markup at all. */
export const NOTHING = new Markup('');

function partText(part: MarkupPart): string {
  if (part instanceof Markup) return part.text;
  if (typeof part === 'object') return part.map(({ text }) => text).join('');
  return escapeMarkup(String(part));
}
