import type { BuildName } from './pieces';

/** A measure as the surveyor wrote it: mm, or text with a unit, or a slip of either. */
export type Written = number | string;

/** One row of the route as written down; a measure that was not taken is absent. */
export interface RouteStep {
  readonly stage: string;
  /** As written; left out, the row's place in its survey is written for it. */
  readonly step?: Written;
  readonly width?: Written;
  readonly widthOut?: Written;
  readonly height?: Written;
  readonly ceiling?: Written;
  readonly depth?: Written;
  readonly length?: Written;
  readonly turn?: Written;
  readonly hand?: 'left' | 'right';
  readonly way?: 'up' | 'down';
  readonly rise?: Written;
  readonly going?: Written;
  readonly risers?: Written;
  readonly treads?: Written;
  readonly well?: Written;
  readonly wall?: Written;
  readonly overRail?: Written;
  readonly footCeiling?: Written;
  readonly footSpace?: Written;
  readonly headCeiling?: Written;
  readonly headSpace?: Written;
  readonly run?: Written;
  readonly lowWidth?: Written;
  readonly lowHeight?: Written;
  readonly ratedLoad?: Written;
  readonly clear?: 'yes' | 'no';
  readonly tape?: Written;
  readonly note?: string;
}

/** What the survey is an example of. */
export const SURVEY_KINDS = [
  'level',
  'straight stair',
  'turns',
  'basement',
  'lift',
  'side door',
  'winder',
] as const;
export type SurveyKind = (typeof SURVEY_KINDS)[number];

/** The slips people make with a tape and a form. */
export const SLIP_KINDS = [
  'centimetres typed as mm',
  'inches typed as mm',
  'metres typed as mm',
  'width and height exchanged',
  'rise and going exchanged',
  'leaf width for clear opening',
  'measure missing',
  'unit missing',
  'comma in a number',
  'headroom taken square',
  'stair out of the usual',
  'step doubled',
  'step left out',
  'stage misspelt',
  'ends before the room',
] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

/** A slip put into a survey on purpose: what it is, in which of the survey's rows, counted from 1, and where. */
export interface Slip {
  readonly kind: SlipKind;
  readonly row: number;
  readonly measure?: keyof RouteStep;
}

/** One survey of the month. */
export interface Survey {
  readonly id: string;
  /** Day of the month. */
  readonly day: number;
  readonly customer: string;
  readonly place: string;
  readonly kind: SurveyKind;
  /** The build asked for. */
  readonly build: BuildName;
  readonly slips?: readonly Slip[];
  readonly steps: readonly RouteStep[];
}
