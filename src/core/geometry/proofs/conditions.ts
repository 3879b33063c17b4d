/**
 * The conditions that every motion must meet and that a piece fails, in words that continue a sentence. They are
 * written here alone; nothing reads them but people.
 */
export const CONDITIONS = {
  thickness: (where: string) => `its least thickness is more than the narrower side of ${where}`,
  breadth: (where: string) => `its breadth is more than the diagonal of ${where}`,
  section: (where: string) => `its least section has more area than ${where}`,
  thicknessInside: (whose: string) => `its least thickness is more than ${whose} least size`,
  sizesInside: (what: string) => `its three sizes together are more than those of ${what}`,
  diagonalInside: (whose: string) => `its longest diagonal is more than ${whose}`,
  roundCorner: 'its longest diagonal is too long for the corner under this ceiling',
  outOfDoor: 'its longest diagonal is too long to come out of the door into the passage under this ceiling',
  roundLanding: 'its diagonal shows more in plan than any rod that goes round the landing',
  onHalfLanding: 'it fits in no attitude on the landing between the flights',
  inRoom: 'it fits in the room in no attitude',
  standUpAtCorner:
    'under this ceiling it cannot stand up, and at one angle on either way round it stands nowhere',
  middleRoundCorner: 'its middle cannot cross from the inner corner to the outer walls, however it is turned',
  middleOnLanding: (from: string, ceilingMeasured: 'ceiling measured' | 'ceiling as the headroom') =>
    `its middle cannot cross the landing from ${from} to the outer walls, however it is turned` +
    (ceilingMeasured === 'ceiling measured' ? '' : ', the ceiling there being no higher than the headroom'),
  insideCar: 'it fits in the car in no attitude',
  middleIntoCar: "its middle cannot cross the opening of the lift's door, however it is turned",
  middleOutOfDoor: 'its middle cannot cross the opening of the door from the passage, however it is turned',
  middleUpFlight:
    'its middle cannot cross the upright plane through one of the nosings, however it is turned',
  middleRoundWinders:
    'its middle cannot cross the winding treads from the inner edge to the outer walls, however it is turned',
  onFlight: (condition: string) => `on the flight ${condition}`,
} as const;
