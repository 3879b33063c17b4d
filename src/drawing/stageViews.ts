import { kindOf, stageNeeds, type MeasuresAt, type StageName } from '../core/stages/kinds';
import { SKY, type LooseStageMeasures, type StageMeasures } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import { cornerView } from './cornerView';
import { flightView } from './flightView';
import { halfLandingView, quarterLandingView, winderView } from './landingView';
import { openingView } from './openingView';
import { mmText } from './paper';
import { liftView, roomView } from './roomView';
import { sideDoorView } from './sideDoorView';
import type { StageView } from './stageView';

/** How a kind of stage is drawn. */
export interface StageDrawer<Measures> {
  readonly view: (measures: Measures) => StageView;
  /** What is measured may be solved and yet not be drawn. */
  readonly canDraw: (measures: Measures) => boolean;
}

const always = (): boolean => true;

/** Beyond this turn [degrees] the outer walls of a bend do not meet on the paper. */
const CORNER_TURN = { least: 1, most: 170 } as const;
const WINDER_TURN = { least: 1, most: 180 } as const;
const RIGHT_ANGLE = 90;

/** What is solved as a flight is drawn as one. */
function asFlightDrawn(stage: StageName): StageDrawer<LooseStageMeasures> {
  return {
    view: (given) => {
      const m = kindOf(stage).solvedAsFlight?.(given);
      const { width = 0, height = SKY, rise = 0, going = 1, risers } = m ?? {};
      // The sky is drawn as high as the piece may need.
      const headroom = height < SKY ? height : 2500;
      const view = flightView({ width, headroom, rise, going, risers });
      const measured = stageNeeds(stage).needs.map(
        (name) => `${measureAtStage(name, stage)} ${mmText(given[name] ?? 0)}`,
      );
      view.paper.note(`Measured: ${measured.join(', ')}`);
      return view;
    },
    canDraw: always,
  };
}

/** The drawing of each kind of stage. */
const STAGE_VIEWS: { readonly [Stage in StageName]: StageDrawer<MeasuresAt<Stage>> } = {
  door: {
    view: ({ width, height }) => openingView(width, height, 'door'),
    canDraw: always,
  },
  'side door': {
    view: (m) =>
      sideDoorView({
        doorWidth: m.width,
        doorHeight: m.height,
        wall: m.wall,
        passage: m.widthOut,
        ceiling: m.ceiling,
        deadEnd: m.depth,
      }),
    canDraw: always,
  },
  passage: {
    view: ({ width, height }) => openingView(width, height, 'passage'),
    canDraw: always,
  },
  steps: asFlightDrawn('steps'),
  ramp: asFlightDrawn('ramp'),
  corner: {
    view: ({ width, widthOut, height, turn = RIGHT_ANGLE }) => {
      const view = cornerView({ widthIn: width, widthOut, turn });
      // What stands under the sky, or is asked of no height, has no ceiling to tell.
      const ceiling = height < SKY ? `. Ceiling ${mmText(height)}: not seen in plan` : '';
      view.paper.note(`Turn ${mmText(turn)} degrees${ceiling}`);
      return view;
    },
    canDraw: ({ turn = RIGHT_ANGLE }) => turn >= CORNER_TURN.least && turn <= CORNER_TURN.most,
  },
  flight: {
    view: ({ height, ...m }) => flightView({ ...m, headroom: height }),
    canDraw: always,
  },
  'quarter landing': {
    view: (m) =>
      quarterLandingView({
        widthIn: m.width,
        widthOut: m.widthOut,
        headroom: m.height,
        rise: m.rise,
        going: m.going,
        overRail: m.overRail,
        landingCeiling: m.ceiling,
      }),
    canDraw: always,
  },
  'half landing': {
    view: (m) =>
      halfLandingView({
        width: m.width,
        well: m.well,
        depth: m.depth,
        headroom: m.height,
        rise: m.rise,
        going: m.going,
        overRail: m.overRail,
        landingCeiling: m.ceiling,
      }),
    canDraw: always,
  },
  winder: {
    view: ({ width, height, turn, rise, going }) =>
      winderView({ width, headroom: height, turn, rise, going }),
    canDraw: ({ turn }) => turn >= WINDER_TURN.least && turn <= WINDER_TURN.most,
  },
  lift: {
    view: (m) =>
      liftView({
        doorWidth: m.width,
        doorHeight: m.height,
        carWidth: m.widthOut,
        carDepth: m.depth,
        carHeight: m.ceiling,
      }),
    canDraw: always,
  },
  room: {
    view: ({ length, width, height }) => roomView({ length, width, height }),
    canDraw: always,
  },
};

/**
 * The drawing of a stage whose name is only known when it is read. The measures that the stage needs must be
 * there (`stageNeeds`); the caller sees to that.
 */
export const viewOf = (stage: StageName): StageDrawer<StageMeasures> =>
  STAGE_VIEWS[stage] as StageDrawer<never> as StageDrawer<StageMeasures>;
