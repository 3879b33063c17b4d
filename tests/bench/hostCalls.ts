import type { HostCall } from '../support/functionsHost';

/** A single cell as the host hands it over. */
export const oneCell = (value: unknown): unknown[][] => [[value]];

/** A light call, another for each number. */
export const corner = (i: number): HostCall => ({
  id: 'CORNER',
  values: [...[800 + i / 20, 900, 2400, 1830, 930, 25].map(oneCell), null],
});

/** A long call, another for each number. */
export const landing = (i: number): HostCall => ({
  id: 'HALFLANDING',
  values: [...[900, 100, 950, 2100, 190, 250, 1400 + i / 4, 700, 25].map(oneCell), null, null],
});
