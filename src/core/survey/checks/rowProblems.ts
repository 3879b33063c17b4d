import { saysNothing } from '../table/cells';
import type { Cell } from '../../measures/readQuantity';
import { doorLeafSlips } from './doorSlips';
import {
  hasRun,
  kindOf,
  measureAt,
  plausibleRange,
  stageNeeds,
  turns,
  usesMeasure,
  type StageName,
} from '../../stages/kinds';
import { MEASURE_NAMES, MEASURES, SKY, type MeasureName } from '../../stages/measures';
import type { StageRow } from '../table/stageRow';
import type { RouteColumns } from '../table/readHeaders';
import { isNoStage, isRepeatedHeader, stagesMeant } from '../table/stageNamed';
import { stairSlips } from './stairSlips';
import type { RowProblem } from './surveyProblem';
import { unitsMeant } from './unitsMeant';
import { widthHeightExchanged } from './widthHeightExchanged';

/**
 * What is wrong with one row by itself: errors, which keep it from being taken as measured, and warnings, which
 * name what looks like a slip and what was probably meant. Nothing is changed.
 * @param cells the row as it stands, to see columns that belong to other stages
 * @param steps `asked`: a missing step number is a problem
 */
export function rowProblems(
  row: StageRow,
  columns: RouteColumns,
  cells: readonly Cell[],
  steps: 'asked' | 'not asked',
): RowProblem[] {
  const { rowIndex, step, stage } = row;
  const problems: RowProblem[] = [];
  if (steps === 'asked') {
    if (Number.isNaN(step)) {
      if (row.label === undefined) problems.push({ kind: 'no step number', severity: 'warning', rowIndex });
    } else if (!Number.isInteger(step) || step < 1) {
      problems.push({ kind: 'not a whole step', severity: 'warning', rowIndex, step });
    }
  }
  for (const doubt of row.doubts ?? []) {
    problems.push({ kind: 'word not taken', severity: 'error', rowIndex, doubt });
  }
  if (!stage) {
    // Without a column for it the header row says so once.
    if (columns.stage.length > 0) problems.push(stageProblem(row));
    return problems;
  }
  problems.push(...shortfalls(row, stage, columns));
  problems.push(...slips(row, stage, columns, cells));
  problems.push(...zerosAsked(row, stage, columns, cells));
  if (row.hand !== undefined && !turns(stage)) {
    problems.push({ kind: 'hand where nothing turns', severity: 'warning', rowIndex, stage });
  }
  if (row.measures.run !== undefined && !hasRun(stage)) {
    problems.push({ kind: 'run not used', severity: 'warning', rowIndex, stage });
  }
  problems.push(...narrowPart(row, stage));
  for (const { heading: column, stages, columns: at } of columns.othersAt(stage)) {
    if (at.some((i) => !saysNothing(cells[i]))) {
      problems.push({
        kind: 'column of another stage',
        severity: 'warning',
        rowIndex,
        column,
        stage,
        stages,
      });
    }
  }
  return problems;
}

function stageProblem({ rowIndex, stageText }: StageRow): RowProblem {
  if (stageText === '') return { kind: 'no stage', severity: 'error', rowIndex };
  if (isRepeatedHeader(stageText)) return { kind: 'header repeated', severity: 'error', rowIndex };
  if (isNoStage(stageText)) return { kind: 'no stage of ours', severity: 'error', rowIndex, got: stageText };
  const nearest = stagesMeant(stageText);
  return {
    kind: 'unknown stage',
    severity: 'error',
    rowIndex,
    got: stageText,
    ...(nearest.length > 0 ? { nearest } : {}),
  };
}

/** What is missing or refused. A run that is refused counts as not measured, which leaves the route measured. */
function shortfalls(row: StageRow, stage: StageName, columns: RouteColumns): RowProblem[] {
  const { rowIndex, measures } = row;
  const problems: RowProblem[] = [];
  const refused = new Set<MeasureName>();
  for (const { measure, got, why } of row.refused) {
    refused.add(measure);
    const used = usesMeasure(stage, measure);
    if (!used && measure !== 'run') continue;
    const severity = used ? 'error' : 'warning';
    problems.push({ kind: 'refused', severity, rowIndex, measure, stage, got, why });
  }
  for (const measure of stageNeeds(stage).needs) {
    if (measures[measure] !== undefined || refused.has(measure)) continue;
    const noColumn = !columns.measuresAt(stage).some((m) => m.measure === measure);
    // A stair's run is no going: Run is the straight after a turn.
    const runForGoing = measure === 'going' && measures.run !== undefined;
    problems.push({
      kind: 'not measured',
      severity: 'error',
      rowIndex,
      measure,
      stage,
      noColumn,
      ...(runForGoing ? { runForGoing } : {}),
    });
  }
  return problems;
}

