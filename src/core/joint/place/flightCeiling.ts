/** How a flight's ceiling line runs on over a level row beside it [mm]: how far, and how high it is at the riser. */
export interface FlightCeiling {
  readonly over: number;
  readonly height: number;
}
