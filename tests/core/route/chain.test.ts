import {
  bestChain,
  widestClearance,
  type Part,
  type PlaceLimit,
  type RoomBeside,
} from '../../../src/core/route/chain';
import { HOLD_COUNT, type BookPassage } from '../../../src/core/route/stageBook';
import { ALL_HOLDS } from '../../../src/core/motion/hold';
import { NOWHERE_CLOSEST } from '../../../src/core/motion/closest';
import { seededStream } from '../../../src/core/space/seededStream';

/**
 * Chains of small random parts, against the widest way worked out here from the end backwards: at each part a piece is held
 * in one way, may be turned to another where there is room, has to have room where it stands, and goes on by one passage.
 */
type Holds = number[];
const HOLDS = Array.from({ length: HOLD_COUNT }, (_, hold) => hold);

function randomParts(seed: number): Part[] {
  const next = seededStream(seed);
  const figure = (): number => Math.round(200 * next() - 60);
  const byHold = (): Holds => HOLDS.map(() => (next() < 0.15 ? -Infinity : figure()));
  const changes = (): Holds | undefined =>
    next() < 0.4
      ? undefined
      : HOLDS.flatMap((from) =>
          HOLDS.map((to) => (from === to ? Infinity : next() < 0.5 ? -Infinity : figure())),
        );
  const room = (): RoomBeside => {
    const kind = next();
    return kind < 0.3 ? undefined : kind < 0.5 ? null : { lean: byHold(), tilt: byHold() };
  };
  const limits = (row: number): PlaceLimit[] =>
    Array.from({ length: Math.floor(2.4 * next()) }, () => ({
      by: byHold(),
      cause: { kind: 'straight', length: figure(), rows: [row, row] },
    }));
  const passage = (): BookPassage => {
    const clearance = figure();
    return {
      from: Math.floor(HOLD_COUNT * next()),
      to: Math.floor(HOLD_COUNT * next()),
      clearance,
      turningRoom: next() < 0.3,
      capped: next() < 0.3,
      answer: {
        clearance,
        atMost: Infinity,
        pose: next() < 0.5 ? 'leaning' : 'tilted',
        critical: NOWHERE_CLOSEST,
      },
      onLanding: undefined,
    };
  };
  const some = (most: number): BookPassage[] =>
    Array.from({ length: 1 + Math.floor(most * next()) }, passage);
  const count = 1 + Math.floor(4 * next());
  return Array.from({ length: count }, (_, k): Part => {
    const kind = next();
    const left = count - k;
    // A floor only holds room to turn the piece over: no route plans a limit there, or a change after it.
    const floor = kind < 0.2;
    return {
      row: Math.floor(k / 2),
      floor,
      passages: floor ? [] : kind < 0.3 ? undefined : some(6),
      changeBefore: changes(),
      changeAfter: floor ? undefined : changes(),
      leanBefore: room(),
      leanAfter: room(),
      limitsBefore: floor ? [] : limits(k),
      limitsAfter: floor ? [] : limits(k),
      ...(left > 1 && next() < 0.5
        ? { joints: [{ parts: 2 + Math.floor((left - 1) * next()), passages: some(4) }] }
        : {}),
    };
  });
}

const least = (limits: readonly PlaceLimit[], hold: number): number =>
  limits.reduce((so, { by }) => Math.min(so, by[hold] ?? NaN), Infinity);
const change = (table: readonly number[] | undefined, from: number, to: number): number =>
  from === to ? Infinity : (table?.[HOLD_COUNT * from + to] ?? -Infinity);
const leaned = ({ turningRoom, answer }: BookPassage, room: RoomBeside, hold: number): number => {
  if (!turningRoom || room === undefined) return Infinity;
  if (room === null) return -Infinity;
  return (answer.pose === 'tilted' ? room.tilt : room.lean)[hold] ?? NaN;
};
const ofPassage = (passage: BookPassage, first: Part, last: Part): number =>
  Math.min(
    passage.clearance,
    leaned(passage, first.leanBefore, passage.from),
    leaned(passage, last.leanAfter, passage.to),
  );

