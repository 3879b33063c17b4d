import type { CallsState } from '../worksheet/calls/callQueue';
import { button } from './button';
import { element } from './element';

/** Work that is over sooner is not worth a word [ms]. */
const WORTH_A_WORD = 700;

/** The part of the pane that says how far long work is, and can stop it. */
export class CallsPart {
  private readonly words = element('p', {});
  private readonly bar = element('progress', { 'aria-label': 'Done of the longest call' });
  readonly part = element(
    'section',
    { 'aria-label': 'Being worked out', class: 'calls' },
    element('h2', { class: 'aside' }, 'Being worked out'),
    this.words,
    this.bar,
  );
  private since: number | undefined;

  constructor(
    stop: () => void,
    private readonly now: () => number = () => performance.now(),
  ) {
    this.part.append(button('Stop', stop));
    this.part.hidden = true;
  }

  /** @returns whether there is more to show later, though nothing else may change */
  show({ waiting, done, share }: CallsState): boolean {
    if (waiting === 0) {
      this.since = undefined;
      this.part.hidden = true;
      return false;
    }
    this.since ??= this.now();
    this.part.hidden = this.now() - this.since < WORTH_A_WORD;
    const far = share ? ` The longest has ${share.done} of ${share.of} parts done.` : '';
    this.words.textContent = `${waiting === 1 ? '1 formula' : `${waiting} formulas`} to go, ${done} done.${far}`;
    if (share) {
      this.bar.max = share.of;
      this.bar.value = share.done;
    } else this.bar.removeAttribute('value');
    return true;
  }
}
