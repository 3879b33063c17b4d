import type { ArgumentDescription } from '../../src/worksheet/description';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { camelCase, numberFunction, type NamedArguments } from '../../src/worksheet/namedArguments';

const WIDTH = {
  name: 'door_width',
  help: 'clear width',
  quantity: 'length',
} as const satisfies ArgumentDescription;
const END = {
  name: 'end',
  help: 'at which end',
  quantity: 'choice',
  choices: ['foot', 'head'],
} as const satisfies ArgumentDescription;
const SPACE = {
  name: 'space',
  help: 'how long',
  quantity: 'length',
  optional: { default: null },
} as const satisfies ArgumentDescription;
const ROWS = { name: 'rows', help: 'cells', quantity: 'range' } as const satisfies ArgumentDescription;
const MORE = {
  name: 'more',
  help: 'further cells',
  quantity: 'range',
  repeating: true,
  optional: { default: null },
} as const satisfies ArgumentDescription;

const DESCRIBED = {
  id: 'TRIED',
  group: 'Measures and pieces',
  summary: 'Tries the types',
  result: { meaning: 'a width', unit: 'mm' },
  source: 'none',
  example: { arguments: [1], result: 1, source: 'none' },
} as const;

const ALL = [WIDTH, END, SPACE, ROWS, MORE] as const;
type Given = NamedArguments<typeof ALL>;

// Each line below that is marked is an error of the types: where it is none, the types say so when they are checked.
test('names and types of what is computed with come from the descriptions', () => {
  const given: Given = { doorWidth: 762, end: 'foot', space: undefined, rows: [[1]], more: [] };
  expect(Object.keys(given)).toEqual(ALL.map(({ name }) => camelCase(name)));
  const width: number = given.doorWidth;
  const end: 'foot' | 'head' = given.end;
  expect([width, end]).toEqual([762, 'foot']);
  // @ts-expect-error: no argument has this name
  expect(given.door_width).toBeUndefined();
  // @ts-expect-error: it may have been left out
  const space: number = given.space;
  expect(space).toBeUndefined();
  // @ts-expect-error: a word that is none of the choices
  const wrong: Given = { ...given, end: 'top' };
  expect(wrong.end).toBe('top');
});

test('a name that is not described does not compile, nor one of a description that keeps no name', () => {
  // @ts-expect-error: it is called doorWidth
  const misnamed = numberFunction({ ...DESCRIBED, arguments: [WIDTH], compute: ({ width }) => width });
  const widened: ArgumentDescription = WIDTH;
  const nameless = numberFunction({
    ...DESCRIBED,
    arguments: [widened],
    // @ts-expect-error: the type of the description says only that it has some name
    compute: ({ doorWidth }) => doorWidth,
  });
  expect([misnamed.kind, nameless.kind]).toEqual(['number', 'number']);
});

test.each([
  ['rise', 'rise'],
  ['door_width', 'doorWidth'],
  ['lifts_per_minute', 'liftsPerMinute'],
])('%s is %s in code', (name, inCode) => expect(camelCase(name)).toBe(inCode));

test.each(FUNCTIONS.map((f) => [f.id, f] as const))('%s has no two arguments of one name', (_id, f) => {
  const names = f.arguments.map((argument) => camelCase(argument.name));
  expect(new Set(names).size).toBe(names.length);
});
