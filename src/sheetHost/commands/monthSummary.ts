import { findRows, type NamedRow } from '../findRows';
import { isCellError, type CellValue } from '../hostValues';
import type { SheetHost } from '../sheetHost';

/** The verdicts, best first. */
const VERDICTS = ['goes', 'tight', 'no way found', 'not measured', 'cannot go'] as const;

const UNKNOWN = VERDICTS.length;

/** One line a survey: its best verdict, the step where that is closest, and the clearance there. */
export function monthSummary(host: SheetHost): readonly string[] {
  const rows = findRows(host, ['Survey', 'Verdict', 'Clearance', 'Stage']);
  if (!rows) return ['The workbook has no rows with Survey, Verdict, Clearance and Stage.'];
  const best = new Map<string, NamedRow>();
  for (const row of rows) {
    const survey = text(row.get('survey') ?? null);
    const held = best.get(survey);
    if (!held || rank(row) < rank(held)) best.set(survey, row);
  }
  const lines = [...best].map(([survey, row]) => [
    survey,
    text(row.get('verdict') ?? null),
    [row.get('step'), row.get('stage')]
      .map((v) => text(v ?? null))
      .join(' ')
      .trim(),
    clearance(row.get('clearance') ?? null),
    text(row.get('build') ?? null),
  ]);
  const table = [['Survey', 'Verdict', 'Closest stage', 'Clearance', 'Build'], ...lines];
  const widths = table[0]!.map((_, c) => Math.max(...table.map((row) => row[c]!.length)));
  const counts = VERDICTS.map(
    (v) => [v, [...best.values()].filter((r) => r.get('verdict') === v).length] as const,
  );
  return [
    ...table.map((row) =>
      row
        .map((cell, c) => cell.padEnd(widths[c]!))
        .join('  ')
        .trimEnd(),
    ),
    '',
    `${best.size} surveys: ${counts.map(([verdict, count]) => `${count} ${verdict}`).join(', ')}`,
  ];
}

function rank(row: NamedRow): number {
  const at = (VERDICTS as readonly CellValue[]).indexOf(row.get('verdict') ?? null);
  return at < 0 ? UNKNOWN : at;
}

function text(value: CellValue): string {
  if (value === null) return '';
  if (isCellError(value)) return value.message === undefined ? value.code : `${value.code} ${value.message}`;
  return String(value);
}

const clearance = (value: CellValue): string =>
  typeof value === 'number' ? `${value.toFixed(0)} mm a side` : text(value);
