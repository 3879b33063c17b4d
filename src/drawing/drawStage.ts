import type { StageMeasures } from '../core/stages/measures';
import { type StageName, stageNeeds } from '../core/stages/kinds';
import { viewOf } from './stageViews';

export interface DrawingOptions {
  /** Begins the ids inside the drawing: letters, digits and dashes; two drawings on a page need two of them. */
  readonly id?: string;
  /** Greatest size of the drawing [px]; the words under it come on top. */
  readonly width?: number;
  readonly height?: number;
  /** Said under it, a sentence each without its point: e.g. why no piece is drawn. */
  readonly notes?: readonly string[];
}

export interface StageDrawing {
  /** SVG text, complete with its title and description. */
  readonly svg: string;
  /** The same in words. */
  readonly text: string;
}

/**
 * Draws a stage alone, to scale, with its measures: in plan what turns (corner, side door, landings, winder, lift, room),
 * from the side a flight, from the front a door or a passage. Solid building is hatched. A piece is only drawn where its
 * motion is known (`drawStep`).
 *
 * @param measures as surveyed [mm, degrees]
 * @returns SVG text and the same in words; undefined when a measure that the view needs is missing or cannot be
 *   drawn
 */
export function drawStage(
  stage: StageName,
  measures: StageMeasures,
  { id = 'stage', width = 296, height = 260, notes = [] }: DrawingOptions = {},
): StageDrawing | undefined {
  if (stageNeeds(stage).needs.some((name) => measures[name] === undefined)) return undefined;
  if (!viewOf(stage).canDraw(measures)) return undefined;
  const view = viewOf(stage).view(measures);
  for (const note of notes) view.paper.note(note);
  const text = [
    `${view.title}, to scale, in mm: ${view.paper.dimensions.join(', ')}.`,
    ...view.paper.noted.map((note) => `${note}.`),
  ].join(' ');
  return { svg: view.paper.svg(view.title, text, id, width, height), text };
}
