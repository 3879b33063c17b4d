/** A stretch of a straight way in the vertical section: a floor and a ceiling, each in one line [mm]. */
export interface ProfilePart {
  readonly from: number;
  readonly to: number;
  /** Height of the floor (on a flight: of the line of nosings) at both ends. */
  readonly floor: readonly [number, number];
  readonly ceiling: readonly [number, number];
  /** Where its two sides stand across the way, right (the lesser) and left. */
  readonly right: number;
  readonly left: number;
}

/** Two slopes nearer than this are one [mm per mm]. */
const SAME = 1e-9;

/** A straight line of floor or ceiling. */
export interface ProfileLine {
  readonly x0: number;
  readonly x1: number;
  readonly z0: number;
  readonly z1: number;
}

/** The straight lines that the floors, or the ceilings, of a row of parts make. */
export function runs(parts: readonly ProfilePart[], which: 'floor' | 'ceiling'): ProfileLine[] {
  const lines: ProfileLine[] = [];
  for (const part of parts) {
    if (!(part.to > part.from)) continue;
    const [z0, z1] = part[which];
    const last = lines[lines.length - 1];
    if (last && last.z1 === z0 && last.x1 === part.from) {
      const slope = (last.z1 - last.z0) / (last.x1 - last.x0);
      if (Math.abs(slope - (z1 - z0) / (part.to - part.from)) < SAME) {
        lines[lines.length - 1] = { ...last, x1: part.to, z1 };
        continue;
      }
    }
    lines.push({ x0: part.from, x1: part.to, z0, z1 });
  }
  return lines;
}
