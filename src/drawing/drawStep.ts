import { degrees } from '../core/measures/angle';
import type { PieceSize, Pose } from '../core/measures/piece';
import { tiltOf, type StepMotion, type StepPlace } from '../core/joint/walk/stepMotion';
import type { SolidPart } from '../core/joint/place/solid';
import { rotate, slerp } from '../core/space/quaternion';
import { SpaceChecker } from '../core/space/spaceChecker';
import type { StageName } from '../core/stages/kinds';
import type { StageDrawing } from './drawStage';
import { Paper } from './paper';
import { box, nearestPlaces, type Point, type Points } from './plane';
import { boxCorners, clipped, levelPlane, outlineIn, pieceBox, sectionIn, uprightPlane } from './section';
import type { ViewPlane } from './section';
import { shownGiven, shownUp } from '../core/measures/shown';
import { mmLeft, mmNeeded } from '../core/route/reason';

/** What a step's pictures say besides its motion. */
export interface StepFacts {
  /** `step 3`, or the step's own label. */
  readonly name: string;
  readonly stage: StageName;
  readonly pieceName: string;
  readonly size: PieceSize;
  readonly pose: Pose | undefined;
  /** Clearance of the step [mm a side], as STAGES gives it. */
  readonly clearance: number | undefined;
  /** Where it is closest, or why no way is shown. */
  readonly closest: string;
  /** What the drawing supposes and the survey does not say, in a sentence without its point. */
  readonly supposed?: string | undefined;
  /** What was measured there, in words: `Width 880, Height 2040`. */
  readonly measures: string;
  /** How far it is raised on the way, at most [mm], as MOVES gives it. */
  readonly raise: number;
  /** The verdict says that it passes here, so that a motion that is missing is one that could not be drawn. */
  readonly passes: boolean;
}

export interface StepDrawingOptions {
  /** Begins the ids inside: letters, digits and dashes. */
  readonly id: string;
  /** Greatest width of one picture [px]. */
  readonly width?: number;
}

/** A step in pictures: from above, and each numbered place from the side. */
export interface StepDrawing {
  readonly plan: StageDrawing;
  readonly sides: readonly StageDrawing[];
  /** All of it in words. */
  readonly text: string;
}

/** Building that stands upright: seen from above it keeps its outline. */
const UPRIGHT: ReadonlySet<SolidPart> = new Set(['wall', 'facing wall', 'rail']);
/** What is looked at from the front, since the piece only goes straight through it. */
const STRAIGHT: ReadonlySet<StageName> = new Set(['door', 'passage']);
/** What is seen round the piece's way [mm]. */
const ROUND = { least: 300, beyond: 180, most: 900 } as const;
const ROUND_BELOW = 200;
/** Two numbers nearer than this [px] would lie on each other. */
const NUMBER_APART = 15;

/** A place as it is drawn: let straight down, as far as it can be, on to what it is carried over. */
interface Shown {
  readonly number: number;
  readonly place: StepPlace;
  readonly isTightest: boolean;
  readonly solid: ReturnType<typeof pieceBox>;
}

/**
 * Draws a step's part of the one motion: from above with its numbered places, the tightest heavy and ringed where it is
 * closest, and each place from the side, cut along the piece, so that its tilt and its height can be seen. What is cut is
 * hatched. Every place is one of the
 * motion's own, let straight down on to what it is carried over.
 *
 * @returns plan, sides, and all of it in words; the place alone where no way is shown
 */
export function drawStep(step: StepMotion, facts: StepFacts, options: StepDrawingOptions): StepDrawing {
  const shown = step.whole ? shownPlaces(step, facts) : [];
  const { id, width = 296 } = options;
  // Two stand beside each other under the plan.
  const sideWidth = Math.floor((width - 8) / 2);
  const plan = drawPlan(step, shown, facts, id, width);
  const sides = shown.map((one) => drawSide(step, one, shown, facts, `${id}-${one.number}`, sideWidth));
  return { plan, sides, text: [plan.text, ...sides.map(({ text }) => text)].join(' ') };
}

/** Width of a small picture [px]. */
const SMALL = 92;

/**
 * A step in one small picture without words, for a strip: a flight and a lift from the side, everything else from above.
 */
