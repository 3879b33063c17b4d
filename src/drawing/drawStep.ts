import type { StepMotion } from '../core/joint/walk/stepMotion';
import { RAISED } from '../core/crew/roundLanding';
import { kindOf, seenBest, type StageName } from '../core/stages/kinds';
import { rotate } from '../core/space/quaternion';
import type { StageDrawing } from './drawStage';
import { Paper } from './paper';
import { box, type Point, type Points } from './plane';
import { isSeenFrom, ringInSection, UPRIGHT } from './ring';
import { boxCorners, clipped, inView, levelPlane, outlineIn, sectionIn, uprightPlane } from './section';
import type { ViewPlane } from './section';
import { shownUp } from '../core/measures/shown';
import type { StepFacts } from './stepFacts';
import { shownPlaces, type Shown } from './stepPlaces';
import { endsInWords, floorWords, heightWords, placeInWords, stepSays } from './stepSays';

export interface StepDrawingOptions {
  /** Begins the ids inside: letters, digits and dashes. */
  readonly id: string;
  /** Greatest width of one picture [px]. */
  readonly width?: number;
}

/** A step in pictures: all numbered places together, and from the side those that differ. */
export interface StepDrawing {
  /** From above; a flight from the side. */
  readonly together: StageDrawing;
  readonly sides: readonly StageDrawing[];
  /** All of it in words. */
  readonly text: string;
}

/** What is seen round the piece's way [mm]. */
const ROUND = { least: 300, beyond: 180, most: 900 } as const;
const ROUND_BELOW = 200;
/** Two numbers nearer than this [px] would lie on each other. */
const NUMBER_APART = 15;

/**
 * Draws a step's part of the one motion: from above with its numbered places, the tightest heavy and ringed where it is
 * closest, and each place from the side, cut along the piece, so that its tilt and its height can be seen; a flight in one
 * picture from the side. What is cut is
 * hatched. Every place is one of the motion's own, let straight down: where it is raised no farther than is claimed.
 *
 * @returns plan, sides, and all of it in words; the place alone where no way is shown
 */
export function drawStep(step: StepMotion, facts: StepFacts, options: StepDrawingOptions): StepDrawing {
  const shown = step.whole ? shownPlaces(step, facts) : [];
  const { id, width = 296 } = options;
  // Two stand beside each other under the plan.
  const sideWidth = Math.floor((width - 8) / 2);
  const [only] = shown;
  if (only && isStraight(step, facts)) {
    const together = drawSide(step, only, shown, facts, id, width);
    return { together, sides: [], text: together.text };
  }
  if (isInElevation(step, shown, facts)) {
    const together = drawElevation(step, shown, facts, id, width);
    const tight = tightOf(shown);
    // What decides beside it is not seen from the side.
    const contact = tight?.place.closest;
    if (!tight || !contact || isSeenFrom('side', contact))
      return { together, sides: [], text: together.text };
    const above = drawPlan(step, [tight], facts, `${id}-above`, width, 'ring alone');
    return { together, sides: [above], text: [together.text, above.text].join(' ') };
  }
  const together = drawPlan(step, shown, facts, id, width);
  const sides = fromTheSide(shown, step, facts).map((one) =>
    drawSide(step, one, shown, facts, `${id}-${one.number}`, sideWidth),
  );
  return { together, sides, text: [together.text, ...sides.map(({ text }) => text)].join(' ') };
}

/** The one that is drawn heavy. */
const tightOf = (shown: readonly Shown[]): Shown | undefined =>
  shown.find(({ isTightest }) => isTightest) ?? (shown.length === 1 ? shown[0] : undefined);

/** Looked at from the front: it goes straight through, and no other row has a say in it. */
const isStraight = ({ jointly }: StepMotion, { stage }: StepFacts): boolean =>
  seenBest(stage) === 'from in front' && !jointly;

/** The places that are drawn from the side: where all of them look alike there, the tightest. */
function fromTheSide(shown: readonly Shown[], step: StepMotion, facts: StepFacts): readonly Shown[] {
  const words = new Set(shown.map((one) => `${placeInWords(one.place)} ${heightWords(one, step, facts)}`));
  if (words.size > 1) return shown;
  return shown.filter(({ isTightest }) => isTightest || shown.length === 1);
}

