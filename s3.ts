import { launchBrowser } from './tests/support/browser';
import { startSheetServer } from './src/commands/sheetServer';
import { sampleWorkbook } from './src/sample/sampleWorkbook';
import { axeFindings } from './tests/support/axeFindings';
import path from 'node:path';
const typed: [string,string][] = [['D6','83 cm'],['D6','1,5 m'],['D6','0,83'],['D6','83'],['D6','32 1/2'],['D6','2 ft 8'],['D6','abc'],['D6','-5'],['D6','0'],['D6','1700mm'],['D6','1.7.0 m'],['D6','1 700'],['AK6','=CARRY.OPENING(762;1981;1830;930;25)'],['AK6','=CARRY.OPENING(Nowhere!A1,1981,1830,930,25)'],['AK6','=CARRY.OPENING("76 cm","1,981 m",1830,930,25)'],['AK6','=CARRY.OPENING(76,1981,1830,930,25)'],['AK6','=CARRY.OPENING(AZ99,1981,1830,930,25)'],['AK6','=CARRY.VERDICT(Orders!A1:F10,Pieces!A5:G20)'],['AK6','=CARRY.ADVISE(AZ1:BB4,AZ1:BB4)'],['AK6','=CARRY.OPENNING(762,1981,1,1,1)'],['AK6','=CARRY.OPENING(762,1981'],['AK6','=CARRY.VERDICT(NoTable[#All],PieceRows[#All])'],['AK6','=CARRY.WORKING("OPENING",762,1981,1830,930)'],['AK6','=SUM(A1:A3']];
(async () => {
  const browser = await launchBrowser();
  const server = await startSheetServer(path.join(__dirname,'dist'), await sampleWorkbook(), 0);
  for (const [name, opts] of Object.entries({ wide: {viewport:{width:1400,height:900}}, dark: {viewport:{width:1400,height:900}, colorScheme:'dark'}, zoom200: {viewport:{width:700,height:450}, deviceScaleFactor:2}, narrow: {viewport:{width:320,height:700}}, forced: {viewport:{width:1400,height:900}, forcedColors:'active'} } as Record<string, any>)) {
    const page = await browser.newPage(opts);
    page.on('pageerror', m => console.log('pageerror', String(m)));
    await page.goto(server.origin);
    await page.getByRole('button',{name:'Add starter sheets'}).waitFor();
    await page.waitForTimeout(1500);
    const go = async (a: string) => { const f = page.getByLabel('Cell', {exact:true}); await f.fill(a); await f.press('Enter'); };
    await page.getByRole('tab',{name:'Route',exact:true}).click();
    await go('A11'); await page.waitForTimeout(1500);
    await page.screenshot({path:`/tmp/fh/p-${name}.png`, fullPage: name!=='wide'});
    console.log(name, 'axe', JSON.stringify(await axeFindings(page)));
    await go('A13:A18'); await page.waitForTimeout(1200);
    await page.screenshot({path:`/tmp/fh/p-${name}-several.png`});
    console.log(name, 'axe several', JSON.stringify(await axeFindings(page)));
    console.log(name, 'sideways', await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth));
    if (name === 'wide') for (const [a, text] of typed) {
      await go(a); await page.keyboard.type(text); await page.keyboard.press('Enter'); await page.waitForTimeout(900);
      const alert = await page.locator('.refused').innerText().catch(()=>'');
      if (alert) { console.log('\n>', a, text, '\n  REFUSED', alert); await page.screenshot({path:'/tmp/fh/refused.png'}); await page.keyboard.press('Escape'); continue; }
      await go(a); await page.waitForTimeout(1500);
      const m = await page.locator('#cell-message').innerText();
      const pane = a==='D6' ? (await page.locator('#pane').innerText()).replace(/\n+/g,' | ').slice(0,420) : '';
      console.log('\n>', a, text, '\n  ', m.replace(/\n/g,' | '), '\n  ', pane);
    }
    await page.close();
  }
  await browser.close(); await server.close();
})();
