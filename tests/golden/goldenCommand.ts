/**
 * Writes anew what later versions are held against, and says what of it changed: `npm run golden`. What is said to be
 * less is a fault, or has its reason in CHANGELOG.md.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { buildIfStale } from '../../src/commands/buildIfStale';
import path from 'node:path';
import { exampleBook } from './exampleBook';
import {
  BOOK,
  CONTRACT,
  contractNow,
  lessThanBefore,
  MONTH,
  monthNow,
  readGolden,
  type Contract,
  type GoldenVerdict,
} from './golden';

async function main(): Promise<void> {
  await buildIfStale(path.resolve(__dirname, '../..'), console.log);
  const contract = contractNow();
  const month = await monthNow();
  if (existsSync(CONTRACT)) {
    const before = readGolden<Contract>(CONTRACT).functions;
    for (const id of new Set([...Object.keys(before), ...Object.keys(contract.functions)])) {
      if (JSON.stringify(before[id]) !== JSON.stringify(contract.functions[id])) console.log(`${id} changed`);
    }
  }
  if (existsSync(MONTH)) {
    for (const was of readGolden<GoldenVerdict[]>(MONTH)) {
      const now = month.find(({ survey, build }) => survey === was.survey && build === was.build);
      const less = lessThanBefore(was, now);
      if (less !== undefined) console.log(`LESS: ${less}`);
      else if (JSON.stringify(was) !== JSON.stringify(now)) {
        console.log(
          `${was.survey}: ${was.verdict} ${was.clearance ?? ''} -> ${now?.verdict} ${now?.clearance ?? ''}`,
        );
      }
    }
  }
  writeFileSync(CONTRACT, `${JSON.stringify(contract, null, 1)}\n`);
  writeFileSync(MONTH, `[\n${month.map((one) => JSON.stringify(one)).join(',\n')}\n]\n`);
  const book = await exampleBook();
  if (!existsSync(BOOK) || !readFileSync(BOOK).equals(Buffer.from(book))) writeFileSync(BOOK, book);
  console.log(`${Object.keys(contract.functions).length} functions, ${month.length} verdicts`);
}

void main();
