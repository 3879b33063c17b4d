/** A bound that no motion whatever beats, and the condition it rests on. */
export interface ProvedBound {
  /** Greatest padding [mm a side] that is not proved impossible. */
  readonly atMost: number;
  /** The necessary condition, in words. */
  readonly bound: string;
}
