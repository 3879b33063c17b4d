import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene, Opening, PlanEdge } from './centreOnCut';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { ceil, floor, max, min } = Math;

/** A flight between two level floors, each measure at the end of its range that lets most pass [mm]. */
export interface FlightAtMost {
  readonly width: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  /** [count] */
  readonly risers: number;
  /** Heights of the ceilings over the floors, Infinity where they are not known. */
  readonly footCeiling: number;
  readonly headCeiling: number;
  /** From the first riser, and from the top nosing, to the wall that faces them; Infinity where it is not known. */
  readonly footSpace: number;
  readonly headSpace: number;
  /** Nothing is supposed of what lies before the first riser and beyond the top nosing. */
  readonly endsOpen?: boolean;
}

/** Planes looked at, evenly over the nosings. */
const MOST_PLANES = 6;
/** A place is in the tread that it touches [mm]. */
const TOUCHES = 1e-6;

/**
 * Centre-cut proof on a flight with its ends: on the way from the lower floor to the upper one the piece's centre
 * crosses the upright plane through every nosing, between the side walls. There the section of the piece by that plane is
 * no higher than what is open over the nosing, every corner lies above the treads, under the ceilings and before the
 * facing walls, and its plan is clear of the side walls as far as the flight goes. If on one of these planes it can be so
 * in no attitude, no motion passes.
 *
 * Model, as generous as can be: treads as they are, their nosings `going` apart; over the flight the ceiling line,
 * `headroom` plumb above the line of nosings, or the foot's ceiling where that is higher; over the upper floor the head's.
 * The floors at both ends are as wide as may be.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function flightCutBlocks(flight: FlightAtMost, piece: PieceSize): boolean {
  const { width, headroom, rise, going, risers, footCeiling, headCeiling, footSpace, headSpace, endsOpen } =
    flight;
  const top = (risers - 1) * going;
  const slope = rise / going;
  const sides = ([-1, 1] as const).map((side): PlanEdge[] => {
    const y = side < 0 ? 0 : width;
    const away = [0, side] as const;
    return [
      { edge: [0, y], from: [1, 0], to: away },
      { edge: [top, y], from: away, to: [-1, 0] },
    ];
  });
  const overFlight = (x: number): number => max(footCeiling, rise + slope * x + headroom);
  const scene: CutScene = {
    walls: [
      ...(endsOpen || footSpace === Infinity ? [] : [{ n: [-1, 0] as const, at: footSpace }]),
      ...(endsOpen || headSpace === Infinity ? [] : [{ n: [1, 0] as const, at: top + headSpace }]),
    ],
    solids: sides,
    free: {
      lowest: (x0, x1) =>
        endsOpen && (x0 < 0 || x1 > top)
          ? -Infinity
          : x0 < 0
            ? 0
            : min(risers, floor((x0 - TOUCHES) / going) + 1) * rise,
      highest: (x0, x1) =>
        endsOpen && (x0 < 0 || x1 > top)
          ? Infinity
          : max(
              x0 < top ? overFlight(min(x1, top)) : -Infinity,
              x1 >= top ? risers * rise + headCeiling : -Infinity,
            ),
    },
  };
  const step = max(1, ceil((risers - 1) / (MOST_PLANES - 1)));
  const planes: Opening[] = [];
  for (let nosing = risers; nosing > -step + 1; nosing -= step)
    planes.push(openingOver(flight, max(1, nosing)));
  const openings = trimmerOf(flight, planes);
  return planes.some(({ n, at, lowest, highest }) => {
    const cut: Cut = [
      [at, 0],
      [at, width / 2],
    ];
    return centreCutsBlock({ ...scene, openings, section: { n, height: highest - lowest } }, [cut], piece);
  });
}

/** What is open in the upright plane through a nosing, counted from the foot. */
function openingOver(
  { headroom, rise, going, risers, footCeiling, headCeiling }: FlightAtMost,
  nosing: number,
): Opening {
  const lowest = nosing * rise;
  const open = max(headroom, footCeiling - lowest);
  return {
    n: [1, 0],
    at: (nosing - 1) * going,
    lowest,
    highest: lowest + (nosing === risers ? min(open, headCeiling) : open),
  };
}

/** The openings with that under the trimmer, where it is over the flight. */
function trimmerOf(
  { headroom, rise, going, risers, footCeiling }: FlightAtMost,
  planes: Opening[],
): Opening[] {
  const at = ((footCeiling - headroom - rise) * going) / rise;
  if (!(at > 0 && at < (risers - 1) * going)) return planes;
  const lowest = (floor(at / going) + 1) * rise;
  return [{ n: [1, 0], at, lowest, highest: footCeiling }, ...planes];
}
