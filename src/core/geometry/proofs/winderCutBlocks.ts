import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene, FreeHeight, PlanEdge } from './centreOnCut';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, atan2, cos, floor, max, min, sin } = Math;

/** Winding treads between two flights, each measure at the end of its range that lets most pass [mm]. */
export interface WinderAtMost {
  readonly width: number;
  readonly widthOut: number;
  readonly headroom: number;
  /** Least and greatest rise. */
  readonly rise: readonly [number, number];
  /** Least and greatest rise for each mm of going. */
  readonly slope: readonly [number, number];
  /** [rad] */
  readonly turn: number;
  /** Winding treads in the turn, counted [count]. */
  readonly treads: number;
  /** A wall square to the lower flight, as far from the inner edge as the stair is wide. */
  readonly facingWall: boolean;
  /** How far up the lower flight's own ceiling begins is not known: over it there may be none. */
  readonly lowerOpen?: boolean;
}

/** Where the lines run, in parts of the turn; the likeliest first. */
const LINES = [0.5, 0.25, 0.75, 0, 1];

/**
 * Centre-cut proof on winding treads: on its way the piece's centre crosses any line in plan from the inner edge to an
 * outer wall. There the piece's section by the line's upright plane is no higher than the headroom and a rise (the line
 * runs along one tread), its plan is clear of the inner walls and within the outer ones, and every corner lies above the
 * treads and under the ceiling. If on one such line it can be so in no attitude, no motion passes.
 *
 * Model, its places as in winderStage. As generous as can be: each winding tread a rise lower, and its ceiling a rise
 * higher, than with all treads of one angle and the headroom above each nosing; the flights' treads a rise below their
 * lines of nosings.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function winderCutBlocks(stair: WinderAtMost, piece: PieceSize): boolean {
  const { width, widthOut, headroom, rise, turn } = stair;
  const right = [sin(turn), -cos(turn)] as const;
  const inner: PlanEdge[] = [
    { edge: [0, 0], from: [0, 1], to: [-sin(turn / 2), cos(turn / 2)] },
    { edge: [0, 0], from: [-sin(turn / 2), cos(turn / 2)], to: [-right[0], -right[1]] },
  ];
  const walls = [
    { n: [0, -1] as const, at: width },
    { n: right, at: widthOut },
    ...(stair.facingWall ? [{ n: [1, 0] as const, at: width }] : []),
  ];
  const scene: CutScene = { walls, solids: [inner], free: heightsOver(stair) };
  return LINES.some((part) => {
    const angle = turn * part - PI / 2;
    const ray = [cos(angle), sin(angle)] as const;
    const far = min(
      ...walls.map(({ n, at }) => {
        const towards = n[0] * ray[0] + n[1] * ray[1];
        return towards > 1e-6 ? at / towards : Infinity;
      }),
    );
    const cut: Cut = [
      [0, 0],
      [far * ray[0], far * ray[1]],
    ];
    const section = { n: [-ray[1], ray[0]] as const, height: headroom + rise[1] };
    return centreCutsBlock({ ...scene, section }, [cut], piece);
  });
}

/** Treads and ceilings, by how far round the inner edge a place is from the first winding tread's nosing. */
function heightsOver({ headroom, rise, slope, turn, treads, lowerOpen }: WinderAtMost): FreeHeight {
  const [low, high] = rise;
  const [gentle, steep] = slope;
  const along = [cos(turn), sin(turn)] as const;
  const each = turn / treads;
  /** Beyond the inner wall of the lower flight the way round begins: no figure is on both sides of it there. */
  const round = (x: number, y: number): number => atan2(y, x) + PI / 2;
  const up = (x: number, y: number): number => x * along[0] + y * along[1];
  return {
    lowest: (x0, x1, y0, y1) => {
      if (x0 < 0 && y0 < 0) return steep * x0;
      const least = min(round(x0, y0), round(x0, y1), round(x1, y0), round(x1, y1));
      if (least <= turn) return max(0, min(treads - 1, floor(least / each - 1e-9))) * low;
      return treads * low + gentle * max(0, min(up(x0, y0), up(x0, y1), up(x1, y0), up(x1, y1)));
    },
    highest: (x0, x1, y0, y1) => {
      const over = (treads + 1) * high + headroom;
      if (lowerOpen && x0 < 0 && y0 < 0) return Infinity;
      const farthest = max(up(x0, y0), up(x0, y1), up(x1, y0), up(x1, y1));
      // On both sides of the lower flight's inner wall, or about the inner edge: the whole way round.
      if (x0 < 0 && y0 < 0 && y1 >= 0) return over + steep * max(0, farthest);
      const most = max(round(x0, y0), round(x0, y1), round(x1, y0), round(x1, y1));
      if (most < 0) return gentle * min(0, x1) + high + headroom;
      if (most <= turn) return (min(treads - 1, floor(most / each + 1e-9)) + 2) * high + headroom;
      return over + steep * max(0, farthest);
    },
  };
}
