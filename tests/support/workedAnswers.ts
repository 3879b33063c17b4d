const { cos, hypot, max, min, sin } = Math;

/** Quarter turns in small steps: what the handbooks' formulas are scanned over. */
const ANGLES = Array.from({ length: 90001 }, (_, i) => ((i / 90000) * Math.PI) / 2);

/** Padding with which a face p x q stands in an opening a x b at its best turn: every turn tried (Carver's condition). */
const inOpening = (a: number, b: number, p: number, q: number): number =>
  ANGLES.reduce((best, t) => {
    const wide = (a - p * cos(t) - q * sin(t)) / (2 * (cos(t) + sin(t)));
    const high = (b - p * sin(t) - q * cos(t)) / (2 * (cos(t) + sin(t)));
    return max(best, min(wide, high));
  }, -Infinity);

/** Longest rectangle of a thickness round a right-angled corner: the calculus books' ladder, less what its thickness takes. */
const roundCorner = (a: number, b: number, thickness: number): number =>
  ANGLES.slice(1, -1).reduce(
    (least, t) => min(least, a / sin(t) + b / cos(t) - thickness / (sin(t) * cos(t))),
    Infinity,
  );

/** Where something that falls reaches 0, by halving. */
const zeroOf = (falls: (c: number) => number, low: number, high: number): number => {
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (falls(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
};

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Joist of the example by hand: C24, 50 x 200, even loads at 400 apart and a foot at mid-span (EN 1995-1-1). */
function joistByHand(): number {
  const [span, dead, imposed, foot] = [3600, 0.5 * 0.4, 1.5 * 0.4, 1870];
  const modulus = (50 * 200 ** 2) / 6;
  const inertia = (50 * 200 ** 3) / 12;
  const area = 50 * 200;
  const moment = ((1.35 * dead + 1.5 * imposed) * span ** 2) / 8 + (1.5 * foot * span) / 4;
  const bending = moment / modulus / ((0.8 * 24) / 1.3);
  const staying = (1.35 * dead * span ** 2) / 8 + (1.35 * foot * span) / 4;
  const stays = staying / modulus / ((0.6 * 24) / 1.3);
  const [E, G] = [11000, 690];
  const line = dead + imposed;
  const bend = (5 * line * span ** 4) / (384 * E * inertia) + (foot * span ** 3) / (48 * E * inertia);
  const shear = (1.2 * ((line * span ** 2) / 8 + (foot * span) / 4)) / (G * area);
  return max(bending, stays, (bend + shear) / (span / 300));
}

/**
 * A slate 1830 x 26 on edge out of a door 775 wide into a passage of 1100, the approach as wide as the door: at every
 * angle its near side rests on the near jamb's edge, and its tail is as far back as the door's far side lets it, or the
 * far jamb's edge once the tail has come out; the head has to stay within the passage.
 */
function outOfSideDoor(): number {
  const [door, passage] = [775, 1100];
  const room = (c: number): number => {
    const [p, q] = [1830 + 2 * c, 26 + 2 * c];
    return ANGLES.slice(1, -1).reduce((least, t) => {
      const inside = (door - q * sin(t)) / cos(t);
      const tailIsIn = inside * sin(t) >= q * cos(t);
      const back = min(p, tailIsIn ? inside : door * cos(t));
      return min(least, passage - (p - back) * sin(t) - q * cos(t));
    }, Infinity);
  };
  return zeroOf(room, 0, 370);
}

/** Answers to the worked examples, each worked out apart from the project, by the example's title. */
export const WORKED_ANSWERS: Readonly<Record<string, number>> = {
  // 1.83 x 0.93 x 0.026 m3 at 2800 kg/m3
  'What does the slate weigh?': 123.89832,
  // leaf - stop - leaf thickness: Approved Document M
  'How wide is the door, really?': 762 - 12 - 35,
  // 30.5 in of 25.4 mm
  'A tape in feet and inches': 774.7,
  // square on: (775 - 330) / 2
  'Through the door': 222.5,
  'Slanted through the door': inOpening(1200, 1800, 2060, 90),
  'The longest slate round the hall corner': roundCorner(1000, 900, 60),
  // On end the long side stands, 1830 under 2400, and 930 x 26 goes round in plan; on edge it is 1830 x 26.
  'Round the corner with this slate': max(
    min(
      (2400 - 1830) / 2,
      zeroOf((c) => roundCorner(1000, 900, 26 + 2 * c) - 930 - 2 * c, 0, 430),
    ),
    zeroOf((c) => roundCorner(1000, 900, 26 + 2 * c) - 1830 - 2 * c, -200, 430),
  ),
  // Raised from flat: the diagonal of 1830 x 26 under 2100 (Pythagoras).
  'Standing it on end': zeroOf((c) => 2100 - hypot(1830 + 2 * c, 26 + 2 * c), 0, 200),
  'How steep is the stair?': degrees(Math.atan2(190, 240)),
  // On edge: 930 under the headroom square to the pitch line, 26 in 900.
  'Up the flight': min((2050 * cos(Math.atan2(190, 240)) - 930) / 2, (900 - 26) / 2),
  'Out of a side door': outOfSideDoor(),
  // m (1/2 + h/d tan a): statics, as for the crate of Young & Freedman, University Physics, ch. 11
  'Who has the heavy end?': 124 * (0.5 + (350 / 1500) * Math.tan((38 * Math.PI) / 180)),
  // half of 3 x 25: HSE L23
  'Three people on the level': 37.5,
  // 23 x 25/40 x (1 - 0.003 x 15) x (0.82 + 4.5/30) x 0.95: DHHS/NIOSH 94-110
  'Lifting at the van': 23 * (25 / 40) * (1 - 0.003 * 15) * (0.82 + 4.5 / 30) * 0.95,
  // T (M - limit)/(M - resting): Murrell's form, engineering handbooks
  'How long a rest?': (30 * (480 - 350)) / (480 - 105),
  // half of the weight
  'Under one foot': (381 * 9.80665) / 2 / 1000,
  'The joist under it': joistByHand(),
  // 4800 - (1118 + 2 x 1470)
  'Room to play': 742,
};
