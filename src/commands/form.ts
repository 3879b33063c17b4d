import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { failed } from './failed';
import { surveyForm } from '../form/surveyForm';

const FOLDER = path.resolve(__dirname, '../../dist');

/** Writes the form for measuring a way, to print. */
async function form(): Promise<void> {
  await mkdir(FOLDER, { recursive: true });
  const file = path.join(FOLDER, 'survey-form.html');
  await writeFile(file, surveyForm('The way to your table'));
  console.log(`A form to print: ${path.relative(process.cwd(), file)}`);
}

form().catch(failed);
