import type { JointRow } from '../../src/core/joint/jointRow';
import type { PieceSize } from '../../src/core/measures/piece';
import { seededStream } from '../../src/core/space/seededStream';

/** A random route over steps, a ramp or winding treads, everything of it given, and a piece. */
export function otherStages(seed: number): { rows: JointRow[]; piece: PieceSize } {
  const next = seededStream(seed * 6007 + 11);
  const b = (low: number, high: number): number => Math.round(low + (high - low) * next());
  const pick = <T>(...of: readonly T[]): T => of[Math.floor(next() * of.length)]!;
  const hand = (): 'left' | 'right' => pick('left' as const, 'right' as const);
  const rows: JointRow[] = [];
  let width = b(750, 1200);
  const passage = (): void =>
    void rows.push({ stage: 'passage', measures: { width, height: b(2100, 2600), length: b(1500, 4500) } });
  const door = (): void =>
    void rows.push({
      stage: 'door',
      measures: { width: Math.min(width, b(700, 950)), height: b(1950, 2100), wall: b(50, 300) },
      place: next(),
    });
  const way = pick('up' as const, 'down' as const);
  const outdoors = (): void => {
    const height = next() < 0.5 ? {} : { height: b(2000, 2600) };
    if (next() < 0.6)
      rows.push({
        stage: 'steps',
        way,
        measures: { width: b(850, 1600), rise: b(90, 200), going: b(240, 400), risers: b(2, 5), ...height },
      });
    else
      rows.push({
        stage: 'ramp',
        way,
        measures: { width: b(850, 1600), length: b(600, 4000), rise: b(60, 500), ...height },
      });
  };
  if (next() < 0.6) {
    outdoors();
    width = Math.min(width, rows[0]?.measures.width ?? width);
    if (next() < 0.7) door();
    passage();
  } else {
    passage();
    if (next() < 0.5) door();
  }
  if (next() < 0.6) {
    const stair = { height: b(1950, 2250), rise: b(170, 210), going: b(210, 280) };
    const ends = { footCeiling: 2500, footSpace: 5000, headCeiling: 2500, headSpace: 5000 };
    const { footCeiling, footSpace, headCeiling, headSpace } = ends;
    const foot = { footCeiling, footSpace };
    const head = { headCeiling, headSpace };
    const out = b(750, 1100);
    const [lower, upper] = way === 'up' ? [width, out] : [out, width];
    rows.push({
      stage: 'flight',
      way,
      measures: { width, ...stair, risers: b(12, 16), ...(way === 'up' ? foot : head) },
    });
    rows.push({
      stage: 'winder',
      way,
      hand: hand(),
      measures: { width: lower, widthOut: upper, turn: pick(90, 90, 60), ...stair },
    });
    width = out;
    rows.push({
      stage: 'flight',
      way,
      measures: { width, ...stair, risers: b(12, 16), ...(way === 'up' ? head : foot) },
    });
    passage();
  } else if (next() < 0.5) {
    const out = b(800, 1200);
    rows.push({ stage: 'corner', measures: { width, widthOut: out, height: b(2100, 2600) }, hand: hand() });
    width = out;
    passage();
  }
  if (next() < 0.4) outdoors();
  const [length, breadth, thickness] = pick(...PIECES);
  return { rows, piece: { length, breadth, thickness } };
}

/** Slates, frames and panels (common practice, no source). */
const PIECES: (readonly [number, number, number])[] = [
  [1830, 930, 25],
  [1500, 750, 25],
  [2100, 700, 120],
  [2000, 320, 40],
  [1400, 700, 60],
  [1220, 640, 30],
  [1000, 400, 60],
];
