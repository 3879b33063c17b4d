import type { Cell } from '../../src/core/measures/readQuantity';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { readPieces } from '../../src/core/survey/table/readPieces';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { readRoute } from '../../src/core/survey/table/readRoute';
import { routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { callInCells } from '../support/callInCells';
import { PIECES_TABLE } from '../support/samplePieces';

/**
 * An empty cell reaches a function as null, as "" or as 0, by the build of the host (issues 4702 and 5262 of
 * office-js): the month says the same with each.
 */
const EMPTY = [null, '', 0] as const;
type Empty = (typeof EMPTY)[number];

const month = (empty: Empty, surveys = SAMPLE_SURVEYS): Cell[][] => [
  [...ROUTE_HEADINGS],
  ...routeRows(surveys).map((row) => row.map((cell) => cell ?? empty)),
];
const [PIECES_HEADER = [], ...pieces] = PIECES_TABLE;

/** A survey as judged is its rows as read and nothing else; the cells it stood in are left out. */
const readings = (empty: Empty) =>
  new Map(readRoute(month(empty)).surveys.map(({ name, rows }) => [name, rows] as const));

const ofNull = readings(null);

/** Surveys of this month that lack a measure which a stage needs: only there do texts differ. */
const LACKING = [...ofNull.keys()].filter((name) =>
  prepareRoute(ofNull.get(name)!, stageBook(5)).steps.some(({ problem }) => problem !== undefined),
);

test('every survey is read alike, but for what is said of a measure that it needs', () => {
  expect(readings('')).toEqual(ofNull);
  const ofZero = readings(0);
  expect([...ofZero.keys()]).toEqual([...ofNull.keys()]);
  const differing = [...ofNull.keys()].filter(
    (name) => JSON.stringify(ofZero.get(name)) !== JSON.stringify(ofNull.get(name)),
  );
  for (const name of differing) {
    expect(LACKING).toContain(name);
    const bare = (rows: (typeof ofNull extends Map<string, infer R> ? R : never) | undefined) =>
      rows!.map((row) => ({ ...row, refused: row.refused.filter(({ got }) => got !== 0) }));
    expect(bare(ofZero.get(name))).toEqual(bare(ofNull.get(name)));
  }
  expect(differing.length).toBeGreaterThan(0);
  expect(differing.length).toBeLessThan(ofNull.size / 4);
});

test('CHECKROUTE marks the same rows, cell by cell, with the same words but for a measure that is needed', () => {
  const [ofNothing, ofText, ofZero] = EMPTY.map((empty) => callInCells('CHECKROUTE', month(empty)));
  expect(ofText).toEqual(ofNothing);
  // Of one row the sentences, since what is refused is told before what is missing.
  const words = (cells: unknown[][]) =>
    cells.map(([cell]) =>
      String(cell)
        .replace(/is not measured, and a [a-z ]+ needs it\./g, 'is missing.')
        .replace(
          /cannot be taken: 0 may be an empty cell(?:; write "0 mm" if there is none)?\./g,
          'is missing.',
        )
        .split(/(?<=\.) (?=[A-Z])/)
        .sort(),
    );
  expect(words(ofZero!)).toEqual(words(ofNothing!));
});

test('SURVEYS gives the same verdicts, cell by cell, where a needed measure is missing', () => {
  const lacking = SAMPLE_SURVEYS.filter(({ id }) => LACKING.includes(id));
  expect(lacking.length).toBeGreaterThan(1);
  const orders = lacking.map(({ id, build }): Cell[] => [id, build]);
  const [ofNothing, ofText, ofZero] = EMPTY.map((empty) =>
    callInCells('SURVEYS', month(empty, lacking), PIECES_TABLE, orders),
  );
  expect(ofText).toEqual(ofNothing);
  const reason = ofNothing![0]!.indexOf('Reason');
  const facts = (cells: unknown[][]) => cells.map((row) => row.filter((_, column) => column !== reason));
  expect(facts(ofZero!)).toEqual(facts(ofNothing!));
});

test('the pieces are read alike with rows, masses and counts left empty', () => {
  const holes = (empty: Empty): Cell[][] => [
    PIECES_HEADER,
    ...pieces.map((row, i) => row.map((cell, j) => (j === 6 && i % 3 === 0 ? empty : cell))),
    PIECES_HEADER.map(() => empty),
  ];
  const [ofNothing, ofText, ofZero] = EMPTY.map((empty) => readPieces(holes(empty)));
  expect(ofText).toEqual(ofNothing);
  expect(ofZero).toEqual(ofNothing);
});

test('a well of nothing is a plain 0, and it is asked whether it was measured', () => {
  const row = (well: Cell): Cell[][] => [
    ['Step', 'Stage', 'Width', 'Well', 'Depth', 'Height', 'Rise', 'Going'],
    [1, 'half landing', 900, well, 950, 2100, 190, 250],
  ];
  const said = (well: Cell): string => String(callInCells('CHECKROUTE', row(well))[1]![0]);
  expect(said(0)).toMatch(/Ask: Well is 0, and an empty cell can arrive as 0: was it measured\?/);
  expect(said('0 mm')).not.toMatch(/Well/);
  expect(said(null)).toMatch(/Well is not measured/);
});
