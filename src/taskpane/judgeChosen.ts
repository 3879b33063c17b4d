import { verdictRank } from '../core/route/verdict';
import type { StageRow } from '../core/survey/table/stageRow';
import { judgeStage, type JudgedStage } from './judgeStage';
import type { ChosenPiece } from './chosenPiece';

/** The verdict of the piece that decides, and of each piece. */
export interface JudgedPieces {
  readonly piece: ChosenPiece;
  readonly judged: JudgedStage;
  readonly all: readonly { readonly piece: ChosenPiece; readonly judged: JudgedStage }[];
}

/**
 * Judges one stage for all pieces: they are as good as their worst one, of several with the same verdict the one that
 * has least clearance as measured.
 * @param pieces at least one
 */
export function judgeChosen(
  row: StageRow,
  pieces: readonly ChosenPiece[],
  allowance: number,
  tape: number,
): JudgedPieces {
  const all = pieces.map((piece) => ({ piece, judged: judgeStage(row, piece.size, allowance, tape) }));
  const [first, ...others] = all;
  if (!first) throw new RangeError('no piece was given to judge');
  let worst = first;
  for (const one of others) {
    const [a, b] = [one.judged, worst.judged];
    const worse =
      a.verdict === b.verdict
        ? (a.measured ?? -Infinity) < (b.measured ?? -Infinity)
        : verdictRank(a.verdict) > verdictRank(b.verdict);
    if (worse) worst = one;
  }
  return { ...worst, all };
}
