import { kindOf, type StageName } from '../../stages/kinds';
import type { RouteFault, StageRow } from '../table/stageRow';

/** Whether two rows cannot follow one another without anything between them: two flights, two landings, two rooms. */
function needBetween(one: StageName, other: StageName): boolean {
  const [a, b] = [kindOf(one), kindOf(other)];
  return (
    a.stair === b.stair &&
    (a.stair === 'flight' || a.stair === 'landing' || (a.role === 'room' && b.role === 'room'))
  );
}

/**
 * What keeps a route from being judged, each at the row where it is seen: something that is missing between two rows,
 * a space at a stair's end that is shorter than the turn beside it is wide.
 * @param rows one survey, in the order of its steps
 * @param tape how far off a measure may be [mm]
 */
export function routeFaults(
  rows: readonly StageRow[],
  tape: number,
): readonly { readonly at: number; readonly fault: RouteFault }[] {
  const faults: { at: number; fault: RouteFault }[] = [];
  rows.forEach((row, at) => {
    if (row.fault) faults.push({ at, fault: row.fault });
    const last = rows[at - 1];
    if (!last?.stage || !row.stage) return;
    const [one, other] = [last.stage, row.stage];
    if (needBetween(one, other)) {
      faults.push({ at, fault: { kind: 'between is missing', one, other } });
    }
    const short = shortSpace(last, row, tape);
    if (short) faults.push({ at, fault: short });
  });
  return faults;
}

/** A space that is shorter than the corner beside it, by more than two tapes, whichever way the stair goes. */
function shortSpace(one: StageRow, other: StageRow, tape: number): RouteFault | undefined {
  const flight = one.stage === 'flight' ? one : other.stage === 'flight' ? other : undefined;
  const corner = flight === one ? other : one;
  if (!flight || corner.stage !== 'corner') return undefined;
  const width = flight === one ? corner.measures.widthOut : corner.measures.width;
  if (width === undefined) return undefined;
  const { footSpace, headSpace } = flight.measures;
  const upward = flight === one ? headSpace : footSpace;
  const downward = flight === one ? footSpace : headSpace;
  const spaces = flight.way === 'up' ? [upward] : flight.way === 'down' ? [downward] : [upward, downward];
  const short = spaces.every((space) => space !== undefined && space < width - 2 * tape);
  const [space] = spaces;
  return short && space !== undefined ? { kind: 'space shorter than the turn', space, width } : undefined;
}
