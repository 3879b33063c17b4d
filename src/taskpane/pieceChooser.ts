import { element } from './element';

export interface OfferedPiece {
  readonly key: string;
  readonly label: string;
}

/** Choices shown at once; the rest is found by typing more of a name. */
const MOST_SHOWN = 60;

/**
 * A field to choose a piece by typing any parts of its name, with the list of those that fit below it: the pattern
 * "combobox with list autocomplete" of the ARIA Authoring Practices.
 */
export class PieceChooser {
  readonly field = element('input', {
    id: 'pane-piece',
    type: 'text',
    role: 'combobox',
    autocomplete: 'off',
    spellcheck: 'false',
    'aria-autocomplete': 'list',
    'aria-expanded': 'false',
    'aria-controls': 'pane-piece-list',
  });
  readonly list = element('ul', { id: 'pane-piece-list', role: 'listbox', 'aria-label': 'Pieces' });
  readonly part = element('div', { class: 'chooser' }, this.field, this.list);
  private offered: readonly OfferedPiece[] = [];
  private shown: readonly OfferedPiece[] = [];
  private current: OfferedPiece | undefined;
  private at = -1;

  /** @param picked a person has chosen another one */
  constructor(private readonly picked: () => void) {
    this.list.hidden = true;
    this.field.addEventListener('focus', () => this.field.select());
    this.field.addEventListener('click', () => this.open(''));
    this.field.addEventListener('input', () => this.open(this.field.value));
    this.field.addEventListener('blur', () => this.close());
    this.field.addEventListener('keydown', (event) => this.key(event));
    // A click on an entry must not take the focus out of the field before it is seen.
    this.list.addEventListener('mousedown', (event) => event.preventDefault());
    this.list.addEventListener('click', (event) => {
      const entry = event.target instanceof Element ? event.target.closest('[role="option"]') : null;
      const at = entry ? [...this.list.children].indexOf(entry) : -1;
      if (at >= 0) this.pick(this.shown[at]);
    });
  }

  get chosen(): string {
    return this.current?.key ?? '';
  }

  /** Offers these; the choice stays where it is still offered, else the first is chosen. */
  offer(offered: readonly OfferedPiece[]): void {
    // Before there was anything to choose from, nothing was chosen.
    const kept = this.offered.length > 1 ? this.current : undefined;
    this.offered = offered;
    this.choose(kept?.key ?? offered[0]?.key ?? '');
  }

  /** Chooses without a word to anyone. */
  choose(key: string): void {
    this.current = this.offered.find((piece) => piece.key === key) ?? this.offered[0];
    if (this.list.hidden) this.field.value = this.current?.label ?? '';
  }

  private open(typed: string): void {
    const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
    this.shown = this.offered
      .filter(({ label }) => words.every((word) => label.toLowerCase().includes(word)))
      .slice(0, MOST_SHOWN);
    const entries = this.shown.map((piece, i) =>
      element(
        'li',
        {
          role: 'option',
          id: `pane-piece-${i}`,
          'aria-selected': String(piece.key === this.current?.key),
        },
        piece.label,
      ),
    );
    const none = element(
      'li',
      { role: 'option', 'aria-disabled': 'true', 'aria-selected': 'false' },
      'None fits.',
    );
    this.list.replaceChildren(...(entries.length > 0 ? entries : [none]));
    this.list.hidden = false;
    this.field.setAttribute('aria-expanded', 'true');
    this.mark(words.length > 0 ? 0 : this.shown.findIndex(({ key }) => key === this.current?.key));
  }

  private mark(at: number): void {
    this.at = at;
    [...this.list.children].forEach((entry, i) => entry.classList.toggle('marked', i === at));
    const entry = this.shown[at] && this.list.children[at];
    if (entry) {
      this.field.setAttribute('aria-activedescendant', entry.id);
      entry.scrollIntoView({ block: 'nearest' });
    } else this.field.removeAttribute('aria-activedescendant');
  }

  private close(): void {
    this.list.hidden = true;
    this.field.setAttribute('aria-expanded', 'false');
    this.field.removeAttribute('aria-activedescendant');
    this.field.value = this.current?.label ?? '';
  }

  private pick(piece: OfferedPiece | undefined): void {
    const changed = piece !== undefined && piece.key !== this.current?.key;
    if (piece) this.current = piece;
    this.close();
    if (changed) this.picked();
  }

  private key(event: KeyboardEvent): void {
    const { key } = event;
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      if (this.list.hidden) this.open('');
      else {
        const count = this.shown.length;
        if (count > 0) this.mark((this.at + (key === 'ArrowDown' ? 1 : count - 1) + count) % count);
      }
    } else if (key === 'Enter' && !this.list.hidden) this.pick(this.shown[this.at]);
    else if (key === 'Escape' && !this.list.hidden) this.close();
    else return;
    event.preventDefault();
  }
}
