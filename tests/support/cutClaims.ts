import type { JointRow } from '../../src/core/joint/jointRow';
import type { RouteWalk } from '../../src/core/joint/walk/walkRoute';
import type { PieceSize } from '../../src/core/measures/piece';
import { routeAir } from './routeAir';
import { strays } from './routeReplay';

/**
 * Motions that are claimed, each cut against the air of its rows, which is worked out from them anew and knows nothing of
 * the project's own scene.
 */
export class CutClaims {
  claimed = 0;
  /** To the end. */
  drawn = 0;
  /** Those that leave the air, and where. */
  readonly straying: string[] = [];

  /** @param step how far apart the places are that are cut [mm] */
  constructor(private readonly step: number) {}

  /** What is drawn is free even where the whole is not drawn. */
  cut(
    seed: number,
    rows: readonly JointRow[],
    piece: PieceSize,
    { keys, padding, notDrawn }: Pick<RouteWalk, 'keys' | 'padding' | 'notDrawn'>,
  ): void {
    this.claimed++;
    if (!notDrawn) this.drawn++;
    const stray = strays(keys, piece, padding, routeAir(rows), this.step);
    if (stray) this.straying.push(`${seed}: row ${stray.row}, at ${stray.point.map(Math.round).join(', ')}`);
  }
}
