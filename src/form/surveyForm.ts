import { CAUTIONS } from '../core/measures/cautions';
import { measureQuestion } from '../core/customer/measureQuestion';
import { MEASURES, UNIT_OF } from '../core/stages/measures';
import { kindOf, STAGE_NAMES, stageNeeds, type StageName } from '../core/stages/kinds';
import { FORM_STAGES } from '../drawing/formStages';
import { letteredDrawing } from '../drawing/letteredDrawing';
import { markup, Markup, NOTHING } from '../month/markup';
import { wholePage } from '../month/wholePage';
import { FORM_STYLE } from './formStyle';

/**
 * The form for measuring a way, to print: for each stage a drawing that shows where the tape goes, a line to write on for
 * each measure in the order in which one walks past it, and a tick list of photographs. One page of HTML that needs
 * nothing else, and sends nothing.
 * @param title over the form
 */
export function surveyForm(title: string): string {
  return wholePage(
    title,
    FORM_STYLE,
    markup`<main>
<h1>${title}</h1>
<p>Walk the way from the street to the room and number every place as you pass it. Use a part of this form for each; copy a part that you need twice. Write what the tape says, with its unit.</p>
<p class="line">Name and address <span class="write long"></span> Date <span class="write"></span></p>
${STAGE_NAMES.map(stagePart)}
<p class="caution"><strong>Caution:</strong> ${CAUTIONS.customer}</p>
</main>`,
  );
}

function stagePart(stage: StageName): Markup {
  const { measures, photographs } = FORM_STAGES[stage];
  const { needs } = stageNeeds(stage);
  const name = stage.replace(/ /g, '-');
  const id = `part-${name}`;
  const { pictures, letters } = letteredDrawing(stage, { id: `form-${name}` });
  const items = measures.map((measure) => {
    const letter = letters.get(measure);
    const { question } = measureQuestion(measure, { place: `the ${kindOf(stage).customerWord}`, stage });
    const needed = needs.includes(measure) ? NOTHING : markup` <small>if there</small>`;
    return markup`<tr><td class="letter">${letter ?? ''}</td><th scope="row">${question}${needed}</th><td><span class="write"></span> ${UNIT_OF[MEASURES[measure].quantity]}</td></tr>`;
  });
  const ticks = photographs.map((photo) => markup`<li><span class="tick"></span> ${photo}</li>`);
  return markup`<section class="part" aria-labelledby="${id}">
<h2 id="${id}">${stage}: number on the way <span class="write short"></span></h2>
<div class="beside"><figure>${pictures.map(({ svg }) => new Markup(svg))}</figure>
<div><table><thead><tr><th scope="col">At</th><th scope="col">What to measure</th><th scope="col">The tape says</th></tr></thead><tbody>${items}</tbody></table>
<p class="photos">Photographs</p><ul class="ticks">${ticks}</ul></div></div>
</section>
`;
}
