import { Workbook, type Worksheet } from '@cj-tech-master/excelts';
import type { HostOptions, Refusal, SheetHost } from '../sheetHost';
import { ExceltsHost } from './exceltsHost';
import { readParts, TooLargeUnpacked, type PackageParts } from './packageParts';
import { stoppingRules } from './stopIfTrue';

/** 20 MB: a month of surveys takes a hundredth of it. */
const SIZE_LIMIT = 20_000_000;

const MB = 1_000_000;

/** The engine forgets formulas beyond so many while it computes, and their cells would show #NAME?. */
const MOST_FORMULAS = 10_000;

/** The first bytes of the old binary format, and of a workbook under a password. */
const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0];

const refuse = (reason: string): Refusal => ({ ok: false, reason });

/**
 * Opens an .xlsx. A file that is too large, damaged, or no workbook is refused with the reason.
 * @param bytes the content of the file
 */
export async function openWorkbook(
  bytes: Uint8Array,
  options: HostOptions = {},
): Promise<{ readonly ok: true; readonly host: SheetHost } | Refusal> {
  const limit = options.sizeLimit ?? SIZE_LIMIT;
  if (bytes.length === 0) return refuse('the file is empty');
  if (bytes.length > limit) {
    return refuse(`the file has ${(bytes.length / MB).toFixed(1)} MB; at most ${limit / MB} MB are opened`);
  }
  if (COMPOUND_FILE.every((byte, i) => bytes[i] === byte)) {
    return refuse('the file is of the old .xls format or under a password; save it as .xlsx without one');
  }
  let parts: PackageParts;
  try {
    parts = await readParts(bytes);
  } catch (error) {
    return refuse(
      error instanceof TooLargeUnpacked
        ? error.message
        : 'the file is damaged, or no .xlsx: it cannot be unpacked',
    );
  }
  if (!parts.has('xl/workbook.xml')) return refuse('the file is no .xlsx workbook');
  try {
    const workbook = new Workbook();
    await workbook.xlsx.load(bytes);
    for (const sheet of workbook.worksheets) nameFillPatterns(sheet);
    if (workbook.worksheets.length === 0) return refuse('the workbook has no sheet that can be read');
    const host = new ExceltsHost(workbook, [...parts.keys()], stoppingRules(parts), options);
    const formulas = host.formulaCount();
    if (formulas > MOST_FORMULAS) {
      return refuse(`the workbook has ${formulas} formulas; at most ${MOST_FORMULAS} are computed here`);
    }
    return { ok: true, host };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuse(`the workbook is damaged: ${why}`);
  }
}

/** A fill of a conditional format that names no pattern is solid; the library would write "undefined" for it. */
function nameFillPatterns(sheet: Worksheet): void {
  const formats = (sheet as unknown as { conditionalFormattings?: readonly { rules: readonly unknown[] }[] })
    .conditionalFormattings;
  for (const { rules } of formats ?? []) {
    for (const rule of rules) {
      const fill = (rule as { style?: { fill?: { type?: string; pattern?: string } } }).style?.fill;
      if (fill?.type === 'pattern' && fill.pattern === undefined) fill.pattern = 'solid';
    }
  }
}
