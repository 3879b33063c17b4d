/** The flat ceiling over a landing [mm]: as measured, or, where it was not, as high as the headroom of its flights. */
export const ceilingOverLanding = <Headroom extends number | undefined>({
  landingCeiling,
  headroom,
}: {
  readonly landingCeiling?: number | undefined;
  readonly headroom: Headroom;
}): number | Headroom => landingCeiling ?? headroom;

/** From wall to wall across a half landing [mm]: both flights and the well between them. */
export const acrossHalfLanding = ({
  flightWidth,
  well,
}: {
  readonly flightWidth: number;
  readonly well: number;
}): number => 2 * flightWidth + well;
