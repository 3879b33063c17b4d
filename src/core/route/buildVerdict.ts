import { CAUTIONS } from '../measures/cautions';
import { shownDown, shownUp } from '../measures/shown';
import type { PieceSize, Pose } from '../measures/piece';
import { carryAdvice } from '../carrying/carryAdvice';
import { isStair, usesMeasure, type StageName } from '../stages/kinds';
import type { RouteCase, RouteJudgement } from './judgeRoute';
import type { PreparedRoute } from './preparedRoute';
import { handlers } from '../carrying/handlers';
import { GUIDELINE_EACH } from '../carrying/teamLimit';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import { mmLeft, mmNeeded } from './reason';
import { verdictRank, type Verdict } from './verdict';
import type { Tightness } from './verdictClass';

/** One piece of a build, as it is carried. */
export interface BuildPiece {
  readonly name: string;
  /** Undefined when a size is missing or refused; `problem` says which. */
  readonly size: PieceSize | undefined;
  readonly problem: string | undefined;
  /** [kg]; undefined when it is not given. */
  readonly mass: number | undefined;
  /** How many are alike; undefined when that cannot be taken. */
  readonly count: number | undefined;
}

/** One way to supply a table. */
export interface Build {
  readonly name: string;
  readonly pieces: readonly BuildPiece[];
}

/** What is said of a build on a route: of its worst piece, at the step that decides. */
export interface BuildVerdict {
  readonly build: string;
  readonly verdict: Verdict;
  /** [mm a side] */
  readonly clearance: number | undefined;
  /** The deciding step as it is called; undefined when there is none. */
  readonly step: number | string | undefined;
  readonly stage: StageName | undefined;
  readonly piece: string;
  readonly pose: Pose | undefined;
  /** Mass of the heaviest single piece [kg]; undefined when a piece's mass is not given. */
  readonly heaviest: number | undefined;
  readonly carry: string;
  readonly reason: string;
  readonly caution: string;
  /** Why it is tight, where it is. */
  readonly tightness?: Tightness;
  /** It is above the team guideline and goes where no aid is known: raised higher than by hand, or on winding treads. */
  readonly noAid?: boolean;
}

const NO_MASS = 'not known: a mass is missing';
/** To plan an aid where none can stand would be a comfort and no help. */
const NO_AID = 'a written assessment: no aid known on this way';

/**
 * Judges a build: it is as good as its worst piece. A piece that lies inside another of the same build passes
 * wherever that one does, by the same motion, so only the others are judged.
 * @param caseOf judges a piece on this route, as `routeCases` does
 */
export function judgeBuild(
  route: PreparedRoute,
  build: Build,
  caseOf: (size: PieceSize) => RouteCase,
): BuildVerdict {
  const masses = build.pieces.flatMap(({ mass }) => mass ?? []);
  const heaviest = masses.length < build.pieces.length ? undefined : Math.max(0, ...masses);
  const rest = {
    build: build.name,
    heaviest,
    carry: heaviest === undefined ? NO_MASS : carryAdvice(heaviest),
    caution: cautionOf(route, heaviest),
  };
  const worst = worstPiece(build, caseOf);
  if (worst.problem !== undefined) {
    return {
      ...rest,
      verdict: 'not measured',
      clearance: undefined,
      step: undefined,
      stage: undefined,
      piece: worst.name,
      pose: undefined,
      reason: worst.problem,
    };
  }
  const judged = worst.found.judge();
  const noAid = withoutAid(route, build, worst.name, judged, caseOf);
  const row = route.steps[judged.step]?.row;
  return {
    ...rest,
    verdict: judged.verdict,
    clearance: judged.tellsNothing === true ? undefined : judged.clearance,
    step: route.steps[judged.step]?.name,
    stage: row?.stage,
    piece: worst.name,
    pose: judged.pose,
    reason: judged.reason + (noAid ?? '') + besideLimiting(route, build, worst.name, judged, caseOf),
    ...(judged.tightness === undefined ? {} : { tightness: judged.tightness }),
    ...(noAid === undefined ? {} : { noAid: true, carry: NO_AID }),
  };
}

/** The heaviest piece's own line, where another piece limits the build: a leg's clearance says nothing of the slate. */
function besideLimiting(
  route: PreparedRoute,
  build: Build,
  limiting: string,
  { verdict }: RouteJudgement,
  caseOf: (size: PieceSize) => RouteCase,
): string {
  if (verdict !== 'goes' && verdict !== 'tight') return '';
  let heaviest: BuildPiece | undefined;
  for (const piece of build.pieces) if ((piece.mass ?? 0) > (heaviest?.mass ?? 0)) heaviest = piece;
  if (!heaviest?.size || heaviest.name === limiting) return '';
  const { clearance, pose, step } = caseOf(heaviest.size).judge();
  const at = route.steps[step];
  if (clearance === undefined || !at) return '';
  const where = `${at.called} (${at.row.stage ?? at.row.stageText})`;
  return `; the heaviest, ${heaviest.name}: ${mmLeft(clearance)} a side left at ${where}${pose ? `, ${pose}` : ''}`;
}

