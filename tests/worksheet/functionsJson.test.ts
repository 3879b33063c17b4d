import { FUNCTIONS } from '../../src/worksheet/functions';
import { functionsJson, type FunctionMetadata } from '../../src/worksheet/functionsJson';
import { functionsJsonFaults } from '../../src/worksheet/functionsJsonRules';

const sound: FunctionMetadata = {
  id: 'OPENING',
  name: 'OPENING',
  description: 'x',
  parameters: [{ name: 'a', description: 'x', type: 'any', dimensionality: 'matrix' }],
  options: { allowErrorForDataTypeAny: true, requiresAddress: true },
  result: { type: 'any', dimensionality: 'matrix' },
};

test('the metadata of all functions keeps the rules', () => {
  expect(FUNCTIONS.length).toBeGreaterThanOrEqual(10);
  expect(functionsJsonFaults(functionsJson(FUNCTIONS).functions)).toEqual([]);
  expect(functionsJson(FUNCTIONS).allowErrorForDataTypeAny).toBe(true);
});

// Rules: Office Add-ins documentation, "Manually create JSON metadata for custom functions".
const parameter = sound.parameters[0]!;
test.each<[string, Partial<FunctionMetadata>[], RegExp]>([
  ['a character not allowed', [{ id: 'OPEN-ING' }], /character not allowed/],
  ['starts with a digit', [{ id: '2OPEN' }], /character not allowed/],
  ['too short', [{ id: 'AB' }], /3 to 128/],
  ['too long', [{ id: 'A'.repeat(129) }], /3 to 128/],
  ['a cell address', [{ id: 'XFD12' }], /cell address/],
  ['a cell address of the other kind', [{ id: 'R1C1' }], /cell address/],
  ['twice', [{}, { id: 'opening' }], /there twice/],
  ['a point and an underscore', [{ id: 'A.BC' }, { id: 'A_BC' }], /there twice/],
  ['no description', [{ description: ' ' }], /no description/],
  [
    'required after optional',
    [
      {
        parameters: [
          { ...parameter, optional: true },
          { ...parameter, name: 'b' },
        ],
      },
    ],
    /required after an optional/,
  ],
  [
    'repeats before the last',
    [
      {
        parameters: [
          { ...parameter, repeating: true },
          { ...parameter, name: 'b' },
        ],
      },
    ],
    /not the last/,
  ],
  ['a parameter twice', [{ parameters: [parameter, parameter] }], /name is there twice/],
])('a fault is found: %s', (_what, changes, fault) => {
  const faults = functionsJsonFaults(
    changes.map((change) => ({ ...sound, ...change, name: change.id ?? sound.name })),
  );
  expect(faults.join('\n')).toMatch(fault);
});

test('a sound function has no fault, and ABCD1 is no cell address', () => {
  expect(functionsJsonFaults([sound, { ...sound, id: 'ABCD1', name: 'ABCD1' }])).toEqual([]);
});
