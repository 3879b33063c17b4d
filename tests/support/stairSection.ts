import type { WaySection } from './sectionSearch';

/** A flight with the floors at its ends, all in mm. */
export interface StairInSection {
  readonly width: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly risers: number;
  readonly footCeiling: number;
  readonly headCeiling: number;
  readonly footSpace: number;
  readonly headSpace: number;
}

/**
 * The upright section of a flight as the columns say it: solid below the line of nosings from the first riser on, the
 * head's ceiling from the last nosing.
 * @param above a handrail on one side, so high over the line of nosings from the first to the last: what is too wide to
 * go beside it has to stay above. Over the two floors there is none.
 */
export function sectionOf(stair: Omit<StairInSection, 'width'>, above = 0): WaySection {
  const { headroom, rise, going, risers, footCeiling, headCeiling, footSpace, headSpace } = stair;
  const slope = rise / going;
  const run = (risers - 1) * going;
  const top = risers * rise;
  const line = (x: number): number => rise + headroom + slope * x;
  const trimmer = Math.min(run, (footCeiling - rise - headroom) / slope);
  const edge = Math.max(-footSpace, trimmer);
  const [left, right] = [-footSpace, run + headSpace];
  const over = trimmer < run ? line(run) : footCeiling;
  return {
    floor: [
      [left, 0],
      [0, 0],
      [0, rise + above],
      [run, top + above],
      ...(above > 0 ? ([[run, top]] as const) : []),
      [right, top],
    ],
    ceiling: [
      [left, footCeiling],
      [edge, footCeiling],
      ...(trimmer < run ? ([[edge, line(edge)]] as const) : []),
      [run, over],
      [run, top + headCeiling],
      [right, top + headCeiling],
    ],
  };
}
