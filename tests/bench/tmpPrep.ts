import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { partsAlone } from '../../src/core/route/routeParts';
import { surveysOf } from '../../src/worksheet/routeInputs';
import { surveyTable } from './surveyGenerator';
const [header = [], ...rows] = surveyTable(40, 20260301 + 7, false);
const all: any[] = [];
for (let i = 0; i < 40; i++) { const r = surveysOf('routes', [header, ...rows.filter(([id]) => id === `S${i + 1}`)]); if (r.ok) all.push(r.value.surveys[0]!.rows); }
const best = { plan: Infinity, first: Infinity, again: Infinity };
const mode = process.argv[2];
for (let k = 0; k < 25; k++) { let plan = 0, first = 0, again = 0; let n = 0;
  for (const r of all) { const book = stageBook(5); const p = prepareRoute(r, book); const size = book.pieceOf({ length: 1830, breadth: 930, thickness: 25 });
    let t = process.hrtime.bigint(); for (const x of p.readings) { x.measured.length; n++; } plan += Number(process.hrtime.bigint() - t);
    if (mode === 'plan') continue;
    t = process.hrtime.bigint(); for (const x of p.readings) partsAlone(x.measured, size, book, 'measured'); first += Number(process.hrtime.bigint() - t);
    t = process.hrtime.bigint(); for (const x of p.readings) partsAlone(x.measured, size, book, 'measured'); again += Number(process.hrtime.bigint() - t); }
  best.plan = Math.min(best.plan, plan / n / 1e3); best.first = Math.min(best.first, first / n / 1e3); best.again = Math.min(best.again, again / n / 1e3); }
console.log('us a reading: plan', best.plan.toFixed(0), 'parts first', best.first.toFixed(0), 'again', best.again.toFixed(0));
