import type { Arm } from './arms';
import type { LimitCause } from './limitCause';
import { guardsOf, type Guard } from './guards';
import type { PassageSource } from './partPlan';
import type { Planning } from './planning';
import { needed, type BookStage } from './stageBook';
import { entryAt } from '../lists/entryAt';
import { present } from '../lists/present';
import { turnArms } from '../stages/kinds';
import type { PlacedMeasures } from '../stages/solvers';
import type { TurnArm } from '../stages/stageKind';
import { walkedForward } from './reading';

/**
 * The ways to take a turn on one floor, with its arms as narrow and low as they are within the piece's reach: what
 * passes in one of them passes the row.
 * @param i its row
 * @param before the arm that leads to it
 * @param after the arm that leads on
 */
export function turnSources(
  planning: Planning,
  i: number,
  stage: BookStage,
  before: Arm,
  after: Arm,
): PassageSource[] {
  const { reading, tapeCase, tape, lookUp } = planning;
  const arms = present(turnArms(stage.stage), 'the arms of a turn');
  const guards = (arm: Arm, { width, height }: TurnArm): Guard[] =>
    guardsOf(arm, needed(stage, width), needed(stage, height), tapeCase, tape);
  const forward = walkedForward(entryAt(reading, i));
  const [inArm, outArm] = forward ? [before, after] : [after, before];
  return guards(inArm, arms.in).flatMap((one) =>
    guards(outArm, arms.out).flatMap((other) =>
      (arms.in.door ? approachesOf(planning, inArm) : [CORRIDOR]).map((approach): PassageSource => {
        const guarded = lookUp(stage.stage, {
          ...noMoreThan(noMoreThan(stage.measures, arms.in, one), arms.out, other),
          ...(approach.width === undefined ? {} : { approachWidth: approach.width }),
        });
        const atIn = { upTo: Math.min(one.upTo, approach.depth), cause: armCause(i, one) };
        const atOut = { upTo: other.upTo, cause: armCause(i, other) };
        const [first, second] = forward ? [atIn, atOut] : [atOut, atIn];
        return {
          stage: guarded,
          reversed: !forward,
          upToBefore: first.upTo,
          upToAfter: second.upTo,
          causeBefore: first.cause,
          causeAfter: second.cause,
          by: [...one.by, ...other.by],
          ...raisedOver(one, other),
        };
      }),
    ),
  );
}

/** A turn whose arm is no wider and no higher than it is taken to be. */
const noMoreThan = (measures: PlacedMeasures, arm: TurnArm, guard: Guard): PlacedMeasures => ({
  ...measures,
  [arm.width]: Math.min(measures[arm.width] ?? Infinity, guard.width),
  [arm.height]: Math.min(measures[arm.height] ?? Infinity, guard.height),
});

const raisedOver = (...guards: readonly Guard[]): Pick<PassageSource, 'raised'> => {
  const most = Math.max(...guards.map(({ raised }) => raised ?? 0));
  return most > 0 ? { raised: most } : {};
};

const armCause = (i: number, { next, upTo }: Guard): LimitCause | undefined =>
  next === undefined ? undefined : { kind: 'arm', length: upTo, rows: next < i ? [next, i] : [i, next] };

/** What leads up to a turn as a way of its own: no wider than its arm, and no less deep than the piece. */
const CORRIDOR = { width: undefined, depth: Infinity };

/** A room behind a side door is no corridor: at best the door is in the middle of one of its walls. */
function approachesOf(
  { reading, tapeCase }: Planning,
  arm: Arm,
): { readonly width: number | undefined; readonly depth: number }[] {
  const { kind, row } = arm.end;
  if (tapeCase === 'worst' || kind !== 'room' || row === undefined || arm.sections.length > 0)
    return [CORRIDOR];
  const { length, width } = entryAt(reading, row).measures;
  if (length === undefined || width === undefined) return [CORRIDOR];
  return [CORRIDOR, { width: length, depth: width }, { width, depth: length }];
}
