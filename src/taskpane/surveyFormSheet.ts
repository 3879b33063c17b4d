import { measureQuestion } from '../core/customer/measureQuestion';
import { CAUTIONS } from '../core/measures/cautions';
import { kindOf, STAGE_NAMES, stageNeeds } from '../core/stages/kinds';
import { MEASURES, UNIT_OF } from '../core/stages/measures';
import { measureAtStage } from '../core/survey/words/measureHeading';
import { FORM_STAGES } from '../drawing/formStages';
import type { NewSheet } from './sheetAccess';

/**
 * The form for measuring a way, a part for each stage: what to measure in the order in which one walks past it, room for
 * what the tape says, and the photographs to take. Printed, or filled in on a tablet; copied where a part is needed twice.
 */
export function surveyFormSheet(name: string): NewSheet {
  const cells: NewSheet['cells'][number][] = [
    {
      row: 0,
      column: 0,
      value:
        'Survey form: walk from the street to the room and number every place. Copy a part that you need twice. The pane shows where the tape goes for a row of Route.',
      bold: true,
    },
    { row: 1, column: 0, value: CAUTIONS.customer },
    { row: 2, column: 0, value: 'Name and address' },
    { row: 2, column: 2, value: 'Date' },
  ];
  let row = 4;
  for (const stage of STAGE_NAMES) {
    const { measures, photographs } = FORM_STAGES[stage];
    const { needs } = stageNeeds(stage);
    ['Number on the way', stage, 'Column of Route', 'The tape says', 'Unit'].forEach((value, column) =>
      cells.push({ row, column, value, bold: true }),
    );
    for (const measure of measures) {
      row++;
      const place = { place: `the ${kindOf(stage).customerWord}`, stage };
      const { question } = measureQuestion(measure, place);
      cells.push(
        { row, column: 1, value: needs.includes(measure) ? question : `${question} (if there)` },
        { row, column: 2, value: measureAtStage(measure, stage) },
        { row, column: 4, value: UNIT_OF[MEASURES[measure].quantity] },
      );
    }
    for (const photo of photographs) {
      row++;
      cells.push(
        { row, column: 1, value: `Photograph: ${photo}` },
        { row, column: 2, value: 'tick when taken' },
      );
    }
    row += 2;
  }
  return { name, cells, tables: [], lists: [], widths: [20, 130, 26, 18, 10] };
}
