import { launchBrowser } from './tests/support/browser';
import { startSheetServer } from './src/commands/sheetServer';
import { sampleWorkbook } from './src/sample/sampleWorkbook';
import path from 'node:path';
(async () => {
  const browser = await launchBrowser();
  const server = await startSheetServer(path.join(__dirname,'dist'), await sampleWorkbook(), 0);
  const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
  page.on('console', m => console.log('console', m.type(), m.text()));
  page.on('pageerror', m => console.log('pageerror', String(m)));
  const t0 = Date.now(); const at = () => ((Date.now()-t0)/1000).toFixed(1);
  await page.goto(server.origin);
  await page.getByRole('grid').waitFor(); console.log('grid', at());
  await page.getByText('Quernholt Table Carriers: a month').first().waitFor(); console.log('cells', at());
  let last='';
  for (let i=0;i<500;i++){ const s = await page.locator('.status').first().innerText().catch(()=>''); const p = await page.locator('.tools progress').evaluate((b: HTMLProgressElement)=>b.hidden?'':b.value+'/'+b.max).catch(()=>'?'); const w=s+' '+p; if(w!==last){console.log(at(), w); last=w;} if(/All formulas/.test(s)) break; await page.waitForTimeout(150);
    if(i===20){ await page.screenshot({path:'/tmp/fh/busy.png'});} }
  await browser.close(); await server.close();
})();
