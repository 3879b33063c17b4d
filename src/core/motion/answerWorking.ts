import type { Working } from '../measures/working';
import type { StageAnswer } from './stageAnswer';

/** Writes the decisive steps of a stage that was solved by families of motion or by search. */
export function writeAnswer(answer: StageAnswer, families: string, working: Working | undefined): void {
  if (!working) return;
  working({
    what: 'Pose in which it passes best',
    formula: families,
    value: answer.pose,
    unit: '',
    source: 'the best motion known',
  });
  working({
    what: 'Where it is closest',
    formula: 'the place that decides',
    value: answer.critical.words,
    unit: '',
    source: 'the best motion known',
  });
  if (answer.raise !== undefined && answer.raise > 0) {
    working({
      what: answer.overRail ? 'Raise, over the handrail' : 'Raise',
      formula: 'height it is raised above the way it is carried',
      value: answer.raise,
      unit: 'mm',
      source: 'the best motion known',
    });
  }
  if (answer.bound !== undefined && Number.isFinite(answer.atMost)) {
    working({
      what: 'Proved: no motion whatever leaves more than',
      formula: answer.bound,
      value: answer.atMost,
      unit: 'mm a side',
      source: 'a condition that every motion must meet',
    });
  }
  working({
    what: 'Clearance',
    formula: 'the greatest padding with which a motion is known',
    value: answer.clearance,
    unit: 'mm a side',
    source: 'the best motion known',
  });
}
