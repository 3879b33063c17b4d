import type { JointRow } from '../../src/core/joint/jointRow';
import type { PieceSize } from '../../src/core/measures/piece';
import { seededStream } from '../../src/core/space/seededStream';
import type { StageMeasures } from '../../src/core/stages/measures';
import type { StageRow } from '../../src/core/survey/table/stageRow';
import { stageRow } from './walkedRoute';

/** A survey of a turn, a door or a stair with what stands beside it, and a building that it may have been taken of. */
interface ShutRoute {
  readonly survey: readonly StageRow[];
  readonly building: readonly JointRow[];
  readonly piece: PieceSize;
}

type Loose = { -readonly [Name in keyof StageMeasures]: StageMeasures[Name] };

/**
 * Narrow routes of few rows with short arms and long ones, half of what may be left out left out of the survey: in the
 * building it is then as it may be, mostly generous.
 */
export function shutRoute(seed: number): ShutRoute {
  const next = seededStream(seed * 7919 + 13);
  const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
  const pick = <T>(...xs: readonly T[]): T => xs[Math.floor(next() * xs.length)]!;
  const hand = (): 'left' | 'right' => pick<'left' | 'right'>('left', 'right');
  const rows: JointRow[] = [];
  const unknown: (readonly (keyof StageMeasures)[])[] = [];
  const open = (...names: (keyof StageMeasures)[]): void => {
    unknown.push(names.filter(() => next() < 0.4));
  };
  const wide = (): number => b(520, 1100);
  const headroom = b(1850, 2200);
  const rise = b(150, 215);
  const going = b(215, 290);
  const way = pick<'up' | 'down'>('up', 'down');
  let width = wide();
  const height = (): number => headroom + (next() < 0.3 ? b(0, 3000) : b(0, 200));
  const straight = (): void => {
    const r = next();
    if (r < 0.15) {
      rows.push({
        stage: 'door',
        measures: { width: Math.min(width, b(500, 950)), height: b(1800, 2100), wall: b(20, 300) },
      });
      open('wall');
      return;
    }
    const length = next() < 0.35 ? b(50, 1500) : b(1500, 6000);
    const stage = r < 0.25 ? ('room' as const) : ('passage' as const);
    const measures: Loose =
      stage === 'room'
        ? { length: b(1200, 5000), width: b(1200, 4000), height: height() }
        : { width, height: height(), length };
    rows.push({ stage, measures, place: next() });
    open(...(stage === 'passage' && next() < 0.4 ? (['length'] as const) : []));
    if (stage !== 'room') return;
    // A wall between the room and what runs along its end.
    width = wide();
    rows.push({ stage: 'passage', measures: { width, height: height(), length: b(100, 1500) } });
    unknown.push([]);
  };
  const flight = (): void => {
    rows.push({
      stage: 'flight',
      way,
      measures: {
        width,
        height: headroom,
        rise,
        going,
        risers: b(2, next() < 0.5 ? 5 : 16),
        footCeiling: height(),
        footSpace: b(900, 5000),
        headCeiling: height(),
        headSpace: b(900, 5000),
      },
    });
    open('risers', 'footCeiling', 'footSpace', 'headCeiling', 'headSpace');
  };
  const turn = (): void => {
    const out = next() < 0.5 ? width : wide();
    const r = next();
    if (r < 0.3) {
      rows.push({
        stage: 'corner',
        measures: {
          width,
          widthOut: out,
          height: height(),
          ...(next() < 0.3 ? { turn: b(30, 120) } : {}),
          run: next() < 0.5 ? 0 : b(0, 3000),
        },
        hand: hand(),
      });
      open('run');
    } else if (r < 0.5) {
      rows.push({
        stage: 'side door',
        measures: {
          width: b(500, 900),
          height: b(1800, 2100),
          wall: b(20, 250),
          widthOut: width,
          ceiling: height(),
          depth: b(0, 3000),
          run: next() < 0.5 ? 0 : b(0, 3000),
        },
        hand: hand(),
        into: false,
      });
      open('depth', 'run');
      width = rows[rows.length - 1]!.measures.width ?? width;
      return;
    } else if (r < 0.75) {
      if (next() < 0.8) flight();
      const ceiling = next() < 0.4 ? { ceiling: height() } : {};
      rows.push({
        stage: 'quarter landing',
        way,
        hand: hand(),
        measures: {
          width: way === 'up' ? width : out,
          widthOut: way === 'up' ? out : width,
          height: headroom,
          rise,
          going,
          ...ceiling,
        },
      });
      unknown.push([]);
      width = out;
      if (next() < 0.8) flight();
      return;
    } else {
      if (next() < 0.8) flight();
      rows.push({
        stage: 'half landing',
        way,
        hand: hand(),
        measures: { width, well: b(5, 300), depth: b(550, 1200), height: headroom, rise, going },
      });
      unknown.push([]);
      if (next() < 0.8) flight();
      return;
    }
    width = out;
  };
  straight();
  if (next() < 0.75) turn();
  else flight();
  straight();
  if (next() < 0.3) straight();
  const piece = {
    length: b(1200, 2600),
    breadth: b(250, 1300),
    thickness: next() < 0.6 ? b(15, 120) : b(100, 600),
  };
  const sorted = Object.values(piece).sort((p, q) => q - p);
  const survey = rows.map((row, i): StageRow => {
    const measures: Loose = { ...row.measures };
    for (const name of unknown[i]!) delete measures[name];
    return stageRow({ stage: row.stage, measures, hand: row.hand, way: row.way }, i);
  });
  const building = rows.map((row, i): JointRow => {
    const measures: Loose = { ...row.measures };
    for (const name of unknown[i]!) {
      if (name === 'footCeiling' || name === 'headCeiling')
        measures[name] = headroom + (next() < 0.6 ? 6000 : b(0, 3000));
      else if (name === 'risers') measures[name] = b(2, 16);
      else if (name === 'wall') measures[name] = 110;
      else if (name === 'run') measures[name] = next() < 0.6 ? 0 : b(0, 3000);
      else measures[name] = next() < 0.5 ? 6000 : b(0, 3000);
    }
    return { ...row, measures };
  });
  return { survey, building, piece: { length: sorted[0]!, breadth: sorted[1]!, thickness: sorted[2]! } };
}