/**
 * A flight is walked in one upright plane: its places stand in one picture from the side, but where the piece is still, or
 * already, turned across the way.
 */
function isInElevation(
  { solids, jointly }: StepMotion,
  shown: readonly Shown[],
  { stage }: StepFacts,
): boolean {
  const best = seenBest(stage);
  if (best === 'from above' || (best === 'from in front' && !jointly)) return false;
  if (shown.length < 2 || solids.length === 0) return false;
  const ys = shown.map(({ solid }) => solid.centre[1]);
  const apart = Math.max(...ys) - Math.min(...ys);
  return Math.max(apart, ...shown.map(({ solid }) => longAcross(solid))) < IN_ONE_PLANE;
}

/** Places no farther apart across the way, of a piece that reaches no farther across it, are seen in one picture [mm]. */
const IN_ONE_PLANE = 400;

/** How far the long side of a box leads across the way [mm]. */
const longAcross = ({ size, turn }: Shown['solid']): number => Math.abs(rotate(turn, [1, 0, 0])[1]) * size[0];

/** All places of a flight from the side, the way to the right. */
function drawElevation(
  step: StepMotion,
  shown: readonly Shown[],
  facts: StepFacts,
  id: string,
  width: number,
): StageDrawing {
  const paper = new Paper();
  const tight = shown.find(({ isTightest }) => isTightest) ?? shown[0];
  const plane = uprightPlane(tight?.solid.centre ?? [0, 0, 0], 0);
  const outlines = shown.map(({ solid }) => outlineIn(plane, solid));
  const window = windowOf(
    outlines.flat(),
    round(facts),
    ROUND_BELOW,
    contactIn(plane, tight, outlines.flat()),
  );
  cutSolids(paper, step, facts, plane, window);
  shown.forEach((one, i) => {
    if (one === tight) drawPiece(paper, outlines[i] ?? [], facts);
    else paper.outline(outlines[i] ?? [], 'edge');
  });
  const contact = tight?.place.closest;
  const ringed =
    tight !== undefined &&
    contact !== undefined &&
    isSeenFrom('side', contact) &&
    ringInSection(paper, step, plane, window, outlineIn(plane, tight.solid));
  const middles = shown.map(({ solid }) => inView(plane, solid.centre));
  arrows(paper, middles);
  numbers(paper, shown, middles, outlines, [], window, width);
  const way = facts.wayAt(step.row);
  const title = `${facts.name}, ${facts.stage}${way ? ` going ${way}` : ''}, from the side`;
  if (facts.measures) paper.note(`${facts.measures} (mm)`);
  const words = stepSays(facts, shown, { ringed });
  for (const word of words.notes) paper.note(word);
  const places = shown.map((one) => `${placeInWords(one.place)}, ${heightWords(one, step, facts)}`);
  const ends = shown.map((one) => `${one.number} ${placeInWords(one.place)}, ${endsInWords(one, step)}`);
  paper.note(`Its ends above ${floorWords(facts.stage)}: ${ends.join('; ')}`);
  const text = [
    `${title}, to scale, in mm.`,
    ...(facts.measures ? [`Measured: ${facts.measures}.`] : []),
    ...words.sentences,
    ...places.map((how, i) => `Place ${i + 1}: ${how}.`),
  ].join(' ');
  return { svg: paper.svg(title, text, id, width, width), text };
}

/** What an upright plane cuts, hatched; a flight that it cuts along shows its steps below the line of nosings. */
function cutSolids(
  paper: Paper,
  { solids }: StepMotion,
  { stepsAt }: StepFacts,
  plane: ViewPlane,
  window: Points,
): void {
  for (const { part, row, box: solid } of solids) {
    const section = sectionIn(plane, solid);
    const seen = clipped(section, window);
    if (seen.length < 3) continue;
    paper.wall(seen);
    paper.outline(seen, 'edge');
    const steps = part === 'nosings' ? stepsAt(row) : undefined;
    if (steps) for (const line of treads(section, steps, window)) paper.line(line, 'thin');
  }
}

