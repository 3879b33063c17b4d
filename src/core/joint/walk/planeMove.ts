import { decidePassage, type AngleLimits } from '../../geometry/planar/decidePassage';
import type { PlanarPlace, PlanarRegion } from '../../geometry/planar/planarWorld';
import type { SceneBox } from '../../space/motion';
import { slicedBoxes, type Seen } from './slicedPlan';

/** A move of the piece in a plane, its attitude square to it unchanged: in plan, or in a flight's upright section. */
export interface PlaneTask {
  readonly boxes: readonly SceneBox[];
  readonly seen: Seen;
  /** The layer that the piece fills in the third of the coordinates seen [mm]. */
  readonly low: number;
  readonly high: number;
  /** The padded piece in the plane [mm]. */
  readonly p: number;
  readonly q: number;
  readonly start: PlanarPlace;
  readonly goal: PlanarRegion;
  /** How far beyond start and goal its middle may go [mm], and places of the plane that it has to reach. */
  readonly margin: number;
  readonly by: readonly (readonly [number, number])[];
  /** Angles that it may take; all where there are none. */
  readonly turns?: AngleLimits;
}

/** Slices of the angle that a move may take: bounds the work, never the time. */
const WORK = 2500;
/** A place that is to be reached is reached so near on every side [mm]. */
const POINT = 1e-3;

/** The places of the move, straight moves and turns on the spot between them; undefined where none is shown. */
export function planeMove(task: PlaneTask): readonly PlanarPlace[] | undefined {
  const { start, goal, margin, by } = task;
  const xs = [start.x, goal.xMin, goal.xMax, ...by.map((b) => b[0])];
  const ys = [start.y, goal.yMin, goal.yMax, ...by.map((b) => b[1])];
  const centre = {
    xMin: Math.min(...xs) - margin,
    xMax: Math.max(...xs) + margin,
    yMin: Math.min(...ys) - margin,
    yMax: Math.max(...ys) + margin,
  };
  const reach = Math.hypot(task.p, task.q) / 2 + 10;
  const obstacles = slicedBoxes(task.boxes, task.seen, task.low, task.high).filter(
    (polygon) =>
      polygon.some(([x]) => x > centre.xMin - reach) &&
      polygon.some(([x]) => x < centre.xMax + reach) &&
      polygon.some(([, y]) => y > centre.yMin - reach) &&
      polygon.some(([, y]) => y < centre.yMax + reach),
  );
  const decision = decidePassage(
    { obstacles, centre },
    task.p,
    task.q,
    {
      xMin: start.x - POINT,
      xMax: start.x + POINT,
      yMin: start.y - POINT,
      yMax: start.y + POINT,
      angle: start.angle,
    },
    goal,
    WORK,
    task.turns,
  );
  return decision.verdict === 'passes' ? decision.path() : undefined;
}
