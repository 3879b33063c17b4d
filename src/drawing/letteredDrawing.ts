import { stageNeeds, type StageName } from '../core/stages/kinds';
import type { MeasureName } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import type { StageDrawing } from './drawStage';
import { FORM_STAGES } from './formStages';
import { viewOf } from './stageViews';

/** A stage's drawing with letters where the tape goes. */
export interface LetteredDrawing extends StageDrawing {
  /** The letter of each measure that it shows. */
  readonly letters: ReadonlyMap<MeasureName, string>;
}

export interface LetteredOptions {
  readonly id: string;
  /** Greatest size of the drawing [px]. */
  readonly width?: number;
  readonly height?: number;
  /** Measures that are missing: marked in the drawing and named under it. */
  readonly missing?: readonly MeasureName[];
}

/** A stage with letters where the tape goes, drawn with measures of an example, of which nothing is printed. */
export function letteredDrawing(
  stage: StageName,
  { id, width = 240, height = 210, missing = [] }: LetteredOptions,
): LetteredDrawing {
  const { drawnWith, drawn } = FORM_STAGES[stage];
  const { paper, title } = viewOf(stage).view(drawnWith);
  const absent = new Set(missing);
  const named = paper.letter((name) => {
    const measure = drawn[name];
    return measure !== undefined && absent.has(measure);
  });
  const letters = new Map<MeasureName, string>();
  for (const [name, letter] of named) {
    const measure = drawn[name];
    if (measure) letters.set(measure, letter);
  }
  const words = [...named].map(([name, letter]) => `${letter}: ${name.replace(/,$/, '')}`).join('; ');
  const marked = missing.map((measure) => {
    const letter = letters.get(measure);
    const what = measureAtStage(measure, stage);
    return letter === undefined ? `${what}: missing, not seen in this view` : `${letter}, ${what}: missing`;
  });
  const said = [
    `${title}, an example that is not to scale with yours. The tape goes at ${words}.`,
    ...marked.map((line) => `${line}.`),
  ];
  if (missing.length > 0) {
    paper.clearNotes();
    for (const line of ['Where the tape goes, not to scale with yours', ...marked]) paper.note(line);
  }
  const text = said.join(' ');
  const notes = missing.length > 0 ? 'with notes' : 'without notes';
  return { svg: paper.svg(title, text, id, width, height, notes), text, letters };
}

/** The measures that a stage needs and a row does not have. */
export const missingMeasures = (
  stage: StageName,
  measures: Readonly<Partial<Record<MeasureName, number | undefined>>>,
): MeasureName[] => stageNeeds(stage).needs.filter((name) => measures[name] === undefined);
