import { TIGHT_WORDS, VERDICT_CLASSES, verdictClassOf } from '../../../src/core/route/verdictClass';
import { VERDICTS } from '../../../src/core/route/verdict';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { judgeBuild } from '../../../src/core/route/buildVerdict';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { routeCases } from '../../../src/core/route/routeCases';
import { stageBook } from '../../../src/core/route/stageBook';
import { surveyTable } from '../../support/surveyTable';
import type { Cell } from '../../../src/core/measures/readQuantity';

type Row = Readonly<Record<string, Cell>>;
const DOOR: Row = { Stage: 'door', Width: 774, Height: 2000 };
const ROOM: Row = { Stage: 'room', Length: 6000, Width: 5000, Height: 2500 };

const part = (name: string, sizes: readonly [number, number, number], mass: number) => ({
  name,
  size: { length: sizes[0], breadth: sizes[1], thickness: sizes[2] },
  problem: undefined,
  mass,
  count: 1,
});
const verdictOn = (rows: readonly Row[], pieces: readonly ReturnType<typeof part>[]) => {
  const { rows: read } = readRoute(surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row }))));
  const book = stageBook(5);
  const route = prepareRoute(read, book);
  return judgeBuild(route, { name: 'build', pieces }, routeCases(route, book, 25));
};

test('the classes stand in the order of the verdicts, and each verdict has one', () => {
  const ranks = VERDICT_CLASSES.map(({ verdict }) => VERDICTS.indexOf(verdict));
  expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
  expect(new Set(ranks).size).toBe(VERDICTS.length);
  for (const one of VERDICT_CLASSES) {
    const reason = one.begins === undefined ? 'step 1' : `${one.begins}: step 1`;
    expect(verdictClassOf(one.verdict, reason)).toBe(one);
  }
  expect(verdictClassOf('#N/A', '')).toBeUndefined();
});

describe('tight is three things', () => {
  // A slab 25 thick and 740 wide through 774: 17 a side, less than the allowance of 25, whatever else is measured.
  test('measured, and tight', () => {
    const found = verdictOn([DOOR, ROOM], [part('crate', [1000, 740, 740], 20)]);
    expect(found).toMatchObject({ verdict: 'tight', tightness: 'measured' });
    expect(found.reason).toMatch(new RegExp(`^${TIGHT_WORDS.measured}: step 1`));
  });
  test('not measured enough', () => {
    const corner: Row = { Stage: 'corner', Width: 900, 'Width out': 900, Height: 2400 };
    const found = verdictOn([DOOR, corner, corner, ROOM], [part('panel', [1750, 300, 40], 20)]);
    expect(found).toMatchObject({ verdict: 'tight', tightness: 'open' });
    expect(found.reason).toMatch(new RegExp(`^${TIGHT_WORDS.open}: `));
    const measured = verdictOn(
      [DOOR, { ...corner, Run: 4000, Hand: 'left' }, { ...corner, Run: 4000, Hand: 'left' }, ROOM],
      [part('panel', [1750, 300, 40], 20)],
    );
    expect(measured).toMatchObject({ verdict: 'goes' });
  });
  test('a winder needs a trial, and what is above the guideline for a team has no aid there', () => {
    const winder: Row = { Stage: 'winder', Width: 900, Height: 2100, Turn: 90, Rise: 190, Going: 240 };
    const light = verdictOn([DOOR, winder, ROOM], [part('leg', [700, 150, 150], 9)]);
    expect(light).toMatchObject({ verdict: 'tight', tightness: 'trial' });
    expect(light.noAid).toBeUndefined();
    const heavy = verdictOn([DOOR, winder, ROOM], [part('block', [700, 150, 150], 40)]);
    expect(heavy).toMatchObject({ verdict: 'tight', tightness: 'trial', noAid: true });
    expect(heavy.reason).toMatch(/(?:on winding treads|raised \d+ mm): no aid known/);
    // An aid that cannot stand there is not planned.
    expect(heavy.carry).toBe('a written assessment: no aid known on this way');
    expect(light.carry).toMatch(/^within the guideline/);
    // The same where a lighter piece limits the build.
    const block = part('block', [700, 150, 150], 40);
    const beside = verdictOn([DOOR, winder, ROOM], [block, part('box', [720, 170, 170], 12)]);
    expect(beside).toMatchObject({ piece: 'box', verdict: 'tight', noAid: true });
    expect(beside.reason).toMatch(/; block (?:on winding treads|raised \d+ mm): no aid known/);
    const lighter = verdictOn(
      [DOOR, winder, ROOM],
      [{ ...block, mass: 20 }, part('box', [720, 170, 170], 12)],
    );
    expect(lighter.noAid).toBeUndefined();
  });
});

test('the heaviest piece has its own line where a lighter one limits', () => {
  const pieces = [part('slate', [1800, 700, 25], 90), part('box', [600, 590, 590], 12)];
  const { piece, reason } = verdictOn([DOOR, ROOM], pieces);
  expect(piece).toBe('box');
  // Carried flat or on edge through 774 x 2000: (774 - 25) / 2.
  expect(reason).toContain('the heaviest, slate: ');
  const alone = verdictOn([DOOR, ROOM], [part('slate', [1800, 700, 25], 90)]);
  expect(alone.reason).not.toContain('the heaviest');
});
