import { sortedPiece } from '../core/measures/piece';
import type { Cell } from '../core/measures/readQuantity';
import { PIECE_LENGTH_RANGE, PIECE_SIZES, pieceTooShort } from '../worksheet/arguments';
import type { ArgumentDescription } from '../worksheet/description';
import { messageOf } from '../worksheet/messages';
import { readArgument } from '../worksheet/readArgument';
import { ALLOWANCE, TAPE } from '../worksheet/routeInputs';
import type { CallsBoard } from '../worksheet/calls/callsBoard';
import { CallsPart } from './callsPart';
import { EnterAgainPart } from './enterAgainPart';
import { exampleOnSheet } from './exampleOnSheet';
import { examplePicture } from './examplePicture';
import { findOrders } from './findOrders';
import { findPieces, type FoundPiece } from './findPieces';
import { findRow, type FoundRow } from './findRow';
import { findStep, type StepSearch } from './findStep';
import { enterAgain, ownFormulas, type FormulaRun } from './ownFormulas';
import { paneModel, type Chosen, type PaneModel, type PaneOptions } from './paneModel';
import { orderedChoice, pieceChoices, type PieceChoice } from './pieceChoices';
import { RefusalPart } from './refusalPart';
import { rowLines } from './rowLines';
import { PaneView, TYPED, type FormValues, type PaneActions } from './paneView';
import { addressOf, type CellArea, type SheetAccess } from './sheetAccess';
import { starterSheets } from './starterSheets';
import { readSelectedRow } from './readSelectedRow';
import { checkRow } from '../core/survey/checks/checkRow';
import { entryAt } from '../core/lists/entryAt';

/** Time between two looks at the calls [ms]. */
const CALLS_EVERY = 250;

const hiddenText = (rows: number): string =>
  rows === 0 ? '' : ` Hidden rows with a problem: ${rows}; take the filter off to see them.`;

/** Rows looked through at once for the next problem. */
const ROWS_AT_ONCE = 500;

/** A field is typed in: its 0 is a plain 0, which an empty cell can arrive as, and left empty it is asked for. */
function inField({ name, help, quantity, least, most }: typeof ALLOWANCE | typeof TAPE): ArgumentDescription {
  return { name, help, quantity, least, most, plainZero: true };
}
const ALLOWANCE_FIELD = inField(ALLOWANCE);
const TAPE_FIELD = inField(TAPE);

/**
 * Puts the pane into `root` and keeps it in step with the workbook.
 * @param board what the functions of the page say of their calls; none: they answer each at once
 * @returns brings the pane up to date; for hosts that want to wait for it
 */
export async function mountPane(
  root: HTMLElement,
  access: SheetAccess,
  board?: CallsBoard,
): Promise<() => Promise<void>> {
  root.classList.add('pane');
  const controller = new PaneController(root, access, board);
  access.onSight(() => void controller.goOn());
  board?.onChange(() => controller.callsChanged());
  await access.onChange((what) => void controller.refresh(what));
  await controller.refresh('cells');
  return () => controller.refresh('cells');
}

class PaneController {
  private readonly view: PaneView;
  private pieces: readonly FoundPiece[] = [];
  private choices: readonly PieceChoice[] = [];
  private orders: ReadonlyMap<string, string> = new Map();
  /** What a person has chosen while a survey was in front, by the survey: it holds for that one. */
  private readonly chosenFor = new Map<string, string>();
  private found: FoundRow | undefined;
  private model: PaneModel | undefined;
  /** What has to be read again, and the reading that is under way. */
  private wanted: 'selection' | 'cells' | undefined;
  private reading: Promise<void> | undefined;
  /** What was said last of an action, and on which row: it stands until the row or the form changes. */
  private told: { readonly text: string; readonly row: string } | undefined;
  /** The cell that a person was asked about, with what it held then. */
  private asked: { readonly address: string; readonly holding: readonly (readonly string[])[] } | undefined;

  private readonly calls: CallsPart;
  private readonly refusal = new RefusalPart();
  private readonly again: EnterAgainPart;
  private selected: CellArea | undefined;
  private step: Extract<StepSearch, { row: CellArea }> | undefined;
  private runs: readonly FormulaRun[] = [];
  private callsShownSoon = false;

