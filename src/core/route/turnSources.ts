import type { Arm } from './arms';
import type { LimitCause } from './chain';
import { guardsOf, type Guard } from './guards';
import type { PassageSource, Planning } from './routePlan';
import { needed, type BookStage } from './stageBook';
import { entryAt } from '../lists/entryAt';

/**
 * The ways to take a corner or a side door, with its arms as narrow and low as they are within the piece's reach: what
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
  const { measures: m } = stage;
  const guards = (arm: Arm, width: number, height: number): Guard[] =>
    guardsOf(arm, width, height, tapeCase, tape);
  if (stage.stage === 'corner') {
    return guards(before, needed(stage, 'width'), needed(stage, 'height')).flatMap((one) =>
      guards(after, needed(stage, 'widthOut'), needed(stage, 'height')).map((other): PassageSource => {
        const height = Math.min(one.height, other.height);
        return {
          stage: lookUp('corner', { ...m, width: one.width, widthOut: other.width, height }),
          upToBefore: one.upTo,
          upToAfter: other.upTo,
          causeBefore: armCause(i, one),
          causeAfter: armCause(i, other),
          by: [...one.by, ...other.by],
          ...raisedOver(one, other),
        };
      }),
    );
  }
  const { into } = entryAt(reading, i);
  const [doorArm, passageArm] = into ? [before, after] : [after, before];
  return guards(doorArm, needed(stage, 'width'), needed(stage, 'height')).flatMap((one) =>
    guards(passageArm, needed(stage, 'widthOut'), needed(stage, 'ceiling')).flatMap((other) =>
      approachesOf(planning, doorArm).map((approach): PassageSource => {
        const guarded = lookUp('side door', {
          ...m,
          width: one.width,
          height: one.height,
          widthOut: other.width,
          ceiling: other.height,
          ...(approach.width === undefined ? {} : { approachWidth: approach.width }),
        });
        const atDoor = { upTo: Math.min(one.upTo, approach.depth), cause: armCause(i, one) };
        const inPassage = { upTo: other.upTo, cause: armCause(i, other) };
        const [first, second] = into ? [atDoor, inPassage] : [inPassage, atDoor];
        return {
          stage: guarded,
          reversed: !into,
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

const raisedOver = (...guards: readonly Guard[]): Pick<PassageSource, 'raised'> => {
  const most = Math.max(...guards.map(({ raised }) => raised ?? 0));
  return most > 0 ? { raised: most } : {};
};

const armCause = (i: number, { next, upTo }: Guard): LimitCause | undefined =>
  next === undefined ? undefined : { kind: 'arm', length: upTo, rows: next < i ? [next, i] : [i, next] };

/** A room behind a side door is no corridor: at best the door is in the middle of one of its walls. */
function approachesOf(
  { reading, tapeCase }: Planning,
  arm: Arm,
): { readonly width: number | undefined; readonly depth: number }[] {
  const { kind, row } = arm.end;
  const corridor = { width: undefined, depth: Infinity };
  if (tapeCase === 'worst' || kind !== 'room' || row === undefined || arm.sections.length > 0)
    return [corridor];
  const { length, width } = entryAt(reading, row).measures;
  if (length === undefined || width === undefined) return [corridor];
  return [corridor, { width: length, depth: width }, { width, depth: length }];
}
