import { stageNeeds, type StageName } from '../core/stages/kinds';
import type { MeasureName } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import type { StageDrawing } from './drawStage';
import { FORM_STAGES } from './formStages';
import { viewOf } from './stageViews';
import { tapeSketch } from './tapeSketch';

/** A stage's drawings with letters where the tape goes. */
export interface LetteredDrawing {
  /** The stage as it is drawn elsewhere too, then what that does not show. */
  readonly pictures: readonly StageDrawing[];
  /** All of them in words. */
  readonly text: string;
  /** The letter of each measure, in the order in which one walks past them. */
  readonly letters: ReadonlyMap<MeasureName, string>;
}

export interface LetteredOptions {
  readonly id: string;
  /** Greatest size of a drawing [px]. */
  readonly width?: number;
  readonly height?: number;
  /** Measures that are missing: marked in the drawing and named under it; a drawing without any is left out. */
  readonly missing?: readonly MeasureName[];
}

/** A stage with letters where the tape goes, drawn with measures of an example, of which nothing is printed. */
export function letteredDrawing(
  stage: StageName,
  { id, width = 240, height = 210, missing = [] }: LetteredOptions,
): LetteredDrawing {
  const { drawnWith, drawn, measures } = FORM_STAGES[stage];
  const letters = new Map(measures.map((measure, n) => [measure, String.fromCharCode(65 + n)]));
  const absent = new Set(missing);
  const pictures = [viewOf(stage).view(drawnWith), tapeSketch(stage)].flatMap(({ paper, title }, n) => {
    const measureOf = (name: string): MeasureName | undefined =>
      drawn[name] ?? measures.find((measure) => measure === name);
    const met = paper.letter((name) => {
      const measure = measureOf(name);
      const letter = measure && letters.get(measure);
      return letter === undefined
        ? undefined
        : { letter, marked: measure !== undefined && absent.has(measure) };
    });
    const shown = measures.filter((measure) => met.some((name) => measureOf(name) === measure));
    const marked = shown.filter((measure) => absent.has(measure));
    if (shown.length === 0 || (missing.length > 0 && marked.length === 0)) return [];
    const named = (measure: MeasureName): string =>
      `${letters.get(measure) ?? ''}, ${measureAtStage(measure, stage)}`;
    const said = [
      `${title}, an example that is not to scale with yours. The tape goes at ${shown.map(named).join('; ')}.`,
      ...marked.map((measure) => `${named(measure)}: missing.`),
    ];
    paper.clearNotes();
    if (missing.length > 0) {
      const lines = marked.map((measure) => `${named(measure)}: missing`);
      for (const line of ['Where the tape goes, not to scale with yours', ...lines]) paper.note(line);
    }
    const text = said.join(' ');
    return [{ svg: paper.svg(title, text, `${id}-${n + 1}`, width, height), text }];
  });
  return { pictures, text: pictures.map(({ text }) => text).join(' '), letters };
}

/** The measures that a stage needs and a row does not have. */
export const missingMeasures = (
  stage: StageName,
  measures: Readonly<Partial<Record<MeasureName, number | undefined>>>,
): MeasureName[] => stageNeeds(stage).needs.filter((name) => measures[name] === undefined);
