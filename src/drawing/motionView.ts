import type { PieceSize } from '../core/measures/piece';
import type { Motion, SceneBox } from '../core/space/motion';
import { criticalAttitude } from './criticalAttitude';
import { mmText, Paper } from './paper';
import { box, type Point, type Points } from './plane';
import { clipped, levelPlane, outlineIn, pieceBox, sectionIn } from './section';
import { markNearest, type StageView } from './stageView';
import { shownGiven } from '../core/measures/shown';

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
  const others = spread(motion, index).map((key) => outlineIn(FROM_ABOVE, pieceBox(key, size)));
  const outline = outlineIn(FROM_ABOVE, pieceBox(attitude, size));

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
    const cut = clipped(sectionIn(levelPlane(level), solid), window);
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
    place: `The piece is shown where its way comes closest, its middle ${shownGiven(level, 0)} mm above the level that heights are counted from`,
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

const FROM_ABOVE = levelPlane(0);

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
