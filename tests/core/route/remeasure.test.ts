import type { Build } from '../../../src/core/route/buildVerdict';
import { remeasure } from '../../../src/core/route/remeasure';
import { stageBook } from '../../../src/core/route/stageBook';
import type { StageRow } from '../../../src/core/survey/table/stageRow';
import { judge, openEnds, piece, route, withMeasure } from './routeFixtures';

const build = (name: string, ...sizes: readonly (readonly [number, number, number])[]): Build => ({
  name,
  pieces: sizes.map(([l, b, t], i) => ({
    name: `piece ${i + 1}`,
    size: piece(l, b, t),
    problem: undefined,
    mass: 50,
    count: 1,
  })),
});
const ask = (rows: readonly StageRow[], ...builds: Build[]) => remeasure(rows, builds, stageBook(5), 25);

describe('what to measure again', () => {
  const cabinet = build('cabinet', [1830, 700, 600]);

  test('the needed value alone makes the step go, and a millimetre less does not', () => {
    const rows = route(
      ['door', { width: 630, height: 1981 }],
      ['corner', { width: 1500, widthOut: 1500, height: 2100 }],
    );
    const decisive = ask(rows, cabinet);
    expect(decisive.length).toBeGreaterThan(0);
    for (const { step: named, measure, needed } of decisive) {
      const step = Number(named);
      const name = measure === 'Width' ? 'width' : measure === 'Width out' ? 'widthOut' : 'height';
      const at = (value: number) =>
        judge(withMeasure(rows, step, name, value), piece(1830, 700, 600)).steps[step - 1]!.verdict;
      expect(at(needed!)).toBe('goes');
      expect(at(needed! - 1)).not.toBe('goes');
    }
    // 600 + 2 x 25 of allowance + 2 x 5 of tape.
    expect(decisive[0]).toMatchObject({ step: 1, measure: 'Width', asMeasured: 630, needed: 660 });
    expect(decisive[0]!.why).toContain('0.5 mm of clearance for each mm');
    expect(decisive[0]!.why).toContain('door leaf off');
  });

  test('it says from where on the piece passes at all, and a millimetre less does not', () => {
    // 600 mm thick through a door of 590: it passes at 600, and goes at 660.
    const rows = route(['door', { width: 590, height: 900 }]);
    const box = build('box', [800, 700, 600]);
    const [first] = ask(rows, box);
    expect(first).toMatchObject({ step: 1, measure: 'Width', asMeasured: 590, needed: 660 });
    expect(first!.why).toContain('it passes at all, though tight, from 600 mm on');
    expect(judge(withMeasure(rows, 1, 'width', 600), piece(800, 700, 600)).verdict).toBe('tight');
    expect(judge(withMeasure(rows, 1, 'width', 599), piece(800, 700, 600)).verdict).not.toBe('tight');
  });

  test('the smallest change comes first', () => {
    const rows = route(['door', { width: 630, height: 1981 }], ['door', { width: 655, height: 1981 }]);
    const changes = ask(rows, cabinet).map((r) => Math.abs(r.needed! - r.asMeasured!));
    expect(changes).toEqual([...changes].sort((a, b) => a - b));
    expect(ask(rows, cabinet)[0]).toMatchObject({ step: 2, needed: 660 });
    expect(ask(rows, cabinet)[0]!.why).toContain('measure it again first');
  });

  test('measures not taken come before all, with no value', () => {
    const rows = route(
      ['door', { width: 630, height: 1981 }],
      ['corner', { width: 1500, height: 2100 }],
      ['flight', { width: 1000, height: 2200, rise: 190, going: 250 }],
    );
    const first = ask(rows, cabinet);
    // Beyond the last row is open ground, so that the space at the head is not asked for.
    expect(first.slice(0, 5).map((r) => [r.step, r.measure, r.needed])).toEqual([
      [2, 'Width out', undefined],
      [3, 'Foot ceiling', undefined],
      [3, 'Foot space', undefined],
      [3, 'Head ceiling', undefined],
      [3, 'Risers', undefined],
    ]);
  });

  test('a step that lacks a measure is asked all the same what it would take', () => {
    const rows = route(['flight', { width: 640, height: 2200, rise: 190, going: 250 }]);
    const asked = ask(rows, cabinet);
    // The same 600 + 2 x 25 + 2 x 5 as at a door.
    expect(asked.find((r) => r.measure === 'Width')).toMatchObject({ asMeasured: 640, needed: 660 });
    expect(asked.slice(0, 3).every((r) => r.needed === undefined)).toBe(true);
  });

  test('a step that no single measure mends says so, and names the build that goes', () => {
    const rows = route(['door', { width: 500, height: 500 }]);
    const crate = build('crate', [2000, 1700, 1650]);
    const last = ask(rows, crate, build('panels', [1200, 400, 25]));
    expect(last).toHaveLength(1);
    expect(last[0]).toMatchObject({ step: 1, measure: '', needed: undefined });
    expect(last[0]!.why).toContain('another build (panels goes as it is)');
  });

  test('where every build goes there is nothing to measure again', () => {
    const rows = route(['flight', { width: 1000, height: 2200, rise: 190, going: 250, ...openEnds }]);
    expect(ask(rows, build('panels', [1200, 400, 25]))).toEqual([]);
  });

  test('on a landing too: the needed value alone makes it go', () => {
    const stairs = { width: 760, well: 50, depth: 720, ceiling: 2300, rise: 195, going: 225, height: 1950 };
    const rows = route(['half landing', stairs]);
    const panel = build('panel', [2100, 700, 50]);
    expect(judge(rows, piece(2100, 700, 50)).verdict).not.toBe('goes');
    const decisive = ask(rows, panel);
    expect(decisive.length).toBeGreaterThan(0);
    const names = {
      Width: 'width',
      Well: 'well',
      Depth: 'depth',
      Ceiling: 'ceiling',
      Height: 'height',
    } as const;
    for (const { measure, asMeasured, needed, why } of decisive) {
      expect(asMeasured).toBe(stairs[names[measure as keyof typeof names]]);
      const mended = withMeasure(rows, 1, names[measure as keyof typeof names], needed!);
      expect(judge(mended, piece(2100, 700, 50)).verdict).toBe('goes');
      expect(why).toContain('for panel');
    }
  });

  test('on winding treads the value is one with which nothing but the treads themselves keeps it from going', () => {
    const rows = route(['winder', { width: 720, height: 2000, turn: 90, treads: 3, rise: 190, going: 240 }]);
    const slate = piece(2000, 800, 25);
    expect(judge(rows, slate).reason).toContain('the allowance is 25 mm');
    const [first] = ask(rows, build('slate', [2000, 800, 25]));
    expect(first).toMatchObject({ step: 1, measure: 'Width', asMeasured: 720 });
    expect(first!.why).toContain('at best tight all the same: on winding treads a template goes first');
    const mended = judge(withMeasure(rows, 1, 'width', first!.needed!), slate);
    expect(mended.verdict).toBe('tight');
    expect(mended.reason).not.toContain('allowance');
  });

  test('where no value of one measure does it on winding treads, that is said', () => {
    const rows = route(['winder', { width: 700, height: 1950, turn: 90, rise: 200, going: 220 }]);
    const [only] = ask(rows, build('slate', [2600, 1250, 25]));
    expect(only).toMatchObject({ step: 1, measure: '', needed: undefined });
    expect(only!.why).toContain('no single measure makes this winder go');
  });
});
