import { CONDITIONS } from '../../geometry/proofs/conditions';
import { radians } from '../../measures/angle';
import type { PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { SearchTask } from '../landing/landingSearch';
import type { SearchedStage } from '../landing/landingPassages';
import { onFlight, paddingOnFlight } from '../flight/onFlight';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import type { KeyAttitude } from '../../space/motion';
import type { Ground } from '../../space/raiseOfMotion';
import { openingAtMost } from '../opening/openingAtMost';
import { halfTurned, UPRIGHT } from '../landing/quarterLanding';
import { flightPlates, turnedBlock, type NamedBox } from '../landing/namedBoxes';
import { winderGuides } from './winderGuides';

/** Winding treads between two straight flights. */
export interface WinderMeasures {
  /** Clear width [mm] of the stair before the winders and on them. */
  readonly width: number;
  /** Headroom plumb above the line of nosings [mm]. */
  readonly headroom: number;
  /** By how much the stair turns [rad], up to 180 degrees. */
  readonly turn: number;
  /** [mm] */
  readonly rise: number;
  /** Going of the straight flights [mm]. */
  readonly going: number;
  /** Clear width of the upper flight [mm]; as wide as the lower when absent. */
  readonly widthOut?: number;
  /** Number of winding treads in the turn; one for each 30 degrees when absent. */
  readonly treads?: number;
}

/** Turn of one winding tread [rad]: three to a quarter turn (common practice, no source). */
const TREAD = radians(30);
/** A turn beyond this has a facing wall [rad]. */
export const WIDE_TURN = radians(120);
/** A turn half way between two numbers of treads takes the greater, whatever the rounding of its radians. */
const EVEN = 1e-9;

/** How many winding treads a turn [rad] has where they were not counted. */
export const treadsInTurn = (turn: number): number => Math.max(1, Math.round(turn / TREAD + EVEN));

/**
 * A winder stair as it is searched. Only a motion found on its treads counts, and the caller gives it no better
 * verdict than `tight`.
 *
 * Model, for a motion: treads run together in the upright edge of an inner corner at the origin, all of the same
 * angle, as many as were counted or one for each 30 degrees of the turn, each one rise above the last; the nosing of the first lies along the end of the
 * lower flight, the upper flight's first nosing along the end of the last tread. Each tread is solid from its
 * nosing on; over each the ceiling is flat, `headroom` above its own nosing. Walls full height: the inner
 * sides of both flights and their outer sides, which meet in an outer corner; a turn above 120 degrees has a
 * facing wall square to the lower flight. Nothing but the flights' section is proved.
 */
export function winderStage(measures: WinderMeasures): SearchedStage {
  return {
    guides: (piece, hold) => {
      const { start, goal } = winderTask(measures, piece, hold).ends(-piece.length / 2);
      const { width, widthOut = width, treads = treadsInTurn(measures.turn) } = measures;
      return winderGuides({ ...measures, widthOut, treads }, hold, start, goal);
    },
    task: (piece, hold) => winderTask(measures, piece, hold),
    proved: (piece) => provedBound(measures, piece),
  };
}

/** The direction of a nosing in plan. */
const ray = (angle: number): [number, number] => [Math.cos(angle), Math.sin(angle)];

/**
 * The winding treads of a turn [rad], without walls: a nosing is a ray from the inner corner, at -90 degrees for the first;
 * each tread lies between its own and the next.
 * @param treads in the turn [count]
 * @param rise [mm]
 */
export const windingGrounds = (turn: number, treads: number, rise: number): Ground[] =>
  Array.from({ length: treads }, (_, i): Ground => {
    const [first, end] = [
      ray(-Math.PI / 2 + (turn * i) / treads),
      ray(-Math.PI / 2 + (turn * (i + 1)) / treads),
    ];
    return {
      height: (i + 1) * rise,
      alongX: 0,
      alongY: 0,
      within: [
        { x: -first[1], y: first[0], from: 0 },
        { x: end[1], y: -end[0], from: 0 },
      ],
    };
  });

function provedBound(m: WinderMeasures, piece: PieceSize): ProvedBound {
  const width = Math.min(m.width, m.widthOut ?? m.width);
  const section = openingAtMost({ width, height: m.headroom + m.rise }, piece);
  return { ...section, bound: CONDITIONS.onFlight(section.bound) };
}

/** The scene and its ends. */
function winderTask(m: WinderMeasures, piece: PieceSize, hold: Hold): SearchTask {
  const { width: W, headroom: H, rise, turn } = m;
  const out = m.widthOut ?? W;
  const treads = m.treads ?? treadsInTurn(turn);
  const slope = rise / m.going;
  const diagonal = Math.sqrt(piece.length ** 2 + piece.breadth ** 2 + piece.thickness ** 2);
  const F = 2 * diagonal + 600;
  const far = slope * F + H + (treads + 2) * rise + 1000;
  const last = (treads + 1) * rise;
  const u: readonly [number, number] = [Math.cos(turn), Math.sin(turn)];
  // Right of the upper flight as one goes up it: away from the inner corner.
  const right: readonly [number, number] = [u[1], -u[0]];
  const origin = [0, 0, 0] as const;
  const outer = [right[0] * out, right[1] * out, 0] as const;
  const wide = Math.max(W, out);
  const big = 3 * wide + F;
  const obstacles: NamedBox[] = [
    // Along -x from the edge x = 0, whose right-hand end (looking out) is the inner one at y = 0.
    ...flightPlates('lower flight', [0, 0, rise], [-1, 0], -slope, W, H, F),
    ...flightPlates('upper flight', [outer[0], outer[1], last], u, slope, out, H, F),
    turnedBlock('the inner wall of the lower flight', origin, [-1, 0], F, 0, -far, far),
    turnedBlock('the inner wall of the upper flight', origin, u, F, 0, -far, far),
    turnedBlock('the outer wall of the lower flight', [-F, -W, 0], [1, 0], F + big, -200, -far, far),
    turnedBlock(
      'the outer wall of the upper flight',
      [outer[0] - u[0] * big, outer[1] - u[1] * big, 0],
      u,
      F + big,
      -200,
      -far,
      far,
    ),
  ];
  if (turn > WIDE_TURN)
    obstacles.push(
      turnedBlock('the wall facing the lower flight', [W, -W, 0], [0, 1], 4 * wide, -200, -far, far),
    );
  const grounds: Ground[] = [
    {
      height: rise,
      alongX: slope,
      alongY: 0,
      within: [
        { x: -1, y: 0, from: 0 },
        { x: 0, y: -1, from: 0 },
      ],
    },
    {
      height: last,
      alongX: slope * u[0],
      alongY: slope * u[1],
      within: [
        { x: u[0], y: u[1], from: 0 },
        { x: right[0], y: right[1], from: 0 },
      ],
    },
    ...windingGrounds(turn, treads, rise),
  ];
  for (let i = 0; i < treads; i++) {
    const from = -Math.PI / 2 + (turn * i) / treads;
    const to = -Math.PI / 2 + (turn * (i + 1)) / treads;
    const top = (i + 1) * rise;
    obstacles.push(
      turnedBlock('a winder’s tread', origin, ray(from), 4 * wide, 4 * wide, -far, top),
      turnedBlock(
        'the ceiling over the winders',
        origin,
        ray(to),
        4 * wide,
        -4 * wide,
        top + H,
        top + H + 1000,
      ),
    );
  }
  const middle = (-Math.PI + turn) / 2;
  const ends = (padding: number): { start: KeyAttitude; goal: KeyAttitude } => ({
    start: onFlight(piece, hold, padding, [-1, 0], -slope, [0, -W / 2, rise], H, F / 2),
    goal: onFlight(piece, hold, padding, u, slope, [outer[0] / 2, outer[1] / 2, last], H, F / 2),
  });
  const { start, goal } = ends(0);
  const at = (r: number): [number, number] => [Math.cos(middle) * r, Math.sin(middle) * r];
  const [cx, cy] = at(W / 2);
  return {
    obstacles,
    least: [-F, -Math.max(F, wide), -far],
    most: [F, F, far],
    ends,
    mostPadding: paddingOnFlight(piece, hold, Math.min(W, out), H, slope),
    middles: {
      turns: [...halfTurned(start.turn, goal.turn), ...UPRIGHT],
      least: [cx - 0.6 * W, cy - 0.6 * W, rise],
      most: [cx + 0.6 * W, cy + 0.6 * W, last + 0.75 * H],
    },
    grounds,
  };
}
