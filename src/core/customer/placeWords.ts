import { kindOf } from '../stages/kinds';
import type { StageRow } from '../survey/table/stageRow';

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

/**
 * A row as its customer would find it: by its own label where it has one, else counted among its like from the street.
 * @param rows one survey, in the order of its steps
 * @example placeWords(readRoute([['Stage', 'Width'], ['door', 715], ['room', 4000], ['door', 760]]).rows, 2) // 'the second door'
 */
export function placeWords(rows: readonly StageRow[], i: number): string {
  const row = rows[i];
  if (row?.label !== undefined) return `“${row.label}”`;
  const stage = row?.stage;
  if (!stage) return 'this place';
  const alike = rows.flatMap((other, k) => (other.stage === stage ? [k] : []));
  if (alike.length < 2) return `the ${kindOf(stage).customerWord}`;
  const place = alike.indexOf(i);
  const ordinal = ORDINALS[place];
  const name = kindOf(stage).customerWord;
  return ordinal === undefined ? `${name} ${place + 1}` : `the ${ordinal} ${name}`;
}