/** A flight that is seen at a slant shows another pitch: its steps are not drawn [of the slope]. */
const SAME_PITCH = 0.02;

/** The steps under a line of nosings, as far as they are in the window: each from its nosing back to the riser above it. */
function treads(
  section: Points,
  { rise, going }: { readonly rise: number; readonly going: number },
  window: Points,
): Points[] {
  // The upper of the two long sides.
  const sides = section.map((a, i) => [a, section[(i + 1) % section.length] ?? a] as const);
  const pitched = sides.filter(([[x, y], [u, v]]) => {
    const across = Math.abs(u - x);
    return across > 1 && Math.abs(Math.abs(v - y) / across - rise / going) < SAME_PITCH;
  });
  const [top] = pitched.sort(([a, b], [c, d]) => c[1] + d[1] - a[1] - b[1]);
  if (!top) return [];
  const [foot, head] = top[0][1] < top[1][1] ? top : [top[1], top[0]];
  const way = Math.sign(head[0] - foot[0]);
  const long = Math.abs(head[0] - foot[0]);
  // As deep as they are seen: at a slant, a little more than they are.
  const deep = (rise * long) / (head[1] - foot[1]);
  const count = Math.floor(long / deep + 0.5);
  return Array.from({ length: count }, (_, k): Points => {
    const [x, y] = [foot[0] + k * deep * way, foot[1] + k * rise];
    const back = x + deep * way;
    return [
      [x, y],
      [back, y],
      [back, y + rise],
    ];
  }).filter((line) => line.every((point) => isIn(window, point)));
}

/** Width of a small picture [px]. */
const SMALL = 92;

/**
 * A step in one small picture without words, for a strip: a flight from the side, everything else from above.
 */
export function drawStepSmall(step: StepMotion, facts: StepFacts, id: string): StageDrawing {
  const shown = step.whole ? shownPlaces(step, facts) : [];
  const tight = shown.find(({ isTightest }) => isTightest) ?? shown[0];
  if (tight && showsItsClimb(facts.stage)) return drawSide(step, tight, shown, facts, id, SMALL, 'bare');
  return drawPlan(step, tight ? [tight] : [], facts, id, SMALL, 'bare');
}

/** A few steps and a ramp rise too little to be seen in a small picture. */
const showsItsClimb = (stage: StageName): boolean =>
  seenBest(stage) === 'from the side' && kindOf(stage).solvedAsFlight === undefined;

/** Whether words stand under a picture; or only what its ring is. */
type Worded = 'worded' | 'ring alone' | 'bare';

const heightsOf = (points: readonly (readonly [number, number, number])[]): readonly [number, number] => [
  Math.min(...points.map(([, , z]) => z)),
  Math.max(...points.map(([, , z]) => z)),
];