/** The widest way on from a part, for each way to be held before it. */
function widestOn(parts: readonly Part[], which: 'free' | 'any'): number[][] {
  const on: number[][] = [];
  on[parts.length] = HOLDS.map(() => Infinity);
  for (let k = parts.length - 1; k >= 0; k--) {
    const part = parts[k] as Part;
    on[k] = HOLDS.map((enters) => {
      let best = -Infinity;
      for (const held of HOLDS) {
        const before = Math.min(least(part.limitsBefore, enters), change(part.changeBefore, enters, held));
        const through = (to: number, clearance: number, count: number): void => {
          const last = parts[k + count - 1] as Part;
          for (const leaves of HOLDS) {
            const after = Math.min(change(last.changeAfter, to, leaves), least(last.limitsAfter, leaves));
            best = Math.max(best, Math.min(before, clearance, after, on[k + count]?.[leaves] ?? NaN));
          }
        };
        const taken = (passages: readonly BookPassage[], count: number): void => {
          for (const passage of passages) {
            if (passage.from !== held || (which === 'free' && passage.capped)) continue;
            through(passage.to, ofPassage(passage, part, parts[k + count - 1] as Part), count);
          }
        };
        // On a floor the piece is turned over and nothing else.
        if (part.floor) best = Math.max(best, Math.min(before, on[k + 1]?.[held] ?? NaN));
        else if (part.passages) taken(part.passages, 1);
        else for (const to of HOLDS) through(to, Infinity, 1);
        for (const joint of part.joints ?? []) taken(joint.passages, joint.parts);
      }
      return best;
    });
  }
  return on;
}

const SEEDS = Array.from({ length: 400 }, (_, n) => n + 1);

test.each(['any', 'free'] as const)('the widest clearance of 400 random chains (%s)', (which) => {
  let shown = 0;
  for (const seed of SEEDS) {
    const parts = randomParts(seed);
    const widest = Math.max(...(widestOn(parts, which)[0] ?? []));
    expect([seed, widestClearance(parts, which)]).toEqual([seed, widest]);
    if (widest > -Infinity && widest < Infinity) shown++;
  }
  expect(shown).toBeGreaterThan(100);
});

test('the best chain has the widest clearance, row after row as it is held, and each step names what is closest in it', () => {
  const closest = new Map<string, number>();
  for (const seed of SEEDS) {
    const parts = randomParts(seed);
    const widest = widestClearance(parts, 'any');
    const steps = bestChain(parts, 'any', widest, 25);
    expect([seed, steps === undefined]).toEqual([seed, widest === -Infinity]);
    if (!steps) continue;
    expect([seed, Math.min(...steps.map(({ clearance }) => clearance))]).toEqual([seed, widest]);
    steps.forEach((step, row) => {
      const before = steps[row - 1];
      // What passes two rows at once is turned over somewhere between them.
      const atOnce = (before?.joint?.[1] ?? -1) >= row || (step.joint?.[0] ?? row) < row;
      if (before && !atOnce) expect([seed, row, step.enters]).toEqual([seed, row, before.leaves]);
      const own = parts.filter((part) => part.row === row);
      closest.set(step.closest, (closest.get(step.closest) ?? 0) + 1);
      const causes = own.flatMap((part) => [...part.limitsBefore, ...part.limitsAfter]);
      if (step.closest !== 'limit') expect([seed, row, step.limit]).toEqual([seed, row, undefined]);
      else if (!step.joint) {
        const said = causes.find(({ cause }) => cause === step.limit);
        expect([seed, row, said?.by]).toEqual([seed, row, expect.arrayContaining([step.clearance])]);
      }
      if (step.clearance === Infinity) return;
      // What is said to be closest leaves just that.
      const figures = {
        passage: [step.passage?.clearance],
        leaning: own.flatMap((part) =>
          [part.leanBefore, part.leanAfter].flatMap((room) => [...(room?.lean ?? []), ...(room?.tilt ?? [])]),
        ),
        'change before': own.flatMap((part) => part.changeBefore ?? []),
        'change after': own.flatMap((part) => [...(part.changeAfter ?? []), ...(part.changeBefore ?? [])]),
        limit: own.flatMap((part) => [...part.limitsBefore, ...part.limitsAfter].flatMap(({ by }) => by)),
      }[step.closest];
      if (!step.joint && step.closest !== 'leaning')
        expect([seed, row, figures]).toEqual([seed, row, expect.arrayContaining([step.clearance])]);
    });
  }
  expect([...closest.keys()].sort()).toEqual([
    'change after',
    'change before',
    'leaning',
    'limit',
    'passage',
  ]);
});

