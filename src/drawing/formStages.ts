import type { StageName } from '../core/stages/kinds';
import type { MeasureName, StageMeasures } from '../core/stages/measures';

/** How a stage stands on the form: drawn with these measures, and what its drawing's dimensions are. */
export interface FormStage {
  /** Proportions of the drawing alone: nothing of them is printed. Common practice, no source. */
  readonly drawnWith: StageMeasures;
  /** The drawing's own names of its dimensions, by measure. */
  readonly drawn: Readonly<Record<string, MeasureName>>;
  /** In the order in which somebody walks past them, needed ones among them. */
  readonly measures: readonly MeasureName[];
  /** Pictures that tell most. */
  readonly photographs: readonly string[];
}

export const FORM_STAGES: Readonly<Record<StageName, FormStage>> = {
  door: {
    drawnWith: { width: 762, height: 1981 },
    drawn: { 'clear width': 'width', 'clear height': 'height' },
    measures: ['width', 'height', 'wall'],
    photographs: ['the door wide open, from in front', 'the tape across the opening'],
  },
  'side door': {
    drawnWith: { width: 762, height: 1981, wall: 110, widthOut: 900, ceiling: 2300, depth: 650 },
    drawn: {
      'dead end': 'depth',
      'door width': 'width',
      'passage width': 'widthOut',
      'wall thickness': 'wall',
    },
    measures: ['width', 'height', 'wall', 'widthOut', 'ceiling', 'depth'],
    photographs: ['the door wide open', 'the passage to both sides of it'],
  },
  passage: {
    drawnWith: { width: 900, height: 2300, length: 3000 },
    drawn: { 'clear width': 'width', 'clear height': 'height' },
    measures: ['width', 'height', 'length', 'lowWidth', 'lowHeight'],
    photographs: ['along its length', 'radiators and lamps'],
  },
  steps: {
    drawnWith: { width: 900, height: 2200, risers: 3, rise: 170, going: 280 },
    drawn: { 'clear width': 'width', 'headroom, plumb,': 'height' },
    measures: ['width', 'risers', 'rise', 'going', 'height'],
    photographs: ['from in front', 'from the side'],
  },
  ramp: {
    drawnWith: { width: 900, height: 2200, length: 3000, rise: 300 },
    drawn: { 'clear width': 'width', 'headroom, plumb,': 'height' },
    measures: ['width', 'length', 'rise', 'height'],
    photographs: ['from below', 'from the side'],
  },
  corner: {
    drawnWith: { width: 800, widthOut: 760, height: 2310, turn: 90 },
    drawn: { 'width in': 'width', 'width out': 'widthOut' },
    measures: ['width', 'widthOut', 'height', 'turn', 'run'],
    photographs: ['as you walk up to it', 'the way on from it'],
  },
  flight: {
    drawnWith: {
      width: 860,
      height: 2050,
      rise: 190,
      going: 240,
      risers: 8,
      footCeiling: 2405,
      footSpace: 1210,
      headCeiling: 2395,
      headSpace: 1015,
    },
    drawn: {
      'clear width': 'width',
      'headroom, plumb,': 'height',
      'ceiling at the foot': 'footCeiling',
      'space at the foot': 'footSpace',
      'ceiling at the head': 'headCeiling',
      'space at the head': 'headSpace',
    },
    measures: [
      'footSpace',
      'footCeiling',
      'width',
      'height',
      'rise',
      'going',
      'risers',
      'headSpace',
      'headCeiling',
    ],
    photographs: ['from below, with the ceiling over it', 'the floor at the bottom', 'the floor at the top'],
  },
  'quarter landing': {
    drawnWith: { width: 850, widthOut: 870, height: 2100, rise: 190, going: 240, overRail: 900 },
    drawn: { 'width in': 'width', 'width out': 'widthOut' },
    measures: ['width', 'widthOut', 'height', 'rise', 'going', 'ceiling', 'overRail'],
    photographs: ['from below', 'from above', 'the inner corner or railing'],
  },
  'half landing': {
    drawnWith: { width: 800, well: 120, depth: 850, height: 2000, rise: 190, going: 240 },
    drawn: { 'flight width': 'width', well: 'well', 'landing depth': 'depth' },
    measures: ['width', 'well', 'depth', 'height', 'rise', 'going', 'ceiling', 'overRail'],
    photographs: ['from below', 'from above', 'the gap or railing between the stairs'],
  },
  winder: {
    drawnWith: { width: 850, height: 2010, turn: 90, rise: 190, going: 240 },
    drawn: { 'width in': 'width', 'width out': 'widthOut' },
    measures: ['width', 'widthOut', 'height', 'turn', 'treads', 'rise', 'going'],
    photographs: ['from below', 'from above, every step to be seen'],
  },
  lift: {
    drawnWith: { width: 800, height: 2005, widthOut: 1100, depth: 1400, ceiling: 2210 },
    drawn: { 'door width': 'width', 'car width': 'widthOut', 'car depth': 'depth' },
    measures: ['width', 'height', 'widthOut', 'depth', 'ceiling', 'ratedLoad'],
    photographs: ['the open lift', 'the plate with its load', 'the floor in front of it'],
  },
  room: {
    drawnWith: { length: 5400, width: 4200, height: 2350 },
    drawn: { length: 'length', width: 'width' },
    measures: ['length', 'width', 'height'],
    photographs: ['from each corner', 'beams, radiators and the door'],
  },
};
