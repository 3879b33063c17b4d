import { degrees } from '../core/measures/angle';
import type { PieceSize, Pose } from '../core/measures/piece';
import { tiltOf, type StepMotion, type StepPlace } from '../core/joint/walk/stepMotion';
import type { SolidPart } from '../core/joint/place/solid';
import { rotate, slerp } from '../core/space/quaternion';
import { SpaceChecker } from '../core/space/spaceChecker';
import { isStair, type StageName } from '../core/stages/kinds';
import type { StageDrawing } from './drawStage';
import { Paper } from './paper';
import { box, nearestPlaces, type Point, type Points } from './plane';
import {
  boxCorners,
  clipped,
  inView,
  levelPlane,
  outlineIn,
  pieceBox,
  sectionIn,
  uprightPlane,
} from './section';
import type { ViewPlane } from './section';
import { shownDown, shownGiven, shownUp } from '../core/measures/shown';

/** What a step's pictures say besides its motion. */
export interface StepFacts {
  /** `step 3`, or the step's own label. */
  readonly name: string;
  readonly stage: StageName;
  readonly pieceName: string;
  readonly size: PieceSize;
  /** Where the piece is too large: the size that just passes, which is drawn dashed in its stead. */
  readonly smaller?: PieceSize | undefined;
  readonly pose: Pose | undefined;
  /** Clearance of the step [mm a side], as STAGES gives it. */
  readonly clearance: number | undefined;
  /** Where it is closest, or why no way is shown. */
  readonly closest: string;
  /** What the drawing supposes and the survey does not say, sentences without their points. */
  readonly supposed: readonly string[];
  /** What was measured there, in words: `Width 880, Height 2040`. */
  readonly measures: string;
  /** How far it is raised on the way, at most [mm], as MOVES gives it. */
  readonly raise: number;
  /** The verdict says that it passes here, so that a motion that is missing is one that could not be drawn. */
  readonly passes: boolean;
  /** Which way the stair of a row is walked. */
  readonly wayAt: (row: number) => 'up' | 'down' | undefined;
}

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

/** Building that stands upright: seen from above it keeps its outline. */
const UPRIGHT: ReadonlySet<SolidPart> = new Set(['wall', 'facing wall', 'rail']);
/** What is looked at from the front, since the piece only goes straight through it. */
const STRAIGHT: ReadonlySet<StageName> = new Set(['door', 'passage']);
/** What is seen round the piece's way [mm]. */
const ROUND = { least: 300, beyond: 180, most: 900 } as const;
const ROUND_BELOW = 200;
/** Two numbers nearer than this [px] would lie on each other. */
const NUMBER_APART = 15;

/** A place as it is drawn: let straight down on to what it is carried over, or to the raise that is claimed. */
interface Shown {
  readonly number: number;
  readonly place: StepPlace;
  readonly isTightest: boolean;
  readonly solid: ReturnType<typeof pieceBox>;
  /** So far above what it is carried over [mm]. */
  readonly raised: number;
}

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
  if (only && STRAIGHT.has(facts.stage)) {
    const together = drawSide(step, only, shown, facts, id, width);
    return { together, sides: [], text: together.text };
  }
  if (isInElevation(step, shown, facts)) {
    const together = drawElevation(step, shown, facts, id, width);
    return { together, sides: [], text: together.text };
  }
  const together = drawPlan(step, shown, facts, id, width);
  const sides = fromTheSide(shown, step, facts).map((one) =>
    drawSide(step, one, shown, facts, `${id}-${one.number}`, sideWidth),
  );
  return { together, sides, text: [together.text, ...sides.map(({ text }) => text)].join(' ') };
}

/** The places that are drawn from the side: where all of them look alike there, the tightest. */
function fromTheSide(shown: readonly Shown[], step: StepMotion, facts: StepFacts): readonly Shown[] {
  const words = new Set(shown.map((one) => `${placeInWords(one.place)} ${heightWords(one, step, facts)}`));
  if (words.size > 1) return shown;
  return shown.filter(({ isTightest }) => isTightest || shown.length === 1);
}

/** A flight is walked in one upright plane: its places stand in one picture from the side. */
function isInElevation({ solids }: StepMotion, shown: readonly Shown[], { stage }: StepFacts): boolean {
  if (!ALONG.has(stage) || shown.length < 2 || solids.length === 0) return false;
  const ys = shown.map(({ solid }) => solid.centre[1]);
  return Math.max(...ys) - Math.min(...ys) < IN_ONE_PLANE;
}

