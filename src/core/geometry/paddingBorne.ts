/**
 * The greatest padding c [mm a side] with which a rectangle keeps a condition that is linear in its sides:
 * (along + 2c) perAlong + (upright + 2c) perUpright <= free, a side below 0 counting as 0.
 *
 * @param free what there is [mm], times whatever the shares are times
 * @param perAlong share of the side along, not negative
 * @param perUpright share of the upright side, not negative; not both 0
 * @returns at least minus half the longer side
 */
export function paddingBorne(
  free: number,
  perAlong: number,
  perUpright: number,
  along: number,
  upright: number,
): number {
  const c = (free - along * perAlong - upright * perUpright) / (2 * (perAlong + perUpright));
  const short = Math.min(along, upright) / 2;
  if (c >= -short) return c;
  const long = along > upright ? along : upright;
  const per = along > upright ? perAlong : perUpright;
  return per > 0 ? Math.min(-short, (free - long * per) / (2 * per)) : free >= 0 ? -short : -long / 2;
}
