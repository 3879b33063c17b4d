import type { PieceSize } from '../core/measures/piece';
import { rotate } from '../core/space/quaternion';
import type { KeyAttitude, Motion, SceneBox } from '../core/space/motion';
import { criticalAttitude } from './criticalAttitude';
import { mmText, Paper } from './paper';
import { box, hull, type Point, type Points } from './plane';
import { markNearest, type StageView } from './stageView';

type Three = readonly [number, number, number];

/** Other attitudes of the motion that are drawn, thin and dashed. */
const MOST_OTHERS = 5;
/** What is seen round the piece's whole way [mm]. */
const ROUND = 350;

/**
 * A stage with the motion that was found for it, in plan: solid building cut at the height of the middle of the
 * piece where it is closest, the piece there as it looks from above, and dashed some of its other places.
 */
export function motionView(
  title: string,
  measures: readonly (readonly [string, number | undefined])[],
  size: PieceSize,
  motion: Motion,
  scene: readonly SceneBox[],
): StageView {
  const paper = new Paper();
  const { attitude, index } = criticalAttitude(motion, scene, size);
  const level = attitude.at[2];
  const others = spread(motion, index).map((key) => hull(cornersOf(key, size).map(fromAbove)));
  const outline = hull(cornersOf(attitude, size).map(fromAbove));

  const seen = [outline, ...others].flat();
  const xs = seen.map(([x]) => x);
  const ys = seen.map(([, y]) => y);
  const window = box(
    Math.min(...xs) - ROUND,
    Math.min(...ys) - ROUND,
    Math.max(...xs) + ROUND,
    Math.max(...ys) + ROUND,
  );
  const faces: Points[] = [];
  for (const solid of scene) {
    const cut = clipped(sectionAt(solid, level), window);
    if (cut.length < 3) continue;
    paper.wall(cut);
    paper.outline(cut, 'edge');
    faces.push([...cut, cut[0]!]);
  }
  for (const other of others) paper.outline(other, 'dashed');
  paper.piece(outline);
  markNearest(paper, outline, faces);
  const [from, to] = longestSide(outline);
  paper.dimension(
    from,
    to,
    9,
    'the piece as seen from above, longest side',
    Math.hypot(to[0] - from[0], to[1] - from[1]),
  );
  const given = measures.flatMap(([name, value]) =>
    value === undefined ? [] : [`${name} ${mmText(value)}`],
  );
  paper.note(given.join(', '));
  return {
    paper,
    title,
    place: `The piece is shown where its way comes closest, its middle ${mmText(Math.round(level))} mm above the level that heights are counted from`,
    outline,
    faces,
    legend: 'Cut at the middle of the piece. Ring: closest. Dashed: other places on its way',
  };
}

/** Up to `MOST_OTHERS` key attitudes, evenly spread, the critical one left out. */
function spread(motion: Motion, critical: number): Motion {
  const others = motion.filter((_, i) => i !== critical);
  if (others.length <= MOST_OTHERS) return others;
  return Array.from(
    { length: MOST_OTHERS },
    (_, i) => others[Math.round((i * (others.length - 1)) / (MOST_OTHERS - 1))]!,
  );
}

const fromAbove = ([x, y]: Three): Point => [x, y];

function cornersOf({ at, turn }: KeyAttitude, { length, breadth, thickness }: PieceSize): Three[] {
  return boxCorners(at, [length, breadth, thickness], turn);
}

function boxCorners(centre: Three, size: Three, turn: KeyAttitude['turn']): Three[] {
  const corners: Three[] = [];
  for (let i = 0; i < 8; i++) {
    const half: Three = [
      ((i & 1 ? 1 : -1) * size[0]) / 2,
      ((i & 2 ? 1 : -1) * size[1]) / 2,
      ((i & 4 ? 1 : -1) * size[2]) / 2,
    ];
    const [x, y, z] = rotate(turn, half);
    corners.push([centre[0] + x, centre[1] + y, centre[2] + z]);
  }
  return corners;
}

/** The section of a box with a level plane. */
function sectionAt({ centre, size, turn }: SceneBox, level: number): Points {
  const corners = boxCorners(centre, size, turn);
  const points: Point[] = [];
  for (let i = 0; i < 8; i++) {
    for (const bit of [1, 2, 4]) {
      if (i & bit) continue;
      const a = corners[i]!;
      const b = corners[i | bit]!;
      if (a[2] < level === b[2] < level) continue;
      const s = (level - a[2]) / (b[2] - a[2]);
      points.push([a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])]);
    }
  }
  return points.length < 3 ? [] : hull(points);
}

/** A convex polygon as far as it lies in a rectangle. @source Sutherland & Hodgman, CACM 17(1), 1974 */
function clipped(polygon: Points, window: Points): Points {
  let kept: Points = polygon;
  for (let i = 0; i < window.length; i++) {
    const a = window[i]!;
    const b = window[(i + 1) % window.length]!;
    const inside = (p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    const next: Point[] = [];
    kept.forEach((p, j) => {
      const q = kept[(j + 1) % kept.length]!;
      const [dp, dq] = [inside(p), inside(q)];
      if (dp >= 0) next.push(p);
      if (dp >= 0 !== dq >= 0) {
        const s = dp / (dp - dq);
        next.push([p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1])]);
      }
    });
    kept = next;
  }
  return kept;
}

function longestSide(outline: Points): readonly [Point, Point] {
  let best: readonly [Point, Point] = [outline[0]!, outline[1] ?? outline[0]!];
  let most = 0;
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length <= most + 1e-6) return;
    most = length;
    best = [q, p];
  });
  return best;
}
