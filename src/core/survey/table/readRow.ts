import type { Cell } from '../../measures/readQuantity';
import { readLength } from '../../measures/readLength';
import { cellText, isErrorCell, saysNothing } from './cells';
import { refusalWords } from '../words/problemWords';
import type { RouteColumns } from './readHeaders';
import { readMeasure, type MeasureRead } from './readMeasure';
import type { MeasureName } from '../../stages/measures';
import type { RefusedMeasure, StageRow, WordDoubt } from './stageRow';
import type { StageName } from '../../stages/kinds';
import { stageNamed } from './stageNamed';
import { firstOf } from '../../lists/ends';

const NONE_REFUSED: readonly RefusedMeasure[] = [];

/**
 * Reads one row of a route.
 * @param columns where the columns stand, see `readHeaders`
 * @param rowIndex zero-based place in the table, header not counted
 * @returns the row; undefined when all its columns are empty (an empty cell can arrive as 0)
 */
export function readRow(
  columns: RouteColumns,
  cells: readonly Cell[],
  rowIndex: number,
): StageRow | undefined {
  const stageText = oneText(columns.stage, cells);
  const stage = stageNamed(stageText);
  const measures: Partial<Record<MeasureName, number>> = {};
  let refused: RefusedMeasure[] | undefined;
  let says = stageText !== '';
  for (const { measure, columns: at } of columns.measuresAt(stage)) {
    const cell = at.length === 1 ? cells[firstOf(at)] : undefined;
    const value =
      at.length === 1 ? readMeasure(stage, measure, cell) : readDoubled(stage, measure, at, cells);
    if (value === undefined) continue;
    says ||= at.some((i) => !saysNothing(cells[i]));
    if (typeof value === 'number') measures[measure] = value;
    else (refused ??= []).push(value);
  }
  const survey = firstText(columns.survey, cells);
  const note = firstText(columns.note, cells);
  const step = readStep(columns.step, cells);
  const said = readWords(columns, cells);
  says ||= said.hand !== undefined || said.way !== undefined || said.doubts !== undefined;
  if (!says && survey === '' && note === '' && columns.step.every((i) => saysNothing(cells[i]))) {
    return undefined;
  }
  const label = Number.isNaN(step) ? firstText(columns.step, cells) : '';
  return {
    survey,
    step,
    ...(label === '' ? {} : { label }),
    stage,
    stageText,
    measures,
    refused: refused ?? NONE_REFUSED,
    note,
    ...said,
    rowIndex,
  };
}

type Said = Pick<StageRow, 'hand' | 'way' | 'clear' | 'tape' | 'doubts'>;

/** Hand, Way, Clear and Tape, where they are said; what cannot be taken is doubted, not skipped. */
function readWords(columns: RouteColumns, cells: readonly Cell[]): Said {
  let doubts: WordDoubt[] | undefined;
  const doubt = (column: WordDoubt['column'], got: unknown, allowed: string): undefined => {
    (doubts ??= []).push({ column, got, allowed });
    return undefined;
  };
  const word = <Word extends string>(
    column: WordDoubt['column'],
    at: readonly number[],
    allowed: readonly Word[],
  ): Word | undefined => {
    const text = oneText(at, cells);
    if (text === '') return undefined;
    const found = allowed.find((one) => one === text.toLowerCase());
    return found ?? doubt(column, text, allowed.join(' or '));
  };
  const hand = word('Hand', columns.hand, ['left', 'right']);
  const way = word('Way', columns.way, ['up', 'down']);
  const clear = word('Clear', columns.clear, ['yes', 'no']);
  const tape = readTape(columns.tape, cells, doubt);
  return {
    ...(hand === undefined ? {} : { hand }),
    ...(way === undefined ? {} : { way }),
    ...(clear === undefined ? {} : { clear: clear === 'yes' }),
    ...(tape === undefined ? {} : { tape }),
    ...(doubts === undefined ? {} : { doubts }),
  };
}

/** The greatest tape that the functions take [mm]. */
const MOST_TAPE = 40;

function readTape(
  at: readonly number[],
  cells: readonly Cell[],
  doubt: (column: 'Tape', got: unknown, allowed: string) => undefined,
): number | undefined {
  let tape: number | undefined;
  for (const i of at) {
    const cell = cells[i];
    if (saysNothing(cell)) continue;
    const read = isErrorCell(cell) ? undefined : readLength(cell);
    // A doubled column that says two things says neither.
    const isTape =
      read?.ok && read.value >= 0 && read.value <= MOST_TAPE && (tape ?? read.value) === read.value;
    if (!isTape)
      return doubt('Tape', isErrorCell(cell) ? cell.code : cell, `a length of 0 to ${MOST_TAPE} mm`);
    tape = read.value;
  }
  return tape;
}

/** The first of several cells that holds a text. */
function firstText(at: readonly number[], cells: readonly Cell[]): string {
  for (const i of at) {
    const text = cellText(cells[i]);
    if (text !== '') return text;
  }
  return '';
}

/** The text of a doubled column; where its cells do not agree, both, which names nothing. */
function oneText(at: readonly number[], cells: readonly Cell[]): string {
  if (at.length === 1) return cellText(cells[firstOf(at)]);
  const texts = new Set(at.map((i) => cellText(cells[i])).filter((text) => text !== ''));
  return [...texts].join(' / ');
}

const DIGITS = /^\d+$/;

/** The step's number; NaN when there is none. A table brought in as text has its steps as digits. */
function readStep(at: readonly number[], cells: readonly Cell[]): number {
  let step = NaN;
  for (const i of at) {
    const cell = cells[i];
    if (saysNothing(cell)) continue;
    const text = typeof cell === 'string' ? cell.trim() : '';
    const number = typeof cell === 'number' ? cell : DIGITS.test(text) ? Number(text) : NaN;
    if (!Number.isFinite(number) || number === 0) return NaN;
    if (!Number.isNaN(step) && step !== number) return NaN;
    step = number;
  }
  return step;
}

/** A measure that has more than one column: those filled in have to agree. */
function readDoubled(
  stage: StageName | undefined,
  measure: MeasureName,
  at: readonly number[],
  cells: readonly Cell[],
): MeasureRead {
  const filled = at.filter((i) => !saysNothing(cells[i]));
  if (filled.length === 0)
    return readMeasure(stage, measure, cells[at.find((i) => cells[i] === 0) ?? firstOf(at)]);
  const first = readMeasure(stage, measure, cells[firstOf(filled)]);
  for (const i of filled.slice(1)) {
    const next = readMeasure(stage, measure, cells[i]);
    if (typeof next !== 'number') return next;
    if (typeof first === 'number' && next !== first) {
      return { measure, got: cells[i], why: refusalWords({ kind: 'two values', one: first, other: next }) };
    }
  }
  return first;
}
