import type { StageName } from '../core/stages/kinds';
import { Paper } from './paper';
import { box, type Point } from './plane';
import type { StageView } from './stageView';

/**
 * Where the tape goes for what a stage's own drawing does not show: heights beside a plan, the steps of a stair from near,
 * what is counted. Its dimensions have the names of the measures. Proportions of an example, of which nothing is printed:
 * common practice, no source.
 */
export function tapeSketch(stage: StageName): StageView {
  const paper = new Paper();
  SKETCHES[stage](paper);
  return { paper, title: `What the other drawing of this place does not show` };
}

const WALL = 90;

const SKETCHES: { readonly [Stage in StageName]: (paper: Paper) => void } = {
  door: (paper) => {
    // The wall from above, with the opening in it.
    paper.wall(box(-500, 0, 0, 220));
    paper.wall(box(760, 0, 1260, 220));
    paper.outline(box(-500, 0, 0, 220), 'face');
    paper.outline(box(760, 0, 1260, 220), 'face');
    paper.label([380, 0], 'from above', 0, 14);
    paper.dimension([1260, 220], [1260, 0], 14, 'wall', 220);
  },
  'side door': (paper) => {
    heights(paper, 0, 2300, 'ceiling', 1600);
    doorway(paper, 500, 1981, 'height');
  },
  passage: (paper) => {
    heights(paper, 0, 2300, undefined, 900);
    paper.line(upright(0, 2300), 'face');
    paper.line(upright(900, 2300), 'face');
    const radiator = box(0, 100, 130, 700);
    paper.wall(radiator);
    paper.outline(radiator, 'face');
    paper.dimension([900, 0], [130, 0], 14 + 60 * 0.1, 'lowWidth', 770);
    paper.dimension([0, 0], [0, 700], 14, 'lowHeight', 700);
    fromAbove(paper, 1700);
    paper.dimension([2600, 0], [2600, 2200], -14, 'length', 2200);
  },
  steps: (paper) => {
    nearSteps(paper);
  },
  ramp: (paper) => {
    const foot: Point = [0, 0];
    const head: Point = [2900, 420];
    paper.wall([[-500, -WALL], [-500, 0], foot, head, [3400, 420], [3400, 330], [2900, 330], [0, -WALL]]);
    paper.line([[-500, 0], foot, head, [3400, 420]], 'face');
    paper.dimension(foot, head, 16, 'length', 2930);
    paper.line([foot, [2900, 0]], 'thin');
    paper.dimension([2900, 0], head, -14, 'rise', 420);
  },
  corner: (paper) => {
    // On from the corner to the next door, from above.
    const inner = 800;
    paper.wall(box(-WALL, -700, 0, 800));
    paper.wall(box(-WALL, 800, 2300, 890));
    paper.wall(box(inner, -700, 890, 0));
    paper.wall(box(inner, -WALL, 2100, 0));
    paper.wall(box(2100, -WALL, 2190, 60));
    paper.wall(box(2100, 740, 2190, 800));
    paper.line(
      [
        [0, -700],
        [0, 800],
        [2300, 800],
      ],
      'face',
    );
    paper.line(
      [
        [inner, -700],
        [inner, 0],
        [2100, 0],
      ],
      'face',
    );
    paper.dimension([2100, -WALL], [inner, -WALL], 14, 'run', 1300);
    paper.counted([400, 400], 'turn');
    paper.arrow([400, -600], [400, 250]);
    paper.arrow([550, 400], [1300, 400]);
    heights(paper, 2900, 2310, 'height', 600);
  },
  flight: (paper) => {
    nearSteps(paper);
  },
  'quarter landing': landingSketch,
  'half landing': landingSketch,
  winder: (paper) => {
    nearSteps(paper, 'height');
    // The treads from above, numbered.
    const [cx, cy, reach] = [2000, 300, 750];
    const at = (degrees: number, far: number): Point => [
      cx - far * Math.cos((degrees * Math.PI) / 180),
      cy + far * Math.sin((degrees * Math.PI) / 180),
    ];
    for (let degrees = 0; degrees <= 90; degrees += 30) paper.line([[cx, cy], at(degrees, reach)], 'edge');
    paper.line(
      Array.from({ length: 19 }, (_, n) => at(n * 5, reach)),
      'face',
    );
    [15, 45, 75].forEach((degrees, n) => paper.label(at(degrees, 0.6 * reach), String(n + 1)));
    paper.counted(at(45, reach + 160), 'treads');
    paper.line(
      Array.from({ length: 19 }, (_, n) => at(n * 5, 200)),
      'thin',
    );
    paper.counted([cx, cy], 'turn', 12, 8);
  },
  lift: (paper) => {
    heights(paper, 0, 2210, 'ceiling', 1500);
    doorway(paper, 350, 2005, 'height');
    const plate = box(1180, 1300, 1460, 1500);
    paper.outline(plate, 'edge');
    paper.label([1320, 1400], 'kg');
    paper.counted([1320, 1300], 'ratedLoad', 0, 10);
  },
  room: (paper) => {
    heights(paper, 0, 2350, 'height', 2400);
  },
};

const upright = (x: number, height: number): readonly Point[] => [
  [x, 0],
  [x, height],
];

