import { sortedPiece } from '../core/measures/piece';
import type { Cell } from '../core/measures/readQuantity';
import { PIECE_LENGTH_RANGE, PIECE_SIZES, pieceTooShort } from '../worksheet/arguments';
import type { ArgumentDescription } from '../worksheet/description';
import { messageOf } from '../worksheet/messages';
import { argumentReader } from '../worksheet/readArgument';
import { findPieces, type FoundPiece } from './findPieces';
import { findRow, type FoundRow } from './findRow';
import { paneModel, type ChosenPiece, type PaneModel, type PaneOptions } from './paneModel';
import { PaneView, TYPED, type FormValues } from './paneView';
import { addressOf, type CellArea, type SheetAccess } from './sheetAccess';
import { starterSheets } from './starterSheets';
import { checkRow } from '../core/survey/checkRow';

/** Rows looked through at once for the next problem. */
const ROWS_AT_ONCE = 500;

const ALLOWANCE: ArgumentDescription = {
  name: 'allowance',
  help: '',
  quantity: 'length',
  least: 0,
  most: 500,
  plainZero: true,
};
const TAPE: ArgumentDescription = { ...ALLOWANCE, name: 'tape', most: 100 };

/**
 * Puts the pane into `root` and keeps it in step with the workbook.
 * @returns brings the pane up to date; for hosts that want to wait for it
 */
export async function mountPane(root: HTMLElement, access: SheetAccess): Promise<() => Promise<void>> {
  root.classList.add('pane');
  const controller = new PaneController(root, access);
  await access.onChange((what) => void controller.refresh(what));
  await controller.refresh('cells');
  return () => controller.refresh('cells');
}

class PaneController {
  private readonly view: PaneView;
  private pieces: readonly FoundPiece[] = [];
  private found: FoundRow | undefined;
  private model: PaneModel | undefined;
  private latest = 0;

  constructor(
    root: HTMLElement,
    private readonly access: SheetAccess,
  ) {
    this.view = new PaneView(root, {
      changed: () => void this.refresh('selection'),
      nextProblem: () => void this.safely(() => this.nextProblem()),
      writeNote: () => void this.safely(() => this.writeNote(undefined)),
      replaceNote: () => void this.safely(() => this.writeNote(this.holding)),
      keepNote: () => {
        this.offerNote();
        this.view.focusWrite();
        this.view.say('Nothing was written.');
      },
      addSheets: () => void this.safely(() => this.addSheets()),
    });
  }

  /** Reads the workbook again; an older reading that comes back later is dropped. */
  async refresh(what: 'selection' | 'cells'): Promise<void> {
    const mine = ++this.latest;
    await this.safely(async () => {
      const tables = await this.access.tables();
      if (what === 'cells') {
        const pieces = await findPieces(this.access, tables);
        const names = starterSheets({
          sheets: await this.access.sheets(),
          tables: tables.map(({ name }) => name),
        }).map(({ name }) => name);
        if (mine !== this.latest) return;
        this.pieces = pieces;
        this.view.setPieces(pieces.map(({ key, label }) => ({ value: key, label })));
        this.view.showStarter(names);
      }
      const search = await findRow(this.access, tables);
      if (mine !== this.latest) return;
      this.found = search.found;
      this.show(search.found ? undefined : search.why);
    });
  }

  private show(why: string | undefined): void {
    const form = readForm(this.view.values(), this.pieces);
    const { found } = this;
    this.model = found
      ? paneModel(found.cells, found.headers, addressOf(found.row), form.piece, form.options, form.noPiece)
      : undefined;
    this.view.show(this.model, form.problem);
    if (!this.model) {
      this.view.say(why ?? 'This row is empty.');
      return;
    }
    this.offerNote();
    this.view.say(summaryOf(this.model, found!.row.row));
  }

  private noteCell(): CellArea | undefined {
    const { found } = this;
    const column = found?.headers.findIndex(
      (h) => typeof h === 'string' && h.trim().toLowerCase() === 'note',
    );
    if (!found || column === undefined || column < 0) return undefined;
    return { ...found.row, column: found.row.column + column, columns: 1 };
  }

  private holding: readonly (readonly string[])[] | undefined;

