import { judgeBuild, outermost, type Build, type BuildPiece } from '../../../src/core/route/buildVerdict';
import type { RouteCase } from '../../../src/core/route/judgeRoute';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { stageBook } from '../../../src/core/route/stageBook';
import type { Verdict } from '../../../src/core/route/verdict';
import { piece, route } from './routeFixtures';

const part = (name: string, length: number, breadth: number, thickness: number): BuildPiece => ({
  name,
  size: piece(length, breadth, thickness),
  problem: undefined,
  mass: 20,
  count: 1,
});
const refused: BuildPiece = { name: 'panel', size: undefined, problem: 'no length', mass: 9, count: 1 };

const SLATE = part('slate', 1830, 930, 25);

describe('the pieces that lie inside no other', () => {
  const names = (...pieces: BuildPiece[]): string[] => outermost(pieces).map(({ name }) => name);

  test.each([
    ['longer', part('rail', 1831, 100, 20)],
    ['broader', part('rail', 1000, 931, 20)],
    ['thicker', part('rail', 1000, 100, 26)],
  ])('a piece that is only %s is looked at too, on either side of the slate', (_, rail) => {
    expect(names(SLATE, rail)).toEqual(['slate', 'rail']);
    expect(names(rail, SLATE)).toEqual(['rail', 'slate']);
  });
  test('one that is larger in no size is not, and of equal ones the first is', () => {
    expect(names(SLATE, part('leg', 1830, 930, 20), part('rail', 700, 100, 25))).toEqual(['slate']);
    expect(names(part('leg', 700, 100, 25), SLATE)).toEqual(['slate']);
    expect(names(SLATE, part('other slate', 1830, 930, 25))).toEqual(['slate']);
  });
});

describe('a build', () => {
  const prepared = prepareRoute(route(['door', { width: 762, height: 1981 }]), stageBook(5));
  /** A judge that has its answers by the length of a piece, so that nothing but the choice of the piece is tried. */
  const judgedAs = (
    answers: Readonly<Record<number, readonly [Verdict, number | undefined]>>,
    build: Build,
  ) =>
    judgeBuild(prepared, build, ({ length }): RouteCase => {
      const [verdict, clearance] = answers[length]!;
      const judge = () =>
        ({ verdict, clearance, step: 0, pose: undefined, raise: 0, reason: `${length}`, steps: [] }) as const;
      const measured = { reading: undefined, parts: [], widest: clearance ?? -Infinity };
      return { finding: { verdict, clearance }, judge, measured };
    });
  const built = (...pieces: BuildPiece[]): Build => ({ name: '7 ft', pieces });
  const RAIL = part('rail', 2100, 100, 60);
  const LEG = part('leg', 800, 150, 150);

  test.each([
    [['goes', 40], ['tight', 90], 'rail'],
    [['tight', 90], ['goes', 40], 'slate'],
    [['no way found', -3], ['tight', 2], 'slate'],
    [['cannot go', -16], ['goes', 350], 'slate'],
    [['goes', 350], ['cannot go', -16], 'rail'],
    [['not measured', undefined], ['no way found', -70], 'slate'],
    [['goes', 350], ['goes', 30], 'rail'],
    [['goes', 30], ['goes', 350], 'slate'],
    [['tight', 5], ['tight', 5], 'slate'],
  ] as const)('of %j and %j the %s decides, whichever is listed first', (slate, rail, worst) => {
    const answers = { 1830: slate, 2100: rail, 800: ['goes', 900] } as const;
    for (const pieces of [
      [SLATE, RAIL, LEG],
      [LEG, RAIL, SLATE],
    ]) {
      const said = judgedAs(answers, built(...pieces));
      const decides = slate[0] === rail[0] && slate[1] === rail[1] ? said.piece : worst;
      expect(said.piece).toBe(decides);
      const [verdict, clearance] = decides === 'rail' ? rail : slate;
      expect(said).toMatchObject({ verdict, clearance });
    }
  });
  test('with a piece whose size is missing is not measured, unless another is proved not to go', () => {
    const answers = { 1830: ['goes', 40], 2100: ['cannot go', -4] } as const;
    const open = judgedAs(answers, built(SLATE, refused));
    expect(open).toMatchObject({ verdict: 'not measured', piece: 'panel', clearance: undefined });
    expect(open.reason).toContain('no length');
    expect(judgedAs(answers, built(SLATE, refused, RAIL))).toMatchObject({
      verdict: 'cannot go',
      piece: 'rail',
    });
    expect(judgedAs(answers, built())).toMatchObject({ verdict: 'not measured', clearance: undefined });
  });
  test('is as heavy as its heaviest piece, and of unknown mass where one is missing', () => {
    const answers = { 1830: ['goes', 40], 800: ['goes', 60] } as const;
    const heavy = { ...LEG, mass: 71 };
    expect(judgedAs(answers, built(SLATE, heavy)).heaviest).toBe(71);
    expect(judgedAs(answers, built(heavy, SLATE)).heaviest).toBe(71);
    expect(judgedAs(answers, built(SLATE, { ...LEG, mass: undefined })).heaviest).toBeUndefined();
  });
});
