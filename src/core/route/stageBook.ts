import { present } from '../lists/present';
import { Remembered } from '../lists/remembered';
import type { RowsAsOne } from '../joint/jointRow';
import type { PieceSize } from '../measures/piece';
import { ALL_HOLDS, type Hold } from '../motion/hold';
import {
  routePassages,
  SEARCH_WORK,
  retracedPassages,
  type FoundPassage,
} from '../stages/landing/landingPassages';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import type { StageAnswer } from '../motion/stageAnswer';
import type { Leaning, StagePassage } from '../motion/stagePassage';
import type { TurningSpace } from '../motion/turningSpace';
import { spatialMeasures, type StageName } from '../stages/kinds';
import { solverOf, type PlacedMeasures } from '../stages/solvers';
import type { SolvedStage, SpaceStage } from '../stages/stageSolver';
import type { LimitCause } from './limitCause';
import { deepProof } from './deepProof';
import { leaningRoom, poseChanges, tiltingRoom } from './poseChange';
import { tapedMeasures, tapedPiece, type TapeCase } from './tapeCase';

/** Holds by number, as indices into ALL_HOLDS. */
export const HOLD_COUNT = ALL_HOLDS.length;
/** The number of a hold [count]: its index in ALL_HOLDS. */
export const holdIndex = (hold: Hold): number => ALL_HOLDS.indexOf(hold);

/** A stage's passage in one tape case, as the book keeps it: holds are indices into ALL_HOLDS. */
export interface BookPassage {
  readonly from: number;
  readonly to: number;
  /** [mm a side] */
  readonly clearance: number;
  /** It leans: the places on both sides must have room for that. */
  readonly turningRoom: boolean;
  /** Row of a side door past which the piece is pushed on the way, to come back. */
  readonly pastDoor?: number | undefined;
  /** Raised high, over a rail, or looked for only as measured: at best tight. */
  readonly capped: boolean;
  readonly answer: StageAnswer;
  /** So much of its length may stand on the landing before and after [mm]. */
  readonly onLanding: StagePassage['onLanding'];
  /** What beside the stage leaves no more, where something does. */
  readonly limit?: LimitCause | undefined;
  /** With the tape against it it was not looked for. */
  readonly measuredOnly?: true;
  /** The rows that it passes as one space, as measured. */
  readonly block?: RowsAsOne | undefined;
}

/** All that one stage answers for one piece in one tape case. */
export interface StageCase {
  readonly passages: readonly BookPassage[];
  /** Proved: no motion passes with more padding [mm a side]. */
  readonly atMost: number;
  /** The condition that gives it. */
  readonly bound: string;
}

/** Pose changes at a stage in one tape case: 6 x 6 clearances, and room to lean and to tilt for each hold. */
export interface TurningCase {
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly roomBefore: TurningRoom;
  readonly roomAfter: TurningRoom;
}

/** Clearance of leaning and of tilting and back, by hold. */
export interface TurningRoom {
  readonly lean: readonly number[];
  readonly tilt: readonly number[];
}

/** What leaning and tilting leave a piece in a space, by hold. */
export const turningRoom = (space: TurningSpace, size: PieceSize): TurningRoom => ({
  lean: leaningRoom(space, size),
  tilt: tiltingRoom(space, size),
});

/** A piece as the book knows it: equal sizes are one entry. */
export interface BookPiece {
  /** Its sizes as text: the same in every book. */
  readonly id: string;
  /** Its number in this book. */
  readonly index: number;
  readonly size: PieceSize;
  readonly taped: Readonly<Record<TapeCase, PieceSize>>;
}

/** A stage with its measures as the book knows it: equal stages are one entry. */
export interface BookStage {
  /** The stage and its measures as text: the same in every book. */
  readonly id: string;
  readonly stage: StageName;
  readonly measures: PlacedMeasures;
  readonly cases: Readonly<Record<TapeCase, (StageCase | undefined)[]>>;
  /** The same without the ways that need room to lean, where those are work of their own. */
  readonly steady: Readonly<Record<TapeCase, (StageCase | undefined)[]>>;
  readonly turning: Readonly<Record<TapeCase, (TurningCase | null | undefined)[]>>;
  readonly blocked: (string | null | undefined)[];
  /** The motions found as measured, where the stage is searched in space. */
  readonly found: (readonly FoundPassage[] | undefined)[];
  /** How often it has been looked up and not been done with. */
  uses: number;
}

