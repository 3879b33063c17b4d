import { leastBetween } from './goldenSection';
import { bracket } from './rootFinding';

/** Angles first looked at, less one. */
const SAMPLES = 48;
/** A change of branch is known to far less than anything turns in a motion [rad]. */
const CHANGE_WITHIN = 1e-13;
/** How often a dip between them is narrowed down. */
const NARROWINGS = 24;

/** A value at an angle, and which of several formulas gave it. */
export interface Branched {
  readonly value: number;
  readonly branch: number;
}

/**
 * The least value over a range of angles of a function put together from smooth ones: the least may lie in a dip
 * of one of them or where one gives over to another. Every change between two samples is halved down, and
 * beside every low sample the least is narrowed down on either side.
 *
 * @param from least angle [rad]
 * @param to greatest angle [rad]
 */
export function leastOverAngles(
  from: number,
  to: number,
  at: (angle: number) => Branched,
): { readonly least: number; readonly angle: number; readonly branch: number } {
  const angles: number[] = [];
  const values: Branched[] = [];
  const add = (angle: number): void => {
    angles.push(angle);
    values.push(at(angle));
  };
  add(from);
  for (let i = 1; i <= SAMPLES; i++) {
    const low = angles[angles.length - 1] ?? from;
    const lowBranch = values[values.length - 1]?.branch;
    const end = from + ((to - from) * i) / SAMPLES;
    const atEnd = at(end);
    if (atEnd.branch !== lowBranch) {
      const change = bracket(low, end, (f) => at(f).branch === lowBranch, CHANGE_WITHIN);
      add(change.holds);
      add(change.fails);
    }
    angles.push(end);
    values.push(atEnd);
  }
  let least = Infinity;
  let angle = from;
  let branch = 0;
  const take = (f: number, { value, branch: by }: Branched): void => {
    if (value >= least) return;
    least = value;
    angle = f;
    branch = by;
  };
  const narrow = (low: number, high: number): void => {
    const dip = leastBetween((f) => at(f).value, low, high, NARROWINGS);
    if (dip.value < least) take(dip.at, at(dip.at));
  };
  for (let i = 0; i < angles.length; i++) {
    const here = values[i]!.value;
    take(angles[i]!, values[i]!);
    const before = values[i - 1]?.value ?? Infinity;
    const after = values[i + 1]?.value ?? Infinity;
    if (here > before || here > after) continue;
    if (i > 0) narrow(angles[i - 1]!, angles[i]!);
    if (i + 1 < angles.length) narrow(angles[i]!, angles[i + 1]!);
  }
  return { least, angle, branch };
}
