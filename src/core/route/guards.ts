import type { Arm } from './arms';
import { straightLength } from './wayLength';
import type { TapeCase } from './tapeCase';

/** How narrow and low an arm is taken to be, and how far that holds. */
export interface Guard {
  /** [mm] */
  readonly width: number;
  /** [mm] */
  readonly height: number;
  /** From here on it is narrower or lower still [mm]: the piece must not reach so far; Infinity where nothing is. */
  readonly upTo: number;
  /** Row of the part that is narrower or lower still; undefined where nothing is. */
  readonly next: number | undefined;
  /** Rows that made it narrower or lower than the bend's own arm. */
  readonly by: readonly number[];
  /** The piece is carried so high above what is below its end there [mm]; absent where that is floor. */
  readonly raised?: number;
}

/**
 * The ways to take an arm of a bend, from as it is at the bend to as narrow and low as it is anywhere on it.
 *
 * A narrower or lower part is taken over the whole arm: the solid of the arm that is narrow all along contains the
 * real one, wherever across the narrow part stands, so what passes it passes the real one. A part that the piece
 * does not reach while it goes round needs not be taken so: that is `upTo`.
 * @param width the bend's own width of that arm [mm]
 * @param height its height [mm]
 */
export function guardsOf(arm: Arm, width: number, height: number, tapeCase: TapeCase, tape: number): Guard[] {
  const guards: Guard[] = [];
  let now: Pick<Guard, 'width' | 'height' | 'by' | 'raised'> = { width, height, by: [] };
  for (const section of arm.sections) {
    const narrows = section.width < now.width || section.height < now.height;
    if (!narrows && section.raised === undefined) continue;
    const at = straightLength(section.at, tapeCase, tape);
    if (at > 0) guards.push({ ...now, upTo: at, next: section.row });
    now = {
      width: Math.min(now.width, section.width),
      height: Math.min(now.height, section.height),
      by: narrows ? [...now.by, section.row] : now.by,
      ...(section.raised === undefined ? {} : { raised: section.raised }),
    };
    if (at === Infinity) return guards;
  }
  guards.push({ ...now, upTo: Infinity, next: undefined });
  return guards;
}