  constructor(
    root: HTMLElement,
    private readonly access: SheetAccess,
    private readonly board?: CallsBoard,
  ) {
    this.calls = new CallsPart(() => board?.stop());
    this.again = new EnterAgainPart(
      () => void this.safely(() => this.lookForFormulas()),
      (go) => void this.safely(() => this.enterAgain(go)),
    );
    const parts = { calls: this.calls.part, refusal: this.refusal.part, enterAgain: this.again.part };
    const actions: PaneActions = {
      changed: () => {
        this.told = undefined;
        void this.refresh('selection');
      },
      pieceChosen: (key) => {
        if (this.model) this.chosenFor.set(this.model.survey, key);
      },
      nextProblem: () => void this.safely(() => this.nextProblem()),
      writeNote: () => void this.safely(() => this.writeNote()),
      replaceNote: () => void this.safely(() => this.writeNote(this.asked?.holding)),
      keepNote: () => {
        this.asked = undefined;
        this.offerNote();
        this.view.focusWrite();
        this.tell('Nothing was written.');
      },
      addSheets: () => void this.safely(() => this.addSheets()),
      goToStep: () => void this.safely(() => this.goToStep()),
    };
    this.view = new PaneView(root, actions, parts);
  }

  /** The calls come by the thousand: they are looked at a few times a second, and not while nobody sees it. */
  callsChanged(): void {
    if (this.callsShownSoon) return;
    this.callsShownSoon = true;
    setTimeout(() => {
      this.callsShownSoon = false;
      this.showCalls();
    }, CALLS_EVERY);
  }

  private showCalls(): void {
    if (!this.board || !this.access.inSight()) return;
    if (this.calls.show(this.board.state())) this.callsChanged();
    this.showRefusal();
  }

  private showRefusal(): void {
    const { selected, board } = this;
    this.refusal.show(selected && board?.refusalAt(selected.sheet, selected.row, selected.column));
  }

  /** Takes up what was put off while nobody saw the pane. */
  goOn(): Promise<void> {
    this.showCalls();
    return this.wanted ? this.refresh(this.wanted) : Promise.resolve();
  }

  /**
   * Reads the workbook again. A host reports every cell of a large change by itself: what comes in during a
   * reading is read together, once, after it.
   */
  refresh(what: 'selection' | 'cells'): Promise<void> {
    if (this.wanted !== 'cells') this.wanted = what;
    if (!this.access.inSight()) return Promise.resolve();
    return (this.reading ??= this.readAll().finally(() => (this.reading = undefined)));
  }

  private async readAll(): Promise<void> {
    while (this.wanted && this.access.inSight()) {
      const what = this.wanted;
      this.wanted = undefined;
      await this.safely(() => this.read(what));
    }
  }

  private async read(what: 'selection' | 'cells'): Promise<void> {
    const tables = await this.access.tables();
    if (what === 'cells') {
      this.pieces = await findPieces(this.access, tables);
      const taken = { sheets: await this.access.sheets(), tables: tables.map(({ name }) => name) };
      this.choices = pieceChoices(this.pieces);
      this.orders = await findOrders(this.access, tables);
      this.view.setPieces(this.choices);
      this.view.showStarter(starterSheets(taken).map(({ name }) => name));
    }
    const selection = await this.access.selection();
    this.selected = selection === 'several areas' ? undefined : selection;
    const search = await findRow(this.access, tables, selection);
    this.found = search.found;
    const example =
      search.found || !this.selected ? undefined : await exampleOnSheet(this.access, this.selected);
    const picture = example && examplePicture(example);
    this.view.showExample(picture);
    const spoken = 'result' in search ? await findStep(this.access, tables, search.result) : undefined;
    const step = (this.step = spoken?.row && spoken);
    this.view.showResult(
      step && {
        text: `It speaks of step ${step.step}${step.survey === '' ? '' : ` of ${step.survey}`}, ${addressOf(step.row)}.`,
        go: 'Go to that step',
      },
    );
    const why = 'why' in search ? search.why : step ? 'This is a row of results.' : undefined;
    this.showRefusal();
    this.show(
      picture
        ? 'This is a worked example: its picture is below.'
        : (why ?? (spoken && !spoken.row ? spoken.why : undefined)),
    );
  }

  private async goToStep(): Promise<void> {
    const { step } = this;
    if (!step) return;
    const built = orderedChoice(this.choices, this.pieces, step.build)?.key;
    if (built !== undefined) this.chosenFor.set(step.survey.trim(), built);
    await this.access.select(step.row);
    await this.refresh('selection');
    this.view.focusRow();
  }