const ALONG: ReadonlySet<StageName> = new Set(['flight', 'steps', 'ramp']);
/** Places that stand no farther apart across the way are seen in one picture [mm]. */
const IN_ONE_PLANE = 400;

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
  const window = windowOf(outlines.flat(), round(facts), ROUND_BELOW);
  for (const { box: solid } of step.solids) {
    const seen = clipped(sectionIn(plane, solid), window);
    if (seen.length < 3) continue;
    paper.wall(seen);
    paper.outline(seen, 'edge');
  }
  shown.forEach((one, i) => {
    if (one === tight) drawPiece(paper, outlines[i] ?? [], facts);
    else paper.outline(outlines[i] ?? [], 'edge');
  });
  const contact = tight?.place.closest;
  if (tight && contact) {
    const [at] = nearestPlaces(outlineIn(plane, tight.solid), facesNear(step, plane, window, contact.part));
    if (at) paper.mark(at.at);
  }
  const middles = shown.map(({ solid }) => inView(plane, solid.centre));
  arrows(paper, middles);
  numbers(paper, shown, middles, outlines, [], window, width);
  const way = facts.wayAt(step.row);
  const title = `${facts.name}, ${facts.stage}${way ? ` going ${way}` : ''}, from the side`;
  if (facts.measures) paper.note(`${facts.measures} (mm)`);
  const words = planWords(facts, shown);
  for (const word of words.notes) paper.note(word);
  const places = shown.map((one) => `${placeInWords(one.place)}, ${heightWords(one, step, facts)}`);
  const ends = shown.map((one) => {
    const [low, high] = heightsOfEnds(one, step);
    const heights = high - low <= LEVEL_WITHIN ? `${low}` : `${low} and ${high}`;
    return `${one.number} ${placeInWords(one.place)}, ${heights}`;
  });
  paper.note(`Its ends above the floor at the foot: ${ends.join('; ')}`);
  const text = [
    `${title}, to scale, in mm.`,
    ...(facts.measures ? [`Measured: ${facts.measures}.`] : []),
    ...words.sentences,
    ...places.map((how, i) => `Place ${i + 1}: ${how}.`),
  ].join(' ');
  return { svg: paper.svg(title, text, id, width, width), text };
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