function drawPlan(
  step: StepMotion,
  shown: readonly Shown[],
  facts: StepFacts,
  id: string,
  width: number,
  worded: Worded = 'worded',
): StageDrawing {
  const paper = new Paper();
  const above = levelPlane(0);
  const outlines = shown.map(({ solid }) => outlineIn(above, solid));
  const contact = tightOf(shown)?.place.closest;
  const seen = contact !== undefined && isSeenFrom('above', contact);
  const layer: readonly [number, number] =
    shown.length > 0 ? heightsOf(shown.flatMap(({ solid }) => boxCorners(solid))) : [300, 1500];
  const walls = step.solids.flatMap(({ part, box: solid }) => {
    const [low, high] = heightsOf(boxCorners(solid));
    const stands = UPRIGHT.has(part) && high > layer[0] && low < layer[1];
    return stands ? [outlineIn(above, solid)] : [];
  });
  const around = shown.length > 0 ? outlines.flat() : placeAlone(step);
  const aside = Math.max(round(facts), shown.length > 0 && extentOf(around) < SMALL_PLAN ? ROUND_SMALL : 0);
  const window = windowOf(around, aside, aside, [
    ...wallsBeside(around, walls),
    ...(seen ? contactIn(above, tightOf(shown), outlines.flat()) : []),
  ]);
  const ringed = seen && isIn(window, inView(above, contact.onSolid));
  for (const wall of walls) {
    const seen = clipped(wall, window);
    if (seen.length < 3) continue;
    // What the piece passes above or below lies under its outline, and is no wall beside it.
    const passed = outlines.some((outline) => areaOf(clipped(outline, seen)) > 100);
    if (passed) paper.outline(seen, 'dashed');
    else {
      paper.wall(seen);
      paper.outline(seen, 'edge');
    }
  }
  const upAndDown = worded === 'worded' ? stairArrows(paper, step, facts, window, width) : [];
  shown.forEach(({ isTightest }, i) => {
    if (isTightest || shown.length === 1) drawPiece(paper, outlines[i] ?? [], facts);
    else paper.outline(outlines[i] ?? [], 'edge');
  });
  const middles = shown.map(({ solid }): Point => [solid.centre[0], solid.centre[1]]);
  arrows(paper, middles);
  if (ringed) paper.mark([contact.onSolid[0], contact.onSolid[1]]);
  numbers(paper, shown, middles, outlines, upAndDown, window, width);
  if (worded === 'ring alone') {
    const title = `${facts.name}, the tightest place from above`;
    paper.note(ringed ? 'From above. Ring: closest' : 'From above');
    return { svg: paper.svg(title, `${title}.`, id, width, width * 0.75), text: `${title}.` };
  }
  const title = `${facts.name}, ${facts.stage}, from above`;
  const words = stepSays(facts, shown, { ringed });
  if (facts.measures && worded === 'worded') paper.note(`${facts.measures} (mm)`);
  if (worded === 'worded') for (const word of words.notes) paper.note(word);
  const text = `${title}, to scale, in mm. ${[facts.measures && `Measured: ${facts.measures}.`, ...words.sentences].filter(Boolean).join(' ')}`;
  return { svg: paper.svg(title, text, id, width, width), text };
}

/** The piece; dashed where it is another size than its own. */
function drawPiece(paper: Paper, outline: Points, { smaller }: StepFacts): void {
  if (smaller) paper.outline(outline, 'dashed');
  else paper.piece(outline);
}

const round = ({ clearance = 0 }: StepFacts): number =>
  Math.min(ROUND.most, Math.max(ROUND.least, 2 * clearance + ROUND.beyond));

/** What decides is shown where it is no farther beyond the piece than this [mm]. */
const MOST_BEYOND = 2200;
/** And so much of what is behind it. */
const BEHIND = 60;

/** Where the piece is closest, so that the picture reaches there; nothing where that is too far. */
function contactIn(plane: ViewPlane, tight: Shown | undefined, outline: Points): Points {
  const contact = tight?.place.closest;
  if (!contact) return [];
  const [x, y] = inView(plane, contact.onSolid);
  const beyond = Math.min(...outline.map(([u, v]) => Math.hypot(x - u, y - v)));
  if (beyond > MOST_BEYOND) return [];
  return box(x - BEHIND, y - BEHIND, x + BEHIND, y + BEHIND);
}

/** A way that is no longer than this, seen from above, is shown with so much round it [mm]: it stands on end. */
const SMALL_PLAN = 2200;
const ROUND_SMALL = 700;

const extentOf = (points: Points): number =>
  Math.max(
    ...([0, 1] as const).map((axis) => {
      const along = points.map((point) => point[axis]);
      return Math.max(...along) - Math.min(...along);
    }),
  );

/** A wall so near to a side of what is drawn [mm] is shown too: how wide the way is can be seen then. */
const WALL_SEEN = 1000;
/** And so much of what is behind its face. */
const WALL_DRAWN = 120;