/** Floor and ceiling from the side, with the height between them. */
function heights(paper: Paper, x: number, height: number, name: string | undefined, width: number): void {
  paper.wall(box(x, -WALL, x + width, 0));
  paper.wall(box(x, height, x + width, height + WALL));
  paper.line(
    [
      [x, 0],
      [x + width, 0],
    ],
    'face',
  );
  paper.line(
    [
      [x, height],
      [x + width, height],
    ],
    'face',
  );
  if (name !== undefined) paper.dimension([x + width, height], [x + width, 0], 14, name, height);
}

/** A door in the wall that is looked at. */
function doorway(paper: Paper, x: number, height: number, name: string): void {
  paper.line(
    [
      [x, 0],
      [x, height],
      [x + 700, height],
      [x + 700, 0],
    ],
    'edge',
  );
  paper.dimension([x, 0], [x, height], -10, name, height);
}

/** A straight passage from above, between its two ends. */
function fromAbove(paper: Paper, x: number): void {
  paper.wall(box(x - WALL, 0, x, 2200));
  paper.wall(box(x + 900, 0, x + 900 + WALL, 2200));
  paper.line(
    [
      [x, 0],
      [x, 2200],
    ],
    'face',
  );
  paper.line(
    [
      [x + 900, 0],
      [x + 900, 2200],
    ],
    'face',
  );
  paper.label([x + 450, 0], 'from above', 0, 12);
}

const RISE = 190;
const GOING = 240;

/** Some steps from the side: how high and how deep one is, how they are counted, and the height plumb above an edge. */
function nearSteps(paper: Paper, headroom?: 'height'): void {
  const line: Point[] = [[-300, 0]];
  for (let n = 0; n < 3; n++) line.push([n * GOING, n * RISE], [n * GOING, (n + 1) * RISE]);
  line.push([3 * GOING + 200, 3 * RISE]);
  paper.wall([
    ...line,
    [3 * GOING + 200, 3 * RISE - WALL],
    [2.6 * GOING, 2 * RISE - WALL],
    [0.3 * GOING, -WALL],
    [-300, -WALL],
  ]);
  paper.line(line, 'face');
  // Where the treads are counted from above these steps are no part of it.
  if (headroom === undefined)
    for (let n = 0; n < 3; n++) paper.label([n * GOING, (n + 0.5) * RISE], String(n + 1), -9, 0);
  paper.dimension([2 * GOING, 3 * RISE], [GOING, 3 * RISE], 12, 'going', GOING);
  paper.line(
    [
      [GOING, 2 * RISE],
      [GOING, 3 * RISE],
    ],
    'thin',
  );
  paper.dimension([3 * GOING + 100, 2 * RISE], [3 * GOING + 100, 3 * RISE], -14, 'rise', RISE);
  paper.line(
    [
      [2 * GOING, 2 * RISE],
      [3 * GOING + 100, 2 * RISE],
    ],
    'thin',
  );
  if (headroom === undefined) {
    paper.counted([-150, 1.5 * RISE], 'risers');
    return;
  }
  const above = 900;
  paper.line(
    [
      [-300, RISE + above - (300 * RISE) / GOING],
      [3 * GOING, RISE + above + 3 * RISE],
    ],
    'face',
  );
  paper.dimension([GOING, 2 * RISE], [GOING, 2 * RISE + above], 0, 'height', above);
}

/** Steps on both sides of a landing from the side. */
function landingSketch(paper: Paper): void {
  const [deep, high] = [900, 1900];
  const steps = 3;
  const line: Point[] = [[-steps * GOING, -steps * RISE]];
  for (let n = steps; n > 0; n--)
    line.push([-n * GOING, -(n - 1) * RISE], [-(n - 1) * GOING, -(n - 1) * RISE]);
  const up: Point[] = [[deep, 0]];
  for (let n = 0; n < steps; n++)
    up.push([deep + n * GOING, (n + 1) * RISE], [deep + (n + 1) * GOING, (n + 1) * RISE]);
  const top: Point[] = [...line, ...up];
  paper.wall([
    ...top,
    [deep + steps * GOING, steps * RISE - WALL],
    [deep + 100, -WALL],
    [0, -WALL],
    [-steps * GOING, -steps * RISE - WALL],
  ]);
  paper.line(top, 'face');
  const lower: Point = [-GOING, 0];
  paper.line(
    [
      [-steps * GOING, high - (steps - 1) * RISE],
      [0, high],
      [deep, high],
      [deep + steps * GOING, high + steps * RISE],
    ],
    'face',
  );
  paper.dimension([-2 * GOING, -RISE], [-2 * GOING, high - RISE], 0, 'height', high);
  paper.dimension([deep / 2, 0], [deep / 2, high], 0, 'ceiling', high);
  paper.dimension([-GOING, -RISE], [-2 * GOING, -RISE], -26, 'going', GOING);
  paper.dimension([deep + 3 * GOING, 2 * RISE], [deep + 3 * GOING, 3 * RISE], -14, 'rise', RISE);
  paper.line(
    [
      [deep + 2 * GOING, 2 * RISE],
      [deep + 3 * GOING, 2 * RISE],
    ],
    'thin',
  );
  // A railing along the inner side.
  const rail = 900;
  paper.line(
    [[-3 * GOING, rail - 2 * RISE], lower, [-GOING, rail]].filter((_, n) => n !== 1) as Point[],
    'chain',
  );
  paper.line(
    [
      [-GOING, rail],
      [deep, rail + RISE],
      [deep + 2 * GOING, rail + 3 * RISE],
    ],
    'chain',
  );
  paper.dimension([deep + GOING, 2 * RISE], [deep + GOING, rail + 2 * RISE], 0, 'overRail', rail);
}
