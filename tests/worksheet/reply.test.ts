import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { callInCells } from '../support/callInCells';
import { PIECES_TABLE } from '../support/samplePieces';

const headers = ROUTE_COLUMNS.map(([header]) => header);
const ABOUT: Readonly<Record<string, string>> = {
  goes: 'Fits',
  tight: 'Fits narrowly',
  'no way found': 'Not sure',
  'not measured': 'Not known yet',
  'cannot go': 'Does not fit',
};

describe.each([0, 4, 43].map((i) => [SAMPLE_SURVEYS[i]!.id, SAMPLE_SURVEYS[i]!] as const))(
  'REPLY to %s',
  (_id, survey) => {
    const table = [headers, ...routeRows([survey])];
    const sentences = callInCells('REPLY', table, PIECES_TABLE).slice(1) as [string, string][];

    test('says of each build what ADVISE says, in its order', () => {
      const advised = callInCells('ADVISE', table, PIECES_TABLE).slice(1);
      const said = sentences.filter(([about]) => Object.values(ABOUT).includes(about));
      expect(said.map(([about]) => about)).toEqual(advised.map(([, verdict]) => ABOUT[String(verdict)]));
      advised.forEach(([build], i) => expect(said[i]![1].startsWith(`${String(build)}: `)).toBe(true));
    });

    test('promises nothing, names no price and no crew, and ends with the caution', () => {
      const text = sentences.map(([, sentence]) => sentence).join('\n');
      expect(text).not.toMatch(/guarantee|we will deliver|certainly|£|€|\$|price|cost/i);
      expect(text).not.toMatch(/\b(?:two|three|four|\d+)\s+(?:people|persons|men|carriers|handlers)\b/i);
      for (const heading of ROUTE_HEADINGS.filter((h) => h.includes(' ')))
        expect(text).not.toContain(heading);
      expect(sentences[sentences.length - 1]![0]).toBe('Please note');
      expect(sentences[sentences.length - 1]![1]).toMatch(/no promise/);
    });
  },
);

test('the change it names makes the build fit', () => {
  const route = (width: number) => [
    ['Step', 'Stage', 'Width', 'Height'],
    [1, 'door', width, 1981],
    [2, 'door', 900, 1981],
  ];
  const pieces = [PIECES_TABLE[0]!, ['Table in one', 'cabinet', 1830, 900, 780, 60, 1]];
  const change = callInCells('REPLY', route(800), pieces).find(([about]) => about === 'What would change it');
  const needed = Number(/were (\d+) mm/.exec(String(change?.[1]))?.[1]);
  // 780 + 2 x 25 of allowance + 2 x 5 of tape.
  expect(needed).toBe(840);
  expect(callInCells('VERDICT', route(needed), pieces)[1]![1]).toBe('goes');
  expect(callInCells('VERDICT', route(needed - 1), pieces)[1]![1]).toBe('tight');
});
