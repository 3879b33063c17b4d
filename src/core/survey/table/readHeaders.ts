import type { Cell } from '../../measures/readQuantity';
import { findColumns, type FoundColumns } from './findColumns';
import { measureHeading } from '../words/measureHeading';
import { MEASURE_NAMES, type MeasureName } from '../../stages/measures';
import { measureAt, STAGE_NAMES, type StageName } from '../../stages/kinds';
import { HEADER_ROW, type HeaderProblem } from '../checks/surveyProblem';

interface Synonym {
  readonly heading: string;
  readonly measure: MeasureName;
  readonly stages: StageName[];
}

/** Other headings for a measure, understood at some stages only. */
const SYNONYMS: readonly Synonym[] = synonyms();

function synonyms(): Synonym[] {
  const all: Synonym[] = [];
  for (const measure of MEASURE_NAMES) {
    for (const stage of STAGE_NAMES) {
      const heading = measureAt(stage, measure)?.heading;
      if (heading === undefined) continue;
      const known = all.find((s) => s.heading === heading && s.measure === measure);
      if (known) known.stages.push(stage);
      else all.push({ heading, measure, stages: [stage] });
    }
  }
  return all;
}

/** Where one measure stands at one stage: cells are looked at in this order. */
export interface MeasureColumns {
  readonly measure: MeasureName;
  readonly columns: readonly number[];
}

/** The columns of a route, found by name. */
export interface RouteColumns {
  readonly survey: readonly number[];
  readonly step: readonly number[];
  readonly stage: readonly number[];
  readonly note: readonly number[];
  readonly hand: readonly number[];
  readonly way: readonly number[];
  readonly clear: readonly number[];
  readonly tape: readonly number[];
  /** The measures that have a column at a stage. */
  readonly measuresAt: (stage: StageName | undefined) => readonly MeasureColumns[];
  /** Columns with a heading of other stages only. */
  readonly othersAt: (stage: StageName) => readonly OtherColumn[];
  readonly missing: (measure: MeasureName) => HeaderProblem;
}

/** A column of a route that holds no measure. */
export interface OtherColumn {
  readonly heading: string;
  readonly stages: readonly StageName[];
  readonly columns: readonly number[];
}

/** The columns of a route, in the order in which a survey is taken. */
export const ROUTE_HEADINGS: readonly string[] = [
  'Survey',
  'Step',
  'Stage',
  ...MEASURE_NAMES.flatMap((name) =>
    name === 'turn' ? [measureHeading(name), 'Hand', 'Way'] : [measureHeading(name)],
  ),
  'Clear',
  'Tape',
  'Note',
];

const HEADINGS: readonly string[] = [...ROUTE_HEADINGS, ...SYNONYMS.map((s) => s.heading)];

/**
 * Finds the columns of a route by name: any order, any case, spaces before, after and inside as they come; other
 * columns are ignored.
 * @param headers the header row
 * @returns the columns, and a problem for each one that is doubled or that every route needs and is not there;
 * which measures a route needs depends on its stages, see `readRoute`
 * @example readHeaders(['STAGE', 'step', 'Headroom']).columns.measuresAt('flight') // [{ measure: 'height', columns: [2] }]
 */
export function readHeaders(headers: readonly Cell[]): {
  readonly columns: RouteColumns;
  readonly problems: readonly HeaderProblem[];
} {
  const found = findColumns(headers, HEADINGS);
  const problems = [...found.doubled];
  for (const heading of ['Step', 'Stage']) {
    if (found.at(heading).length === 0) problems.push(found.missing(heading));
  }
  return {
    columns: {
      survey: found.at('Survey'),
      step: found.at('Step'),
      stage: found.at('Stage'),
      note: found.at('Note'),
      hand: found.at('Hand'),
      way: found.at('Way'),
      clear: found.at('Clear'),
      tape: found.at('Tape'),
      measuresAt: remembered((stage) => measuresAt(found, stage)),
      othersAt: remembered((stage) => othersAt(found, stage)),
      missing: (measure) => ({ ...found.missing(measureHeading(measure)), rowIndex: HEADER_ROW }),
    },
    problems,
  };
}

function measuresAt(found: FoundColumns, stage: StageName | undefined): MeasureColumns[] {
  return MEASURE_NAMES.flatMap((measure) => {
    const columns = [...found.at(measureHeading(measure))];
    for (const synonym of SYNONYMS) {
      if (synonym.measure === measure && stage && synonym.stages.includes(stage)) {
        columns.push(...found.at(synonym.heading));
      }
    }
    return columns.length > 0 ? [{ measure, columns }] : [];
  });
}

function othersAt(found: FoundColumns, stage: StageName): OtherColumn[] {
  return SYNONYMS.filter(({ stages }) => !stages.includes(stage))
    .map(({ heading, stages }) => ({ heading, stages, columns: found.at(heading) }))
    .filter(({ columns }) => columns.length > 0);
}

function remembered<K, V>(of: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = of(key)));
    return value;
  };
}
