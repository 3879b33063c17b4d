import { CAUTIONS } from '../core/measures/cautions';
import type { PieceSize } from '../core/measures/piece';
import type { Cell } from '../core/measures/readQuantity';
import { measureHeading, measuresNeeded, measuresUsed } from '../core/route/stageShortfall';
import type { Verdict } from '../core/route/verdict';
import type { MeasureName, StageName, StageRow } from '../core/survey/stageMeasures';
import { drawStage, type StageDrawing } from '../drawing/drawStage';
import { mmText } from '../drawing/paper';
import { judgeStage, type JudgedStage } from './judgeStage';
import { readOneRow } from './surveySeam';

/** The piece to carry, with what it is called. */
export interface ChosenPiece {
  readonly name: string;
  readonly size: PieceSize;
}

export interface PaneOptions {
  /** Clearance that the firm insists on [mm a side]. */
  readonly allowance: number;
  /** How far off a measure may be [mm]. */
  readonly tape: number;
}

/** One measure: its column, what the cell holds, and what that was read as. */
export interface MeasureLine {
  readonly name: string;
  readonly cell: string;
  readonly read: string;
  readonly state: 'read' | 'missing' | 'refused' | 'not used';
}

export interface PaneJudgement {
  readonly verdict: Verdict;
  readonly reason: string;
  readonly clearances: readonly { readonly name: string; readonly text: string }[];
}

/** All that the pane shows of a row, as data. */
export interface PaneModel {
  /** `Step 3: half landing` */
  readonly heading: string;
  readonly place: string;
  readonly measures: readonly MeasureLine[];
  readonly problems: readonly string[];
  readonly judged?: PaneJudgement;
  /** Why there is no verdict. */
  readonly notJudged?: string;
  readonly cautions: readonly string[];
  readonly drawing?: StageDrawing;
  /** Why there is no drawing. */
  readonly notDrawn?: string;
  /** What a note on this row would say; undefined: nothing to say. */
  readonly note?: string;
}

const STAIRS: readonly StageName[] = ['flight', 'quarter landing', 'half landing', 'winder'];

/**
 * What the pane shows of one row of a route.
 * @param cells the row's cells, as long as `headers`
 * @param place where the row is, for people: `Route!A6:W6`
 * @param piece undefined: none was chosen, `noPiece` says why
 */
export function paneModel(
  cells: readonly Cell[],
  headers: readonly Cell[],
  place: string,
  piece: ChosenPiece | undefined,
  options: PaneOptions,
  noPiece = 'Choose a piece, or type its three sizes, to see whether it goes.',
): PaneModel {
  const { row, columns, problems } = readOneRow(headers, cells, 0);
  const { stage } = row;
  const shownProblems = [...problems];
  const judged = stage && piece ? judgeStage(row, piece.size, options.allowance, options.tape) : undefined;
  const drawing =
    stage === undefined
      ? undefined
      : drawStage(stage, row.measures, piece?.size, judged?.answer, {
          id: 'pane-stage',
          ...(piece ? { pieceName: piece.name } : {}),
        });
  const note = noteText(judged, piece, shownProblems);
  return {
    heading: headingOf(row),
    place: row.survey.trim() === '' ? place : `${place}, survey ${row.survey.trim()}`,
    measures: measureLines(row, columns, cells),
    problems: shownProblems,
    ...(judged ? { judged: judgement(judged) } : { notJudged: notJudged(row, noPiece) }),
    cautions: cautionsFor(stage),
    ...(drawing ? { drawing } : { notDrawn: notDrawn(row) }),
    ...(note === undefined ? {} : { note }),
  };
}

function headingOf({ step, stage, stageText }: StageRow): string {
  const what = stage ?? (stageText.trim() === '' ? 'no stage named' : `"${stageText.trim()}"`);
  return Number.isNaN(step) ? `No step number: ${what}` : `Step ${step}: ${what}`;
}

function cautionsFor(stage: StageName | undefined): string[] {
  return stage !== undefined && STAIRS.includes(stage) ? [CAUTIONS.route, CAUTIONS.stairs] : [CAUTIONS.route];
}

