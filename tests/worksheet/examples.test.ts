import { FUNCTIONS } from '../../src/worksheet/functions';
import { callInCells, type Given } from '../support/callInCells';

// Each example names the source of its expected value in the description itself.
describe('the worked example of every function gives its result', () => {
  test.each(FUNCTIONS.map((f) => [f.id, f] as const))('%s', (id, description) => {
    const { arguments: given, result, within = 0, source } = description.example;
    expect(source.trim()).not.toMatch(/^$|regression/);
    const table = callInCells(id, ...(given as Given[]));
    if (description.kind === 'number') {
      expect(table).toHaveLength(1);
      expect(typeof table[0]![0]).toBe('number');
      expect(Math.abs((table[0]![0] as number) - (result as number))).toBeLessThanOrEqual(within);
      return;
    }
    const expected = result as readonly (readonly unknown[])[];
    expect(expected.length).toBeGreaterThan(0);
    expected.forEach((row, r) =>
      row.forEach((cell, c) => {
        const got = table[r]![c];
        if (typeof cell === 'number') expect(Math.abs((got as number) - cell)).toBeLessThanOrEqual(within);
        else expect(got).toEqual(cell);
      }),
    );
  });
});

describe('every function is described well enough to be used', () => {
  test.each(FUNCTIONS.map((f) => [f.id, f] as const))('%s', (_id, f) => {
    expect(f.summary).toMatch(/^[A-Z].*[^.]$/s);
    expect(f.source.length).toBeGreaterThan(3);
    for (const a of f.arguments) {
      expect(a.name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(a.help.length).toBeGreaterThan(3);
    }
    if (f.group === 'Clearance' && f.result.unit === 'mm a side') {
      expect(f.motions).toBeTruthy();
      expect(f.caution).toBeTruthy();
    }
    if (f.group === 'Carrying' || f.group === 'Floors') expect(f.caution).toBeTruthy();
  });
});