export function drawStepSmall(step: StepMotion, facts: StepFacts, id: string): StageDrawing {
  const shown = step.whole ? shownPlaces(step, facts) : [];
  const tight = shown.find(({ isTightest }) => isTightest) ?? shown[0];
  if (tight && FROM_THE_SIDE.has(facts.stage)) return drawSide(step, tight, shown, facts, id, SMALL, 'bare');
  return drawPlan(step, tight ? [tight] : [], facts, id, SMALL, 'bare');
}

const FROM_THE_SIDE: ReadonlySet<StageName> = new Set(['flight']);

/** Whether words stand under a picture. */
type Worded = 'worded' | 'bare';

function shownPlaces(step: StepMotion, { size, stage }: StepFacts): Shown[] {
  const { tightest } = step;
  const settle = settler(step, size);
  return chosenPlaces(step, stage).map((place, i): Shown => ({
    number: i + 1,
    place,
    isTightest: place === tightest,
    solid: pieceBox({ at: settle(place), turn: place.turn }, size),
  }));
}

/** All places of what is more than straight; else where it passes the middle of the opening, or is most level. */
function chosenPlaces(step: StepMotion, stage: StageName): readonly StepPlace[] {
  const { positions, tightest } = step;
  if (!STRAIGHT.has(stage)) return positions;
  const through = placeThrough(step);
  if (through) return [through];
  const [first] = [...positions].sort(
    (a, b) =>
      Math.round(a.tilt * 100) - Math.round(b.tilt * 100) || Number(b === tightest) - Number(a === tightest),
  );
  return first ? [first] : [];
}

/** The place of the motion where the middle of the piece is in the middle of a straight row, if it comes there. */
function placeThrough({ keys, exit, tightest }: StepMotion): StepPlace | undefined {
  const middle = exit.at[0] / 2;
  for (const [k, a] of keys.entries()) {
    const b = keys[k + 1];
    if (!b || a.at[0] > middle || b.at[0] < middle || b.at[0] - a.at[0] < 1) continue;
    const s = (middle - a.at[0]) / (b.at[0] - a.at[0]);
    const mix = (axis: 0 | 1 | 2): number => a.at[axis] + (b.at[axis] - a.at[axis]) * s;
    const turn = slerp(a.turn, b.turn, s);
    return {
      at: [mix(0), mix(1), mix(2)],
      turn,
      part: 0.5,
      tilt: tiltOf(turn),
      raise: 0,
      closest: tightest?.closest,
    };
  }
  return undefined;
}

/** Nothing in a house is raised higher [mm], and so near it is let down. */
const HIGHEST = 4000;
const NEAR = 0.5;

/** Lets a piece straight down until it rests; everything between is free, so it stays a place of the way. */
function settler(step: StepMotion, size: PieceSize): (place: StepPlace) => readonly [number, number, number] {
  const checker = new SpaceChecker(step.solids.map((solid) => solid.box));
  checker.hold(size);
  return ({ at: [x, y, z], turn }) => {
    const from = Float64Array.from([x, y, z, ...turn]);
    const to = Float64Array.from(from);
    let free = 0;
    let met = HIGHEST;
    while (met - free > NEAR) {
      const middle = (free + met) / 2;
      to[2] = z - middle;
      if (checker.moveFree(from, 0, to, 0)) free = middle;
      else met = middle;
    }
    return [x, y, z - free];
  };
}

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
  const window = windowOf(shown.length > 0 ? outlines.flat() : placeAlone(step), round(facts), round(facts));
  const layer: readonly [number, number] =
    shown.length > 0 ? heightsOf(shown.flatMap(({ solid }) => boxCorners(solid))) : [300, 1500];
  for (const { part, box: solid } of step.solids) {
    if (!UPRIGHT.has(part)) continue;
    const [low, high] = heightsOf(boxCorners(solid));
    if (high <= layer[0] || low >= layer[1]) continue;
    const seen = clipped(outlineIn(above, solid), window);
    if (seen.length < 3) continue;
    // What the piece passes above or below lies under its outline, and is no wall beside it.
    const passed = outlines.some((outline) => areaOf(clipped(outline, seen)) > 100);
    if (passed) paper.outline(seen, 'dashed');
    else {
      paper.wall(seen);
      paper.outline(seen, 'edge');
    }
  }
  const arrows = worded === 'worded' ? stairArrows(paper, step, window) : [];
  shown.forEach(({ isTightest }, i) => {
    if (isTightest || shown.length === 1) paper.piece(outlines[i] ?? []);
    else paper.outline(outlines[i] ?? [], 'edge');
  });
  ways(paper, shown);
  const tight = shown.find(({ isTightest }) => isTightest || shown.length === 1);
  const contact = tight?.place.closest;
  if (contact && UPRIGHT.has(contact.part)) paper.mark([contact.onSolid[0], contact.onSolid[1]]);
  numbers(paper, shown, outlines, arrows, window, width);
  const title = `${facts.name}, ${facts.stage}, from above`;
  if (facts.measures && worded === 'worded') paper.note(`${facts.measures} (mm)`);
  const words = planWords(facts, shown);
  if (worded === 'worded') for (const word of words.notes) paper.note(word);
  const text = `${title}, to scale. ${[facts.measures && `Measured, in mm: ${facts.measures}.`, ...words.sentences].filter(Boolean).join(' ')}`;
  return { svg: paper.svg(title, text, id, width, width), text };
}

