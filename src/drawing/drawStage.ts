import type { PieceSize } from '../core/measures/piece';
import type { StageMeasures, StageName } from '../core/survey/table/stageMeasures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import { stageNeeds } from '../core/survey/table/stageNeeds';
import { cornerView } from './cornerView';
import { flightView } from './flightView';
import { halfLandingView, quarterLandingView, winderView } from './landingView';
import { openingView } from './openingView';
import { motionView } from './motionView';
import { mmText } from './paper';
import { liftView, roomView } from './roomView';
import { sideDoorView } from './sideDoorView';
import type { DrawnAnswer, DrawnPiece, StageView } from './stageView';

export interface DrawingOptions {
  /** Begins the ids inside the drawing: letters, digits and dashes; two drawings on a page need two of them. */
  readonly id?: string;
  /** Greatest size of the drawing [px]; the words under it come on top. */
  readonly width?: number;
  readonly height?: number;
  /** What the piece is called. */
  readonly pieceName?: string;
}

export interface StageDrawing {
  /** SVG text, complete with its title and description. */
  readonly svg: string;
  /** The same in words. */
  readonly text: string;
}

/** Turns that a bend can be drawn with [degrees]: beyond them the outer walls of a corner do not meet. */
const DRAWN_TURN = { least: 1, corner: 170, winder: 180 } as const;

/**
 * Draws a stage to scale, with the piece where it is closest.
 *
 * Plan for what turns (corner, side door, landings, winder, lift, room), side view for a flight, front view for
 * a door or a passage. Solid building is hatched, the piece heavily outlined, dashed the size that would just
 * pass, rings where it is closest.
 *
 * @param measures as surveyed [mm, degrees]
 * @param size the piece; undefined: the stage alone
 * @param answer what the stage answers for the piece, as measured; undefined: the stage alone
 * @returns SVG text and the same in words; undefined when a measure that the view needs is missing or cannot be
 *   drawn
 */
export function drawStage(
  stage: StageName,
  measures: StageMeasures,
  size: PieceSize | undefined,
  answer: DrawnAnswer | undefined,
  options: DrawingOptions = {},
): StageDrawing | undefined {
  if (stageNeeds(stage).needs.some((name) => measures[name] === undefined)) return undefined;
  const turn = measures.turn ?? 90;
  if (stage === 'corner' || stage === 'winder') {
    if (turn < DRAWN_TURN.least || turn > DRAWN_TURN[stage]) return undefined;
  }
  // At a clearance that takes its whole length away a piece passes because nothing of it is left.
  const shown = size && answer && answer.clearance > -Math.max(size.length, size.breadth, size.thickness) / 2;
  const piece = shown ? { size, answer } : undefined;
  const view = shownMotion(stage, measures, piece) ?? viewOf(stage, measures, piece);
  const { id = 'stage', width = 296, height = 260, pieceName = 'Piece' } = options;
  const sentences = [`${view.title}, to scale, in mm: ${view.paper.dimensions.join(', ')}.`];
  for (const note of view.paper.noted) sentences.push(`${note}.`);
  if (piece) {
    const { length, breadth, thickness } = piece.size;
    const sizes = [length, breadth, thickness].map(mmText).join(' x ');
    view.paper.note(`${pieceName}: ${sizes}, ${piece.answer.pose}`);
    view.paper.note(view.legend ?? 'Ring: closest. Dashed: the size that just passes');
    sentences.push(
      `${pieceName}, ${sizes} mm, ${piece.answer.pose}.`,
      `${view.place}.`,
      closest(piece.answer),
    );
  }
  if (size && !piece) {
    const why = 'No way through is shown, so the piece is not drawn';
    view.paper.note(why);
    sentences.push(`${why}.`);
  }
  const text = sentences.join(' ');
  return { svg: view.paper.svg(view.title, text, id, width, height), text };
}

function closest({ clearance, critical }: DrawnAnswer): string {
  const mm = mmText(Math.abs(clearance));
  const spare = clearance >= 0 ? `${mm} mm a side to spare` : `${mm} mm a side too large`;
  return `Closest ${critical}: ${spare}.`;
}

/** Stages whose way goes up and round: a plan at one height is drawn from the motion itself, where there is one. */
const BY_MOTION: readonly StageName[] = ['quarter landing', 'half landing', 'winder'];

function shownMotion(
  stage: StageName,
  measures: StageMeasures,
  piece: DrawnPiece | undefined,
): StageView | undefined {
  const { motion, scene } = piece?.answer ?? {};
  if (!piece || !motion || !scene || motion.length === 0 || !BY_MOTION.includes(stage)) return undefined;
  const { needs, may } = stageNeeds(stage);
  const given = [...needs, ...may].map((name) => [measureAtStage(name, stage), measures[name]] as const);
  return motionView(`Plan of a ${stage}`, given, piece.size, motion, scene);
}

function viewOf(stage: StageName, m: StageMeasures, piece: DrawnPiece | undefined): StageView {
  const headroom = m.height!;
  switch (stage) {
    case 'door':
    case 'passage':
      return openingView(m.width!, m.height!, piece, stage);
    case 'corner': {
      const view = cornerView(
        { widthIn: m.width!, widthOut: m.widthOut!, height: headroom, turn: m.turn ?? 90 },
        piece,
      );
      view.paper.note(`Turn ${mmText(m.turn ?? 90)} degrees. Ceiling ${mmText(headroom)}: not seen in plan`);
      return view;
    }
    case 'winder':
      return winderView({ width: m.width!, headroom, turn: m.turn!, rise: m.rise!, going: m.going! }, piece);
    case 'side door':
      return sideDoorView(
        {
          doorWidth: m.width!,
          doorHeight: m.height!,
          wall: m.wall!,
          passage: m.widthOut!,
          ceiling: m.ceiling!,
          deadEnd: m.depth,
        },
        piece,
      );
    case 'flight':
      return flightView(
        {
          width: m.width!,
          headroom,
          rise: m.rise!,
          going: m.going!,
          risers: m.risers,
          footCeiling: m.footCeiling,
          footSpace: m.footSpace,
          headCeiling: m.headCeiling,
          headSpace: m.headSpace,
        },
        piece,
      );
    case 'quarter landing':
      return quarterLandingView(
        {
          widthIn: m.width!,
          widthOut: m.widthOut!,
          headroom,
          rise: m.rise!,
          going: m.going!,
          overRail: m.overRail,
          landingCeiling: m.ceiling,
        },
        piece,
      );
    case 'half landing':
      return halfLandingView(
        {
          width: m.width!,
          well: m.well!,
          depth: m.depth!,
          headroom,
          rise: m.rise!,
          going: m.going!,
          overRail: m.overRail,
          landingCeiling: m.ceiling,
        },
        piece,
      );
    case 'lift':
      return liftView(
        {
          doorWidth: m.width!,
          doorHeight: m.height!,
          carWidth: m.widthOut!,
          carDepth: m.depth!,
          carHeight: m.ceiling!,
        },
        piece,
      );
    case 'room':
      return roomView({ length: m.length!, width: m.width!, height: headroom }, piece);
  }
}
