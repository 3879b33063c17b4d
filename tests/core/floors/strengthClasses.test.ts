import { joistUses, DURATIONS } from '../../../src/core/floors/joistUses';
import type { Duration } from '../../../src/core/floors/joistLoading';
import { GRADES, STRENGTH_CLASSES, type Grade } from '../../../src/core/floors/strengthClasses';
import { collectWorking } from '../../../src/core/measures/working';

describe('strength classes', () => {
  /**
   * EN 338:2016 table 1, fm,k fv,k E0,mean Gmean [N/mm2]. C16 and C24 but for Gmean were read in a quotation; all were
   * read in a second-hand table (public source text, not the standard).
   */
  const PRINTED: readonly (readonly [Grade, number, number, number, number])[] = [
    ['C14', 14, 3.0, 7000, 440],
    ['C16', 16, 3.2, 8000, 500],
    ['C18', 18, 3.4, 9000, 560],
    ['C20', 20, 3.6, 9500, 590],
    ['C22', 22, 3.8, 10000, 630],
    ['C24', 24, 4.0, 11000, 690],
    ['C27', 27, 4.0, 11500, 720],
    ['C30', 30, 4.0, 12000, 750],
  ];

  it.each(PRINTED)('%s: %f, %f, %f, %f', (grade, bending, shear, elasticity, shearModulus) => {
    expect(STRENGTH_CLASSES[grade]).toEqual({ bending, shear, elasticity, shearModulus });
  });

  it('are all printed above', () => {
    expect(PRINTED.map(([grade]) => grade)).toEqual(GRADES);
  });
});

describe('kmod', () => {
  // EN 1995-1-1 table 3.1, solid timber, service classes 1 and 2, read in a quotation.
  const PRINTED: Readonly<Record<Duration, number>> = { permanent: 0.6, long: 0.7, medium: 0.8, short: 0.9 };

  it.each(DURATIONS)('%s', (duration) => {
    const { steps } = collectWorking((working) =>
      joistUses(
        {
          span: 4000,
          spacing: 400,
          breadth: 50,
          depth: 200,
          grade: 'C24',
          dead: 0.5,
          imposed: 1.5,
          points: [],
          duration,
        },
        working,
      ),
    );
    expect(steps.find(({ what }) => what === `kmod, all loads, ${duration}`)?.value).toBe(PRINTED[duration]);
    expect(steps.find(({ what }) => what === 'kmod, what stays, permanent')?.value).toBe(0.6);
  });
});

// EN 1995-1-1 3.1.3(2), from memory: of actions of different duration the shortest decides kmod. So what stays for good has
// to be checked without it: both reasons stand where the figure does.
test('a working says why each of the two combinations has its kmod', () => {
  const { steps } = collectWorking((working) =>
    joistUses(
      {
        span: 3600,
        spacing: 400,
        breadth: 50,
        depth: 200,
        grade: 'C24',
        dead: 0.5,
        imposed: 1.5,
        points: [{ load: 900, at: 1800 }],
        duration: 'medium',
      },
      working,
    ),
  );
  const why = (what: string): string => String(steps.find((step) => step.what === what)?.formula);
  expect(why('kmod, all loads, medium')).toContain('the shortest decides');
  expect(why('kmod, what stays, permanent')).toContain('checked by itself');
  for (const step of steps.filter(({ what }) => what.startsWith('kmod')))
    expect(step.source).toContain('3.1.3(2), from memory');
});
