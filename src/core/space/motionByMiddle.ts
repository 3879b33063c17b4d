import type { KeyAttitude, Motion } from '../stages/stageAnswer';
import { slerp, type Quaternion } from './quaternion';
import type { SpaceTask } from './readScene';
import type { SpaceChecker } from './spaceChecker';

/** Smallest part of a turn that is tried when larger ones don't go. */
const FINEST = 1 / 512;

/**
 * Tries motions that turn in one go in the narrowest place: take the attitude half way between start and
 * goal, find places where the piece stands free in it, and from there turn back to the start's attitude and
 * on to the goal's, each time pushed out of what it meets; then carry it straight to start and goal. At a
 * right-angled corner with full-height walls the free places of one attitude are connected, so there this
 * finds a motion almost whenever the attitudes between allow one.
 */
export function motionByMiddle(
  task: SpaceTask,
  checker: SpaceChecker,
  next: () => number,
  work: number,
): Motion | null {
  const limit = checker.work + work;
  const start = place(task.start);
  const goals = alikes(task.goal, task.start);
  const tries = 24;
  const x = new Float64Array(7);
  for (let round = 0; round < 4 && checker.work < limit; round++) {
    for (const goal of goals) {
      const middle = slerp(turnOf(start), turnOf(goal), 0.5);
      for (let t = 0; t < tries && checker.work < limit; t++) {
        for (let k = 0; k < 3; k++) {
          const low = Math.max(task.least[k]!, Math.min(start[k]!, goal[k]!) - 600);
          const high = Math.min(task.most[k]!, Math.max(start[k]!, goal[k]!) + 600);
          x[k] = low + (high - low) * next();
        }
        x.set(middle, 3);
        if (!checker.pushOut(x, 0, 12, 0.5)) continue;
        const back = turnTo(checker, x, turnOf(start));
        if (back === null || !carryTo(checker, back, start)) continue;
        const on = turnTo(checker, x, turnOf(goal));
        if (on === null || !carryTo(checker, on, goal)) continue;
        const keys: KeyAttitude[] = [];
        for (let i = back.length - 1; i > 0; i--) keys.push(key(back[i]!));
        for (const p of on) keys.push(key(p));
        return keys;
      }
    }
  }
  return null;
}

/** Turns the piece from place x to an attitude, standing still but pushed out; the places, or null. */
function turnTo(checker: SpaceChecker, x: Float64Array, to: Quaternion): Float64Array[] | null {
  const from = turnOf(x);
  const places = [Float64Array.from(x)];
  const y = new Float64Array(7);
  let done = 0;
  let step = 1 / 16;
  while (done < 1) {
    const aim = Math.min(1, done + step);
    const last = places[places.length - 1]!;
    y.set(last);
    y.set(slerp(from, to, aim), 3);
    if (checker.pushOut(y, 0, 20, 16 * step * 0.5) && checker.moveFree(last, 0, y, 0)) {
      places.push(Float64Array.from(y));
      done = aim;
      step = Math.min(1 / 16, step * 2);
    } else {
      step /= 2;
      if (step < FINEST) return null;
    }
  }
  return places;
}

/** Carries the piece without turning from the last of the places to the aim: straight, or pushed round things. */
function carryTo(checker: SpaceChecker, places: Float64Array[], aim: Float64Array): boolean {
  const y = new Float64Array(7);
  for (let n = 0; n < 40; n++) {
    const last = places[places.length - 1]!;
    if (checker.moveFree(last, 0, aim, 0)) {
      places.push(Float64Array.from(aim));
      return true;
    }
    const d = [0, 1, 2].map((k) => aim[k]! - last[k]!);
    const far = Math.sqrt(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2);
    y.set(last);
    for (let k = 0; k < 3; k++) y[k]! += d[k]! * Math.min(1, 120 / far);
    if (!checker.pushOut(y, 0, 12, 0.5)) return false;
    const moved = Math.sqrt((y[0]! - last[0]!) ** 2 + (y[1]! - last[1]!) ** 2 + (y[2]! - last[2]!) ** 2);
    if (moved < 1 || !checker.moveFree(last, 0, y, 0)) return false;
    places.push(Float64Array.from(y));
  }
  return false;
}

/** The four attitudes in which the box looks like the goal, the nearest to the start first. */
function alikes(goal: KeyAttitude, start: KeyAttitude): Float64Array[] {
  const [w, a, b, c] = goal.turn;
  const turns: Quaternion[] = [
    [w, a, b, c],
    [a, -w, -c, b],
    [b, c, -w, -a],
    [c, -b, a, -w],
  ];
  const near = (t: Quaternion): number => Math.abs(t.reduce((sum, v, k) => sum + v * start.turn[k]!, 0));
  return turns.sort((s, t) => near(t) - near(s)).map((turn) => Float64Array.of(...goal.at, ...turn));
}

const place = (k: KeyAttitude): Float64Array => Float64Array.of(...k.at, ...k.turn);
const turnOf = (x: Float64Array): Quaternion => [x[3]!, x[4]!, x[5]!, x[6]!];
const key = (x: Float64Array): KeyAttitude => ({ at: [x[0]!, x[1]!, x[2]!], turn: turnOf(x) });