/** What is said of a part that is narrower near the floor, and not made use of. */
function narrowPart({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { width, lowWidth, lowHeight } = measures;
  const at = { severity: 'warning', rowIndex } as const;
  if (!usesMeasure(stage, 'lowWidth')) {
    const measure = lowWidth !== undefined ? 'lowWidth' : lowHeight !== undefined ? 'lowHeight' : undefined;
    return measure ? [{ kind: 'narrow part not used', ...at, stage, measure, lacksWidth: false }] : [];
  }
  if (lowWidth === undefined) {
    if (lowHeight === undefined) return [];
    return [{ kind: 'narrow part not used', ...at, stage, measure: 'lowHeight', lacksWidth: true }];
  }
  if (width !== undefined && lowWidth >= width)
    return [{ kind: 'narrow part as wide', ...at, measure: 'lowWidth', lowWidth, width }];
  if (lowHeight !== undefined) return [];
  return [{ kind: 'height of the narrow part asked', severity: 'question', rowIndex, measure: 'lowHeight' }];
}

/** A bare 0 that is taken for none: it can be an empty cell all the same. */
function zerosAsked(
  { rowIndex, measures }: StageRow,
  stage: StageName,
  columns: RouteColumns,
  cells: readonly Cell[],
): RowProblem[] {
  return columns
    .measuresAt(stage)
    .filter(
      ({ measure, columns: at }) =>
        measures[measure] === 0 &&
        measureAt(stage, measure)?.none === 'bare 0' &&
        at.some((i) => cells[i] === 0),
    )
    .map(({ measure }) => ({ kind: 'bare zero asked', severity: 'question', rowIndex, measure, stage }));
}

/** Slips that are named as such, then whatever else is out of the usual. */
function slips(row: StageRow, stage: StageName, columns: RouteColumns, cells: readonly Cell[]): RowProblem[] {
  const { rowIndex, measures } = row;
  // A text names its own unit, so that nothing is guessed about it.
  const isBare = (measure: MeasureName): boolean =>
    columns
      .measuresAt(stage)
      .some((m) => m.measure === measure && m.columns.some((i) => typeof cells[i] === 'number'));
  const named = [
    ...widthHeightExchanged(row, stage),
    ...doorLeafSlips(row, stage),
    ...stairSlips(row, stage),
    ...ceilingSlips(row, stage),
  ];
  const explained = new Set(named.flatMap(explains));
  for (const measure of MEASURE_NAMES) {
    const value = measures[measure];
    if (value === undefined || explained.has(measure)) continue;
    if (measure !== 'run' && !usesMeasure(stage, measure)) continue;
    if (value === SKY && measureAt(stage, measure)?.sky) continue;
    // A 0 that is taken says plainly that there is none.
    if (value === 0 && measureAt(stage, measure)?.none !== undefined) continue;
    const usual = plausibleRange(stage, measure);
    if (!usual || (value >= usual.least && value <= usual.most)) continue;
    const { least, most, source } = usual;
    named.push({
      kind: 'unusual',
      severity: 'warning',
      rowIndex,
      measure,
      stage,
      value,
      least,
      most,
      source,
      meant: MEASURES[measure].quantity === 'length' && isBare(measure) ? unitsMeant(value, usual) : [],
    });
  }
  return named;
}

/** The measures whose being out of the usual a slip already explains. */
function explains(problem: RowProblem): MeasureName[] {
  switch (problem.kind) {
    case 'width and height exchanged':
      return ['width', 'height'];
    case 'rise and going exchanged':
      return ['rise', 'going'];
    case 'headroom square':
      return ['height'];
    case 'door leaf':
      return ['width'];
    default:
      return [];
  }
}

/** A ceiling lower than the door that opens under it. */
function ceilingSlips({ measures, rowIndex }: StageRow, stage: StageName): RowProblem[] {
  const { height, ceiling } = measures;
  if (!kindOf(stage).doorUnderCeiling || height === undefined || ceiling === undefined) return [];
  if (ceiling >= height) return [];
  return [
    {
      kind: 'ceiling below the door',
      severity: 'warning',
      rowIndex,
      measure: 'ceiling',
      stage,
      height,
      ceiling,
    },
  ];
}
