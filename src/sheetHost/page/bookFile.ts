import { element } from '../../taskpane/element';
import { openWorkbook } from '../excelts/openWorkbook';
import type { SheetHost } from '../sheetHost';

/** Largest file that is opened, in MB. */
const MOST_MB = 20;

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Opens a workbook from a person's file; where it is not opened, the reason is a sentence. */
export async function openBook(
  file: File,
): Promise<{ readonly ok: true; readonly host: SheetHost } | { readonly ok: false; readonly why: string }> {
  if (file.size > MOST_MB * 1e6) {
    const size = (file.size / 1e6).toFixed(1);
    return {
      ok: false,
      why: `${file.name} was not opened: it has ${size} MB; at most ${MOST_MB} MB are opened.`,
    };
  }
  const opened = await openWorkbook(new Uint8Array(await file.arrayBuffer()), { sizeLimit: MOST_MB * 1e6 });
  if (opened.ok) return opened;
  return {
    ok: false,
    why: `${file.name} was not opened: ${opened.reason}. The workbook that was here still is.`,
  };
}

/** Hands a copy of the workbook to the browser as a download; says what of it could not be kept. */
export async function saveBook(host: SheetHost): Promise<readonly string[]> {
  const { bytes, lost } = await host.save();
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  const link = element('a', { href: url, download: 'carry-route-workbook.xlsx' });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return lost;
}
