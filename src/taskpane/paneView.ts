import type { TitledPicture } from './examplePicture';
import { ALLOWANCE, TAPE } from '../worksheet/routeInputs';
import { button } from './button';
import { element } from './element';
import type { MeasureLine, PaneModel } from './paneModel';
import { PieceChooser } from './pieceChooser';
import type { RowLine } from './rowLines';

/** What a person does in the pane. */
export interface PaneActions {
  changed(): void;
  /** A person has chosen a piece, by its key. */
  pieceChosen(key: string): void;
  nextProblem(): void;
  writeNote(): void;
  replaceNote(): void;
  keepNote(): void;
  addSheets(): void;
  /** Goes to the step that a row of results speaks of. */
  goToStep(): void;
}

/** What is offered to be written, and where. */
export interface WriteOffer {
  /** Address of the cell; undefined: there is nothing to write, and `text` says why. */
  readonly address: string | undefined;
  readonly text: string;
  /** What the cell holds, once a person has asked to write over it. */
  readonly holds?: string;
}

/** The choices and sizes as they stand in the form. */
export interface FormValues {
  /** Value of the chosen piece; '' for sizes typed in. */
  readonly piece: string;
  readonly sizes: readonly [string, string, string];
  readonly allowance: string;
  readonly tape: string;
}

export const TYPED = '';

const PLAIN = 'A plain number is read as mm, a turn as degrees, a rated load as kg.';

/**
 * The pane's page. The form stands and keeps its focus; what depends on the row is made anew at each `show`.
 */
export class PaneView {
  private readonly status = element('p', { class: 'status', role: 'status' });
  private readonly heading = element('h2', {});
  private readonly place = element('p', { class: 'place' });
  private readonly next = button('Next row with a problem');
  private readonly problems = section('Problems');
  private readonly verdict = section('Does it go?');
  private readonly drawing = section('In pictures');
  private readonly example = section('The example in pictures');
  private readonly rows = section('All rows selected');
  private readonly cautions = element('div', { role: 'note', 'aria-label': 'Cautions' });
  private readonly clearances = section('Clearance');
  private readonly measures = section('Measures as read');
  private readonly write = section('Write to the sheet');
  private readonly sheets = section('Starter sheets');
  private readonly chooser = new PieceChooser(() => this.pieceChosen());
  private readonly sizes = (['Length', 'Breadth', 'Thickness'] as const).map((name) => input(name));
  private readonly allowance = input('Allowance');
  private readonly tape = input('Tape');
  private readonly typed = element('div', { class: 'fields' }, ...this.sizes.map((size) => size.label));
  private readonly formProblem = element('p', { class: 'problem', id: 'pane-form-problem' });
  private readonly rowPart = element('div', {});
  private readonly result = element(
    'section',
    { 'aria-label': 'A row of results' },
    element('h2', { class: 'aside' }, 'A row of results'),
  );
  private drawn: string | undefined;
  private exampleShown: string | undefined;

  constructor(
    root: HTMLElement,
    private readonly actions: PaneActions,
    parts: { readonly calls: HTMLElement; readonly refusal: HTMLElement; readonly enterAgain: HTMLElement },
  ) {
    this.allowance.field.value = String(ALLOWANCE.optional.default);
    this.tape.field.value = String(TAPE.optional.default);
    const form = element(
      'section',
      { 'aria-label': 'Piece', class: 'piece' },
      element('label', { for: 'pane-piece' }, 'Piece to carry'),
      this.chooser.part,
      this.typed,
      this.formProblem,
    );
    const given = element(
      'section',
      { 'aria-labelledby': 'pane-form' },
      element('h2', { id: 'pane-form' }, 'Held against'),
      element('div', { class: 'fields' }, this.allowance.label, this.tape.label),
    );
    for (const field of this.fields()) field.addEventListener('change', () => actions.changed());
    this.next.addEventListener('click', () => actions.nextProblem());
    // What decides comes first: verdict, measure and drawing are seen without scrolling.
    this.rowPart.append(
      this.verdict,
      this.problems,
      this.drawing,
      this.cautions,
      this.rows,
      this.clearances,
      this.measures,
      this.write,
    );
    root.replaceChildren(
      element('h1', {}, 'Route row'),
      this.heading,
      this.place,
      this.status,
      parts.calls,
      parts.refusal,
      this.result,
      this.example,
      form,
      this.rowPart,
      this.next,
      given,
      this.sheets,
      parts.enterAgain,
    );
    this.showResult(undefined);
    this.showExample(undefined);
    this.setPieces([]);
    this.show(undefined, undefined);
    this.say('Select a row of a route.');
  }

  private pieceChosen(): void {
    this.typed.hidden = this.chooser.chosen !== TYPED;
    this.actions.changed();
    this.actions.pieceChosen(this.chooser.chosen);
  }