test('of ways that leave as much the one with the fewest changes and high raises is taken', () => {
  const passage = (from: number, to: number, more: Partial<BookPassage> = {}): BookPassage => ({
    ...{ from, to, clearance: 50, turningRoom: false, capped: false, onLanding: undefined },
    answer: { clearance: 50, atMost: Infinity, pose: 'flat', critical: NOWHERE_CLOSEST },
    ...more,
  });
  const open = HOLDS.flatMap(() => HOLDS.map(() => 500));
  const part = (row: number, ...passages: BookPassage[]): Part => ({
    ...{ row, passages, changeBefore: open, changeAfter: open, leanBefore: undefined, leanAfter: undefined },
    ...{ limitsBefore: [], limitsAfter: [] },
  });
  const taken = (...parts: Part[]) => bestChain(parts, 'any', widestClearance(parts, 'any'), 25);
  const held = (steps: ReturnType<typeof taken>) => steps?.map(({ from, to }) => [from, to]);
  expect(held(taken(part(0, passage(0, 0), passage(2, 2)), part(1, passage(2, 2))))).toEqual([
    [2, 2],
    [2, 2],
  ]);
  expect(held(taken(part(0, passage(0, 0, { capped: true }), passage(2, 2))))).toEqual([[2, 2]]);
  expect(held(taken(part(0, passage(0, 0, { turningRoom: true }), passage(2, 2))))).toEqual([[2, 2]]);
  // A raise is worse than a change of pose.
  expect(
    held(
      taken(part(0, passage(0, 0), passage(2, 2)), part(1, passage(0, 0, { capped: true }), passage(2, 2))),
    ),
  ).toEqual([
    [2, 2],
    [2, 2],
  ]);
  // What is short of the allowance at one step counts, what is beyond it does not.
  const narrow = part(0, passage(0, 0, { clearance: 20 }));
  expect(
    held(taken(narrow, part(1, passage(0, 0, { clearance: 22 }), passage(2, 2, { clearance: 24 })))),
  ).toEqual([
    [0, 0],
    [2, 2],
  ]);
  expect(
    held(taken(narrow, part(1, passage(0, 0, { clearance: 30 }), passage(2, 2, { clearance: 40 })))),
  ).toEqual([
    [0, 0],
    [0, 0],
  ]);
});

const only = (from: number, to: number, more: Partial<BookPassage> = {}): BookPassage => ({
  ...{ from, to, clearance: 50, turningRoom: false, capped: false, onLanding: undefined },
  answer: { clearance: 50, atMost: Infinity, pose: 'flat', critical: NOWHERE_CLOSEST },
  ...more,
});
const bare = (row: number, passages: BookPassage[], more: Partial<Part> = {}): Part => ({
  ...{ row, passages, leanBefore: undefined, leanAfter: undefined, limitsBefore: [], limitsAfter: [] },
  ...more,
});

test('what passes several rows at once is held as it enters up to its last row, and as it leaves there', () => {
  const turn = (from: number, to: number): number[] =>
    HOLDS.flatMap((a) => HOLDS.map((b) => (a === b ? Infinity : a === from && b === to ? 90 : -Infinity)));
  const joint = only(1, 4, { clearance: 60 });
  const parts = [
    bare(0, [], { changeBefore: turn(0, 1), joints: [{ parts: 3, passages: [joint] }] }),
    bare(1, []),
    bare(2, [], { changeAfter: turn(4, 5) }),
    bare(3, [only(5, 5)]),
  ];
  const steps = bestChain(parts, 'any', widestClearance(parts, 'any'), 25);
  // It may come in as it is held, so that it is turned over only where it has to be.
  expect(steps?.map(({ enters, from, to, leaves, joint: rows }) => [enters, from, to, leaves, rows])).toEqual(
    [
      [1, 1, 1, 1, [0, 2]],
      [1, 1, 1, 1, [0, 2]],
      [4, 4, 4, 5, [0, 2]],
      [5, 5, 5, 5, undefined],
    ],
  );
  expect(steps?.map(({ clearance }) => clearance)).toEqual([60, 60, 60, 50]);
  const first = [bare(0, [only(0, 0)]), ...parts.map((part) => ({ ...part, row: part.row + 1 }))];
  expect(
    bestChain(first, 'any', widestClearance(first, 'any'), 25)?.map((step) => [step.enters, step.from]),
  ).toEqual([
    [0, 0],
    [0, 1],
    [1, 1],
    [4, 4],
    [5, 5],
  ]);
});

