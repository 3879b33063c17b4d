import { plausibleRange, possibleRange, STAGE_NAMES, stageNeeds } from '../../../src/core/stages/kinds';

describe.each(STAGE_NAMES)('%s', (stage) => {
  const { needs, may } = stageNeeds(stage);

  test.each([...needs, ...may])('what is usual of %s is possible, and both name a source', (measure) => {
    const usual = plausibleRange(stage, measure)!;
    const possible = possibleRange(stage, measure);
    expect(usual.source.length).toBeGreaterThan(3);
    expect(possible.source.length).toBeGreaterThan(3);
    expect(usual.least).toBeLessThan(usual.most);
    expect(usual.least).toBeGreaterThanOrEqual(possible.least);
    expect(usual.most).toBeLessThanOrEqual(possible.most);
  });

  test('no measure is needed and optional at once', () => {
    expect(needs.filter((measure) => may.includes(measure))).toEqual([]);
  });
});

// Approved Document K, table 1.1: rise 150-220 and going 220-300 of a private stair.
test('the usual steps are those of the code', () => {
  expect(plausibleRange('flight', 'rise')).toMatchObject({ least: 150, most: 220 });
  const going = plausibleRange('flight', 'going')!;
  expect(going.least).toBe(220);
  expect(going.most).toBeGreaterThanOrEqual(300);
});

// IRC R311.7: 7 3/4 in riser, 10 in tread, 31 1/2 in beside a handrail, 6 ft 8 in of headroom.
// ISO 4190-1, the 630 kg car: 1100 x 1400. Approved Document M: doors 750 to 800, corridors 900 to 1200.
test.each([
  ['flight', 'rise', 7.75 * 25.4],
  ['flight', 'going', 254],
  ['flight', 'width', 31.5 * 25.4],
  ['flight', 'width', 914.4],
  ['flight', 'height', 80 * 25.4],
  ['lift', 'widthOut', 1100],
  ['lift', 'depth', 1400],
  ['lift', 'ratedLoad', 630],
  ['lift', 'width', 800],
  ['lift', 'height', 2100],
  ['side door', 'width', 750],
  ['side door', 'widthOut', 1200],
  ['corner', 'width', 900],
] as const)('%s: %s of %d, which a code gives, is usual', (stage, measure, value) => {
  const { least, most } = plausibleRange(stage, measure)!;
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
});
