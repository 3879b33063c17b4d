import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failed } from './failed';
import { examplesPage } from '../form/examplesPage';
import { surveyForm } from '../form/surveyForm';

const FOLDER = path.resolve(__dirname, '../../dist');

/** Writes the form for measuring a way and the worked examples with their pictures, to print. */
async function form(): Promise<void> {
  await mkdir(FOLDER, { recursive: true });
  const pages: readonly (readonly [what: string, name: string, html: string])[] = [
    ['A form to print', 'survey-form.html', surveyForm('The way to your table')],
    ['Worked examples to print or to read from', 'worked-examples.html', examplesPage('Worked examples')],
  ];
  for (const [what, name, html] of pages) {
    const file = path.join(FOLDER, name);
    await writeFile(file, html);
    console.log(`${what}: ${path.relative(process.cwd(), file)}`);
  }
}

form().catch(failed);