/**
 * The pieces above the team guideline that are raised higher than by hand, or carried on winding treads, whichever piece
 * limits the build: there is no aid for either, since a stair climber needs straight flights and landings to turn on.
 * @returns the clauses that say so, or undefined
 */
function withoutAid(
  route: PreparedRoute,
  build: Build,
  limiting: string,
  judged: RouteJudgement,
  caseOf: (size: PieceSize) => RouteCase,
): string | undefined {
  if (judged.verdict !== 'tight') return undefined;
  const winding = route.steps.some(({ caps }) => caps.some(({ kind }) => kind === 'winding treads'));
  const clauses = build.pieces.flatMap(({ name, mass, size }): string[] => {
    if (mass === undefined || !size || handlers({ mass, limitEach: GUIDELINE_EACH }).ok) return [];
    const { verdict, raise } = name === limiting ? judged : caseOf(size).judge();
    if (verdict !== 'tight') return [];
    const who = name === limiting ? '' : `${name} `;
    if (raise > RAISE_BY_HAND) return [`; ${who}raised ${mmNeeded(raise)}: no aid known`];
    return winding ? [`; ${who}on winding treads: no aid known`] : [];
  });
  return clauses.length === 0 ? undefined : clauses.join('');
}

type Worst =
  | { readonly name: string; readonly problem: string }
  | { readonly name: string; readonly problem: undefined; readonly found: RouteCase };

function worstPiece(build: Build, caseOf: (size: PieceSize) => RouteCase): Worst {
  let worst: { name: string; found: RouteCase } | undefined;
  for (const piece of outermost(build.pieces)) {
    const found = caseOf(piece.size);
    if (worst === undefined || worseThan(found, worst.found)) worst = { name: piece.name, found };
  }
  const proved = worst?.found.finding.verdict === 'cannot go';
  // A refused size hides a piece that might be worse; only a proof stands without it.
  const unknown = build.pieces.find((piece) => piece.size === undefined);
  if (unknown && !proved) {
    return { name: unknown.name, problem: `the piece ${unknown.name}: ${unknown.problem}` };
  }
  if (!worst) return { name: '', problem: 'the build has no pieces' };
  return { name: worst.name, problem: undefined, found: worst.found };
}

function worseThan({ finding: a }: RouteCase, { finding: b }: RouteCase): boolean {
  const ranks = verdictRank(a.verdict) - verdictRank(b.verdict);
  if (ranks !== 0) return ranks > 0;
  return (a.clearance ?? 0) < (b.clearance ?? 0);
}

/** A piece whose size was read. */
export type SizedPiece = BuildPiece & { readonly size: PieceSize };

const isSized = (piece: BuildPiece): piece is SizedPiece => piece.size !== undefined;

const outermostOf = new WeakMap<readonly BuildPiece[], readonly SizedPiece[]>();

/** The pieces that lie inside no other; of equal ones the first. */
export function outermost(pieces: readonly BuildPiece[]): readonly SizedPiece[] {
  const known = outermostOf.get(pieces);
  if (known) return known;
  const sized = pieces.filter(isSized);
  const outer = sized.filter(
    (piece, i) =>
      !sized.some(
        (other, j) => i !== j && inside(piece.size, other.size) && (j < i || !inside(other.size, piece.size)),
      ),
  );
  outermostOf.set(pieces, outer);
  return outer;
}

const inside = (small: PieceSize, large: PieceSize): boolean =>
  small.length <= large.length && small.breadth <= large.breadth && small.thickness <= large.thickness;

/** A crew of two in the lift with the piece, at the body mass that FLIGHTLOAD takes [kg]. */
const CREW_IN_LIFT_KG = 2 * 90;
/** A trolley under a slate or a panel [kg]: common practice, no source. */
const TROLLEY_KG = 40;

const BY_HAND = `${CAUTIONS.route} ${CAUTIONS.lifting}`;
const ON_STAIRS = `${CAUTIONS.route} ${CAUTIONS.stairs} ${CAUTIONS.floors}`;

/** The cautions that belong to a route and its heaviest piece. */
function cautionOf(route: PreparedRoute, heaviest: number | undefined): string {
  const stairs = route.steps.some(({ row }) => row.stage !== undefined && isStair(row.stage));
  let caution = stairs ? ON_STAIRS : BY_HAND;
  for (const { row, called } of route.steps) {
    const rated = row.measures.ratedLoad;
    if (!row.stage || !usesMeasure(row.stage, 'ratedLoad')) continue;
    if (rated === undefined || heaviest === undefined) continue;
    const together = heaviest + CREW_IN_LIFT_KG + TROLLEY_KG;
    if (together > rated) {
      caution +=
        ` The lift at ${called} is rated ${shownDown(rated)} kg, and piece (${shownUp(heaviest)}), two people ` +
        `(${CREW_IN_LIFT_KG}) and a trolley (${TROLLEY_KG}) make ${shownUp(together)} kg.`;
    }
  }
  return caution;
}
