import { button } from './button';
import { element } from './element';

/** What is asked before formulas are entered again. */
export interface EnterAgainQuestion {
  readonly formulas: number;
  readonly sheets: readonly string[];
  /** Of them with something before a function's name that is taken off. */
  readonly prefixed: number;
}

/** The part of the pane that enters the formulas of the workbook again, after it has asked. */
export class EnterAgainPart {
  private readonly inside = element('div', {});
  readonly part = element(
    'section',
    { 'aria-labelledby': 'pane-enter-again' },
    element('h3', { id: 'pane-enter-again' }, 'Cells that show #NAME?'),
    element(
      'p',
      {},
      'Formulas that were entered while these functions were not there stay #NAME? until they are entered again.',
    ),
    this.inside,
  );

  constructor(
    private readonly look: () => void,
    private readonly answer: (go: boolean) => void,
  ) {
    this.offer();
  }

  offer(focus?: 'take the focus'): void {
    const go = button('Enter the formulas again', this.look);
    this.inside.replaceChildren(go);
    if (focus) go.focus();
  }

  ask({ formulas, sheets, prefixed }: EnterAgainQuestion): void {
    const count = formulas === 1 ? '1 formula' : `${formulas} formulas`;
    const before =
      prefixed === 0
        ? ''
        : ` ${prefixed} of them ${prefixed === 1 ? 'has' : 'have'} a prefix before the function's name, which is taken off.`;
    const keep = button('Leave them', () => this.answer(false));
    this.inside.replaceChildren(
      element(
        'p',
        {},
        `${count} with functions of this add-in on ${sheets.length > 5 ? `${sheets.length} sheets` : sheets.join(', ')}.${before} Each is entered as it stands; cells without a formula are not touched.`,
      ),
      button(`Enter ${count} again`, () => this.answer(true)),
      keep,
    );
    keep.focus();
  }
}
