import { syntaxWords } from '../../src/sheetHost/syntaxWords';

/** By meaning: the words are for the person who typed the formula. */
test.each([
  ['CARRY.PITCH(19 cm,24 cm)', 'a measure with its unit stands in quotes: "19 cm"'],
  ['CARRY.OPENING(2\' 6",1981,1830,930,25)', 'a measure with its unit stands in quotes: "2\' 6"""'],
  ['CARRY.OPENING("30 in",78in,1830,930,25)', 'a measure with its unit stands in quotes: "78in"'],
  ['CARRY.PITCH(190;240)', 'arguments are parted by a comma here, not by a semicolon: write , for ;'],
  ['SUM(1,2', '1 closing bracket is missing'],
  ['SUM(1,2))', '1 closing bracket too many'],
  ['"19 cm', 'a text in quotes is not closed'],
  ['1+', 'nothing stands after its last +'],
  ['2 3', 'a sign is missing between two values, or one is out of place'],
  ["SUM('Sheet 2'!A1 M3)", 'a sign is missing between two values, or one is out of place'],
])('of %s it says: %s', (formula, words) => {
  expect(syntaxWords(formula)).toBe(words);
});