function planWords(facts: StepFacts, shown: readonly Shown[]) {
  if (shown.length === 0) {
    const none = facts.passes
      ? 'This part of the way could not be drawn: the place alone'
      : 'No way shown: the place alone';
    return { notes: [none], sentences: [`${none}.`] };
  }
  const tight = shown.find(({ isTightest }) => isTightest);
  const spare = facts.clearance === undefined ? '' : `${mmLeft(facts.clearance)} a side`;
  const closest = `Closest ${facts.closest}: ${spare}`;
  const high = shownUp(facts.raise);
  const raised = [
    ...(high >= 1 ? [`Raised on the way, at most ${high}`] : []),
    ...(facts.supposed === undefined ? [] : [facts.supposed]),
  ];
  return {
    notes: [
      ...(shown.length > 1 && tight
        ? [`Heavy: place ${tight.number}, the tightest. Ring: closest`]
        : ['Ring: closest']),
      closest,
      ...raised,
    ],
    sentences: [
      `${facts.pieceName}, ${facts.pose ?? ''}, in ${shown.length === 1 ? 'one place' : `${shown.length} places, numbered along the way`}.`,
      ...(tight && shown.length > 1 ? [`Place ${tight.number} is the tightest.`] : []),
      `Closest ${facts.closest}: ${spareInWords(facts)}.`,
      ...raised.map((word) => `${word}.`),
    ],
  };
}

const round = ({ clearance = 0 }: StepFacts): number =>
  Math.min(ROUND.most, Math.max(ROUND.least, 2 * clearance + ROUND.beyond));

/** As the words beside a stage's own drawing have it. */
const spareInWords = ({ clearance = 0 }: StepFacts): string =>
  clearance >= 0 ? `${mmLeft(clearance)} a side to spare` : `${mmNeeded(-clearance)} a side too large`;

/** Clearances as STAGES has them, rounded as in a sentence: never shown greater. */
function windowOf(points: Points, aside: number, below: number): Points {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return box(
    Math.min(...xs) - aside,
    Math.min(...ys) - below,
    Math.max(...xs) + aside,
    Math.max(...ys) + aside,
  );
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

/** Arrows up the flights, so that up and down are told apart; where their words stand. */
function stairArrows(paper: Paper, { solids }: StepMotion, window: Points): Point[] {
  const worded: Point[] = [];
  const above = levelPlane(0);
  for (const { part, box: solid } of solids) {
    if (part !== 'nosings') continue;
    const seen = clipped(outlineIn(above, solid), window);
    if (seen.length < 3 || areaOf(seen) < 1e5) continue;
    paper.outline(seen, 'thin');
    const axis = rotate(solid.turn, [1, 0, 0]);
    const up = Math.sign(axis[2]) || 1;
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
    paper.label(tail, 'up', -dx * 9, dy * 9);
    worded.push(tail);
  }
  return worded;
}

/** Arrows from place to place. */
function ways(paper: Paper, shown: readonly Shown[]): void {
  shown.forEach(({ solid }, i) => {
    const next = shown[i + 1]?.solid;
    if (!next) return;
    const [a, b] = [solid.centre, next.centre];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < 300) return;
    const part = (s: number): Point => [a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s];
    paper.arrow(part(0.25), part(0.75));
  });
}

