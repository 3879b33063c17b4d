import { findLibreOffice } from './libreOffice';

/** After all tests: ends the browser that was shared, if one was started, and says what could not be compared. */
export default async function endSharedBrowser(): Promise<void> {
  await (globalThis as { endBrowser?: () => Promise<void> }).endBrowser?.();
  if (!findLibreOffice()) {
    process.stderr.write(
      '\nNOT COMPARED WITH LIBREOFFICE, which is not on this machine: its test in tests/sheetHost/libreOffice.test.ts was\n' +
        'skipped. What we save is read back by exceljs alone. With LIBREOFFICE=required its absence is a failure.\n',
    );
  }
}
