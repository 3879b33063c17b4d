/** One line of the benchmark; `goal`, where there is one, is the most it should be. */
export interface Figure {
  readonly name: string;
  readonly figure: number;
  readonly unit: string;
  readonly goal?: number;
}
