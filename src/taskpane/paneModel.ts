import { CAUTIONS } from '../core/measures/cautions';
import type { Cell } from '../core/measures/readQuantity';
import type { Verdict } from '../core/route/verdict';
import { cellText as textOf } from '../core/survey/table/cells';
import { measureAtStage } from '../core/survey/words/measureHeading';
import type { MeasureName } from '../core/stages/measures';
import { type StageName, isStair, stageNeeds, usesMeasure } from '../core/stages/kinds';
import type { StageRow } from '../core/survey/table/stageRow';
import type { StepPictures } from '../drawing/carriedRoute';
import { drawStage } from '../drawing/drawStage';
import { letteredDrawing, missingMeasures } from '../drawing/letteredDrawing';
import { mmText } from '../drawing/paper';
import { judgeChosen, type JudgedPieces } from './judgeChosen';
import { readSelectedRow, stepText, type SelectedRow } from './readSelectedRow';
import { shownDown, shownGiven } from '../core/measures/shown';
import type { ChosenPiece } from './chosenPiece';

/** What is to be carried past the row: one piece, or all pieces of a build. */
export interface Chosen {
  readonly name: string;
  /** At least one. */
  readonly pieces: readonly ChosenPiece[];
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
  /** Of a whole build: each piece with its verdict. */
  readonly pieces: readonly { readonly name: string; readonly verdict: Verdict }[];
}

/** All that the pane shows of a row, as data. */
export interface PaneModel {
  /** '' where the row names none. */
  readonly survey: string;
  /** `Step 3: half landing` */
  readonly heading: string;
  readonly place: string;
  readonly measures: readonly MeasureLine[];
  readonly problems: readonly string[];
  readonly judged?: PaneJudgement;
  /** Why there is no verdict. */
  readonly notJudged?: string;
  readonly cautions: readonly string[];
  readonly drawing?: Pick<StepPictures, 'pictures' | 'text'>;
  /** Why there is no drawing. */
  readonly notDrawn?: string;
  /** What a note on this row would say; undefined: nothing to say. */
  readonly note?: string;
}

/**
 * What the pane shows of one row of a route.
 * @param cells the row's cells, as long as `headers`
 * @param place where the row is, for people: `Route!A6:W6`
 * @param chosen undefined: none was chosen, `noPiece` says why
 * @returns undefined for an empty row
 */
export function paneModel(
  cells: readonly Cell[],
  headers: readonly Cell[],
  place: string,
  chosen: Chosen | undefined,
  options: PaneOptions,
  noPiece = 'Choose a piece, or type its three sizes, to see whether it goes.',
): PaneModel | undefined {
  const selected = readSelectedRow(headers, cells);
  if (!selected) return undefined;
  const { row, problems } = selected;
  const { stage } = row;
  const all = stage && chosen ? judgeChosen(row, chosen.pieces, options.allowance, options.tape) : undefined;
  const judged = all?.judged;
  const piece = all?.piece ?? chosen?.pieces[0];
  const drawing = drawingOf(row, judged, piece);
  const note = noteText(all, chosen, problems);
  return {
    survey: row.survey.trim(),
    heading: headingOf(row),
    place: row.survey.trim() === '' ? place : `${place}, survey ${row.survey.trim()}`,
    measures: measureLines(selected),
    problems,
    ...(judged ? { judged: judgement(all, problems.length > 0) } : { notJudged: notJudged(row, noPiece) }),
    cautions: cautionsFor(stage),
    ...(drawing ? { drawing } : { notDrawn: notDrawn(row) }),
    ...(note === undefined ? {} : { note }),
  };
}

/** The stage with the way of the piece; alone where no piece is chosen; where the tape goes where a measure is missing. */
function drawingOf(
  { stage, measures }: StageRow,
  judged: JudgedPieces['judged'] | undefined,
  piece: ChosenPiece | undefined,
): PaneModel['drawing'] {
  if (stage === undefined) return undefined;
  const missing = missingMeasures(stage, measures);
  if (missing.length > 0)
    return letteredDrawing(stage, { id: 'pane-stage', width: 296, height: 230, missing });
  const alone = drawStage(stage, measures, { id: 'pane-stage' });
  const carried = judged && piece ? judged.draw(piece.name) : undefined;
  return carried ?? (alone && { pictures: [alone], text: alone.text });
}

function headingOf(row: StageRow): string {
  const { stage, stageText } = row;
  const what = stage ?? (stageText.trim() === '' ? 'no stage named' : `"${stageText.trim()}"`);
  return `${stepText(row)}: ${what}`;
}

