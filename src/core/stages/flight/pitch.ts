import { degrees } from '../../measures/angle';
import type { Working } from '../../measures/working';

/**
 * Pitch of a stair [rad]: the angle of the line of nosings to the floor.
 * @source trigonometry; the definition of pitch in Approved Document K
 * @param rise height of one step [mm]
 * @param going depth of one step, nosing to nosing [mm]
 * @example pitch(200, 200) // Math.PI / 4
 */
export function pitch(rise: number, going: number, working?: Working): number {
  const angle = Math.atan2(rise, going);
  working?.({
    what: 'Pitch',
    formula: 'atan(rise / going)',
    value: degrees(angle),
    unit: 'degrees',
    source: 'Approved Document K, definition of pitch',
  });
  return angle;
}
