import { readLength } from '../core/measures/readLength';
import type { Cell } from '../core/measures/readQuantity';
import { measureHeading, stageShortfall } from '../core/route/stageShortfall';
import { MEASURE_NAMES, STAGE_NAMES, type MeasureName, type StageRow } from '../core/survey/stageMeasures';

export interface ReadRow {
  readonly row: StageRow;
  readonly columns: Readonly<Partial<Record<MeasureName, number>>>;
  readonly problems: readonly string[];
}

export function readOneRow(headers: readonly Cell[], cells: readonly Cell[], rowIndex: number): ReadRow {
  const at = (name: string): number =>
    headers.findIndex((h) => typeof h === 'string' && h.trim().toLowerCase() === name.toLowerCase());
  const stageText = String(cells[at('Stage')] ?? '');
  const stage = STAGE_NAMES.find((s) => s === stageText.trim().toLowerCase());
  const columns: Partial<Record<MeasureName, number>> = {};
  const measures: Partial<Record<MeasureName, number>> = {};
  const refused: { measure: MeasureName; got: unknown; why: string }[] = [];
  for (const name of MEASURE_NAMES) {
    let i = at(measureHeading(name));
    if (i < 0 && name === 'height') i = at('Headroom');
    if (i < 0) continue;
    columns[name] = i;
    const cell = cells[i];
    if (cell === null || cell === undefined || cell === '') continue;
    const read = readLength(cell);
    if (read.ok) measures[name] = read.value;
    else refused.push({ measure: name, got: cell, why: read.why });
  }
  const step = cells[at('Step')];
  const row: StageRow = {
    survey: String(cells[at('Survey')] ?? ''),
    step: typeof step === 'number' ? step : NaN,
    stage,
    stageText,
    measures,
    refused,
    note: String(cells[at('Note')] ?? ''),
    rowIndex,
  };
  const problems =
    stage === undefined ? ['stage not known'] : [stageShortfall(row)].filter((p) => p !== undefined);
  return { row, columns, problems };
}