function judgement({ verdict, because, worst, measured, best }: JudgedStage): PaneJudgement {
  const line = (name: string, value: number | undefined) =>
    value === undefined ? [] : [{ name, text: clearanceText(value) }];
  return {
    verdict,
    reason: `${because}.`,
    clearances: [...line('Worst case', worst), ...line('As measured', measured), ...line('Best case', best)],
  };
}

const clearanceText = (value: number): string =>
  Number.isFinite(value) ? (Math.round(value * 10) / 10).toFixed(1) : 'no way found';

function notJudged(row: StageRow, noPiece: string): string {
  if (row.stage === undefined) return 'Not known: the row names no stage that we know.';
  return noPiece;
}

function notDrawn(row: StageRow): string {
  if (row.stage === undefined) return 'Not drawn: the row names no stage that we know.';
  const missing = measuresNeeded(row.stage).filter((name) => row.measures[name] === undefined);
  const names = missing.map((name) => headingFor(row.stage, name)).join(', ');
  return names ? `Not drawn: ${names} missing or refused.` : 'Not drawn: this turn cannot be drawn.';
}

/** A height on stairs is a headroom. */
function headingFor(stage: StageName | undefined, name: MeasureName): string {
  return stage !== undefined && STAIRS.includes(stage) && name === 'height'
    ? 'Headroom'
    : measureHeading(name);
}

/** The measures the stage uses, and any others that the row holds; without a stage all that the row holds. */
function measureLines(
  row: StageRow,
  columns: Readonly<Partial<Record<MeasureName, number>>>,
  cells: readonly Cell[],
): MeasureLine[] {
  const used: readonly MeasureName[] = row.stage ? measuresUsed(row.stage) : [];
  const needed: readonly MeasureName[] = row.stage ? measuresNeeded(row.stage) : [];
  const others = (Object.keys(columns) as MeasureName[]).filter((name) => !used.includes(name));
  const lines: MeasureLine[] = [];
  for (const name of [...used, ...others]) {
    const column = columns[name];
    const cell = column === undefined ? '' : cellText(cells[column]);
    const refusal = row.refused.find((r) => r.measure === name);
    const value = row.measures[name];
    const asks = used.includes(name);
    if (!asks && cell === '') continue;
    const heading = headingFor(row.stage, name);
    if (refusal) lines.push({ name: heading, cell, read: `refused: ${refusal.why}`, state: 'refused' });
    else if (value === undefined) {
      const read = needed.includes(name)
        ? column === undefined
          ? 'no such column'
          : 'missing'
        : 'not given';
      lines.push({ name: heading, cell, read, state: needed.includes(name) ? 'missing' : 'read' });
    } else {
      const shown = readText(name, value, column === undefined ? undefined : cells[column]);
      lines.push({
        name: heading,
        cell,
        read: asks || row.stage === undefined || name === 'run' ? shown : `${shown}, not used here`,
        state: asks ? 'read' : 'not used',
      });
    }
  }
  return lines;
}

const UNITS: Readonly<Partial<Record<MeasureName, string>>> = {
  turn: 'degrees',
  risers: '',
  ratedLoad: 'kg',
};

/** The value with the unit it was understood in. */
function readText(name: MeasureName, value: number, cell: Cell): string {
  const unit = UNITS[name] ?? 'mm';
  const number = unit === 'mm' ? mmText(value) : String(Math.round(value * 100) / 100);
  const bare = typeof cell === 'number' && unit !== '' ? ' (plain number)' : '';
  return `${number}${unit ? ` ${unit}` : ''}${bare}`;
}

/** A cell as it is shown. */
export function cellText(cell: Cell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell === 'object') return cell.code;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return String(cell);
}

function noteText(
  judged: JudgedStage | undefined,
  piece: ChosenPiece | undefined,
  problems: readonly string[],
): string | undefined {
  const parts = [...problems];
  if (judged && piece) {
    parts.unshift(`${piece.name}: ${judged.verdict}, ${judged.because}`);
  }
  return parts.length > 0 ? parts.join('; ') : undefined;
}
