import { judgeBuild } from '../../../src/core/route/buildVerdict';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { routeCases } from '../../../src/core/route/routeCases';
import { stageBook } from '../../../src/core/route/stageBook';
import { quarterLandingStage } from '../../../src/core/stages/landing/quarterLanding';
import { routePassages } from '../../../src/core/stages/landing/landingPassages';
import { judge, piece, route } from './routeFixtures';

describe('lifted higher than by hand', () => {
  // Two risers of 217 under a low ceiling line. A slab on edge, 1288 high, does not bend on to the pitch there and off
  // it again; lifted level over both, it needs nothing but the height: 2155 over the upper nosing leaves 867. By hand:
  // it is then 2 x 217 = 434 mm above the floor before them.
  const steps = {
    ...{ width: 778, height: 2155, rise: 217, going: 235, risers: 2 },
    ...{ footCeiling: 2483, footSpace: 2323, headCeiling: 2490, headSpace: 1594 },
  } as const;
  const landing = { width: 850, widthOut: 700, height: 2050, ceiling: 2100, rise: 190, going: 240 } as const;
  const rows = route(['quarter landing', landing]);
  const crate = piece(950, 800, 525);

  test('it is at best tight, and the reason gives the lift', () => {
    const judged = judge(route(['flight', steps]), piece(2369, 1288, 24), { allowance: 25, tape: 0 });
    expect(judged.verdict).toBe('tight');
    expect(judged.clearance!).toBeGreaterThan(25);
    const lifted = /it is lifted (\d+) mm, which is more than by hand/.exec(judged.reason);
    expect(Number(lifted![1])).toBeGreaterThan(300);
    // Room enough is left: not the allowance nor the tape makes it tight.
    expect(judged.reason).not.toMatch(/allowance|tape/);
  });

  test('no allowance, however small, lets the lifted motion simply go: the one by hand goes instead', () => {
    const judged = judge(rows, crate, { allowance: 10, tape: 0 });
    expect(judged.verdict).toBe('goes');
    expect(judged.reason).not.toContain('lifted');
    const byHand = routePassages(
      quarterLandingStage({
        widthIn: 850,
        widthOut: 700,
        headroom: 2050,
        landingCeiling: 2100,
        rise: 190,
        going: 240,
        overRail: 0,
      }),
      crate,
      30000,
    ).filter(({ passage }) => passage.answer.raise! <= 300);
    const best = Math.max(...byHand.map(({ passage }) => passage.answer.clearance));
    // The clearance is the widest motion's, whatever its raise; the reason gives both.
    expect(judged.clearance!).toBeGreaterThan(best);
    const [, carried, raised] =
      /([\d.]+) mm a side left .*raised farther than by hand it leaves ([\d.]+) mm/.exec(judged.reason) ?? [];
    expect(Number(carried)).toBeLessThanOrEqual(Math.round(best));
    // What is left is rounded down.
    expect(Number(raised)).toBe(Math.floor(judged.clearance! + 1e-9));
    // One millimetre more than what goes by hand is asked for, and it is tight again.
    expect(judge(rows, crate, { allowance: best + 1, tape: 0 }).verdict).toBe('tight');
  });
});

describe('a piece above the team guideline that is raised higher than by hand', () => {
  // Lifted level over two risers, as above.
  const steps = {
    ...{ width: 778, height: 2155, rise: 217, going: 235, risers: 2 },
    ...{ footCeiling: 2483, footSpace: 2323, headCeiling: 2490, headSpace: 1594 },
  } as const;
  const verdictAt = (mass: number) => {
    const book = stageBook(0);
    const prepared = prepareRoute(route(['flight', steps]), book);
    const size = piece(2369, 1288, 24);
    const build = {
      name: 'slab',
      pieces: [{ name: 'slab', size, problem: undefined, mass, count: 1 }],
    };
    return judgeBuild(prepared, build, routeCases(prepared, book, 25));
  };

  test('is marked, and a lighter one is not', () => {
    // HSE L23: two people 2/3, three people half of 25 kg each: above 37.5 kg three are not enough.
    expect(verdictAt(80)).toMatchObject({ verdict: 'tight', noAid: true });
    expect(verdictAt(80).reason).toMatch(/raised \d+ mm: no aid known$/);
    expect(verdictAt(30).noAid).toBeUndefined();
    expect(verdictAt(30).reason).not.toContain('no aid known');
  });
});

describe('over a handrail', () => {
  const landing = { width: 650, widthOut: 700, height: 1950, ceiling: 2050, rise: 190, going: 240 } as const;
  // On edge it lies between the nosings and the ceiling line of the flights, and turns only over the rail.
  const long = piece(1800, 700, 260);

  test('it is at best tight, even where no allowance and no tape are asked for', () => {
    const over = judge(route(['quarter landing', { ...landing, overRail: 250 }]), long, {
      allowance: 0,
      tape: 0,
    });
    expect(over.verdict).toBe('tight');
    expect(over.clearance!).toBeGreaterThan(0);
    expect(over.reason).toMatch(/it is lifted \d+ mm over the handrail, which is more than by hand/);
  });

  test('between walls there, no way is found', () => {
    expect(judge(route(['quarter landing', landing]), long, { allowance: 0, tape: 0 }).verdict).toBe(
      'no way found',
    );
  });
});
