/**
 * Writes what each verdict of the sample month rests on into dist/certificates, reads it again and has it checked by a
 * file that imports nothing: `npm run certify`, or `npm run certify -- Q-25 Q-31`.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { certificates } from './certificates';
import { check, type Certificate } from './check';

async function main(): Promise<void> {
  const folder = path.resolve(__dirname, '../../dist/certificates');
  mkdirSync(folder, { recursive: true });
  const asked = process.argv.slice(2);
  const surveys = SAMPLE_SURVEYS.filter(({ id }) => asked.length === 0 || asked.includes(id));
  let bytes = 0;
  let [passes, shut, open, without] = [0, 0, 0, 0];
  let [making, checking] = [0, 0];
  let since = process.cpuUsage().user;
  const spent = (): number => {
    const before = since;
    since = process.cpuUsage().user;
    return (since - before) / 1e6;
  };
  for await (const made of certificates(surveys)) {
    making += spent();
    if ('none' in made) {
      without++;
      console.log(`${made.survey}: no certificate: ${made.none}`);
      continue;
    }
    const file = path.join(folder, `${made.survey}.json`);
    writeFileSync(file, JSON.stringify(made.certificates));
    const text = readFileSync(file, 'utf8');
    bytes += text.length;
    making += spent();
    const answers = (JSON.parse(text) as Certificate[]).map((one) => ({ one, ...check(one) }));
    checking += spent();
    const faults = answers.flatMap(({ one, faults: found }) => found.map((f) => `${one.piece.name}: ${f}`));
    const looked = answers.reduce((sum, answer) => sum + answer.looked, 0);
    if (faults.length > 0) {
      open++;
      console.log(`${made.survey}: not verified: ${faults.join('; ')}`);
    } else if (answers.some(({ one }) => one.verdict === 'cannot go')) {
      shut++;
      const [first] = answers;
      const by = first?.one.verdict === 'cannot go' ? first.one.proof.by : '';
      console.log(
        `${made.survey}: verified that ${first?.one.piece.name} cannot go (${by}, ${looked} looked at)`,
      );
    } else {
      passes++;
      const least = Math.min(...answers.map(({ padding }) => padding ?? Infinity));
      console.log(
        `${made.survey}: verified for all ${answers.length} pieces, the closest with ${least.toFixed(1)} mm a side to spare (${looked} looked at)`,
      );
    }
  }
  console.log(
    `\n${passes} verified that pass, ${shut} that cannot go, ${open} not verified, ${without} without a certificate; ` +
      `${(bytes / 1e6).toFixed(1)} MB, made in ${making.toFixed(0)} s, checked in ${checking.toFixed(0)} s`,
  );
}

void main();