/** A measure [mm] without which a stage is not looked up in the book: a row that lacks it is not judged. */
export const needed = (
  { stage, measures }: BookStage,
  name: 'width' | 'widthOut' | 'height' | 'ceiling',
): number => present(measures[name], `${name} of a ${stage} that is judged`);

/** Remembers what equal stages answered for equal pieces, within one call. */
export interface StageBook {
  /** [mm] */
  readonly tape: number;
  readonly landingWork: number;
  stageOf(stage: StageName, measures: PlacedMeasures): BookStage;
  pieceOf(size: PieceSize): BookPiece;
  /**
   * @param leaning `without leaning`: ways that need room to lean may be missing; nothing else changes
   * @param enough clearance [mm a side] above which more is of no interest with the tape against the piece: what takes long
   *   to find is then looked for no farther
   */
  caseOf(
    stage: BookStage,
    piece: BookPiece,
    tapeCase: TapeCase,
    leaning?: Leaning,
    enough?: number,
  ): StageCase;
  turningOf(stage: BookStage, piece: BookPiece, tapeCase: TapeCase): TurningCase | null;
  /** The condition by which a piece is proved not to pass a stage, even with the tape in its favour. */
  blockedBy(stage: BookStage, piece: BookPiece): string | undefined;
  /** What was worked out under this key with the same tape, in this book or another, or is now. */
  remembered(key: string, make: () => BookPassage[]): BookPassage[];
  /** Forgets the answers of a stage once it has been done with as often as it was looked up. */
  doneWith(stage: BookStage): void;
}

/** Joints that are remembered at a time: more than a route has. */
const MOST_JOINTS = 2000;
/** Stages searched in space that are remembered at a time. */
const MOST_SEARCHED = 500;
/** Proofs that are remembered at a time: a month's stages with its pieces. */
const MOST_PROOFS = 2000;
/** A motion is longer than what is said of it. */
const MOST_MOTIONS = 60;

// Of all books: one workbook asks for the same surveys in several functions. Each answer depends on its key alone.
const knownJoints = new Remembered<BookPassage[]>(MOST_JOINTS);
const knownSearched = new Remembered<StageCase>(MOST_SEARCHED);
const knownProofs = new Remembered<{ readonly bound: string | undefined }>(MOST_PROOFS);
const knownMotions = new Remembered<readonly FoundPassage[]>(MOST_MOTIONS);

/** Measures of which some may be undefined: those are not there. */
export type LooseMeasures = { readonly [Name in keyof PlacedMeasures]: PlacedMeasures[Name] | undefined };

/** A stage with its measures as text: equal for equal ones. */
export function stageKey(stage: StageName, measures: LooseMeasures): string {
  let key: string = stage;
  for (const name of spatialMeasures(stage)) key += `|${measures[name] ?? ''}`;
  if (measures.footOnLanding) key += '|foot';
  if (measures.headOnLanding) key += '|head';
  if (measures.endsOpen) key += '|open';
  if (measures.noTreads) key += '|no treads';
  if (measures.approachWidth !== undefined) key += `|approach ${measures.approachWidth}`;
  return key;
}

/**
 * Opens a book for one tape [mm].
 * @param landingWork places a search on a landing or a winder may look at for one padding; 0: no search
 */
