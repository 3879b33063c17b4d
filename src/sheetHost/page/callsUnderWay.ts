import { element } from '../../taskpane/element';
import type { CallsProgress } from './backgroundCalls';

/** What is said of long calculations under way; it changes only when one of them is done. */
export function progressWords({ waiting, inFront, stored, done }: CallsProgress): string {
  const all = `${done} of ${done + waiting} long calculations done`;
  if (stored === waiting) return `Stored values, computed again now: ${done} of ${done + waiting} done`;
  const here =
    inFront === 0 ? 'this sheet is ready' : `${inFront} still to come on this sheet, which goes first`;
  return `${all}; ${here}${stored === 0 ? '' : `; for ${stored} of them stored values are shown`}`;
}

/** A bar that shows how far the longest of them is; apart from the words, so that these are not read out at each step. */
export class CallsUnderWay {
  readonly bar = element('progress', { 'aria-label': 'Done of the longest calculation' });

  show({ waiting, share }: CallsProgress): void {
    this.bar.hidden = waiting === 0;
    if (share) {
      this.bar.max = share.of;
      this.bar.value = share.done;
    } else this.bar.removeAttribute('value');
  }
}
