import { mountPane } from '../../taskpane/mountPane';
import { openWorkbook } from '../excelts/openWorkbook';
import type { SheetHost } from '../sheetHost';
import { BookView } from './bookView';
import { hostSheetAccess } from './hostSheetAccess';
import { pageBundle } from './pageBundle';
import { describedFunctions } from './typingHelp';
import { WorkbookSession } from './workbookSession';

async function sampleBook(): Promise<SheetHost> {
  const answer = await fetch('sample.xlsx');
  if (!answer.ok) throw new Error(`the sample workbook did not come (${answer.status})`);
  const opened = await openWorkbook(new Uint8Array(await answer.arrayBuffer()));
  if (!opened.ok) throw new Error(`the sample workbook was refused: ${opened.reason}`);
  return opened.host;
}

/** The entry of the sheet page: the built add-in, the sample workbook, and the pane beside it. */
async function start(book: HTMLElement, pane: HTMLElement): Promise<void> {
  const [{ bundle, metadata }, host] = await Promise.all([pageBundle(), sampleBook()]);
  const session = new WorkbookSession(bundle);
  const view = new BookView(book, session, describedFunctions(metadata));
  await session.open(host);
  view.focus();
  await mountPane(pane, hostSheetAccess(session));
}

const [book, pane] = [document.getElementById('book'), document.getElementById('pane')];
if (book && pane) {
  start(book, pane).catch((error: unknown) => {
    book.textContent = `The page could not start: ${error instanceof Error ? error.message : String(error)}`;
  });
}
