/** One line of a calculation as a person would write it beside the sum. */
export interface WorkingStep {
  readonly what: string;
  readonly formula: string;
  readonly value: number | string;
  readonly unit: string;
  readonly source: string;
}

/**
 * A notebook that a calculation may be handed. The same code that gives the result writes the steps, so the
 * working cannot drift from the answer. Nearly every call has no notebook: write `working?.(…)`.
 */
export type Working = (step: WorkingStep) => void;

/** Collects the steps of `run` in order. */
export function collectWorking<T>(run: (working: Working) => T): { result: T; steps: WorkingStep[] } {
  const steps: WorkingStep[] = [];
  const result = run((step) => steps.push(step));
  return { result, steps };
}
