const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Angles first looked at, less one. */
const SAMPLES = 48;
/** After so many halvings a change of branch is known to far less than anything turns in a motion. */
const HALVINGS = 40;
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
    let low = angles[angles.length - 1] ?? from;
    const lowBranch = values[values.length - 1]?.branch;
    const end = from + ((to - from) * i) / SAMPLES;
    const atEnd = at(end);
    if (atEnd.branch !== lowBranch) {
      let high = end;
      for (let n = 0; n < HALVINGS; n++) {
        const middle = (low + high) / 2;
        if (at(middle).branch === lowBranch) low = middle;
        else high = middle;
      }
      add(low);
      add(high);
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
    let l = high - (high - low) * GOLDEN;
    let r = low + (high - low) * GOLDEN;
    let atL = at(l);
    let atR = at(r);
    for (let i = 0; i < NARROWINGS; i++) {
      if (atL.value <= atR.value) {
        high = r;
        r = l;
        atR = atL;
        l = high - (high - low) * GOLDEN;
        atL = at(l);
      } else {
        low = l;
        l = r;
        atL = atR;
        r = low + (high - low) * GOLDEN;
        atR = at(r);
      }
    }
    take(l, atL);
    take(r, atR);
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