export function stageBook(tape: number, landingWork = SEARCH_WORK): StageBook {
  const stages = new Map<string, BookStage>();
  const pieces = new Map<string, BookPiece>();

  const book: StageBook = {
    tape,
    landingWork,
    stageOf(stage, measures) {
      const key = stageKey(stage, measures);
      let entry = stages.get(key);
      if (!entry) {
        entry = {
          id: key,
          stage,
          measures,
          cases: { worst: [], measured: [], best: [] },
          steady: { worst: [], measured: [], best: [] },
          turning: { worst: [], measured: [], best: [] },
          blocked: [],
          found: [],
          uses: 0,
        };
        stages.set(key, entry);
      }
      entry.uses++;
      return entry;
    },
    pieceOf(size) {
      const key = `${size.length}|${size.breadth}|${size.thickness}`;
      let entry = pieces.get(key);
      if (!entry) {
        entry = {
          id: key,
          index: pieces.size,
          size,
          taped: {
            worst: tapedPiece(size, tape, 'worst'),
            measured: size,
            best: tapedPiece(size, tape, 'best'),
          },
        };
        pieces.set(key, entry);
      }
      return entry;
    },
    caseOf(stage, piece, tapeCase, leaning = 'with leaning', enough = Infinity) {
      const all = stage.cases[tapeCase];
      const solver = solverOf(stage.stage);
      if (solver.solvedBy !== 'closed form') {
        // Only the worst case is looked at no farther than is enough: what is found as measured holds for every allowance.
        const most = tapeCase === 'worst' ? enough : Infinity;
        const key = `${stage.id}|${piece.id}|${tapeCase}|${tape}|${landingWork}|${most}`;
        return knownSearched.get(key, () => searchedCase(stage, solver, piece, book, tapeCase, most));
      }
      const solved = (how: Leaning): StageCase =>
        solvedCase(stage, solver, piece.taped[tapeCase], tape, tapeCase, how);
      if (all[piece.index] === undefined && leaning === 'without leaning' && solver.leaningApart)
        return (stage.steady[tapeCase][piece.index] ??= solved('without leaning'));
      return (all[piece.index] ??= solved('with leaning'));
    },
    turningOf(stage, piece, tapeCase) {
      const known = stage.turning[tapeCase][piece.index];
      if (known !== undefined) return known;
      return (stage.turning[tapeCase][piece.index] = turningCase(stage, piece, tape, tapeCase));
    },
    blockedBy(stage, piece) {
      const known = stage.blocked[piece.index];
      if (known !== undefined) return known ?? undefined;
      const key = `${stage.id}|${piece.id}|${tape}|${landingWork}`;
      const { bound } = knownProofs.get(key, () => ({ bound: proofOf(book, stage, piece) }));
      stage.blocked[piece.index] = bound ?? null;
      return bound;
    },
    remembered(key, make) {
      return knownJoints.get(`${tape}|${key}`, make);
    },
    doneWith(stage) {
      if (--stage.uses > 0) return;
      for (const tapeCase of ['worst', 'measured', 'best'] as const) {
        stage.cases[tapeCase].length = 0;
        stage.steady[tapeCase].length = 0;
        stage.turning[tapeCase].length = 0;
      }
      stage.blocked.length = 0;
      stage.found.length = 0;
    },
  };
  return book;
}

function proofOf(book: StageBook, stage: BookStage, piece: BookPiece): string | undefined {
  // What passes as measured is blocked by nothing; mostly it passes without leaning.
  if (somePasses(book.caseOf(stage, piece, 'measured', 'without leaning'))) return undefined;
  const measured = book.caseOf(stage, piece, 'measured');
  if (somePasses(measured)) return undefined;
  if (measured.atMost < 0) {
    const best = book.caseOf(stage, piece, 'best');
    if (best.atMost < 0) return best.bound;
  }
  const shown = measured.passages.reduce((most, passage) => Math.max(most, passage.clearance), -Infinity);
  return deepProof(stage.stage, stage.measures, book.tape, piece.taped.best, shown);
}

const somePasses = ({ passages }: StageCase): boolean => passages.some((passage) => passage.clearance >= 0);

/** A passage as the book keeps it. */
export const bookPassage = ({
  from,
  to,
  answer,
  needsTurningRoom,
  onLanding,
}: StagePassage): BookPassage => ({
  from: holdIndex(from),
  to: holdIndex(to),
  clearance: answer.clearance,
  turningRoom: needsTurningRoom === true,
  capped: (answer.raise ?? 0) > RAISE_BY_HAND || answer.overRail === true || answer.byChance === true,
  answer,
  onLanding,
});

function solvedCase(
  { stage, measures: given }: BookStage,
  solver: SolvedStage<PlacedMeasures>,
  size: PieceSize,
  tape: number,
  tapeCase: TapeCase,
  leaning: Leaning,
): StageCase {
  const answers = tapedMeasures(stage, given, tape, tapeCase).map((measures) =>
    solver.passages(measures, size, leaning),
  );
  const [first, ...others] = answers;
  if (first && others.length === 0) {
    const { atMost, bound } = provedOf(first);
    return { passages: first.map((passage) => bookPassage(passage)), atMost, bound };
  }
  if (tapeCase === 'best') {
    // Nothing is proved unless it is proved for every rise and going within the tape.
    const proofs = answers.map(provedOf);
    const weakest = proofs.reduce((a, b) => (b.atMost > a.atMost ? b : a));
    return { passages: [], ...weakest };
  }
  const booked = answers.map((passages) => passages.map((passage) => bookPassage(passage)));
  return { passages: booked.reduce(shownInBoth), atMost: Infinity, bound: '' };
}

/**
 * The case of a stage that is searched in space. As measured its motions are looked for; with the tape against
 * the piece the same motions are gone over again; with the tape for it only the proof counts, so no way is
 * shown there.
 * @param enough clearance [mm a side] above which motions are not gone over again
 */