/** A point beyond the face of the nearest wall on each side of what is drawn, seen from above. */
function wallsBeside(points: Points, walls: readonly Points[]): Points {
  const spans = (of: Points): readonly (readonly [number, number])[] =>
    [0, 1].map((axis) => {
      const along = of.map((point) => point[axis as 0 | 1]);
      return [Math.min(...along), Math.max(...along)] as const;
    });
  const [x, y] = spans(points);
  if (!x || !y) return [];
  const found: Point[] = [];
  for (const [own, other, axis] of [
    [x, y, 0],
    [y, x, 1],
  ] as const) {
    const faces = walls.flatMap((wall) => {
      const spanned = spans(wall);
      const [along, across] = [spanned[axis], spanned[1 - axis]];
      if (!along || !across || across[1] < other[0] || across[0] > other[1]) return [];
      return [along];
    });
    const before = Math.max(-Infinity, ...faces.map(([, end]) => end).filter((end) => end <= own[0]));
    const after = Math.min(Infinity, ...faces.map(([begin]) => begin).filter((begin) => begin >= own[1]));
    const middle = (other[0] + other[1]) / 2;
    const add = (at: number): void => void found.push(axis === 0 ? [at, middle] : [middle, at]);
    if (own[0] - before <= WALL_SEEN) add(before - WALL_DRAWN);
    if (after - own[1] <= WALL_SEEN) add(after + WALL_DRAWN);
  }
  return found;
}

/** What is shown: the points with so much round them, and as far as the others reach. */
function windowOf(points: Points, aside: number, below: number, also: Points = []): Points {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [us, vs] = [also.map(([x]) => x), also.map(([, y]) => y)];
  return box(
    Math.min(Math.min(...xs) - aside, ...us),
    Math.min(Math.min(...ys) - below, ...vs),
    Math.max(Math.max(...xs) + aside, ...us),
    Math.max(Math.max(...ys) + aside, ...vs),
  );
}

/** Whether a point is in a window, which runs anticlockwise from its lower left corner. */
function isIn([low, , high]: Points, [x, y]: Point): boolean {
  if (!low || !high) return false;
  return x >= low[0] && x <= high[0] && y >= low[1] && y <= high[1];
}

/** Where nothing is carried: from the way in to the way out. */
const placeAlone = ({ exit }: StepMotion): Points => [
  [-300, -600],
  [-300, 600],
  [exit.at[0], exit.at[1] - 600],
  [exit.at[0], exit.at[1] + 600],
];

const areaOf = (points: Points): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length] ?? [x, y];
      return sum + x * v - u * y;
    }, 0),
  ) / 2;

/** The word of an arrow stands so far before its tail [px]. */
const BEFORE_TAIL = 9;

/** About how much of the scene a pixel shows [mm]. */
function pixelIn([low, , high]: Points, width: number): number {
  const span = Math.max((high?.[0] ?? 1) - (low?.[0] ?? 0), (high?.[1] ?? 1) - (low?.[1] ?? 0));
  return span / (0.8 * width);
}

/** Arrows the way each flight is walked, with the word for it; where their words stand. */
function stairArrows(
  paper: Paper,
  { solids }: StepMotion,
  { wayAt }: StepFacts,
  window: Points,
  width: number,
): Point[] {
  const worded: Point[] = [];
  const pixel = pixelIn(window, width);
  const above = levelPlane(0);
  for (const { part, row, box: solid } of solids) {
    if (part !== 'nosings') continue;
    const seen = clipped(outlineIn(above, solid), window);
    if (seen.length < 3 || areaOf(seen) < 1e5) continue;
    paper.outline(seen, 'thin');
    const axis = rotate(solid.turn, [1, 0, 0]);
    const word = wayAt(row) ?? 'up';
    const up = (Math.sign(axis[2]) || 1) * (word === 'up' ? 1 : -1);
    const plan = Math.hypot(axis[0], axis[1]) || 1;
    const [dx, dy] = [(axis[0] / plan) * up, (axis[1] / plan) * up];
    const xs = seen.map(([x]) => x);
    const ys = seen.map(([, y]) => y);
    const [cx, cy] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
    const half = Math.min(
      400,
      (Math.abs(dx) * (Math.max(...xs) - Math.min(...xs)) +
        Math.abs(dy) * (Math.max(...ys) - Math.min(...ys))) /
        2.4,
    );
    // Beside the middle, where the numbers stand.
    const reach =
      (Math.abs(dy) * (Math.max(...xs) - Math.min(...xs)) +
        Math.abs(dx) * (Math.max(...ys) - Math.min(...ys))) /
      2.6;
    const [ox, oy] = [cx - dy * reach, cy + dx * reach];
    paper.arrow([ox - dx * half, oy - dy * half], [ox + dx * half, oy + dy * half]);
    const tail: Point = [ox - dx * half, oy - dy * half];
    paper.label(tail, word, -dx * BEFORE_TAIL, dy * BEFORE_TAIL);
    worded.push([tail[0] - dx * BEFORE_TAIL * pixel, tail[1] - dy * BEFORE_TAIL * pixel]);
  }
  return worded;
}

