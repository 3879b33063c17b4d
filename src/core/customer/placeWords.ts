import type { StageName } from '../stages/kinds';
import type { StageRow } from '../survey/table/stageRow';

/** A place as a customer calls it. */
export const PLACE_NAMES: Readonly<Record<StageName, string>> = {
  door: 'door',
  'side door': 'door to the side',
  passage: 'passage',
  corner: 'corner',
  flight: 'run of stairs',
  'quarter landing': 'landing where the stairs turn the corner',
  'half landing': 'landing where the stairs turn back',
  winder: 'turning steps',
  lift: 'lift',
  room: 'room',
};

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

/**
 * A row as its customer would find it: by its own label where it has one, else counted among its like from the street.
 * @param rows one survey, in the order of its steps
 * @example placeWords(rows, 3) // 'the second door'
 */
export function placeWords(rows: readonly StageRow[], i: number): string {
  const row = rows[i];
  if (row?.label !== undefined) return `“${row.label}”`;
  const stage = row?.stage;
  if (!stage) return 'this place';
  const alike = rows.flatMap((other, k) => (other.stage === stage ? [k] : []));
  if (alike.length < 2) return `the ${PLACE_NAMES[stage]}`;
  const place = alike.indexOf(i);
  const ordinal = ORDINALS[place];
  const name = PLACE_NAMES[stage];
  return ordinal === undefined ? `${name} ${place + 1}` : `the ${ordinal} ${name}`;
}
