import { readFileSync } from 'node:fs';
import { isCellError } from '../../src/sheetHost/hostValues';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { builtFolder } from '../support/builtFolder';
import { opened } from '../sheetHost/fixtures/sheetWith';
import { formulaCell } from './exampleBook';
import {
  BOOK,
  CONTRACT,
  contractNow,
  lessThanBefore,
  MONTH,
  monthNow,
  readGolden,
  type Contract,
  type GoldenVerdict,
} from './golden';

// What saved workbooks rest on. A change shows as a difference of the golden files, which `npm run golden` writes and
// CHANGELOG.md explains; what an earlier version showed or proved, a later one may not lose.

jest.setTimeout(300_000);

const golden = readGolden<Contract>(CONTRACT).functions;

test('every function has its arguments and gives what it gave', () => {
  expect(contractNow().functions).toEqual(golden);
});

test('the workbook saved by the version before opens, and every formula of it gives what was saved', async () => {
  const host = await opened(readFileSync(BOOK));
  const saved = new Map(
    Object.keys(golden).map((id) => {
      const { row, column } = formulaCell(id);
      return [id, host.value('Examples', row, column)];
    }),
  );
  host.register(await loadBundle(builtFolder()));
  host.recalculate();
  for (const [id, was] of saved) {
    const { row, column } = formulaCell(id);
    const now = host.value('Examples', row, column);
    expect([id, isCellError(now)]).toEqual([id, isCellError(was)]);
    if (typeof was === 'number') expect([id, now]).toEqual([id, expect.closeTo(was, 6)]);
    else if (!isCellError(was)) expect([id, now]).toEqual([id, was]);
  }
});

test('no survey of the month is judged as less than before, and each as it was', async () => {
  const before = readGolden<GoldenVerdict[]>(MONTH);
  const now = await monthNow();
  const less = before.flatMap(
    (was) =>
      lessThanBefore(
        was,
        now.find(({ survey, build }) => survey === was.survey && build === was.build),
      ) ?? [],
  );
  expect(less).toEqual([]);
  expect(now).toEqual(before);
});

describe('less than before', () => {
  const was = (verdict: GoldenVerdict['verdict'], clearance: number | null): GoldenVerdict => ({
    survey: 'Q',
    build: '7 ft',
    verdict,
    clearance,
  });
  test.each([
    [was('goes', 40), was('tight', 40)],
    [was('goes', 40), was('goes', 39.5)],
    [was('tight', 4), was('no way found', -1)],
    [was('tight', 4), was('cannot go', -1)],
    [was('tight', 4), was('tight', null)],
    [was('cannot go', -9), was('no way found', -9)],
    [was('cannot go', -9), was('goes', 9)],
    [was('no way found', -9), was('not measured', null)],
    [was('goes', 40), undefined],
  ])('%j, then %j', (before, now) => {
    expect(lessThanBefore(before, now)).toBeDefined();
  });
  test.each([
    [was('tight', 40), was('goes', 40)],
    [was('goes', 40), was('goes', 39.9)],
    [was('no way found', -9), was('cannot go', -20)],
    [was('no way found', -9), was('goes', 30)],
    [was('no way found', -9), was('no way found', -20)],
    [was('not measured', null), was('cannot go', -1)],
  ])('not %j, then %j', (before, now) => {
    expect(lessThanBefore(before, now)).toBeUndefined();
  });
});