/** Arrows from place to place. */
function arrows(paper: Paper, middles: Points): void {
  middles.forEach((a, i) => {
    const b = middles[i + 1];
    if (!b || Math.hypot(b[0] - a[0], b[1] - a[1]) < 300) return;
    const part = (s: number): Point => [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s];
    paper.arrow(part(0.25), part(0.75));
  });
}

/** A number at each place, where none stands yet. */
function numbers(
  paper: Paper,
  shown: readonly Shown[],
  middles: Points,
  outlines: readonly Points[],
  worded: readonly Point[],
  window: Points,
  width: number,
): void {
  if (shown.length < 2) return;
  const apart = NUMBER_APART * pixelIn(window, width);
  const taken: Point[] = [...worded];
  // A word reaches farther than a number.
  const words = 1.6 * apart;
  shown.forEach(({ number }, i) => {
    const outline = outlines[i] ?? [];
    const [cx, cy] = middles[i] ?? [0, 0];
    const spots: Point[] = [
      [cx, cy],
      ...outline.flatMap(([x, y]): Point[] =>
        [0.7, 1, 0.4, 0.85, 0.55, 1.3].map((s) => [cx + (x - cx) * s, cy + (y - cy) * s]),
      ),
    ];
    const room = ([x, y]: Point): number =>
      Math.min(
        Infinity,
        ...taken.map(([u, v], k) => Math.hypot(x - u, y - v) * (k < worded.length ? apart / words : 1)),
      );
    const spot = spots.find((one) => room(one) >= apart) ?? [...spots].sort((a, b) => room(b) - room(a))[0];
    if (!spot) return;
    taken.push(spot);
    paper.label(spot, String(number));
  });
}

/** A place from the side, cut along the piece; from the front where it only goes straight on. */
function drawSide(
  step: StepMotion,
  one: Shown,
  all: readonly Shown[],
  facts: StepFacts,
  id: string,
  width: number,
  worded: Worded = 'worded',
): StageDrawing {
  const paper = new Paper();
  const plane = planeOf(one, all, isStraight(step, facts));
  const outline = sectionIn(plane, one.solid);
  const window = windowOf(
    outline,
    round(facts),
    ROUND_BELOW + one.raised,
    tightOf(all) === one ? contactIn(plane, one, outline) : [],
  );
  cutSolids(paper, step, facts, plane, window);
  drawPiece(paper, outline, facts);
  const contact = one.place.closest;
  const straight = isStraight(step, facts);
  const ringed =
    (one.isTightest || all.length === 1) &&
    contact !== undefined &&
    (straight || isSeenFrom('side', contact)) &&
    ringInSection(paper, step, plane, window, outline);
  if (worded === 'worded' && one.raised >= RAISED) raiseShown(paper, step, plane, one, facts);
  const title = straight
    ? `${facts.name}, ${facts.stage}, from the front`
    : `${facts.name}, place ${one.number} from the side`;
  if (straight) {
    const words = stepSays(facts, all, { ringed });
    if (worded === 'worded') {
      if (facts.measures) paper.note(`${facts.measures} (mm)`);
      for (const word of words.notes) paper.note(word);
    }
    const measured = facts.measures ? [`Measured: ${facts.measures}.`] : [];
    const text = [`${title}, to scale, in mm.`, ...measured, ...words.sentences].join(' ');
    return { svg: paper.svg(title, text, id, width, width * 0.75), text };
  }
  const how = `${placeInWords(one.place)}, ${heightWords(one, step, facts)}`;
  if (worded === 'worded') {
    paper.note(`${one.number}: ${how}`);
    if (ringed) paper.note('Ring: closest');
  }
  const text = `${title}: ${how}.`;
  return { svg: paper.svg(title, text, id, width, width * 0.75), text };
}

