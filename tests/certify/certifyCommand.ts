/**
 * Writes what each verdict of the sample month rests on into dist/certificates, reads it again and has it checked by
 * code that shares nothing with what made it: `npm run certify`.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { certificates } from './certificates';
import { check, type Certificate } from './check';

async function main(): Promise<void> {
  const folder = path.resolve(__dirname, '../../dist/certificates');
  mkdirSync(folder, { recursive: true });
  let bytes = 0;
  let [verified, open, without] = [0, 0, 0];
  const started = process.cpuUsage().user;
  for await (const made of certificates()) {
    if ('none' in made) {
      without++;
      console.log(`${made.survey}: no certificate: ${made.none}`);
      continue;
    }
    const file = path.join(folder, `${made.survey}.json`);
    writeFileSync(file, JSON.stringify(made.certificates));
    const text = readFileSync(file, 'utf8');
    bytes += text.length;
    const answers = (JSON.parse(text) as Certificate[]).map((one) => ({ one, ...check(one) }));
    const faults = answers.flatMap(({ one, faults: found }) => found.map((f) => `${one.piece.name}: ${f}`));
    if (faults.length === 0) verified++;
    else open++;
    const least = Math.min(...answers.map(({ padding }) => padding ?? Infinity));
    console.log(
      `${made.survey}: ${faults.length === 0 ? `verified for all ${answers.length} pieces, the closest with ${least.toFixed(1)} mm a side to spare` : `not verified: ${faults[0]}`}`,
    );
  }
  const seconds = (process.cpuUsage().user - started) / 1e6;
  console.log(
    `\n${verified} verified, ${open} not verified, ${without} without a certificate; ${(bytes / 1e6).toFixed(1)} MB, ${seconds.toFixed(0)} s`,
  );
}

void main();
