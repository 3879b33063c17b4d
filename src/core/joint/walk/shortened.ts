import type { KeyAttitude } from '../../space/motion';
import { likeness } from '../../space/quaternion';
import { entryAt } from '../../lists/entryAt';

/** A way round is looked at where it is so much longer than straight on [mm], and so many times as long. */
const DETOUR = { least: 250, share: 1.3 } as const;
/** Where it begins is looked for no nearer to where the last was looked for [mm], and where it ends no farther off. */
const [APART, FARTHEST] = [150, 5000] as const;
/** No more ways are tried than this in one row: each is as dear as a step of a search. */
const TRIED = 24;

/**
 * A part of a motion without the ways round that it need not make: forward to a place and back to be tilted, past what it
 * comes back to. Where one place leads straight to another, free all the way, what lies between is left out.
 *
 * @param reach from the middle of the piece to its farthest point [mm]
 * @param isFree whether the straight move between two places, turned evenly, is free
 */
export function shortened<Key extends KeyAttitude>(
  keys: readonly Key[],
  reach: number,
  isFree: (from: Key, to: Key) => boolean,
): readonly Key[] {
  const straight = (a: Key, b: Key): number =>
    Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], a.at[2] - b.at[2]) +
    2 * Math.acos(Math.min(1, Math.abs(likeness(a.turn, b.turn)))) * reach;
  const gone: number[] = [];
  keys.forEach((key, n) => {
    const before = keys[n - 1];
    gone.push(before ? entryAt(gone, n - 1) + straight(before, key) : 0);
  });
  const kept: Key[] = [];
  let tried = 0;
  let looked = -Infinity;
  for (let n = 0; n < keys.length; n++) {
    const key = entryAt(keys, n);
    kept.push(key);
    const from = entryAt(gone, n);
    if (tried >= TRIED || from - looked < APART) continue;
    looked = from;
    // The way round that saves most.
    let [best, saved] = [-1, 0];
    for (let m = n + 2; m < keys.length && entryAt(gone, m) - from <= FARTHEST; m++) {
      const round = entryAt(gone, m) - from;
      const direct = straight(key, entryAt(keys, m));
      if (round > DETOUR.share * direct && round - direct > Math.max(DETOUR.least, saved)) {
        [best, saved] = [m, round - direct];
      }
    }
    if (best < 0) continue;
    tried++;
    if (isFree(key, entryAt(keys, best))) n = best - 1;
  }
  return kept;
}