/** Lines of a raise are drawn where the picture shows it within so much [mm]. */
const RAISE_SEEN = 4;

/** A dimension from what is below the piece up to it, where the picture shows the raise that is claimed. */
function raiseShown(paper: Paper, step: StepMotion, plane: ViewPlane, one: Shown, facts: StepFacts): void {
  if (one.raised < facts.raise - RAISE_SEEN) return;
  const outline = sectionIn(plane, one.solid);
  const below = step.solids.flatMap(({ box: solid }) => {
    const seen = sectionIn(plane, solid);
    return seen.length < 3 ? [] : [seen];
  });
  let least: { x: number; from: number; to: number } | undefined;
  for (const [x] of [...outline, ...below.flat()]) {
    const own = heightsAt(outline, x);
    if (!own) continue;
    for (const solid of below) {
      const other = heightsAt(solid, x);
      if (!other || other[1] > own[0] + RAISE_SEEN) continue;
      if (!least || own[0] - other[1] < least.to - least.from) least = { x, from: other[1], to: own[0] };
    }
  }
  if (!least || Math.abs(least.to - least.from - facts.raise) > RAISE_SEEN) return;
  paper.dimension([least.x, least.from], [least.x, least.to], 8, '', shownUp(facts.raise));
}

/** The lowest and the highest of a convex polygon at x; undefined beside it. */
function heightsAt(polygon: Points, x: number): readonly [number, number] | undefined {
  let low = Infinity;
  let high = -Infinity;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length] ?? [ax, ay];
    if (x < Math.min(ax, bx) - 1e-9 || x > Math.max(ax, bx) + 1e-9) return;
    const at = Math.abs(bx - ax) < 1e-9 ? [ay, by] : [ay + ((x - ax) / (bx - ax)) * (by - ay)];
    low = Math.min(low, ...at);
    high = Math.max(high, ...at);
  });
  return high < low ? undefined : [low, high];
}

/** A side that slopes no less than this, and no more than the other [sine of the angle], is seen to slope. */
const SLOPES = { least: 0.05, most: 0.996 } as const;

/**
 * The side of a box along which it is looked at, and its direction from above: the long side where that slopes, so that the
 * tilt can be seen; else the broad one where that does, for a lean; else the one that is longest from above.
 */
function seenAlong({ size, turn }: Shown['solid']): { readonly x: number; readonly y: number } {
  const axes = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((unit, axis) => {
    const [x, y, z] = rotate(turn, unit);
    return { x, y, slope: Math.abs(z), long: Math.hypot(x, y) * (size[axis] ?? 0) };
  });
  const sloping = axes.slice(0, 2).find(({ slope }) => slope > SLOPES.least && slope < SLOPES.most);
  return sloping ?? axes.reduce((best, one) => (one.long > best.long + 1e-6 ? one : best));
}

/** A way tells which way is on where it leads so much along the piece, its length counted so much longer [mm]. */
const ONWARD = 0.5;
const ONWARD_LEAST = 200;

function planeOf({ solid, number }: Shown, all: readonly Shown[], straight: boolean): ViewPlane {
  const { centre } = solid;
  if (straight) return uprightPlane(centre, -Math.PI / 2);
  const longest = seenAlong(solid);
  const heading = Math.atan2(longest.y, longest.x);
  // The way to the right: where it leads past this place, else where all of it leads, else as it comes.
  const from = (one: Shown | undefined, other: Shown | undefined): Point => {
    const [a, b] = [one?.solid.centre ?? centre, other?.solid.centre ?? centre];
    return [b[0] - a[0], b[1] - a[1]];
  };
  const ways = [from(all[number - 2], all[number]), from(all[0], all[all.length - 1])];
  const onward = ([dx, dy]: Point): number => Math.cos(heading) * dx + Math.sin(heading) * dy;
  const [dx, dy] = ways.find(
    (way) => Math.abs(onward(way)) > ONWARD * (Math.hypot(...way) + ONWARD_LEAST),
  ) ?? [1, 0];
  const along = onward([dx, dy]);
  return uprightPlane(centre, along < 0 ? heading + Math.PI : heading);
}