function cautionsFor(stage: StageName | undefined): string[] {
  return stage !== undefined && isStair(stage) ? [CAUTIONS.route, CAUTIONS.stairs] : [CAUTIONS.route];
}

function judgement({ piece, judged, all }: JudgedPieces, doubtful: boolean): PaneJudgement {
  const { verdict, because, worst, measured, best } = judged;
  const who = all.length > 1 ? `${piece.name}: ` : '';
  const line = (name: string, value: number | undefined) =>
    value === undefined ? [] : [{ name, text: clearanceText(value) }];
  return {
    verdict,
    // The problems of the row say it already, and with what is allowed.
    reason:
      verdict === 'not measured'
        ? 'See the problems of this row.'
        : `${who}${because}.${doubtful ? AS_TYPED : ''}`,
    clearances: [...line('Worst case', worst), ...line('As measured', measured), ...line('Best case', best)],
    pieces: all.length > 1 ? all.map((one) => ({ name: one.piece.name, verdict: one.judged.verdict })) : [],
  };
}

/** A verdict beside a problem is no verdict on the house. */
const AS_TYPED = ' This holds for the measures as typed: look at the problems of this row first.';

const clearanceText = (value: number): string =>
  Number.isFinite(value) ? shownDown(value, 1).toFixed(1) : 'no way found';

function notJudged(row: StageRow, noPiece: string): string {
  if (row.stage === undefined) return 'Not known: the row names no stage that we know.';
  return noPiece;
}

const notDrawn = ({ stage }: StageRow): string =>
  stage === undefined
    ? 'Not drawn: the row names no stage that we know.'
    : 'Not drawn: this turn cannot be drawn.';

/** The measures the stage uses, and any others that the row holds; without a stage all that the row holds. */
function measureLines({ row, cells }: SelectedRow): MeasureLine[] {
  const { stage } = row;
  const needs = stage ? stageNeeds(stage) : { needs: [], may: [] };
  const others = [...cells.keys()].filter((name) => !stage || !usesMeasure(stage, name));
  return [...needs.needs, ...needs.may, ...others].flatMap((name) => {
    const line = measureLine(row, name, cells);
    const asks = stage !== undefined && usesMeasure(stage, name);
    return asks || line.cell !== '' ? [line] : [];
  });
}

function measureLine(row: StageRow, measure: MeasureName, cells: SelectedRow['cells']): MeasureLine {
  const { stage } = row;
  const name = measureAtStage(measure, stage);
  const cell = cellText(cells.get(measure));
  const refusal = row.refused.find((r) => r.measure === measure);
  if (refusal) return { name, cell, read: 'refused, see Problems', state: 'refused' };
  const value = row.measures[measure];
  if (value === undefined) {
    if (stage === undefined || !stageNeeds(stage).needs.includes(measure)) {
      return { name, cell, read: 'not given', state: 'read' };
    }
    return { name, cell, read: cells.has(measure) ? 'missing' : 'no such column', state: 'missing' };
  }
  const read = readText(measure, value);
  const used = stage === undefined || usesMeasure(stage, measure) || measure === 'run';
  return used
    ? { name, cell, read, state: 'read' }
    : { name, cell, read: `${read}, not used here`, state: 'not used' };
}

const UNITS: Readonly<Partial<Record<MeasureName, string>>> = {
  turn: 'degrees',
  risers: '',
  ratedLoad: 'kg',
};

/** The value with the unit it was understood in. */
function readText(name: MeasureName, value: number): string {
  const unit = UNITS[name] ?? 'mm';
  const number = unit === 'mm' ? mmText(value) : String(shownGiven(value));
  return `${number}${unit ? ` ${unit}` : ''}`;
}

/** A cell as it is shown. */
const cellText = (cell: Cell): string => (cell === 0 ? '0' : textOf(cell));

function noteText(
  judgedPieces: JudgedPieces | undefined,
  chosen: Chosen | undefined,
  problems: readonly string[],
): string | undefined {
  const parts = [...problems];
  if (judgedPieces && chosen) {
    const { judged, piece } = judgedPieces;
    const who = chosen.pieces.length > 1 ? `${piece.name}, ` : '';
    const because = judged.verdict === 'not measured' ? '' : `, ${who}${judged.because}`;
    parts.unshift(`${chosen.name}: ${judged.verdict}${because}.`);
  }
  return parts.length > 0 ? parts.join(' ') : undefined;
}
