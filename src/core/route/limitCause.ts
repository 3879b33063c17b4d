/** What a place is that a piece has to lie in wholly, or not to reach. */
export interface LimitCause {
  readonly kind: 'straight' | 'offset' | 'flight' | 'room depth' | 'reach' | 'arm';
  /** Its length as measured [mm]; undefined where it is not measured. */
  readonly length: number | undefined;
  /** The rows between which it lies, or whose it is. */
  readonly rows: readonly [number, number];
}
