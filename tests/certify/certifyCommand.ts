/**
 * Writes what each verdict of the sample month rests on into dist/certificates, reads it again and has it checked by a
 * file that imports nothing: `npm run certify`, or `npm run certify -- Q-25 Q-31`. With `-- --claims 3000` it goes over that
 * many narrow random surveys in place of the month, and over what is proved in them that a piece cannot go.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { sortedPiece } from '../../src/core/measures/piece';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { proofAt } from '../../src/core/route/proofs';
import { stageBook } from '../../src/core/route/stageBook';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { ownSeed } from '../attacks/shutAttack';
import { shutRoute } from '../support/shutRoutes';
import { certificates } from './certificates';
import { check, type Certificate } from './check';
import { shutCertificates } from './shutCertificate';

/** Of what is proved of random surveys, how much is certified, by the stage and by what the certificate rests on. */
function claims(surveys: number): void {
  const book = stageBook(5);
  const counted = new Map<string, number>();
  for (let seed = 1; seed <= surveys; seed++) {
    const { survey, piece: drawn } = shutRoute(ownSeed(seed));
    // As drawn most of them pass, or nothing is proved.
    const larger = 1 + (seed % 4) / 8;
    const piece = sortedPiece(drawn.length * larger, drawn.breadth * larger, drawn.thickness * larger);
    const route = prepareRoute(survey, book);
    const at = route.steps.findIndex((_, i) => proofAt(route, i, book.pieceOf(piece), book) !== undefined);
    if (at < 0) continue;
    const made = shutCertificates(route, piece, book, {
      ...{ survey: `seed ${seed}`, build: '' },
      piece: { ...piece, name: 'the piece' },
    });
    if (typeof made === 'string') console.log(`seed ${seed}: no certificate: ${made}`);
    const by = typeof made === 'string' ? 'none' : made.map(({ proof }) => proof.by)[0];
    const key = `${route.steps[at]?.stage?.stage}: ${by}`;
    counted.set(key, (counted.get(key) ?? 0) + 1);
  }
  for (const [key, count] of [...counted].sort()) console.log(`${key} ${count}`);
}

async function main(): Promise<void> {
  const claimed = process.argv.indexOf('--claims');
  if (claimed > 0) return claims(Number(process.argv[claimed + 1]));
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