  private offerNote(holds?: string): void {
    const cell = this.noteCell();
    const text = this.model?.note;
    if (!cell) {
      this.view.showWrite({ address: undefined, text: 'A Note column would take what is found here.' });
    } else if (text === undefined) {
      this.view.showWrite({ address: undefined, text: 'Nothing to note on this row.' });
    } else {
      this.view.showWrite({
        address: addressOf(cell),
        text,
        ...(holds === undefined ? {} : { holds }),
      });
    }
  }

  /** Writes the note; `holding`: what a person has agreed to write over, undefined: only into an empty cell. */
  private async writeNote(holding: readonly (readonly string[])[] | undefined): Promise<void> {
    const cell = this.noteCell();
    const text = this.model?.note;
    if (!cell || text === undefined) return;
    const address = addressOf(cell);
    if (!holding) {
      const now = await this.access.contents(cell);
      if (now.some((row) => row.some((content) => content !== ''))) {
        this.holding = now;
        this.offerNote(now[0]?.[0] ?? '');
        this.view.say(`${address} is not empty. Nothing was written yet.`);
        return;
      }
    }
    const written = await this.access.write(cell, [[text]], holding ?? [['']]);
    await this.refresh('selection');
    this.view.focusWrite();
    this.view.say(
      written ? `Written into ${address}.` : `${address} has changed meanwhile. Nothing was written.`,
    );
  }

  private async nextProblem(): Promise<void> {
    const { found } = this;
    if (!found) return;
    const first = found.header.row + 1;
    const count = found.lastRow - first + 1;
    const start = found.row.row - first + 1;
    // From the row below this one to the end, then from the top down to this one.
    for (const [from, to] of [
      [start, count],
      [0, start],
    ] as const) {
      for (let at = from; at < to; at += ROWS_AT_ONCE) {
        const area = { ...found.header, row: first + at, rows: Math.min(ROWS_AT_ONCE, to - at) };
        const rows = await this.access.read(area);
        const hit = rows.findIndex((cells) => checkRow(found.headers, cells).length > 0);
        if (hit < 0) continue;
        const row = area.row + hit;
        if (row === found.row.row) {
          this.view.say('No other row here has a problem.');
          return;
        }
        await this.access.select({ ...found.header, row });
        await this.refresh('selection');
        return;
      }
    }
    this.view.say('No row here has a problem.');
  }

  private async addSheets(): Promise<void> {
    const tables = (await this.access.tables()).map(({ name }) => name);
    const sheets = starterSheets({ sheets: await this.access.sheets(), tables });
    await this.access.addSheets(sheets);
    await this.refresh('cells');
    this.view.say(`Added ${sheets.map(({ name }) => name).join(', ')}.`);
  }

  /** A workbook that does not answer is said so, and the pane stays. */
  private async safely(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
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
  pieces: readonly FoundPiece[],
): {
  readonly piece: ChosenPiece | undefined;
  readonly options: PaneOptions;
  readonly problem: string | undefined;
  readonly noPiece?: string;
} {
  const problems: string[] = [];
  const number = (description: ArgumentDescription, text: string): number | undefined => {
    const read = argumentReader(description)(typedCell(text));
    if (read.ok) return read.value as number;
    problems.push(messageOf(read.problem).text);
    return undefined;
  };
  const allowance = number(ALLOWANCE, values.allowance);
  const tape = number(TAPE, values.tape);
  const options = { allowance: allowance ?? 0, tape: tape ?? 0 };
  let piece: ChosenPiece | undefined = pieces.find(({ key }) => key === values.piece);
  if (values.piece === TYPED && values.sizes.some((size) => size.trim() !== '')) {
    const [a, b, c] = values.sizes.map((size, i) => number(PIECE_SIZES[i]!, size));
    if (a !== undefined && b !== undefined && c !== undefined) {
      const size = sortedPiece(a, b, c);
      if (size.length < PIECE_LENGTH_RANGE.least) problems.push(messageOf(pieceTooShort(size.length)).text);
      else piece = { name: 'Piece', size };
    }
  }
  if (problems.length === 0) return { piece, options, problem: undefined };
  return {
    piece: undefined,
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