  private show(why: string | undefined): void {
    const { found } = this;
    if (found) this.chooseFor(found);
    const form = readForm(this.view.values(), this.choices);
    this.model = found
      ? paneModel(found.cells, found.headers, addressOf(found.row), form.chosen, form.options, form.noPiece)
      : undefined;
    const lines =
      found && found.selected.length > 1
        ? rowLines(found.headers, found.selected, form, (survey) => this.choiceFor(survey)?.chosen)
        : [];
    this.view.show(this.model, form.problem, lines);
    if (this.told?.row !== this.rowName()) this.told = undefined;
    if (this.model) this.offerNote();
    const seen = this.model && found ? summaryOf(this.model, found.row.row) : (why ?? 'This row is empty.');
    this.view.say(this.told?.text ?? seen);
  }

  /** The piece is what was chosen for this survey, else what it orders, else it stays. */
  private chooseFor({ headers, cells }: FoundRow): void {
    const survey = readSelectedRow(headers, cells)?.row.survey.trim() ?? '';
    const key = this.chosenFor.get(survey) ?? this.choiceFor(survey)?.key;
    if (key !== undefined) this.view.choosePiece(key);
  }

  /** What was chosen for a survey, else what it orders, where it is a piece or a build of the workbook. */
  private choiceFor(survey: string): PieceChoice | undefined {
    const chosen = this.chosenFor.get(survey);
    if (chosen !== undefined) return this.choices.find(({ key }) => key === chosen);
    return orderedChoice(this.choices, this.pieces, this.orders.get(survey));
  }

  private rowName(): string {
    return this.found ? addressOf(this.found.row) : '';
  }

  /** Says what an action has come to. */
  private tell(text: string): void {
    this.told = { text, row: this.rowName() };
    this.view.say(text);
  }

  private noteCell(): CellArea | undefined {
    const { found } = this;
    const column = found?.headers.findIndex(
      (h) => typeof h === 'string' && h.trim().toLowerCase() === 'note',
    );
    if (!found || column === undefined || column < 0) return undefined;
    return { ...found.row, column: found.row.column + column, columns: 1 };
  }

  private offerNote(): void {
    const cell = this.noteCell();
    const text = this.model?.note;
    if (!cell) {
      this.view.showWrite({ address: undefined, text: 'A Note column would take what is found here.' });
      return;
    }
    if (text === undefined) {
      this.view.showWrite({ address: undefined, text: 'Nothing to note on this row.' });
      return;
    }
    const address = addressOf(cell);
    if (this.asked?.address !== address) this.asked = undefined;
    const holds = this.asked?.holding[0]?.[0];
    this.view.showWrite({ address, text, ...(holds === undefined ? {} : { holds }) });
  }

  /** Writes the note; `holding`: what a person has agreed to write over, undefined: only into an empty cell. */
  private async writeNote(holding?: readonly (readonly string[])[]): Promise<void> {
    const cell = this.noteCell();
    const text = this.model?.note;
    if (!cell || text === undefined) return;
    const address = addressOf(cell);
    if (!holding) {
      const now = await this.access.contents(cell);
      if (now.some((row) => row.some((content) => content !== ''))) {
        this.asked = { address, holding: now };
        this.offerNote();
        this.view.focusSafeAnswer();
        this.tell(`${address} is not empty. Nothing was written yet.`);
        return;
      }
    }
    const written = await this.access.write(cell, [[text]], holding ?? [['']]);
    this.asked = undefined;
    this.offerNote();
    this.view.focusWrite();
    this.tell(
      written === 'written'
        ? `Written into ${address}.`
        : written === 'changed'
          ? `${address} has changed meanwhile. Nothing was written.`
          : `${address} is locked and its sheet protected. Nothing was written: Review > Unprotect Sheet frees it.`,
    );
    await this.refresh('selection');
  }

  private async nextProblem(): Promise<void> {
    const { found } = this;
    if (!found) return;
    const first = found.header.row + 1;
    const count = found.lastRow - first + 1;
    const start = found.row.row - first + 1;
    let hiddenOnes = 0;
    // From the row below this one to the end, then from the top down to this one.
    for (const [from, to] of [
      [start, count],
      [0, start],
    ] as const) {
      for (let at = from; at < to; at += ROWS_AT_ONCE) {
        const area = { ...found.header, row: first + at, rows: Math.min(ROWS_AT_ONCE, to - at) };
        const rows = await this.access.read(area);
        const hits = rows.flatMap((cells, i) => (checkRow(found.headers, cells).length > 0 ? [i] : []));
        if (hits.length === 0) continue;
        const hidden = await this.access.hiddenRows(area);
        const hit = hits.find((i) => !hidden[i]);
        hiddenOnes += hits.filter((i) => hidden[i] && (hit === undefined || i < hit)).length;
        if (hit === undefined) continue;
        const row = area.row + hit;
        if (row === found.row.row) {
          this.tell(`No other row here has a problem.${hiddenText(hiddenOnes)}`);
          return;
        }
        await this.access.select({ ...found.header, row });
        await this.refresh('selection');
        return;
      }
    }
    this.tell(`No row here has a problem.${hiddenText(hiddenOnes)}`);
  }