/** A number at each place, where none stands yet. */
function numbers(
  paper: Paper,
  shown: readonly Shown[],
  outlines: readonly Points[],
  worded: readonly Point[],
  window: Points,
  width: number,
): void {
  if (shown.length < 2) return;
  const [low, , high] = window;
  const span = Math.max((high?.[0] ?? 1) - (low?.[0] ?? 0), (high?.[1] ?? 1) - (low?.[1] ?? 0));
  const apart = (NUMBER_APART * span) / (0.8 * width);
  const taken: Point[] = [...worded];
  // The word beside an arrow's tail reaches farther.
  const words = 1.6 * apart;
  shown.forEach(({ number, solid }, i) => {
    const outline = outlines[i] ?? [];
    const [cx, cy] = solid.centre;
    const spots: Point[] = [
      [cx, cy],
      ...outline.flatMap(([x, y]): Point[] =>
        [0.7, 1, 0.4].map((s) => [cx + (x - cx) * s, cy + (y - cy) * s]),
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
  const plane = planeOf(one, all, facts.stage);
  const outline = sectionIn(plane, one.solid);
  const window = windowOf(outline, round(facts), ROUND_BELOW);
  for (const { box: solid } of step.solids) {
    const seen = clipped(sectionIn(plane, solid), window);
    if (seen.length < 3) continue;
    paper.wall(seen);
    paper.outline(seen, 'edge');
  }
  paper.piece(outline);
  const contact = one.place.closest;
  if (
    (one.isTightest || all.length === 1) &&
    contact &&
    (!UPRIGHT.has(contact.part) || STRAIGHT.has(facts.stage))
  ) {
    const [at] = nearestPlaces(outline, facesNear(step, plane, window, contact.part));
    if (at) paper.mark(at.at);
  }
  const straight = STRAIGHT.has(facts.stage);
  const title = straight
    ? `${facts.name}, ${facts.stage}, from the front`
    : `${facts.name}, place ${one.number} from the side`;
  const how = placeInWords(one.place);
  if (worded === 'worded') paper.note(straight ? how : `${one.number}: ${how}`);
  const text = `${title}: ${how}.`;
  return { svg: paper.svg(title, text, id, width, width * 0.75), text };
}

/** Sections of what the piece is closest to. */
function facesNear(step: StepMotion, plane: ViewPlane, window: Points, part: SolidPart): Points[] {
  return step.solids.flatMap((solid) => {
    if (solid.part !== part) return [];
    const seen = clipped(sectionIn(plane, solid.box), window);
    return seen.length < 3 ? [] : [[...seen, seen[0] ?? [0, 0]]];
  });
}

function planeOf({ solid, number }: Shown, all: readonly Shown[], stage: StageName): ViewPlane {
  const { centre, size, turn } = solid;
  if (STRAIGHT.has(stage)) return uprightPlane(centre, -Math.PI / 2);
  const axes = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((axis, k) => {
    const [x, y] = rotate(turn, axis);
    return { x, y, long: Math.hypot(x, y) * (size[k] ?? 0) };
  });
  const longest = axes.reduce((best, axis) => (axis.long > best.long + 1e-6 ? axis : best));
  const heading = Math.atan2(longest.y, longest.x);
  const other = all[number] ?? all[number - 2];
  const forward = all[number] ? 1 : -1;
  const [dx, dy] = other
    ? [(other.solid.centre[0] - centre[0]) * forward, (other.solid.centre[1] - centre[1]) * forward]
    : [1, 0];
  const along = Math.cos(heading) * dx + Math.sin(heading) * dy;
  return uprightPlane(centre, along < 0 ? heading + Math.PI : heading);
}

/** A long side nearer to the plumb line than this [degrees] stands on end. */
const STANDING = 85;

/** `tilted 24°`, `leaning 30°`, `on end`: how a place is held, by the slope of its long side. */
export function placeInWords({ turn, tilt }: Pick<StepPlace, 'turn' | 'tilt'>): string {
  const slope = shownGiven(degrees(Math.asin(Math.min(1, Math.abs(rotate(turn, [1, 0, 0])[2])))), 0);
  if (slope >= STANDING) return 'on end';
  if (slope > 0) return `tilted ${slope}°`;
  const lean = shownGiven(degrees(tilt), 0);
  return lean === 0 ? 'level' : `leaning ${lean}°`;
}
