import { CAUTIONS } from '../core/measures/cautions';
import { shownGiven } from '../core/measures/shown';
import { drawExample, type ExamplePicture } from '../drawing/drawExample';
import { markup, Markup, NOTHING } from '../month/markup';
import { wholePage } from '../month/wholePage';
import { hostFunction, type HostCell } from '../worksheet/callFunction';
import { FUNCTIONS } from '../worksheet/functions';
import { WORKED_EXAMPLES, type WorkedExample } from '../worksheet/workedExamples';
import { EXAMPLES_STYLE } from './examplesStyle';

/** Places after the point in a working: it is computed on with, and has no careful side. */
const PLACES = 4;

/**
 * The worked examples to print or to read from: each question with what is given, its place in a picture and a line for
 * the answer; the working, with the piece on its way, opens by itself. One page of HTML that needs nothing else, runs no
 * script and sends nothing.
 * @param title over the examples
 */
export function examplesPage(title: string): string {
  return wholePage(
    title,
    EXAMPLES_STYLE,
    markup`<main>
<h1>${title}</h1>
<p>Work each one out and write your answer on its line; then open the working. On paper only what is open is printed. Values of our own making.</p>
<p class="caution"><strong>Caution:</strong> ${CAUTIONS.lifting}</p>
${WORKED_EXAMPLES.map(examplePart)}
</main>`,
  );
}

function examplePart(example: WorkedExample, index: number): Markup {
  const { title, question, given, id, unit, tolerance } = example;
  const key = `example-${index + 1}`;
  const values = given.map(([, value]) => value);
  const asked = question.replace(/\{(\d)\}/g, (_, place: string) => String(values[Number(place) - 1] ?? ''));
  const rows = given.map(
    ([label, value, unitOfIt]) =>
      markup`<tr><th scope="row">${label}</th><td class="number">${String(value)}</td><td>${unitOfIt}</td></tr>`,
  );
  return markup`<section class="part" aria-labelledby="${key}">
<h2 id="${key}">${String(index + 1)}. ${title}</h2>
<p>${asked}</p>
<div class="beside"><table><thead><tr><th scope="col">Given</th><th scope="col" class="number">Value</th><th scope="col">Unit</th></tr></thead><tbody>${rows}</tbody></table>
${pictures(pictureOf(example, `${key}-place`, 'place'))}</div>
<p class="line">Your answer <span class="write"></span> ${unit}, right within ${String(tolerance)}</p>
<details><summary>Working: ${title}</summary>
${pictures(pictureOf(example, `${key}-way`, 'piece on its way'))}
${workingTable(title, id, values)}</details>
</section>
`;
}

function pictureOf(
  { id, given }: WorkedExample,
  key: string,
  what: 'place' | 'piece on its way',
): ExamplePicture | undefined {
  const lengths = given.map(([, value]) => Number(value));
  return drawExample({ id, given: lengths, isAsked: what === 'piece on its way' }, key);
}

const pictures = (drawn: ExamplePicture | undefined): Markup =>
  drawn
    ? markup`<figure class="places">${drawn.pictures.map(({ svg }) => new Markup(svg))}<figcaption>${drawn.text}</figcaption></figure>`
    : NOTHING;

function workingTable(title: string, id: string, values: readonly (number | string)[]): Markup {
  const [head = [], ...rows] = workingOf(id, values);
  const heads = head.map((cell) => markup`<th scope="col">${textOf(cell)}</th>`);
  const lines = rows.map((row) => markup`<tr>${row.map(workingCell)}</tr>`);
  return markup`<div class="wide" role="region" aria-label="${title}: working" tabindex="0"><table class="working"><thead><tr>${heads}</tr></thead><tbody>${lines}</tbody></table></div>`;
}

const workingCell = (cell: HostCell): Markup =>
  typeof cell === 'number'
    ? markup`<td class="number">${textOf(cell)}</td>`
    : markup`<td>${textOf(cell)}</td>`;

/** What WORKING answers. */
function workingOf(id: string, values: readonly (number | string)[]): HostCell[][] {
  const working = FUNCTIONS.find((one) => one.id === 'WORKING');
  if (!working) throw new Error('there is no function WORKING');
  const call = hostFunction(working, (code) => {
    throw new Error(`the working of ${id} answers ${code}`);
  });
  return call(
    [[id]],
    values.map((value) => [[value]]),
  );
}

function textOf(cell: HostCell): string {
  if (typeof cell === 'number') return String(shownGiven(cell, PLACES));
  return typeof cell === 'object' ? cell.code : String(cell);
}
