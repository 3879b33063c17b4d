import { execFile } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { readParts, writeParts } from '../../src/sheetHost/excelts/packageParts';

const LONGEST_RUN_MS = 120_000;

/** The program of LibreOffice on this machine; undefined where there is none. */
export function findLibreOffice(): string | undefined {
  for (const folder of (process.env['PATH'] ?? '').split(path.delimiter)) {
    for (const name of ['soffice', 'libreoffice', 'soffice.exe']) {
      const file = path.join(folder, name);
      try {
        accessSync(file, constants.X_OK);
        return file;
      } catch (fault) {
        // Not in this folder, or not for us to run.
        const { code } = fault as NodeJS.ErrnoException;
        if (code !== 'ENOENT' && code !== 'EACCES' && code !== 'ENOTDIR') throw fault;
      }
    }
  }
  return undefined;
}

/**
 * Opens a workbook in LibreOffice and saves it again as .xlsx: an evaluator of formulas that shares nothing with ours.
 * It does not know the add-in's functions: in plain cells it keeps their saved values, but a spill of theirs becomes
 * #NAME?. See `withoutResults` to make it compute everything else anew.
 * @param program from `findLibreOffice`
 */
export async function throughLibreOffice(program: string, bytes: Uint8Array): Promise<Uint8Array> {
  const folder = await mkdtemp(path.join(tmpdir(), 'sheet-'));
  try {
    const [from, to] = [path.join(folder, 'book.xlsx'), path.join(folder, 'out')];
    await writeFile(from, bytes);
    // A profile of its own, so that a LibreOffice that is open is not disturbed.
    const profile = `-env:UserInstallation=file://${path.join(folder, 'profile')}`;
    await promisify(execFile)(
      program,
      [
        profile,
        '--headless',
        '--norestore',
        '--convert-to',
        'xlsx:Calc MS Excel 2007 XML',
        '--outdir',
        to,
        from,
      ],
      { timeout: LONGEST_RUN_MS },
    );
    return new Uint8Array(await readFile(path.join(to, 'book.xlsx')));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/**
 * The same workbook with the results of plain formulas taken out, so that whoever opens it has to compute them, and
 * with the formulas of the add-in's functions replaced by their results.
 */
export async function withoutResults(bytes: Uint8Array): Promise<Uint8Array> {
  const parts = await readParts(bytes);
  for (const [name, part] of parts) {
    if (!/^xl\/worksheets\/[^/]*\.xml$/.test(name)) continue;
    const xml = new TextDecoder().decode(part);
    const changed = xml.replace(/<c (?:[^>]*[^/])?>.*?<\/c>/gs, (cell) => {
      if (!/<f[\s>]/.test(cell)) return cell;
      if (/_xldudf_/.test(cell)) {
        return cell.replace(/<f[\s>].*?<\/f>/s, '').replace(/ cm="\d+"/, '');
      }
      return cell.replace(/<v>.*?<\/v>/s, '').replace(/^(<c [^>]*?) t="\w+"/, '$1');
    });
    parts.set(name, new TextEncoder().encode(changed));
  }
  return writeParts(parts);
}
