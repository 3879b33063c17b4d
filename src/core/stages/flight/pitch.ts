import type { Working } from '../../measures/working';

/**
 * Pitch of a stair [degrees]: the angle of the line of nosings to the floor.
 * @source trigonometry; the definition of pitch in Approved Document K
 * @param rise height of one step [mm]
 * @param going depth of one step, nosing to nosing [mm]
 */
export function pitch(rise: number, going: number, working?: Working): number {
  const degrees = (Math.atan2(rise, going) * 180) / Math.PI;
  working?.({
    what: 'Pitch',
    formula: 'atan(rise / going)',
    value: degrees,
    unit: 'degrees',
    source: 'Approved Document K, definition of pitch',
  });
  return degrees;
}