test('two parts of a row are one step: as close as the closer, entered as the first, left as the last', () => {
  const parts = [bare(0, [only(2, 3, { clearance: 40 })]), bare(0, [only(3, 1, { clearance: 30 })])];
  const steps = bestChain(parts, 'any', 30, 25);
  expect(steps).toMatchObject([{ enters: 2, from: 2, to: 1, leaves: 1, clearance: 30, closest: 'passage' }]);
  const wider = [bare(0, [only(2, 3, { clearance: 30 })]), bare(0, [only(3, 1, { clearance: 40 })])];
  expect(bestChain(wider, 'any', 30, 25)).toMatchObject([
    { from: 2, to: 1, clearance: 30, passage: { from: 2 } },
  ]);
});

test('on the floor behind a flight a change is made after it, before it on the floor before', () => {
  const change = HOLDS.flatMap((a) => HOLDS.map((b) => (a === b ? Infinity : 20)));
  const floor = bare(0, [], { floor: true, changeBefore: change });
  const behind = [bare(0, [only(2, 2)]), floor, bare(1, [only(4, 4)])];
  const before = [bare(0, [only(4, 4)]), { ...floor, row: 1 }, bare(1, [only(2, 2)])];
  expect(
    bestChain(behind, 'any', 20, 25)?.map(({ closest, from, to, leaves }) => [closest, from, to, leaves]),
  ).toEqual([
    ['change after', 2, 2, 4],
    ['passage', 4, 4, 4],
  ]);
  expect(
    bestChain(before, 'any', 20, 25)?.map(({ closest, enters, from, to }) => [closest, enters, from, to]),
  ).toEqual([
    ['passage', 4, 4, 4],
    ['change before', 4, 2, 2],
  ]);
});

test('without what is at best tight no chain takes it, alone or with others', () => {
  const capped = only(0, 0, { clearance: 90, capped: true });
  // The free way is short of the allowance, so that a person would choose the other.
  const short = only(1, 1, { clearance: 20 });
  const one = [bare(0, [capped, short])];
  expect(bestChain(one, 'free', widestClearance(one, 'free'), 25)?.[0]?.passage?.capped).toBe(false);
  const two = [bare(0, [short], { joints: [{ parts: 2, passages: [capped] }] }), bare(1, [only(1, 1)])];
  expect(
    bestChain(two, 'free', widestClearance(two, 'free'), 25)?.every(({ joint }) => joint === undefined),
  ).toBe(true);
  expect(
    bestChain(two, 'any', widestClearance(two, 'any'), 25)?.every(({ joint }) => joint !== undefined),
  ).toBe(true);
});

test('nothing is carried on end farther than it has to be, and of equals the roomier is taken', () => {
  const held = (...passages: BookPassage[]) => bestChain([bare(0, passages)], 'any', 50, 25)?.[0]?.from;
  // LT, LB, BT, TB, BL, TL by what stands upright: the length, on end.
  const onEnd = ALL_HOLDS.findIndex((hold) => hold.endsWith('L'));
  const lying = ALL_HOLDS.findIndex((hold) => !hold.endsWith('L'));
  expect(held(only(onEnd, onEnd), only(lying, lying))).toBe(lying);
  expect(held(only(lying, lying), only(onEnd, onEnd))).toBe(lying);
  expect(held(only(lying, lying), only(lying + 1, lying + 1, { clearance: 70 }))).toBe(lying + 1);
  expect(held(only(lying, lying, { clearance: 70 }), only(lying + 1, lying + 1))).toBe(lying);
});