function shownPlaces(step: StepMotion, facts: StepFacts): Shown[] {
  const { tightest } = step;
  const size = facts.smaller ?? facts.size;
  const settle = settler(step, size);
  return chosenPlaces(step, facts.stage).map((place, i): Shown => {
    const [x, y, low] = settle(place);
    // On a flight or steps it is drawn on the nosings: what it is raised by is there to be seen all the same.
    const raised = ALONG.has(facts.stage) ? 0 : Math.min(place.raise, facts.raise, place.at[2] - low);
    return {
      number: i + 1,
      place,
      isTightest: place === tightest,
      solid: pieceBox({ at: [x, y, low + raised], turn: place.turn }, size),
      raised,
    };
  });
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
  const words = planWords(facts, shown);
  const upAndDown = worded === 'worded' ? stairArrows(paper, step, facts, window) : [];
  shown.forEach(({ isTightest }, i) => {
    if (isTightest || shown.length === 1) drawPiece(paper, outlines[i] ?? [], facts);
    else paper.outline(outlines[i] ?? [], 'edge');
  });
  const middles = shown.map(({ solid }): Point => [solid.centre[0], solid.centre[1]]);
  arrows(paper, middles);
  const tight = shown.find(({ isTightest }) => isTightest || shown.length === 1);
  const contact = tight?.place.closest;
  if (contact && UPRIGHT.has(contact.part)) paper.mark([contact.onSolid[0], contact.onSolid[1]]);
  numbers(paper, shown, middles, outlines, upAndDown, window, width);
  const title = `${facts.name}, ${facts.stage}, from above`;
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

function planWords(facts: StepFacts, shown: readonly Shown[]) {
  if (shown.length === 0) {
    const none = facts.passes
      ? 'This part of the way could not be drawn: the place alone'
      : 'No way shown: the place alone';
    return { notes: [none], sentences: [`${none}.`] };
  }
  const tight = shown.find(({ isTightest }) => isTightest);
  const high = shownUp(facts.raise);
  const raised = [...(high >= RAISE_TOLD ? [`Raised on the way, at most ${high}`] : []), ...facts.supposed];
  const place = shown.length > 1 && tight ? `place ${tight.number}, the tightest` : '';
  const said = facts.smaller
    ? [
        `Dashed: the size that just passes${place && `, at ${place}`}`,
        `No way shown for the piece itself: ${spareInWords(facts)}`,
      ]
    : [
        ...(place ? [`Heavy: ${place}. Ring: closest`] : ['Ring: closest']),
        `Closest ${facts.closest}: ${spareOf(facts)}`,
      ];
  return {
    notes: [...said, ...raised],
    sentences: [
      `${facts.pieceName}, ${sizeWords(facts.size)}, ${facts.pose ?? ''}, in ${shown.length === 1 ? 'one place' : `${shown.length} places, numbered along the way`}.`,
      ...(facts.smaller
        ? said.map((word) => `${word}.`)
        : [
            ...(place && tight ? [`Place ${tight.number} is the tightest.`] : []),
            `Closest ${facts.closest}: ${spareInWords(facts)}.`,
          ]),
      ...raised.map((word) => `${word}.`),
    ],
  };
}

/** A raise below this [mm] is what moves stray between their places. */
const RAISE_TOLD = 5;

const sizeWords = ({ length, breadth, thickness }: PieceSize): string =>
  [length, breadth, thickness].map((side) => shownGiven(side)).join(' x ');

const spareOf = ({ clearance }: StepFacts): string =>
  clearance === undefined ? '' : `${figure(clearance)} a side`;

const round = ({ clearance = 0 }: StepFacts): number =>
  Math.min(ROUND.most, Math.max(ROUND.least, 2 * clearance + ROUND.beyond));

const spareInWords = ({ clearance = 0 }: StepFacts): string =>
  clearance >= 0 ? `${figure(clearance)} a side to spare` : `${-figure(clearance)} a side too large`;

/** Clearances as STAGES has them, rounded as in a sentence: never shown greater. */
const figure = (value: number): number => shownDown(value);

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

/** Arrows the way each flight is walked, with the word for it; where their words stand. */
function stairArrows(paper: Paper, { solids }: StepMotion, { wayAt }: StepFacts, window: Points): Point[] {
  const worded: Point[] = [];
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
    paper.label(tail, word, -dx * 9, dy * 9);
    worded.push(tail);
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
  const [low, , high] = window;
  const span = Math.max((high?.[0] ?? 1) - (low?.[0] ?? 0), (high?.[1] ?? 1) - (low?.[1] ?? 0));
  const apart = (NUMBER_APART * span) / (0.8 * width);
  const taken: Point[] = [...worded];
  // The word beside an arrow's tail reaches farther.
  const words = 1.6 * apart;
  shown.forEach(({ number }, i) => {
    const outline = outlines[i] ?? [];
    const [cx, cy] = middles[i] ?? [0, 0];
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
  const window = windowOf(outline, round(facts), ROUND_BELOW + one.raised);
  for (const { box: solid } of step.solids) {
    const seen = clipped(sectionIn(plane, solid), window);
    if (seen.length < 3) continue;
    paper.wall(seen);
    paper.outline(seen, 'edge');
  }
  drawPiece(paper, outline, facts);
  const contact = one.place.closest;
  if (
    (one.isTightest || all.length === 1) &&
    contact &&
    (!UPRIGHT.has(contact.part) || STRAIGHT.has(facts.stage))
  ) {
    const [at] = nearestPlaces(outline, facesNear(step, plane, window, contact.part));
    if (at) paper.mark(at.at);
  }
  if (worded === 'worded' && one.raised >= RAISE_TOLD) raiseShown(paper, step, plane, one, facts);
  const straight = STRAIGHT.has(facts.stage);
  const title = straight
    ? `${facts.name}, ${facts.stage}, from the front`
    : `${facts.name}, place ${one.number} from the side`;
  if (straight) {
    const words = planWords(facts, all);
    if (worded === 'worded') {
      if (facts.measures) paper.note(`${facts.measures} (mm)`);
      for (const word of words.notes) paper.note(word);
    }
    const measured = facts.measures ? [`Measured: ${facts.measures}.`] : [];
    const text = [`${title}, to scale, in mm.`, ...measured, ...words.sentences].join(' ');
    return { svg: paper.svg(title, text, id, width, width * 0.75), text };
  }
  const how = `${placeInWords(one.place)}, ${heightWords(one, step, facts)}`;
  if (worded === 'worded') paper.note(`${one.number}: ${how}`);
  const text = `${title}: ${how}.`;
  return { svg: paper.svg(title, text, id, width, width * 0.75), text };
}

/** Heights nearer to each other than this are one [mm]. */
const LEVEL_WITHIN = 3;

/** `low end 40, high end 830 above the landing`: how high the piece's lower side is, and above which floor. */
function heightWords(one: Shown, step: StepMotion, { stage }: StepFacts): string {
  const above = LANDINGS.has(stage) ? 'the landing' : isStair(stage) ? 'the floor at the foot' : 'the floor';
  const [low, high] = heightsOfEnds(one, step);
  if (high - low <= LEVEL_WITHIN) return low < 0 ? `${-low} below ${above}` : `${low} above ${above}`;
  const aside = (z: number): string => `${Math.abs(z)} ${z < 0 ? 'below' : 'above'}`;
  return low < 0
    ? `low end ${aside(low)}, high end ${aside(high)} ${above}`
    : `low end ${low}, high end ${high} above ${above}`;
}

/** Heights [mm, whole] of its two ends above the lower floor of the step. */
function heightsOfEnds({ solid }: Shown, { exit }: StepMotion): readonly [number, number] {
  const floor = Math.min(0, exit.at[2]);
  const [low, high] = endHeights(solid);
  return [shownGiven(low - floor, 0), shownGiven(high - floor, 0)];
}

const LANDINGS: ReadonlySet<StageName> = new Set(['quarter landing', 'half landing', 'winder']);

/** Heights [mm] of the lowest corners at the two ends of the piece, of its breadth where it stands on end; the lower first. */
function endHeights(solid: Shown['solid']): readonly [number, number] {
  const axis = slopeOf(solid.turn, 0) >= STANDING ? 1 : 0;
  const corners = boxCorners(solid);
  const lowest = (end: 0 | 1): number =>
    Math.min(...corners.filter((_, i) => ((i >> axis) & 1) === end).map(([, , z]) => z));
  const ends = [lowest(0), lowest(1)] as const;
  return ends[0] <= ends[1] ? ends : [ends[1], ends[0]];
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

/** Sections of what the piece is closest to. */
function facesNear(step: StepMotion, plane: ViewPlane, window: Points, part: SolidPart): Points[] {
  return step.solids.flatMap((solid) => {
    if (solid.part !== part) return [];
    const seen = clipped(sectionIn(plane, solid.box), window);
    return seen.length < 3 ? [] : [[...seen, seen[0] ?? [0, 0]]];
  });
}

/** The axis of a box that is longest as seen from above, and its direction there. */
function longestInPlan({ size, turn }: Shown['solid']): {
  readonly axis: number;
  readonly x: number;
  readonly y: number;
} {
  const axes = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((unit, axis) => {
    const [x, y] = rotate(turn, unit);
    return { axis, x, y, long: Math.hypot(x, y) * (size[axis] ?? 0) };
  });
  return axes.reduce((best, one) => (one.long > best.long + 1e-6 ? one : best));
}

function planeOf({ solid, number }: Shown, all: readonly Shown[], stage: StageName): ViewPlane {
  const { centre } = solid;
  if (STRAIGHT.has(stage)) return uprightPlane(centre, -Math.PI / 2);
  const longest = longestInPlan(solid);
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

/** Slope [degrees, whole] of one of a box's sides. */
const slopeOf = (turn: StepPlace['turn'], axis: 0 | 1): number =>
  Math.round(degrees(Math.asin(Math.min(1, Math.abs(rotate(turn, axis === 0 ? [1, 0, 0] : [0, 1, 0])[2])))));

/** `tilted 24°`, `leaning 30°`, `on end`: how a place is held, by the slope of its long side. */
export function placeInWords({ turn, tilt }: Pick<StepPlace, 'turn' | 'tilt'>): string {
  const slope = slopeOf(turn, 0);
  if (slope >= STANDING) return 'on end';
  if (slope > 0) return `tilted ${slope}°`;
  const lean = shownGiven(degrees(tilt), 0);
  return lean === 0 ? 'level' : `leaning ${lean}°`;
}
