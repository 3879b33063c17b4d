import type { PieceSize } from '../../src/core/measures/piece';
import { seededStream } from '../../src/core/space/seededStream';
import type { JointRow } from '../../src/core/joint/jointRow';
/** A random route of 3 to 9 rows, realistic or narrow, every length, hand, way and place given, and a piece. */
export function randomRoute(seed: number): { rows: JointRow[]; piece: PieceSize } {
  const next = seededStream(seed);
  const b = (lo: number, hi: number) => Math.round(lo + (hi - lo) * next());
  const pick = <T>(...xs: T[]): T => xs[Math.floor(next() * xs.length)]!;
  const hand = (): 'left' | 'right' => pick<'left' | 'right'>('left', 'right');
  const rows: JointRow[] = [];
  const tight = next() < 0.5;
  const n = 3 + Math.floor(next() * 7);
  let width = b(800, 1400);
  const height = b(2050, 2600);
  const w = (): number => b(tight ? 700 : 850, tight ? 1000 : 1500);
  const passage = (len = b(tight ? 100 : 1000, 4500)) =>
    rows.push({
      stage: 'passage',
      measures: { width, height: height + b(0, 100), length: len },
      place: next(),
    });
  const door = () =>
    rows.push({
      stage: 'door',
      measures: {
        width: Math.min(width, b(700, 950)),
        height: b(1950, 2100),
        ...(next() < 0.5 ? { wall: b(50, 300) } : {}),
      },
      place: next(),
    });
  if (next() < 0.6) door();
  passage();
  while (rows.length < n) {
    const last = rows[rows.length - 1]!;
    const r = next();
    if (r < 0.25) {
      const out = w();
      rows.push({
        stage: 'corner',
        measures: {
          width,
          widthOut: out,
          height,
          ...(next() < 0.3 ? { turn: b(20, 120) } : {}),
          ...(next() < 0.3 ? { run: b(0, 1500) } : {}),
        },
        hand: hand(),
      });
      width = out;
      if (next() < 0.7) passage();
    } else if (r < 0.4) {
      if (last.stage !== 'door') door();
    } else if (r < 0.5 && last.stage === 'passage') {
      rows.push({
        stage: 'side door',
        measures: {
          width: b(700, 900),
          height: b(1950, 2100),
          wall: b(50, 200),
          widthOut: width,
          ceiling: height,
          ...(next() < 0.6 ? { depth: b(0, 2000) } : {}),
        },
        hand: hand(),
      });
      width = w();
      if (next() < 0.5) passage();
      else {
        rows.push({
          stage: 'room',
          measures: { length: b(1800, 5000), width: b(1800, 5000), height },
          place: next(),
          ...(next() < 0.3 ? { hand: hand() } : {}),
        });
        if (rows.length < n) {
          width = b(800, 1200);
          door();
          passage();
        }
      }
    } else if (r < 0.55 && last.stage !== 'door') {
      rows.push({
        stage: 'lift',
        measures: {
          width: Math.min(width, b(800, 1100)),
          height: b(1950, 2100),
          widthOut: b(1000, 1600),
          depth: b(1100, 2400),
          ceiling: b(2100, 2400),
        },
        place: next(),
      });
      if (rows.length < n) passage(b(1500, 4000));
    } else if (last.stage === 'passage' || last.stage === 'door') {
      const way = pick<'up' | 'down'>('up', 'down');
      const rise = b(170, 215),
        going = b(210, 290),
        headroom = b(1950, 2200);
      const landings = Math.floor(next() * 2.2);
      const fw = Math.min(width, w());
      let cur = fw;
      const flight = (before: boolean, after: boolean): void => {
        const level = (isFoot: boolean) =>
          isFoot
            ? { footCeiling: headroom + b(0, 500), footSpace: b(tight ? 900 : 2500, 5000) }
            : { headCeiling: headroom + b(0, 500), headSpace: b(tight ? 900 : 2500, 5000) };
        const foot = way === 'up' ? before : after,
          head = way === 'up' ? after : before;
        rows.push({
          stage: 'flight',
          way,
          measures: {
            width: cur,
            height: headroom,
            rise,
            going,
            risers: b(3, 15),
            ...(foot ? level(true) : {}),
            ...(head ? level(false) : {}),
          },
        });
      };
      if (landings === 0) flight(true, true);
      for (let k = 0; k < landings; k++) {
        if (k === 0) flight(true, false);
        if (next() < 0.5) {
          const out = w();
          rows.push({
            stage: 'quarter landing',
            way,
            hand: hand(),
            measures: {
              width: way === 'up' ? cur : out,
              widthOut: way === 'up' ? out : cur,
              height: headroom,
              rise,
              going,
              ...(next() < 0.3 ? { ceiling: headroom + b(0, 400) } : {}),
            },
          });
          cur = out;
        } else
          rows.push({
            stage: 'half landing',
            way,
            hand: hand(),
            measures: { width: cur, well: b(0, 300), depth: b(800, 1300), height: headroom, rise, going },
          });
        flight(false, k === landings - 1);
      }
      width = cur;
      const r2 = next();
      if (r2 < 0.5) passage();
      else if (r2 < 0.7) door();
    }
  }
  if (next() < 0.4 && rows[rows.length - 1]!.stage !== 'lift')
    rows.push({
      stage: 'room',
      measures: { length: b(2500, 6000), width: b(2500, 5000), height },
      place: next(),
    });
  const [length, breadth, thickness] = pick(...PIECES);
  return { rows, piece: { length, breadth, thickness } };
}

/** Slates, frames and cabinets (common practice, no source). */
const PIECES: (readonly [number, number, number])[] = [
  [1830, 930, 25],
  [2400, 900, 25],
  [1500, 750, 25],
  [2100, 700, 120],
  [2640, 320, 40],
  [2060, 1150, 330],
  [2480, 1360, 480],
  [1400, 700, 60],
  [2000, 300, 250],
  [1220, 640, 30],
];
