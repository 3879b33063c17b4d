import type { DecidingFace } from '../motion/closest';
import { kindOf, roleOf, turns, type StageName } from '../stages/kinds';
import type { ChainStep } from './chain';
import type { PreparedRoute } from './preparedRoute';

/** Whether a stage has such a face; of rows that are passed together one often has it alone. */
function has(stage: StageName, face: DecidingFace): boolean {
  const { stair } = kindOf(stage);
  switch (face) {
    case 'inner corner':
    case 'far wall':
      return turns(stage);
    case 'jambs':
    case 'head':
      return stage === 'door' || stage === 'side door' || stage === 'lift';
    case 'rail':
      return stair === 'landing';
    case 'slope':
    case 'nosings':
    case 'top nosing':
    case 'stairwell edge':
    case 'foot ceiling':
    case 'head ceiling':
    case 'foot wall':
    case 'head wall':
    case 'riser':
      return stair === 'flight';
    default:
      return false;
  }
}

/**
 * Of rows that are passed together all are as close: the one that has what decides.
 * @param among a row that is as close as the route
 * @returns the number of that row; undefined where none alone has it, or nothing is passed together
 */
export function rowThatDecides(
  route: PreparedRoute,
  chain: readonly ChainStep[] | undefined,
  among: number,
): number | undefined {
  const step = chain?.[among];
  const faces = step?.closest === 'passage' ? step.passage?.answer.critical.faces : undefined;
  if (!step?.joint || !faces) return undefined;
  const rows = rowsOf(step.joint).filter((row) => {
    const { stage } = route.steps[row]?.row ?? {};
    return (
      stage !== undefined && chain?.[row]?.passage === step.passage && faces.some((face) => has(stage, face))
    );
  });
  const [only] = rows;
  if (rows.length === 1) return only;
  // Round a turn of the stair it is told there.
  return step.passage?.measuredOnly
    ? rowsOf(step.joint).find((row) => roleOf(route.steps[row]?.row.stage) === 'landing')
    : undefined;
}

const rowsOf = ([first, last]: readonly [number, number]): number[] =>
  Array.from({ length: last - first + 1 }, (_, k) => first + k);
