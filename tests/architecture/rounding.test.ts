import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const SOURCE = path.resolve(__dirname, '../../src');
const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => file.split(path.sep).join('/'));

/** The one place that rounds a figure for a sentence. */
const RULE = 'core/measures/shown.ts';

/** Where numbers are rounded that nobody reads as a measure: rooms of plain computation, counts, pixels, keys, bytes. */
const NO_FIGURES = [
  /^core\/(?:geometry|space|joint)\//,
  /^core\/measures\/angle\.ts$/,
  /^core\/crew\/roundLanding\.ts$/,
  /^core\/stages\/winder\/winder\.ts$/,
  /^core\/survey\/checks\/(?:doorSlips|storeySlips)\.ts$/,
  /^drawing\/(?:stepPlaces|landingView|paper|wideWinderView)\.ts$/,
  /^sheetHost\//,
  /^taskpane\/icon\.ts$/,
];

test('figures in sentences are rounded in one place, by the rule that stands there', () => {
  expect(files).toContain(RULE);
  const own = files.filter(
    (file) =>
      file !== RULE &&
      !NO_FIGURES.some((room) => room.test(file)) &&
      /Math\.round\(|\.toFixed\(|\.toPrecision\(/.test(readFileSync(path.join(SOURCE, file), 'utf8')),
  );
  // The pane fills up what the rule gave, so that its column of figures stands in line.
  expect(own).toEqual(['taskpane/paneModel.ts']);
});

test('no text rounds by itself, whichever room it stands in', () => {
  const wrong = files
    .filter((file) => file !== RULE && !file.startsWith('sheetHost/'))
    .flatMap((file) =>
      [...readFileSync(path.join(SOURCE, file), 'utf8').matchAll(/\$\{Math\.round\([^}]*\}[^`]*/g)].map(
        ([found]) => `${file}: ${found}`,
      ),
    );
  expect(wrong).toEqual([]);
});