  /** Chooses a piece without a person having done so. */
  choosePiece(key: string): void {
    this.chooser.choose(key);
    this.typed.hidden = this.chooser.chosen !== TYPED;
  }

  private fields(): HTMLInputElement[] {
    return [...this.sizes, this.allowance, this.tape].map(({ field }) => field);
  }

  /** Says something in the live region. */
  say(text: string): void {
    if (this.status.textContent !== text) this.status.textContent = text;
  }

  values(): FormValues {
    const [length, breadth, thickness] = this.sizes.map(({ field }) => field.value) as [
      string,
      string,
      string,
    ];
    return {
      piece: this.chooser.chosen,
      sizes: [length, breadth, thickness],
      allowance: this.allowance.field.value,
      tape: this.tape.field.value,
    };
  }

  /** Offers pieces to choose from; the choice stays where it is still offered. */
  setPieces(pieces: readonly { readonly key: string; readonly label: string }[]): void {
    this.chooser.offer([...pieces, { key: TYPED, label: 'Sizes typed here' }]);
    this.typed.hidden = this.chooser.chosen !== TYPED;
  }

  /** Shows a row, or why there is none to show. */
  show(model: PaneModel | undefined, formProblem: string | undefined, lines: readonly RowLine[] = []): void {
    this.formProblem.textContent = formProblem ?? '';
    this.formProblem.hidden = formProblem === undefined;
    this.rowPart.hidden = model === undefined;
    this.next.hidden = model === undefined;
    this.heading.hidden = model === undefined;
    this.place.hidden = model === undefined;
    if (!model) return;
    this.heading.textContent = model.heading;
    this.place.textContent = model.place;
    fill(this.problems, ...problemsPart(model));
    this.problems.hidden = model.problems.length === 0;
    fill(this.verdict, ...verdictPart(model));
    this.cautions.replaceChildren(...model.cautions.map((text) => element('p', { class: 'caution' }, text)));
    fill(this.clearances, ...clearancesPart(model));
    this.clearances.hidden = this.clearances.childElementCount < 2;
    this.rows.hidden = lines.length < 2;
    fill(this.rows, element('ul', { class: 'rows-selected' }, ...lines.map(rowLine)));
    this.showDrawing(model);
    fill(this.measures, measuresTable(model.measures), element('p', { class: 'place' }, PLAIN));
  }

  /** Offers the way from a row of results to the step that it speaks of; undefined: there is none. */
  showResult(offer: { readonly text: string; readonly go: string } | undefined): void {
    this.result.hidden = offer === undefined;
    const key = JSON.stringify(offer ?? null);
    if (this.result.dataset.offer === key) return;
    this.result.dataset.offer = key;
    const go = offer && button(offer.go, () => this.actions.goToStep());
    fill(this.result, ...(offer && go ? [element('p', {}, offer.text), go] : []));
  }

  /** Shows the worked example that is selected in pictures; undefined: none is. */
  showExample(picture: TitledPicture | undefined): void {
    this.example.hidden = picture === undefined;
    const key = picture?.pictures.map(({ svg }) => svg).join('') ?? '';
    if (this.exampleShown === key) return;
    this.exampleShown = key;
    if (!picture) {
      fill(this.example);
      return;
    }
    const open = this.example.querySelector('details')?.open === true;
    fill(this.example, element('p', { class: 'place' }, picture.title), ...drawingPart({ drawing: picture }));
    const words = this.example.querySelector('details');
    if (words) words.open = open;
  }

  /** Made anew only when it changes, so that the words stay open and keep the focus. */
  private showDrawing(model: PaneModel): void {
    const key = model.drawing?.pictures.map(({ svg }) => svg).join('') ?? model.notDrawn ?? '';
    if (this.drawn === key) return;
    this.drawn = key;
    const open = this.drawing.querySelector('details')?.open === true;
    const hadFocus = this.drawing.contains(document.activeElement);
    fill(this.drawing, ...drawingPart(model));
    const words = this.drawing.querySelector('details');
    if (!words) return;
    words.open = open;
    if (hadFocus) words.querySelector('summary')?.focus({ preventScroll: true });
  }

  /** Shows what may be written to the sheet. */
  showWrite(offer: WriteOffer): void {
    // Made anew only when it changes, so that a button keeps the focus.
    const key = JSON.stringify(offer);
    if (this.write.dataset.offer === key) return;
    this.write.dataset.offer = key;
    if (offer.address === undefined) {
      fill(this.write, element('p', {}, offer.text));
      return;
    }
    const quoted = element('blockquote', {}, offer.text);
    if (offer.holds === undefined) {
      const go = button(`Write this into ${offer.address}`);
      go.addEventListener('click', () => this.actions.writeNote());
      fill(this.write, quoted, go);
      return;
    }
    const replace = button(`Replace what ${offer.address} holds`);
    const keep = button('Leave it as it is');
    replace.addEventListener('click', () => this.actions.replaceNote());
    keep.addEventListener('click', () => this.actions.keepNote());
    fill(
      this.write,
      quoted,
      element('p', {}, `${offer.address} is not empty. It holds:`),
      element('blockquote', {}, offer.holds),
      replace,
      keep,
    );
  }

