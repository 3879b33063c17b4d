import type { FoundPiece } from './findPieces';
import type { Chosen } from './paneModel';

/** Something that can be carried past a row: one piece, or all pieces of a build. */
export interface PieceChoice {
  /** Tells it from the others, the same at the next look. */
  readonly key: string;
  readonly label: string;
  readonly chosen: Chosen;
}

const buildKey = (build: string): string => `build:${build}`;

/** All that can be chosen: of each build first the whole of it, then its pieces one by one. */
export function pieceChoices(pieces: readonly FoundPiece[]): PieceChoice[] {
  const builds = new Map<string, FoundPiece[]>();
  for (const piece of pieces) {
    const known = builds.get(piece.build);
    if (known) known.push(piece);
    else builds.set(piece.build, [piece]);
  }
  return [...builds].flatMap(([build, own]) => [
    ...(build === '' || own.length < 2 ? [] : [wholeBuild(build, own)]),
    ...own.map((piece) => ({
      key: piece.key,
      label: piece.label,
      chosen: { name: piece.name, pieces: [piece] },
    })),
  ]);
}

const wholeBuild = (build: string, pieces: readonly FoundPiece[]): PieceChoice => ({
  key: buildKey(build),
  label: `${build}: whole build, ${pieces.length} kinds of piece`,
  chosen: { name: build, pieces },
});

/** What a survey orders, of the choices; undefined where the build is not among them. */
export function orderedChoice(
  choices: readonly PieceChoice[],
  pieces: readonly FoundPiece[],
  build: string | undefined,
): PieceChoice | undefined {
  if (build === undefined) return undefined;
  const same = (name: string): boolean => name.toLowerCase() === build.toLowerCase();
  const piece = pieces.find((p) => same(p.build));
  return piece && choices.find(({ key }) => key === buildKey(piece.build) || key === piece.key);
}
