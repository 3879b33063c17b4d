import type { Refusal } from '../worksheet/calls/refusals';
import { element } from './element';

/** The part of the pane that gives the last refusal of the selected cell in full: not every Excel shows it. */
export class RefusalPart {
  private readonly words = element('p', { class: 'refusal' });
  readonly part = element(
    'section',
    { 'aria-label': 'Why this cell shows an error' },
    element('h2', { class: 'aside' }, 'Why this cell shows an error'),
    this.words,
  );

  constructor() {
    this.part.hidden = true;
  }

  show(refusal: Refusal | undefined): void {
    this.part.hidden = refusal === undefined;
    if (!refusal) return;
    const { code, message, address } = refusal;
    const text = `${code} from the formula in ${address}: ${message === '' ? 'no reason was given.' : `${message.replace(/\.$/, '')}.`}`;
    if (this.words.textContent !== text) this.words.textContent = text;
  }
}
