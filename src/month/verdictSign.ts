import { VERDICTS, type Verdict } from '../core/route/verdict';
import { markup, Markup } from './markup';

/**
 * A shape for each verdict, apart from the others without any colour: a full disc, a half-filled diamond, an empty
 * triangle, a dashed square, a full square with a bar.
 */
const SHAPES: Readonly<Record<Verdict, Markup>> = {
  goes: markup`<circle cx="8" cy="8" r="6.5" fill="currentColor"/><path d="M4.8 8.2l2.3 2.4 4.2-5" fill="none" stroke="Canvas" stroke-width="1.8"/>`,
  tight: markup`<path d="M8 1l7 7-7 7-7-7z" fill="none" stroke="currentColor" stroke-width="1.4"/><path d="M8 1v14l-7-7z" fill="currentColor"/>`,
  'no way found': markup`<path d="M8 1.6l6.8 12.4H1.2z" fill="none" stroke="currentColor" stroke-width="1.4"/>`,
  'not measured': markup`<path d="M1.8 1.8h12.4v12.4H1.8z" fill="none" stroke="currentColor" stroke-width="1.4" stroke-dasharray="2.4 1.8"/>`,
  'cannot go': markup`<path d="M1 1h14v14H1z" fill="currentColor"/><path d="M3.6 8h8.8" stroke="Canvas" stroke-width="2.6"/>`,
};

const isVerdict = (word: string): word is Verdict => (VERDICTS as readonly string[]).includes(word);

/** The verdict's shape and its word, or finer words for it; the word alone where it is none of ours. */
export function verdictSign(verdict: string, words = verdict): Markup {
  if (!isVerdict(verdict)) return markup`<span class="verdict">${verdict}</span>`;
  return markup`<span class="verdict"><svg class="sign" viewBox="0 0 16 16" width="12" height="12" aria-hidden="true">${SHAPES[verdict]}</svg> ${words}</span>`;
}