function searchedCase(
  entry: BookStage,
  solver: SpaceStage<PlacedMeasures>,
  piece: BookPiece,
  { tape, landingWork }: Pick<StageBook, 'tape' | 'landingWork'>,
  tapeCase: TapeCase,
  enough: number,
): StageCase {
  const { stage } = entry;
  const size = piece.taped[tapeCase];
  const stages = tapedMeasures(stage, entry.measures, tape, tapeCase).map((m) => solver.searched(m));
  const proofs = stages.map((searched) => searched.proved(size));
  const proof = proofs.reduce((a, b) => (b.atMost > a.atMost ? b : a));
  const proved = tapeCase === 'worst' && stages.length > 1 ? { atMost: Infinity, bound: '' } : { ...proof };
  if (tapeCase === 'best') return { passages: [], ...proved };
  const found = (entry.found[piece.index] ??= knownMotions.get(`${entry.id}|${piece.id}|${landingWork}`, () =>
    routePassages(solver.searched(entry.measures), piece.size, landingWork),
  ));
  const booked = (passages: readonly StagePassage[]): BookPassage[] => passages.map((p) => bookPassage(p));
  if (tapeCase === 'measured' || tape === 0)
    return { passages: booked(found.map((f) => f.passage)), ...proved };
  return {
    passages: stages.map((s) => booked(retracedPassages(s, size, found, enough))).reduce(shownInBoth),
    ...proved,
  };
}

/** A passage in which the piece is raised so much more above what is below it [mm]: nothing where that is floor. */
export function raisedBy(passage: BookPassage, raised: number | undefined): BookPassage {
  if (raised === undefined) return passage;
  const raise = (passage.answer.raise ?? 0) + raised;
  return {
    ...passage,
    capped: passage.capped || raise > RAISE_BY_HAND,
    answer: { ...passage.answer, raise },
  };
}

/**
 * A way counts only as far as it is shown for every rise and going within the tape: between the same two ways
 * of being held, the lesser clearance of two lists. A way that is capped in either is capped, and one that needs the flights
 * for all its length in either needs them.
 */
export function shownInBoth(some: readonly BookPassage[], others: readonly BookPassage[]): BookPassage[] {
  const bestLike = (
    passages: readonly BookPassage[],
    like: BookPassage,
    free: boolean,
    onLanding: boolean,
  ): BookPassage | undefined => {
    let best: BookPassage | undefined;
    for (const passage of passages) {
      const alike =
        passage.from === like.from && passage.to === like.to && passage.turningRoom === like.turningRoom;
      if (!alike || (free && passage.capped) || (onLanding && !passage.onLanding)) continue;
      if (!best || passage.clearance > best.clearance) best = passage;
    }
    return best;
  };
  return some.flatMap((passage) => {
    const onLanding = passage.onLanding !== undefined;
    const other =
      bestLike(others, passage, !passage.capped, onLanding) ??
      bestLike(others, passage, false, onLanding) ??
      bestLike(others, passage, false, false);
    if (!other) return [];
    const lesser = other.clearance < passage.clearance ? other : passage;
    const capped = passage.capped || other.capped;
    const all = !passage.onLanding || !other.onLanding;
    if (lesser.capped === capped && all === (lesser.onLanding === undefined)) return [lesser];
    return [{ ...lesser, capped, onLanding: all ? undefined : lesser.onLanding }];
  });
}

function provedOf(passages: readonly StagePassage[]): { atMost: number; bound: string } {
  let atMost = Infinity;
  let bound = '';
  for (const { answer } of passages) {
    if (answer.atMost < atMost) {
      atMost = answer.atMost;
      bound = answer.bound ?? '';
    }
  }
  return { atMost, bound };
}

function turningCase(
  entry: BookStage,
  piece: BookPiece,
  tape: number,
  tapeCase: TapeCase,
): TurningCase | null {
  // No space depends on rise or going, so one set of taped measures stands for all.
  const [measures] = tapedMeasures(entry.stage, entry.measures, tape, tapeCase);
  const spaces = solverOf(entry.stage).turningSpaces(measures);
  if (!spaces) return null;
  const size = piece.taped[tapeCase];
  const before = poseChanges(spaces.before, size);
  const roomBefore = turningRoom(spaces.before, size);
  if (spaces.after === spaces.before) return { before, after: before, roomBefore, roomAfter: roomBefore };
  return {
    before,
    after: poseChanges(spaces.after, size),
    roomBefore,
    roomAfter: turningRoom(spaces.after, size),
  };
}
