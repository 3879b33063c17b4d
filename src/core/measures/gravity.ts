/** Standard acceleration of free fall [m/s2], exact: 3rd General Conference on Weights and Measures, 1901. */
export const STANDARD_GRAVITY = 9.80665;

/** The weight [kN] of a mass [kg]. */
export const weightInKN = (mass: number): number => (mass * STANDARD_GRAVITY) / 1000;
