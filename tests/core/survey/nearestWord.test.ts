import fc from 'fast-check';
import { nearestWord } from '../../../src/core/survey/table/nearestWord';
import { STAGE_NAMES } from '../../../src/core/stages/kinds';
import { stageNamed, stagesMeant } from '../../../src/core/survey/table/stageNamed';

// What people mistype: common practice, no source.
test.each([
  ['pasage', 'passage'],
  ['passsage', 'passage'],
  ['fligth', 'flight'],
  ['dor', 'door'],
  ['doors', 'door'],
  ['quater landing', 'quarter landing'],
  ['half landings', 'half landing'],
  ['conrer', 'corner'],
  ['rooom', 'room'],
])('%s is near to %s', (word, nearest) => {
  expect(nearestWord(word, STAGE_NAMES)).toBe(nearest);
  expect(stageNamed(word)).toBeUndefined();
});

test.each(['', '--', 'garden', 'kitchen', 'tramp way', 'do', 'or', 'landing'])(
  '%p is near to none',
  (word) => {
    expect(nearestWord(word, STAGE_NAMES)).toBeUndefined();
  },
);

test('two words equally near are not chosen between', () => {
  expect(nearestWord('cat', ['bat', 'hat'])).toBeUndefined();
  expect(nearestWord('cat', ['bat', 'cats', 'cat'])).toBe('cat');
});

test('other words for a stage are asked about and not taken', () => {
  expect(stagesMeant('Stairs')).toEqual(['flight']);
  expect(stagesMeant('window')).toEqual([]);
  expect(stagesMeant('landing')).toEqual(['quarter landing', 'half landing']);
  expect(stagesMeant('constructor')).toEqual([]);
  expect(stageNamed('stairs')).toBeUndefined();
});

test('one letter left out of any stage finds it again', () => {
  fc.assert(
    fc.property(fc.constantFrom(...STAGE_NAMES), fc.nat(), (stage, at) => {
      const place = at % stage.length;
      const word = stage.slice(0, place) + stage.slice(place + 1);
      expect(stageNamed(word) ?? nearestWord(word, STAGE_NAMES)).toBe(stage);
    }),
    { seed: 41 },
  );
});

test('case and spaces are no slip', () => {
  for (const stage of STAGE_NAMES) {
    expect(stageNamed(stage.toUpperCase())).toBe(stage);
    expect(stageNamed(stage.replace(' ', '  '))).toBe(stage);
  }
});
