import { element } from '../../taskpane/element';
import type { TypingHelp } from './typingHelp';

/** Functions named at once. */
const MOST_NAMES = 8;

/** The help for what is being typed, as lines of text. */
export function helpLines(help: TypingHelp | undefined): HTMLElement[] {
  if (!help) return [];
  if (help.kind === 'names') {
    const [first, ...others] = help.matches.slice(0, MOST_NAMES);
    const more = help.matches.length > MOST_NAMES ? ', …' : '';
    if (!first) return [];
    return [
      element('p', {}, element('strong', {}, first.name), `: ${first.description}. Tab takes it.`),
      ...(others.length > 0
        ? [element('p', { class: 'soft' }, `Also: ${others.map((f) => f.name).join(', ')}${more}`)]
        : []),
    ];
  }
  const { described, at } = help;
  const call = element('p', { class: 'call' }, `${described.name}(`);
  described.parameters.forEach((p, i) => {
    const shown = `${p.optional ? `[${p.name}]` : p.name}${p.repeating ? ', …' : ''}`;
    if (i > 0) call.append(', ');
    call.append(i === at ? element('mark', {}, shown) : shown);
  });
  call.append(')');
  const parameter = described.parameters[at];
  return [
    call,
    parameter
      ? element(
          'p',
          {},
          element('strong', {}, parameter.name),
          `: ${parameter.description}${parameter.optional ? ' (may be left out)' : ''}`,
        )
      : element(
          'p',
          { class: 'fault' },
          `${described.name} takes ${described.parameters.length} arguments at most.`,
        ),
    element('p', { class: 'soft' }, described.description),
  ];
}
