/** How well the hands hold: good handles or cut-outs; a fair grip; or loose, sharp or sagging. */
export type Grip = 'good' | 'fair' | 'poor';

/** Every grip, the best first. */
export const GRIPS: readonly Grip[] = ['good', 'fair', 'poor'];

/** Height of the hands [mm] at which the columns of the frequency and the coupling tables change. */
export const COLUMN_HEIGHT = 750;

const LOW: Readonly<Record<Grip, number>> = { good: 1, fair: 0.95, poor: 0.9 };
const HIGH: Readonly<Record<Grip, number>> = { good: 1, fair: 1, poor: 0.9 };

/**
 * Coupling multiplier of the revised lifting equation.
 *
 * @source DHHS (NIOSH) 94-110, table 7. Copies with the fair row's columns exchanged are in circulation.
 * @param grip how well the hands hold
 * @param height height of the hands above the floor [mm]
 * @example couplingMultiplier('fair', 500) // 0.95
 */
export function couplingMultiplier(grip: Grip, height: number): number {
  return (height < COLUMN_HEIGHT ? LOW : HIGH)[grip];
}