  /** Puts the focus on the answer that changes nothing. */
  focusSafeAnswer(): void {
    [...this.write.querySelectorAll('button')].pop()?.focus();
  }

  /** Puts the focus back on the first button of the write part, after one of its buttons has gone. */
  focusWrite(): void {
    (this.write.querySelector('button') ?? this.next).focus();
  }

  /** Puts the focus on the row, after the button that led to it has gone. */
  focusRow(): void {
    this.next.focus();
  }

  /** Shows which starter sheets would be added. */
  showStarter(names: readonly string[]): void {
    const text = `Adds ${names.length} new sheets: ${names.join(', ')}. Nothing that is there is changed.`;
    if (this.sheets.dataset.text === text) return;
    this.sheets.dataset.text = text;
    const focused = this.sheets.contains(document.activeElement);
    const add = button('Add starter sheets');
    add.addEventListener('click', () => this.actions.addSheets());
    fill(this.sheets, element('p', {}, text), add);
    if (focused) add.focus();
  }
}

let sections = 0;

function section(title: string): HTMLElement {
  const id = `pane-part-${++sections}`;
  return element('section', { 'aria-labelledby': id }, element('h3', { id }, title));
}

/** Replaces all of a section but its heading. */
function fill(part: HTMLElement, ...children: readonly Node[]): void {
  part.replaceChildren(...[...part.children].slice(0, 1), ...children);
}

function input(name: string): { label: HTMLLabelElement; field: HTMLInputElement } {
  const field = element('input', { type: 'text', autocomplete: 'off', spellcheck: 'false' });
  return { label: element('label', {}, `${name}, mm`, field), field };
}

function problemsPart({ problems }: PaneModel): Node[] {
  return [element('ul', { class: 'problems' }, ...problems.map((text) => element('li', {}, text)))];
}

function verdictPart({ judged, notJudged }: PaneModel): Node[] {
  if (!judged) return [element('p', {}, notJudged ?? '')];
  return [
    element('p', { class: 'verdict', 'data-verdict': judged.verdict }, judged.verdict),
    element('p', {}, judged.reason),
  ];
}

function clearancesPart({ judged }: PaneModel): Node[] {
  if (!judged) return [];
  const line = (name: string, text: string): HTMLElement =>
    element('tr', {}, element('th', { scope: 'row' }, name), element('td', {}, text));
  const rows = judged.clearances.map(({ name, text }) => line(name, text));
  const pieces = judged.pieces.map(({ name, verdict }) => line(name, verdict));
  return [
    ...(rows.length === 0 ? [] : [clearanceTable(rows)]),
    ...(pieces.length === 0
      ? []
      : [
          element(
            'table',
            {},
            element('caption', {}, 'Each piece of the build'),
            element('tbody', {}, ...pieces),
          ),
        ]),
  ];
}

function rowLine({ row, what, verdict, problems }: RowLine): HTMLElement {
  const found =
    problems.length === 0 ? '' : problems.length === 1 ? '; 1 problem' : `; ${problems.length} problems`;
  const first = problems[0] === undefined ? '' : `: ${problems[0]}`;
  return element(
    'li',
    {},
    element('strong', {}, `Row ${row}`),
    ` ${what}: ${verdict ?? 'no verdict'}${found}${first}`,
  );
}

const clearanceTable = (rows: readonly Node[]): HTMLElement =>
  element('table', {}, element('caption', {}, 'mm a side'), element('tbody', {}, ...rows));

function drawingPart({ drawing, notDrawn }: Pick<PaneModel, 'drawing' | 'notDrawn'>): Node[] {
  if (!drawing) return [element('p', {}, notDrawn ?? '')];
  const parsed = drawing.pictures.map(({ svg }) => new DOMParser().parseFromString(svg, 'image/svg+xml'));
  const words = element(
    'details',
    {},
    element('summary', {}, 'The drawing in words'),
    element('p', {}, drawing.text),
  );
  if (parsed.some((one) => one.querySelector('parsererror'))) return [element('p', {}, drawing.text)];
  const pictures = parsed.map((one) => document.importNode(one.documentElement, true));
  return [element('div', { class: 'places' }, ...pictures), words];
}

function measuresTable(measures: readonly MeasureLine[]): HTMLElement {
  const rows = measures.map(({ name, cell, read, state }) =>
    element(
      'tr',
      { class: state },
      element('th', { scope: 'row' }, name),
      element('td', {}, cell),
      element('td', {}, read),
    ),
  );
  const head = ['Measure', 'In the cell', 'Read as'].map((text) => element('th', { scope: 'col' }, text));
  return element(
    'table',
    { class: 'measures' },
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...rows),
  );
}
