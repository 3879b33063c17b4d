import type { Build, PieceRow } from '../table/readPieces';
import { partOf, sectionOf, sectionsSaid, type Part } from './slateWords';
import type { PieceProblem } from './surveyProblem';

/** What is wrong between the pieces of a build, or between builds; told at the build's first row. */
export function buildProblems(builds: readonly Build[]): PieceProblem[] {
  const named = builds.filter(({ name }) => name !== '');
  return named.flatMap((build) => [...doubled(build), ...sections(build), ...parts(build, named)]);
}

function doubled({ name, pieces }: Build): PieceProblem[] {
  const seen = new Set<string>();
  return pieces.flatMap(({ piece, rowIndex }): PieceProblem[] => {
    const key = piece.toLowerCase();
    if (key === '') return [];
    if (seen.has(key)) return [{ kind: 'piece doubled', severity: 'warning', rowIndex, build: name, piece }];
    seen.add(key);
    return [];
  });
}

/** A slate in sections of which some are not listed. */
function sections({ name, pieces }: Build): PieceProblem[] {
  const slates = pieces.filter(({ piece }) => partOf(piece) === 'slate');
  const first = slates[0];
  if (!first) return [];
  const numbered = slates.flatMap(({ piece }) => sectionOf(piece) ?? []);
  const at = {
    kind: 'sections missing',
    severity: 'warning',
    rowIndex: first.rowIndex,
    build: name,
  } as const;
  const of = Math.max(0, ...numbered.map((section) => section.of));
  if (of > 0) {
    const there = new Set(numbered.map((section) => section.number));
    const missing = Array.from({ length: of }, (_, i) => i + 1).filter((n) => !there.has(n));
    return missing.length === 0 ? [] : [{ ...at, of, found: of - missing.length, missing }];
  }
  const said =
    slates.map(({ piece }) => sectionsSaid(piece)).find((n) => n !== undefined) ?? sectionsSaid(name);
  const found = slates.reduce((sum, { count }) => sum + (count ?? 0), 0);
  return said === undefined || said === found || slates.some(countUnknown)
    ? []
    : [{ ...at, of: said, found }];
}

const countUnknown = ({ count }: PieceRow): boolean => count === undefined;

/** A part that another build has: a slate always, another part when every other build has it. */
function parts({ name, pieces }: Build, builds: readonly Build[]): PieceProblem[] {
  const has = (build: Build, part: Part): boolean => build.pieces.some(({ piece }) => partOf(piece) === part);
  const others = builds.filter((build) => build.name !== name);
  return (['slate', 'cabinet', 'legs', 'cushions'] as const).flatMap((part): PieceProblem[] => {
    if (pieces.some(({ piece }) => partOf(piece) === part)) return [];
    const with_ = others.filter((build) => has(build, part));
    const [other] = with_;
    const odd = part === 'slate' || with_.length === others.length;
    if (!other || !odd) return [];
    return [
      {
        kind: 'part missing',
        severity: 'warning',
        rowIndex: pieces[0].rowIndex,
        build: name,
        part,
        other: other.name,
      },
    ];
  });
}
