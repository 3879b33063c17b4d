import { element } from './element';

/** A button that does something. */
export function button(text: string, press?: () => void): HTMLButtonElement {
  const made = element('button', { type: 'button' }, text);
  if (press) made.addEventListener('click', press);
  return made;
}