  private async addSheets(): Promise<void> {
    const tables = (await this.access.tables()).map(({ name }) => name);
    const sheets = starterSheets({ sheets: await this.access.sheets(), tables });
    await this.access.addSheets(sheets);
    this.tell(`Added ${sheets.map(({ name }) => name).join(', ')}.`);
    await this.refresh('cells');
  }

  private async lookForFormulas(): Promise<void> {
    this.runs = await ownFormulas(this.access, this.board?.functions);
    const formulas = this.runs.flatMap((run) => run.formulas);
    if (formulas.length === 0) {
      this.tell('No formula here calls a function of this add-in.');
      return;
    }
    const entered = this.runs.flatMap((run) => run.entered);
    this.again.ask({
      formulas: formulas.length,
      sheets: [...new Set(this.runs.map(({ area }) => area.sheet))],
      prefixed: formulas.filter((formula, i) => formula !== entered[i]).length,
    });
  }

  private async enterAgain(go: boolean): Promise<void> {
    this.again.offer('take the focus');
    if (!go) {
      this.tell('Nothing was entered.');
      return;
    }
    const { entered, changed, protectedSheets, refused } = await enterAgain(this.access, this.runs);
    const parts = [
      entered === 1 ? '1 formula was entered again.' : `${entered} formulas were entered again.`,
      ...(changed > 0 ? [`${changed} had changed meanwhile and stay as they are.`] : []),
      ...(protectedSheets.length > 0
        ? [`Nothing was entered where sheets are protected: ${protectedSheets.join(', ')}.`]
        : []),
      ...refused.map((reason) => `Not entered on ${reason}.`),
    ];
    this.tell(parts.join(' '));
  }

  /** A workbook that does not answer is said so, and the pane stays. */
  private async safely(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      console.error('The pane could not go on:', error);
      const reason = error instanceof Error ? error.message : String(error);
      this.view.say(`The workbook did not answer: ${reason}`);
    }
  }
}

function summaryOf({ judged, problems }: PaneModel, row: number): string {
  const found =
    problems.length === 0
      ? 'no problems'
      : problems.length === 1
        ? '1 problem'
        : `${problems.length} problems`;
  return `Row ${row + 1}: ${judged ? `${judged.verdict}, ` : ''}${found}.`;
}

/** The chosen piece and the options, or what is wrong with what was typed. */
export function readForm(
  values: FormValues,
  choices: readonly PieceChoice[],
): {
  readonly chosen: Chosen | undefined;
  readonly options: PaneOptions;
  readonly problem: string | undefined;
  readonly noPiece?: string;
} {
  const problems: string[] = [];
  const number = (description: ArgumentDescription, text: string): number | undefined => {
    const read = readArgument(description, typedCell(text));
    if (read.ok) return read.value as number;
    problems.push(messageOf(read.problem).text);
    return undefined;
  };
  const allowance = number(ALLOWANCE_FIELD, values.allowance);
  const tape = number(TAPE_FIELD, values.tape);
  const options = { allowance: allowance ?? 0, tape: tape ?? 0 };
  let chosen: Chosen | undefined = choices.find(({ key }) => key === values.piece)?.chosen;
  if (values.piece === TYPED && values.sizes.some((size) => size.trim() !== '')) {
    const [a, b, c] = values.sizes.map((size, i) => number(entryAt(PIECE_SIZES, i), size));
    if (a !== undefined && b !== undefined && c !== undefined) {
      const size = sortedPiece(a, b, c);
      if (size.length < PIECE_LENGTH_RANGE.least) problems.push(messageOf(pieceTooShort(size.length)).text);
      else chosen = { name: 'Piece', pieces: [{ name: 'Piece', size }] };
    }
  }
  if (problems.length === 0) return { chosen, options, problem: undefined };
  return {
    chosen: undefined,
    options,
    problem: problems.join('\n'),
    noPiece: 'Not judged: mend what was typed for the piece.',
  };
}

/** A plain number in a field is a number; all else is read as a cell's text would be. */
function typedCell(text: string): Cell {
  const trimmed = text.trim();
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(trimmed) ? Number(trimmed) : trimmed;
}
